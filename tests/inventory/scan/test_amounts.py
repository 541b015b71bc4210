"""How much was used: typed, weighed, planned, put right."""

from datetime import timedelta

import pytest

from tests.inventory.scan.desk import content, desk, kinds
from tests.world import (
    GRAM,
    ML,
    NOON,
    bottle,
    hollin,
    job,
    larkmoor,
    marl,
    need,
    pack,
    product,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db
LONG_AGO = NOON - timedelta(days=300)


def test_two_stations_cannot_take_the_same_millilitre() -> None:
    world = larkmoor()
    coat = bottle(world, tidewall(world), 30 * ML, opened_at=NOON - timedelta(days=1))
    tomas, ines = desk(world), desk(world, world.ines, name="Store screen")
    assert tomas.hears(coat.code, "30 ml").startswith("recorded: ")
    assert ines.hears(coat.code, "10 ml") == f"ask: {coat.code[:4]} is booked at 0 ml. You said 10 ml."


def test_an_amount_typed_after_a_planned_use_takes_its_place() -> None:
    world = larkmoor()
    compound = marl(world, needs_sheet=False)
    pot = bottle(world, compound, 150 * GRAM, opened_at=NOON - timedelta(days=1))
    car = job(world, NOON)
    need(step(car, stage="correct"), compound, 60 * GRAM)
    here = desk(world)
    assert here.hears(car.code, pot.code) == (
        f"recorded: Marl cutting compound {pot.code[:4]}: took 60 g as planned, 90 g left."
    )
    assert kinds(here.say("45 g")) == ["reverse", "use"]
    assert content(pot) == 105 * GRAM
    here.say("UNDO")
    assert content(pot) == 150 * GRAM


@pytest.mark.parametrize(
    ("lines", "left", "because"),
    [
        (("before 412 g", "after 380 g"), 118 * GRAM, "32 g went"),
        (("weight 412 g", "weight 412 g"), 150 * GRAM, "nothing went"),
        (("FINISHED",), 0, "the exact rest went"),
        (("2 oz",), 150_000 - 56_699, "an ounce is 28.349523125 g (NIST Handbook 44)"),
    ],
)
def test_a_use_is_weighed_or_said(lines: tuple[str, ...], left: int, because: str) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM, opened_at=NOON - timedelta(days=1))
    desk(world).hears(compound.code, "USE", *lines)
    assert content(compound) == left, because


def test_a_weight_becomes_a_volume_by_the_products_density() -> None:
    world = larkmoor()
    wipe = hollin(world, density_mg_per_l=800_000)
    can = bottle(world, wipe, 500 * ML)
    assert desk(world).hears(can.code, "before 500 g", "after 420 g") == (
        f"recorded: Hollin panel wipe {can.code[:4]}: took 100 ml, 400 ml left."
    )


def test_a_weight_of_a_product_without_density_says_what_is_missing() -> None:
    world = larkmoor()
    can = bottle(world, hollin(world), 500 * ML)
    assert "only by density" in desk(world).hears(can.code, "80 g")
    assert content(can) == 500 * ML


def test_a_kit_is_one_code_and_several_bottles() -> None:
    world = larkmoor()
    coat, primer = tidewall(world), product(world, "Tidewall primer", "coating", dated=False)
    kit = pack(coat, 30 * ML, gtin="04006381333931")
    kit.parts.create(product=primer, amount=10 * ML)
    here = desk(world)
    said = here.hears("4006381333931", "2", "K-1", "none", world.store.code)
    assert said == (
        "recorded: Received 2 bottles of Tidewall coating and 2 bottles of Tidewall primer, "
        "lot K-1, into Store."
    )
    assert len(here.heard[-1]["labels"]) == 4


def test_a_bare_number_uses_nothing() -> None:
    world = larkmoor()
    gloves = bottle(world, product(world, "Nitrile gloves", "protective", dimension="pieces"), 100)
    here = desk(world)
    assert here.hears(gloves.code, "12") == "unknown: “12” alone says nothing here."
    assert here.hears(gloves.code, "USE", "12").startswith("recorded: ")
