"""What CAPDATE_HTTPS=1 changes: cookies, HSTS, and whose word counts for having come by TLS."""

import runpy
from pathlib import Path
from typing import Any

import pytest

from inventory.project import settings as project

NAMES = ("CAPDATE_HTTPS", "CAPDATE_PROXIES", "DATABASE_URL")


@pytest.fixture
def settings_with(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Any:
    """Return a way to read the settings afresh, as the program does at a start."""

    def read(**environ: str) -> dict[str, Any]:
        for name in NAMES:
            monkeypatch.delenv(name, raising=False)
        for name, value in {"CAPDATE_DIR": str(tmp_path), **environ}.items():
            monkeypatch.setenv(name, value)
        return runpy.run_path(project.__file__)

    return read


def test_behind_tls_no_cookie_travels_without_it(settings_with: Any) -> None:
    kept = settings_with(CAPDATE_HTTPS="1", CAPDATE_PROXIES="127.0.0.1")
    assert kept["SESSION_COOKIE_SECURE"] is True
    assert kept["CSRF_COOKIE_SECURE"] is True
    assert kept["SECURE_HSTS_SECONDS"] == 3600
    assert kept["SECURE_PROXY_SSL_HEADER"] == ("HTTP_X_FORWARDED_PROTO", "https")


def test_a_header_says_nothing_of_tls_where_no_proxy_is_listed(settings_with: Any) -> None:
    kept = settings_with(CAPDATE_HTTPS="1")
    assert kept["SESSION_COOKIE_SECURE"] is True
    assert "SECURE_PROXY_SSL_HEADER" not in kept


@pytest.mark.parametrize("said", ["", "0"])
def test_on_plain_http_everybody_can_still_sign_in(settings_with: Any, said: str) -> None:
    kept = settings_with(CAPDATE_HTTPS=said, CAPDATE_PROXIES="127.0.0.1")
    assert kept["SESSION_COOKIE_SECURE"] is False
    assert kept["CSRF_COOKIE_SECURE"] is False
    assert kept["SECURE_HSTS_SECONDS"] == 0
    assert "SECURE_PROXY_SSL_HEADER" not in kept


def test_nobody_is_redirected_to_a_door_that_may_not_be_there(settings_with: Any) -> None:
    assert "SECURE_SSL_REDIRECT" not in settings_with(CAPDATE_HTTPS="1", CAPDATE_PROXIES="127.0.0.1")
