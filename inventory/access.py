"""Who is at the door: which shop a request is about, which person it comes from, what they may do."""

import hashlib
from collections.abc import Callable
from functools import wraps
from typing import cast

from django.contrib.auth.decorators import login_required
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect

from inventory.models import Person, Shop, Station

View = Callable[..., HttpResponse]


# The device's own cookie: signed, never readable by a script; the shop keeps only its hash.
STATION_COOKIE = "station"
STATION_SECONDS = 365 * 24 * 3600


def token_hash(token: str) -> str:
    """Return what is kept of a device's token."""
    return hashlib.sha256(token.encode()).hexdigest()


def station_of(request: HttpRequest) -> Station | None:
    """Return the enrolled station that a request comes from, unless it was revoked; asked once a request."""
    if not hasattr(request, "_station"):
        token = request.get_signed_cookie(STATION_COOKIE, default="", max_age=STATION_SECONDS)
        rows = Station.objects.filter(token_hash=token_hash(token or ""), revoked_at=None)
        found = rows.select_related("shop", "place").first() if token else None
        request._station = found  # type: ignore[attr-defined]
    return cast("Station | None", request._station)  # type: ignore[attr-defined]


def shop_or_none(request: HttpRequest) -> Shop | None:
    """Return the shop of who is logged in, else the only shop there is, else none; asked once a request."""
    if not hasattr(request, "_shop"):
        request._shop = _find_shop(request)  # type: ignore[attr-defined]
    return cast("Shop | None", request._shop)  # type: ignore[attr-defined]


def _find_shop(request: HttpRequest) -> Shop | None:
    user = request.user
    if user.is_authenticated and (shop := user.shop):
        return shop
    if station := station_of(request):
        return station.shop
    shops = list(Shop.objects.order_by("id")[:2])
    return shops[0] if len(shops) == 1 else None


def shop_of(request: HttpRequest) -> Shop:
    """Return the shop of a request, or refuse it."""
    if (shop := shop_or_none(request)) is None:
        raise PermissionDenied("You belong to no shop yet. An owner adds you on the People page.")
    return shop


def person_of(request: HttpRequest) -> Person:
    """Return the person who is logged in; use behind `member` or `owner`."""
    return cast(Person, request.user)


def member(view: View) -> View:
    """Let in whoever is logged in and belongs to a shop."""

    @login_required
    @wraps(view)
    def guarded(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponse:
        if person_of(request).is_superuser and shop_or_none(request) is None:
            # The first owner of a new installation: the shop is opened before anything else.
            return redirect("settings:open")
        shop_of(request)
        return view(request, *args, **kwargs)

    return cast(View, guarded)


def worker(view: View) -> View:
    """Let in owners and technicians; a viewer reads and changes nothing."""

    @member
    @wraps(view)
    def guarded(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponse:
        if person_of(request).role == Person.Role.VIEWER:
            raise PermissionDenied(
                "A viewer can read everything and change nothing. Ask an owner to do this."
            )
        return view(request, *args, **kwargs)

    return guarded


def worker_or_station(view: View) -> View:
    """Let in owners, technicians, and an enrolled station with nobody signed in: labels are printed there."""
    signed_in = worker(view)

    @wraps(view)
    def guarded(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponse:
        let_in = not request.user.is_authenticated and station_of(request) is not None
        return (view if let_in else signed_in)(request, *args, **kwargs)

    return guarded


def owner(view: View) -> View:
    """Let in owners only."""

    @member
    @wraps(view)
    def guarded(request: HttpRequest, *args: object, **kwargs: object) -> HttpResponse:
        if not person_of(request).is_owner:
            raise PermissionDenied("Only an owner can do this. Ask one to log in here.")
        return view(request, *args, **kwargs)

    return guarded
