"""What browser tests share: a server over the demo's shop, and who is signed in to it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from django.conf import settings as site
from django.core.management import call_command
from django.test import Client, override_settings
from django.utils import timezone
from pytest_django.live_server_helper import LiveServer

from inventory.management.demo import make
from inventory.models import Person, Shop
from tests.lifting import lifted


@dataclass(frozen=True)
class Site:
    """A served shop: where it answers, and whose it is."""

    url: str
    shop: Shop


@pytest.fixture(scope="package")
def db(django_db_setup: None) -> None:
    """Have the test database made, and roll nothing back: a server's threads must see what tests write."""


@pytest.fixture(scope="package")
def demo_site(browser: Any, db: None, django_db_blocker: Any, tmp_path_factory: Any) -> Iterator[Site]:
    """The demo's shop of today behind a server, told once for all tests here and emptied at their end."""
    fast = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    files = tmp_path_factory.mktemp("files")
    with override_settings(PASSWORD_HASHERS=fast, MEDIA_ROOT=files), django_db_blocker.unblock():
        shop = make(timezone.now(), lambda done, of: None).shop
        server = LiveServer("127.0.0.1")
        try:
            yield Site(server.url, shop)
        finally:
            server.stop()
            with lifted():
                call_command("flush", interactive=False, verbosity=0)


def cookies(username: str, url: str) -> list[dict[str, str]]:
    """Return what a browser holds after this person signed in."""
    client = Client()
    client.force_login(Person.objects.get(username=username))
    return [{"name": site.SESSION_COOKIE_NAME, "value": client.cookies["sessionid"].value, "url": url}]
