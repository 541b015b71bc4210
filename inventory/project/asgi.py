"""The ASGI application that an ASGI server serves."""

import os

from django.core.asgi import get_asgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.project.settings")
application = get_asgi_application()

# After the set-up, before the first request: the server ends here where a guard is missing. In a thread,
# since an ASGI server imports this inside its event loop, where Django refuses to ask a database.
from concurrent.futures import ThreadPoolExecutor  # noqa: E402

from inventory.checks import refuse_without_guards  # noqa: E402

with ThreadPoolExecutor(1) as aside:
    aside.submit(refuse_without_guards).result()
