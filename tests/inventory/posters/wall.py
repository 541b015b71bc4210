"""Bay 2 of Larkmoor Works with a wall to hang a poster on: sheets, admissions, printed versions."""

from datetime import date
from typing import Any

from inventory.models import Admission, Place, Product
from inventory.posters import actions, queries
from inventory.posters.rules import in_one_sentence
from safety.models import DataSheet, SheetVersion
from tests.world import TODAY, World, hollin

SITE = "http://shelf.larkmoor.example"
FLAMMABLE = {"hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319"], "wear_eyes": "sealed glasses"}


def sheet(
    of: Product, revised: date = date(2025, 3, 3), confirmed: bool = True, **facts: Any
) -> SheetVersion:
    """Add a version to a product's data sheet, confirmed by Ines unless said otherwise."""
    if of.sheet is None:
        of.sheet = DataSheet.objects.create(supplier="Orlo Supply", title=of.name)
        of.save(update_fields=["sheet"])
    by = {"confirmed_by": "Ines", "confirmed_on": TODAY} if confirmed else {}
    says = facts or FLAMMABLE
    return SheetVersion.objects.create(sheet=of.sheet, revision_on=revised, typed_on=TODAY, **by, **says)


def admitted(place: Place, *products: Product) -> None:
    """Admit products to a place."""
    for product in products:
        Admission.objects.create(place=place, product=product, admitted_on=TODAY)


def wiped_bay(world: World) -> Product:
    """Admit Hollin panel wipe, with its sheet, to bay 2; give the shop an address that a phone can open."""
    world.shop.site_url = SITE
    world.shop.save(update_fields=["site_url"])
    wipe = hollin(world)
    sheet(wipe)
    admitted(world.bay_2, wipe)
    return wipe


def hang(place: Place, on: date = TODAY, paper: str = "A3") -> actions.Issued:
    """Print a place's poster as its next version."""
    place.refresh_from_db()
    return actions.issue_poster(place, f"{SITE}/posters/{place.code}/", on, paper)


def notice(place: Place, on: date = TODAY) -> str:
    """Return what the site says of a place's poster on a day, nothing where it holds."""
    fresh = Place.objects.select_related("shop").get(pk=place.pk)
    return in_one_sentence(fresh.name, queries.walls(fresh.shop, fresh, on)[0].reasons)
