"""Who may read sheets and posters: whoever is logged in, and whoever stands on the shop's own network.

Every shift must be able to read a data sheet with no barrier (29 CFR 1910.1200(g)(8)); the internet must not.
"""

from collections.abc import Callable, Iterable
from functools import wraps
from ipaddress import IPv4Address, IPv6Address, ip_address, ip_network

from django.conf import settings
from django.contrib.auth.decorators import login_required
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponseBase

Address = IPv4Address | IPv6Address
View = Callable[..., HttpResponseBase]
FORWARDED = ("HTTP_X_FORWARDED_FOR", "HTTP_FORWARDED", "HTTP_X_REAL_IP")


def read_address(text: str) -> Address | None:
    """Return an address, an IPv4 one written as IPv6 as itself, None if it is none."""
    try:
        found = ip_address(text.strip())
    except ValueError:
        return None
    if isinstance(found, IPv6Address) and found.ipv4_mapped:
        return found.ipv4_mapped
    return found


def within(address: Address, networks: Iterable[str]) -> bool:
    """Return whether an address lies in one of the networks (CIDR)."""
    return any(address in ip_network(network, strict=False) for network in networks)


def client_address(request: HttpRequest) -> Address | None:
    """Return the address of who asks; None where it cannot be known.

    A forwarded address counts only behind listed proxies, read from the right. A header from anyone else is
    either a forgery or a proxy that nobody listed, behind which the whole internet would look like the shop.
    """
    nearest = read_address(request.META.get("REMOTE_ADDR", ""))
    forwarded = any(request.META.get(name) for name in FORWARDED)
    if nearest is None or not forwarded:
        return nearest
    if not within(nearest, settings.TRUSTED_PROXIES):
        return None
    hops = request.META.get("HTTP_X_FORWARDED_FOR", "").split(",")
    for hop in reversed(hops):
        address = read_address(hop)
        if address is None or not within(address, settings.TRUSTED_PROXIES):
            return address
    return None


def on_shop_network(request: HttpRequest) -> bool:
    """Return whether a request comes from the shop's own network."""
    address = client_address(request)
    return address is not None and within(address, settings.LAN_NETWORKS)


def lan_or_login(view: View) -> View:
    """Let in whoever is on the shop's network or logged in; send others to the login page."""
    guarded = login_required(view)

    @wraps(view)
    def entered(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        chosen = view if on_shop_network(request) else guarded
        return chosen(request, *args, **kwargs)

    return entered


def owner_only(view: View) -> View:
    """Let in a logged-in owner; others are told to ask one."""

    @login_required
    @wraps(view)
    def entered(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        if not getattr(request.user, "is_owner", False):
            raise PermissionDenied("Only an owner can do this. Ask one to log in here.")
        return view(request, *args, **kwargs)

    return entered
