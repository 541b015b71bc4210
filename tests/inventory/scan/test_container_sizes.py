"""A container that is too large for what burns in it: told when it comes and when it is put away."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Container, Place, Product
from safety.models import DataSheet, SheetVersion
from tests.inventory.scan.desk import desk
from tests.world import LITRE, NOON, World, bottle, larkmoor, pack, product

pytestmark = pytest.mark.django_db

GALLON = 3_785_412
GTIN = "09520000001148"
TOLD = (
    "Hollin panel wipe: 3.8 l (1 gal) of category 2 in glass or plastic is above the 0.946 l (1 qt) of "
    "29 CFR 1910.106, Table H-12. Keep it in metal or a safety can, or buy smaller ones."
)


def in_country(country: str) -> World:
    world = larkmoor()
    world.shop.country = country
    world.shop.save()
    return world


def wipe(world: World, hazards: str = "Flam. Liq. 2 H225") -> Product:
    made = product(world, "Hollin panel wipe", "solvent", dated=False)
    made.sheet = DataSheet.objects.create(supplier="Hollin", title="Panel wipe")
    made.save()
    SheetVersion.objects.create(
        sheet=made.sheet, revision_on=NOON.date(), hazards=[hazards], typed_on=NOON.date(),
        confirmed_on=NOON.date(), confirmed_by="Ines", flash_point_c=12,
    )  # fmt: skip
    return made


def received(world: World, amount: int = GALLON, **facts: str) -> str:
    pack(Product.objects.get(name="Hollin panel wipe"), amount, gtin=GTIN, **facts)
    here = desk(world)
    return [here.say(line) for line in (GTIN, "2", "NO LOT", world.store.code)][-1]["next"]


def test_a_gallon_in_plastic_is_received_and_told_of() -> None:
    world = in_country("US")
    wipe(world)
    assert received(world, vessel="plastic").startswith(f"{TOLD} Labels come in one strip.")
    assert Container.objects.count() == 2


@pytest.mark.parametrize(
    ("country", "amount", "vessel", "hazards", "because"),
    [
        ("US", GALLON, "", "Flam. Liq. 2 H225", "nobody said what it is made of"),
        ("US", GALLON, "metal", "Flam. Liq. 2 H225", "metal may hold 5 gal"),
        ("US", GALLON, "safety_can", "Flam. Liq. 2 H225", "so may a safety can"),
        ("US", LITRE // 2, "plastic", "Flam. Liq. 2 H225", "half a litre is below a quart"),
        ("US", GALLON, "plastic", "Flam. Liq. 3 H226", "of category 3 glass or plastic may hold a gallon"),
        ("US", GALLON, "plastic", "Aerosol 1 H222", "an aerosol is no container of the table"),
        ("US", GALLON, "plastic", "Eye Irrit. 2 H319", "it does not burn"),
        ("GB", GALLON, "plastic", "Flam. Liq. 2 H225", "the table is no British law"),
        ("DE", GALLON, "plastic", "Flam. Liq. 2 H225", "nor a German one"),
    ],
)
def test_nothing_is_told_where_the_table_has_nothing_against_it(
    country: str, amount: int, vessel: str, hazards: str, because: str
) -> None:
    world = in_country(country)
    wipe(world, hazards)
    assert received(world, amount, vessel=vessel).startswith("Labels come in one strip."), because


def test_in_canada_it_is_told_as_another_country_s_measure() -> None:
    world = in_country("CA")
    wipe(world)
    assert received(world, vessel="plastic").startswith(
        f"{TOLD} The table is the United States': your own fire code is not in our tables and comes first."
    )


def put_away(world: World, moving: Container) -> str:
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf")
    here = desk(world)
    spoken = [here.say(line) for line in (moving.code, shelf.code)][-1]
    assert spoken["grade"] == "recorded"
    return spoken["next"]


def test_a_bottle_in_a_pack_too_large_is_told_of_when_it_is_put_away() -> None:
    world = in_country("US")
    made = wipe(world)
    sold = pack(made, GALLON, vessel="plastic")
    assert put_away(world, bottle(world, made, GALLON, pack=sold.pk)).startswith(TOLD)


def test_what_the_container_holds_when_full_counts_not_what_is_left_in_it() -> None:
    world = in_country("US")
    made = wipe(world)
    gallon = bottle(world, made, GALLON, pack=pack(made, GALLON, vessel="plastic").pk)
    Container.objects.filter(pk=gallon.pk).update(content=LITRE // 10)
    assert put_away(world, gallon).startswith(TOLD)


@pytest.mark.parametrize(
    ("changes", "because"),
    [
        ({"pack": None}, "an own bottle of which nobody said what it is made of"),
        ({"parts_water": 10}, "the class of a mix with water is not its product's"),
    ],
)
def test_an_own_bottle_is_told_of_only_where_vessel_and_class_are_known(
    changes: dict[str, object], because: str
) -> None:
    world = in_country("US")
    made = wipe(world)
    own = bottle(world, made, GALLON, pack=pack(made, GALLON, vessel="plastic").pk)
    Container.objects.filter(pk=own.pk).update(refillable=True, **changes)
    assert "Table H-12" not in put_away(world, own), because


def test_an_own_bottle_of_a_known_vessel_filled_neat_is_told_of() -> None:
    world = in_country("US")
    made = wipe(world)
    own = bottle(world, made, GALLON, pack=pack(made, GALLON, vessel="plastic").pk)
    Container.objects.filter(pk=own.pk).update(refillable=True)
    assert put_away(world, own).startswith(TOLD)


@pytest.mark.parametrize(
    ("country", "asked", "because"),
    [("DE", 0, "no law there limits it"), ("US", 1, "the twin: here a query reads it")],
)
def test_what_a_bottle_is_made_of_is_asked_only_where_a_law_limits_it(
    country: str, asked: int, because: str
) -> None:
    world = in_country(country)
    made = wipe(world)
    row = bottle(world, made, GALLON, pack=pack(made, GALLON, vessel="plastic").pk)
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf")
    here = desk(world)
    here.say(row.code)
    with CaptureQueriesContext(connection) as captured:
        here.say(shelf.code)
    assert sum('FROM "inventory_pack"' in query["sql"] for query in captured.captured_queries) == asked, (
        because
    )
