"""The scan station's pages: hear one line, show one answer; enrol a device, end it."""

from typing import Any

from django.conf import settings
from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import NoReverseMatch, reverse
from django.utils import timezone
from django.utils.dateparse import parse_datetime
from django.views.decorators.http import require_GET, require_POST

from inventory.access import STATION_COOKIE, STATION_SECONDS, owner, person_of, shop_of, station_of
from inventory.models import Heard, Person, Station
from inventory.scan import actions
from inventory.scan.forms import EnrolForm, LineForm
from inventory.scan.queries import stations as find
from inventory.stock.requests import KeyReused

HELLO = {
    "grade": "tell",
    "says": "Scan your badge.",
    "next": "Or scan a bottle: it waits until you do.",
    "keys": [],
}
# Where a key that opens a page leads: its name, and what it is about.
PAGES = {"container": "shelf:container", "job": "jobs:job", "check": "precheck:job"}
ASKING = {"labels": ("posters:labels_pdf", "codes"), "new_product": ("products:new", "gtin")}


@require_GET
def station(request: HttpRequest) -> HttpResponse:
    """Show the station of this device, else the personal one of who is logged in."""
    here = _here(request)
    if here is None:
        return redirect(f"{reverse('people:login')}?next={reverse('scan:station')}")
    kept = here.state or {}
    card = find.emergency_card(here, kept.get("state", {}).get("place", ""))
    context = {"station": here.name, "emergency": card, **_shown(here, kept.get("answer", HELLO))}
    return render(request, "inventory/scan/station.html", context)


@require_POST
def say(request: HttpRequest) -> HttpResponse:
    """Hear one line and return the fragment with its answer."""
    here = _here(request)
    if here is None:
        return HttpResponse("This device is not enrolled any more.", status=403)
    form = LineForm(request.POST)
    if not form.is_valid():
        return HttpResponse(
            " ".join(str(error) for errors in form.errors.values() for error in errors), status=400
        )
    now = timezone.now()
    try:
        spoken = actions.say(
            here, form.cleaned_data["line"], form.cleaned_data["key"], form.cleaned_data["at"] or now, now=now
        )
    except KeyReused as reused:
        return HttpResponse(reused.says, status=422)
    return render(request, "inventory/scan/answer.html", _shown(here, spoken))


def _here(request: HttpRequest) -> Station | None:
    enrolled = station_of(request)
    if enrolled is not None:
        return enrolled
    user = request.user
    if not isinstance(user, Person) or user.shop is None:
        return None
    if user.role == Person.Role.VIEWER:
        raise PermissionDenied("A viewer can read everything and record nothing.")
    return actions.screen_of(user)


def _shown(here: Station, spoken: dict[str, Any]) -> dict[str, Any]:
    """Return what the fragment shows: the bar, the answer with its keys, the last answers."""
    kept = here.state or {}
    wanted = [*_strip(spoken.get("labels") or []), *spoken.get("keys", ())]
    keys = [key for key in map(_key, wanted) if key]
    last = [{**each, "at": parse_datetime(each["at"])} for each in kept.get("last", ())]
    bar = dict(spoken.get("bar") or kept.get("bar", {}))
    bar["place"] = bar.get("place") or (here.place.name if here.place else "")
    return {**bar, "answer": {**spoken, "keys": keys}, "last": last}


def _strip(codes: list[str]) -> list[dict[str, Any]]:
    """Return the key that prints the labels of what just arrived, in one strip; none where nothing did."""
    if not codes:
        return []
    label = f"Print {len(codes)} labels" if len(codes) > 1 else "Print its label"
    return [{"label": label, "page": "labels", "about": ",".join(codes), "main": True}]


def _key(key: dict[str, Any]) -> dict[str, Any] | None:
    """Return a key with its address; one whose page this installation does not have is left out."""
    page = key.get("page")
    if not page:
        return key
    try:
        if page in PAGES:
            return {**key, "href": reverse(PAGES[page], args=[key["about"]])}
        name, argument = ASKING[page]
        return {**key, "href": f"{reverse(name)}?{argument}={key['about']}"}
    except NoReverseMatch:
        return None


@owner
@require_GET
def stations(request: HttpRequest) -> HttpResponse:
    """Show the enrolled devices, and what stations did not know and set aside."""
    shop = shop_of(request)
    context = {"stations": find.enrolled(shop), "aside": find.set_aside(shop)}
    return render(request, "inventory/scan/stations.html", context)


@owner
def enrol(request: HttpRequest) -> HttpResponse:
    """Make this device a station; the token stays in it alone."""
    shop = shop_of(request)
    form = EnrolForm(request.POST or None, shop=shop)
    if request.method != "POST" or not form.is_valid():
        context = {
            "form": form,
            "title": "Make this device a scan station",
            "button": "Enrol this device",
            "back": "scan:stations",
            "back_label": "Scan stations",
        }
        return render(request, "inventory/parts/form_page.html", context)
    _, token = actions.enrol(
        shop, form.cleaned_data["name"], form.cleaned_data["place"], by=person_of(request)
    )
    answer = redirect("scan:station")
    answer.set_signed_cookie(
        STATION_COOKIE,
        token,
        max_age=STATION_SECONDS,
        httponly=True,
        samesite="Lax",
        secure=settings.SESSION_COOKIE_SECURE or request.is_secure(),
    )
    return answer


@owner
@require_POST
def revoke(request: HttpRequest, code: str) -> HttpResponse:
    """End a device's session."""
    found = get_object_or_404(Station, shop=shop_of(request), code=code.upper())
    actions.revoke(found, at=timezone.now())
    messages.success(request, f"{found.name} is ended. What it recorded stays.")
    return redirect("scan:stations")


@owner
@require_POST
def settled(request: HttpRequest, pk: int) -> HttpResponse:
    """Take a line off the list of what was set aside."""
    found = get_object_or_404(Heard, station__shop=shop_of(request), pk=pk, set_aside=True)
    actions.settle(found)
    return redirect("scan:stations")
