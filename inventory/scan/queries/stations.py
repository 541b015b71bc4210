"""Stations, what they heard, and what they show beside an answer."""

from django.db.models import Q

from inventory.codes import tidy
from inventory.models import Heard, Place, Shop, Station


def enrolled(shop: Shop) -> list[Station]:
    """Return the devices that are enrolled, by name."""
    rows = Station.objects.filter(shop=shop, revoked_at=None).exclude(token_hash="")
    return list(rows.select_related("place", "enrolled_by").order_by("name"))


def set_aside(shop: Shop) -> list[Heard]:
    """Return what stations did not know and set aside, the newest first."""
    rows = Heard.objects.filter(station__shop=shop, set_aside=True).select_related("station")
    return list(rows.order_by("-at", "-id")[:50])


def station_by(shop: Shop, named: str) -> Station | None:
    """Return a station by its code or name."""
    rows = Station.objects.filter(shop=shop, revoked_at=None).select_related("shop", "place")
    return rows.filter(Q(code=tidy(named) or "") | Q(name__iexact=named)).first()


def emergency_card(station: Station, place: str) -> dict[str, str]:
    """Return what the emergency panel says: the shop's numbers, and where things are at a place."""
    here = Place.objects.filter(shop=station.shop, code=place).first() if place else station.place
    facts = {name: f"{name}_at" for name in ("eyewash", "extinguisher", "spill_kit", "first_aid")}
    card = {name: getattr(here, column) if here else "" for name, column in facts.items()}
    return card | {"number": station.shop.emergency_number, "poison": station.shop.poison_centre}
