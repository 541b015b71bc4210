"""The WSGI application that gunicorn serves."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.project.settings")
application = get_wsgi_application()

# After the set-up, before the first request: gunicorn and runserver end here where a guard is missing.
from django.db import connections  # noqa: E402

from inventory.checks import refuse_without_guards  # noqa: E402

refuse_without_guards()
connections.close_all()  # a server that forks must not share it with its workers
