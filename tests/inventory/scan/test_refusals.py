"""What a station refuses, and the twin that shows where the refusal ends."""

from datetime import date, timedelta

import pytest

from inventory.models import Head, Movement, Station
from tests.inventory.scan.desk import Desk, content, desk
from tests.world import (
    GRAM,
    ML,
    NOON,
    TODAY,
    bottle,
    hollin,
    job,
    larkmoor,
    marl,
    need,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db
LONG_AGO = NOON - timedelta(days=300)


def test_a_bottle_past_its_printed_date_is_stopped_and_another_is_named() -> None:
    world = larkmoor()
    wipe = hollin(world)
    dead = bottle(world, wipe, 500 * ML, expires_on=date(2026, 11, 24))
    good = bottle(world, wipe, 500 * ML)
    spoken = desk(world).say(dead.code)
    assert spoken["says"] == f"Hollin panel wipe {dead.code[:4]} died on 24 November: printed on it."
    assert spoken["next"] == f"Empty it, or take {good.code[:4]} from Store."
    assert (spoken["grade"], spoken["movements"]) == ("stop", [])


def test_no_yes_lifts_a_printed_date() -> None:
    world = larkmoor()
    dead = bottle(world, hollin(world), 500 * ML, expires_on=date(2026, 11, 24))
    here = desk(world)
    assert here.hears(dead.code, "40 ml").startswith("stop: ")
    assert here.hears("YES") == "tell: There is no question to answer."
    assert content(dead) == 500 * ML


def test_a_bottle_on_its_printed_day_is_used() -> None:
    world = larkmoor()
    last_day = bottle(world, hollin(world), 500 * ML, expires_on=TODAY)
    said = desk(world).hears(last_day.code, "40 ml")
    assert said == f"recorded: Hollin panel wipe {last_day.code[:4]}: took 40 ml, 460 ml left."


def test_a_held_bottle_is_stopped_and_a_badge_cannot_release_it() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    assert here.hears(compound.code, "HOLD", "gelled") == (
        f"recorded: Marl cutting compound {compound.code[:4]} is held: gelled."
    )
    assert here.hears("10 g") == f"stop: Marl cutting compound {compound.code[:4]} is held: gelled."
    assert here.hears("RELEASE") == (
        "stop: A badge cannot release what is held: that takes an owner's password."
    )


def test_a_whole_lot_is_held_from_one_bottle_of_it() -> None:
    world = larkmoor()
    coat = tidewall(world)
    first, second = (bottle(world, coat, 30 * ML, lot="T-1") for _ in range(2))
    here = desk(world)
    here.hears(first.code, "HOLD", "recalled", "WHOLE LOT")
    assert here.hears(second.code, "10 ml") == f"stop: Tidewall coating {second.code[:4]} is held: recalled."


def test_expired_stock_can_always_be_discarded() -> None:
    world = larkmoor()
    dead = bottle(world, hollin(world), 500 * ML, expires_on=date(2026, 1, 1))
    assert desk(world).hears(dead.code, "DISCARD") == (
        f"recorded: Discarded Hollin panel wipe {dead.code[:4]} with 0.5 l in it."
    )


def test_what_is_on_the_car_already_is_written_down_and_flagged() -> None:
    world = larkmoor()
    wipe = hollin(world, needs_sheet=False)
    dead = bottle(world, wipe, 500 * ML, expires_on=date(2026, 11, 24))
    car = job(world, NOON)
    need(step(car), wipe, 40 * ML)
    here = desk(world)
    here.hears(car.code, dead.code)
    assert here.hears("ALREADY", "40 ml").startswith("recorded: ")
    assert Movement.objects.get(kind="use").facts["declared"] is True


def test_a_viewers_badge_records_nothing() -> None:
    world = larkmoor()
    here = Desk(Station.objects.create(shop=world.shop, name="Bay screen"))
    assert here.hears(world.wren.code) == "stop: Wren can read everything and record nothing."
    assert here.hears("UNDO") == "ask: This scan waits: who are you?"


def test_a_badge_of_another_shop_is_nobodys_here() -> None:
    world, other = larkmoor(), larkmoor("hollow-lane")
    assert desk(world).hears(other.tomas.code) == "unknown: That badge is nobody's here."


def test_a_bottle_of_another_shop_is_unknown_here() -> None:
    world, other = larkmoor(), larkmoor("hollow-lane")
    theirs = bottle(other, marl(other), 150 * GRAM)
    said = desk(world).hears(theirs.code, "60 g")
    assert said == "unknown: Of what? No bottle is in hand."
    assert content(theirs) == 150 * GRAM


def test_what_the_ledger_refuses_is_a_stop_and_nothing_is_written() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.say(compound.code)
    before = Head.objects.get().seq
    spoken = here.say("60 g", at=NOON - timedelta(days=90))
    assert (spoken["grade"], spoken["next"]) == ("stop", "Nothing was recorded.")
    assert "had not been received by then" in spoken["says"]
    assert Head.objects.get().seq == before


def test_who_has_left_the_shop_records_nothing_more_on_an_old_badge() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.say(compound.code)
    world.tomas.is_active = False
    world.tomas.save()
    assert here.hears("60 g") == "ask: This scan waits: who are you?"
    assert content(compound) == 150 * GRAM
