"""A bay with a fluoride in it, a technician who is new, and what he needs there."""

from datetime import date

import pytest
from django.test import Client

from inventory.models import Equipment, Place
from safety.models import DataSheet, SheetVersion
from tests.world import GRAM, ML, World, bottle, product


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


@pytest.fixture
def acid_in_bay(world: World) -> None:
    made = product(world, "Brack wheel acid", "acid")
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title="Brack wheel acid")
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 1, 1), confirmed_on=date(2025, 1, 2),
        confirmed_by="Ines", hazards=["Skin Corr. 1B H314"], statements=["H314", "P280"],
        signal_word="Danger",
        holds_fluoride=True, wear_hands="nitrile 0.4 mm", spill="Neutraliser first.",
    )  # fmt: skip
    made.sheet = sheet
    made.save()
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", within=world.bay_1)
    bottle(world, made, 500 * ML, place=shelf)
    Place.objects.filter(pk=world.bay_1.pk).update(eyewash_at="left of the door", spill_kit_at="green box")
    gel = product(world, "Ossen gel", "first_aid", dimension="mass")
    Equipment.objects.create(product=gel, serves="gluconate")
    bottle(world, gel, 25 * GRAM, place=world.bay_1)
