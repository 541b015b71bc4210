"""The stations themselves: enrolling a device, ending its session, the screens that need no enrolment."""

import secrets
from datetime import datetime
from typing import Any

from inventory.access import token_hash
from inventory.models import Heard, Person, Place, Shop, Station
from inventory.stock.conversation import State


def enrol(shop: Shop, name: str, place: Place | None, *, by: Person) -> tuple[Station, str]:
    """Make a station of this device; return it and the token that only the device keeps.

    A name that an ended device had begins anew: who stood there, and what was asked, ended with that device.
    """
    token = secrets.token_urlsafe(32)
    facts: dict[str, Any] = {
        "place": place, "token_hash": token_hash(token), "enrolled_by": by, "revoked_at": None, "state": {},
    }  # fmt: skip
    station, _ = Station.objects.update_or_create(shop=shop, name=name, defaults=facts)
    return station, token


def revoke(station: Station, *, at: datetime) -> None:
    """End a device's session; what it recorded stays."""
    station.revoked_at, station.token_hash = at, ""
    station.save(update_fields=["revoked_at", "token_hash"])


def screen_of(person: Person) -> Station:
    """Return the personal station of somebody who is logged in: who they are needs no badge."""
    shop = person.shop
    assert shop is not None
    start = {"state": State(who=person.code).as_json(), "bar": {"who": person.name}}
    station, _ = Station.objects.select_related("shop", "place").get_or_create(
        shop=shop, name=f"{person.name}’s screen {person.code[:4]}", defaults={"state": start}
    )
    return station


def desk(shop: Shop) -> Station:
    """Return the station of the command line."""
    station, _ = Station.objects.select_related("shop", "place").get_or_create(shop=shop, name="Command line")
    return station


def settle(heard: Heard) -> None:
    """Take a line off the list of what was set aside; that it was heard stays."""
    heard.set_aside = False
    heard.save(update_fields=["set_aside"])
