"""A bottle that nobody planned is stopped at the station as if it were planned, and known afterwards."""

from datetime import timedelta

import pytest

from inventory.models import Arrival, Movement, Panel
from tests.inventory.scan.desk import desk, kinds
from tests.inventory.scan.test_statements import statements
from tests.inventory.scan.unplanned import (
    found,
    glass_acid,
    nia,
    opened,
    plain,
    shop,
    wheel_acid,
    wipe,
    working,
)
from tests.world import NOON

pytestmark = pytest.mark.django_db


def test_who_never_signed_the_first_day_pours_no_acid_that_nobody_planned() -> None:
    world = shop()
    car, _ = working(world)
    sour = opened(world, wheel_acid(world))
    here = desk(world, who=nia(world))
    first_day = "stop: Nia has not signed the sheet of the first day."

    assert here.hears(car.code, sour) == first_day
    assert here.hears("60 ml") == first_day
    assert here.hears("YES") == "tell: There is no question to answer."
    assert not Movement.objects.filter(kind="use").exists()


def test_who_is_trained_pours_no_fluoride_where_no_gel_is_in_reach() -> None:
    world = shop()
    car, _ = working(world)

    assert desk(world).hears(car.code, opened(world, wheel_acid(world)), "60 ml") == (
        "stop: No calcium gluconate gel in date is in reach of Bay 1."
    )


@pytest.mark.parametrize(
    ("kind", "surface", "says", "because"),
    [
        ("acid", "glass", "Wheels: Brack rim acid (fluoride acid) would harm glass on the bonnet.",
         "a fluoride etches glass"),
        ("compound", "wrap_matte",
         "Wheels: Marl (abrasive, compound) would harm matte vinyl wrap on the bonnet.", "it would shine"),
    ],
)  # fmt: skip
def test_what_a_listed_panel_does_not_bear_is_stopped(
    kind: str, surface: str, says: str, because: str
) -> None:
    world = shop()
    car, _ = working(world)
    Panel.objects.create(vehicle=car.vehicle, position=1, name="bonnet", surface=surface)
    poured = glass_acid(world) if kind == "acid" else plain(world, "Marl", kind)
    here = desk(world)

    spoken = here.hears(car.code, opened(world, poured))

    assert spoken == f"stop: {says}", because
    assert here.hears("20 ml") == spoken


def test_once_declared_the_check_knows_the_acid_that_is_on_the_glass() -> None:
    world = shop()
    car, _ = working(world)
    Panel.objects.create(vehicle=car.vehicle, position=1, name="windscreen", surface="glass")
    here = desk(world)
    assert found(car, "surface.never") == []

    here.hears(car.code, opened(world, glass_acid(world)), "ALREADY", "60 ml")

    assert [one.says for one in found(car, "surface.never")] == [
        "Wheels: Brack rim acid (fluoride acid) would harm glass on the windscreen."
    ]
    here.hears("UNDO")
    assert found(car, "surface.never") == []


def test_a_coating_that_nobody_planned_goes_over_no_wax_that_the_car_brought() -> None:
    world = shop()
    car, _ = working(world)
    Arrival.objects.create(job=car, residue="wax")

    assert desk(world).hears(car.code, opened(world, plain(world, "Tidewall coating", "coating"))) == (
        "stop: Wheels: Tidewall coating would go over wax on the paint."
    )


def test_a_coating_that_nobody_planned_goes_on_no_respray_of_two_days_ago() -> None:
    world = shop()
    car, _ = working(world)
    Panel.objects.create(
        vehicle=car.vehicle, position=1, name="door", surface="fresh_refinish", baked=True,
        since_on=(NOON - timedelta(days=2)).date(),
    )  # fmt: skip

    assert desk(world).hears(car.code, opened(world, plain(world, "Tidewall coating", "coating"))) == (
        "stop: Wheels: Tidewall coating would go on fresh refinish of 23 November 2026 on the door; "
        "it must be 7 d old."
    )


def test_panel_wipe_that_nobody_planned_is_stopped_in_the_cabin() -> None:
    world = shop()
    car, _ = working(world, touches=["interior"])
    here = desk(world)
    cabin = "stop: Wheels, the car's cabin in Bay 1: something flammable is used in 3 m³ without air flow."

    assert here.hears(car.code, opened(world, wipe(world))) == cabin
    assert here.hears("100 ml") == cabin


def test_what_harms_nothing_is_recorded_and_says_nothing_new() -> None:
    world = shop()
    car, _ = working(world)
    here = desk(world)
    mild = opened(world, plain(world, "Fenmoor soap", "shampoo"))

    assert here.hears(car.code, mild).startswith("ask: Fenmoor soap ")
    assert kinds(here.say("60 ml")) == ["use"]
    assert here.hears(mild, "20 ml").startswith("recorded: ")


# Statements


def test_the_first_line_of_an_unplanned_bottle_costs_one_check_and_its_amount_another_and_no_more() -> None:
    world = shop()
    car, _ = working(world)
    here = desk(world)
    mild = opened(world, plain(world, "Fenmoor soap", "shampoo"))
    here.say(car.code)

    first, amount = statements(here, mild), statements(here, "20 ml")
    again, more = statements(here, mild), statements(here, "10 ml")

    assert max(first, amount, more) <= 70
    assert again <= 16
