"""The ASGI application that an ASGI server serves."""

import os

from django.core.asgi import get_asgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.project.settings")
application = get_asgi_application()
