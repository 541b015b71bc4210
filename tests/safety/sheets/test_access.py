"""Who reads sheets: the shop's own network and people who are logged in, nobody else."""

from typing import Any

import pytest
from django.contrib.auth.models import AnonymousUser
from django.http import HttpRequest, HttpResponse
from django.test import RequestFactory

from safety.access import client_address, lan_or_login, on_shop_network


@pytest.fixture(autouse=True)
def _network(settings: Any) -> None:
    settings.LAN_NETWORKS = ["192.168.1.0/24", "fd00::/8"]
    settings.TRUSTED_PROXIES = ["10.0.0.5", "10.0.0.6/32"]


def request(remote: str, **headers: str) -> HttpRequest:
    made = RequestFactory().get("/sheets/", REMOTE_ADDR=remote, **headers)
    made.user = AnonymousUser()
    return made


@lan_or_login
def page(request: HttpRequest) -> HttpResponse:
    return HttpResponse("the sheet")


LET_IN = [
    # remote, X-Forwarded-For, let in, because
    ("192.168.1.20", "", True, "it stands on the shop's network"),
    ("fd00::20", "", True, "so does this one"),
    ("::ffff:192.168.1.20", "", True, "the same address, as a dual-stack server writes it"),
    ("203.0.113.9", "", False, "the internet"),
    ("203.0.113.9", "192.168.1.20", False, "a forged header from the internet"),
    ("192.168.1.20", "192.168.1.21", False, "a proxy that nobody listed could hide the internet"),
    ("10.0.0.5", "192.168.1.20", True, "a listed proxy says who asked"),
    ("10.0.0.5", "203.0.113.9", False, "a listed proxy says it was the internet"),
    ("10.0.0.5", "192.168.1.20, 203.0.113.9", False, "the client forged the left, the proxy added the right"),
    ("10.0.0.5", "192.168.1.20, 10.0.0.6", True, "two listed proxies in a row"),
    ("10.0.0.5", "192.168.1.20, rubbish", False, "what cannot be read is nobody"),
    ("10.0.0.5", "", False, "the proxy's own address is not the shop's network"),
    ("", "", False, "no address at all"),
]


@pytest.mark.parametrize(("remote", "forwarded", "let_in", "because"), LET_IN)
def test_only_the_shops_network_reads_without_login(
    remote: str, forwarded: str, let_in: bool, because: str
) -> None:
    asked = request(remote, **({"HTTP_X_FORWARDED_FOR": forwarded} if forwarded else {}))
    assert on_shop_network(asked) is let_in, because


@pytest.mark.parametrize("header", ["HTTP_FORWARDED", "HTTP_X_REAL_IP"])
def test_other_forwarding_headers_give_no_way_in_either(header: str) -> None:
    assert client_address(request("192.168.1.20", **{header: "for=192.168.1.20"})) is None


def test_a_stranger_is_sent_to_the_login_page(settings: Any) -> None:
    settings.LOGIN_URL = "/log-in/"
    answer = page(request("203.0.113.9"))
    assert answer.status_code == 302
    assert answer["Location"].startswith("/log-in/?next=")


def test_the_shops_network_reads_the_page() -> None:
    assert page(request("192.168.1.20")).content == b"the sheet"
