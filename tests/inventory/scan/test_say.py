"""Keys, waiting scans, undo, late entries: one line and what it writes."""

from datetime import timedelta

import pytest

from inventory.models import Heard, Movement, Station
from inventory.scan import actions
from inventory.stock.requests import KeyReused
from tests.inventory.scan.desk import Desk, content, desk
from tests.world import (
    GRAM,
    LITRE,
    ML,
    NOON,
    bottle,
    fenmoor,
    larkmoor,
    marl,
    pack,
    spray_bottle,
    tidewall,
)

pytestmark = pytest.mark.django_db
LONG_AGO = NOON - timedelta(days=300)


def test_a_scan_before_any_badge_waits_and_runs_when_the_badge_comes() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = Desk(Station.objects.create(shop=world.shop, name="Bay screen"))
    assert here.hears(compound.code) == "ask: This scan waits: who are you?"
    assert here.hears("60 g") == "ask: 2 scans wait: who are you?"
    spoken = here.say(world.tomas.code)
    assert spoken["says"] == f"Marl cutting compound {compound.code[:4]}: took 60 g, 90 g left."
    assert Movement.objects.get(kind="use").person == world.tomas


def test_fifty_scans_wait_for_a_badge_and_the_next_one_is_not_kept() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = Desk(Station.objects.create(shop=world.shop, name="Bay screen"))
    here.hears(compound.code, *["UNDO"] * 48)
    assert here.hears("UNDO") == "ask: 50 scans wait: who are you?"
    assert here.hears("60 g") == "stop: 50 scans wait for a badge already: this one is not kept."
    here.hears(world.tomas.code)
    assert content(compound) == 150 * GRAM
    assert here.hears(compound.code, "60 g").endswith("took 60 g, 90 g left.")


def test_the_same_key_and_line_get_the_stored_answer() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.say(compound.code)
    first = here.say("60 g", key="a")
    assert here.say("60 g", key="a") == first
    assert content(compound) == 90 * GRAM


def test_the_same_key_with_another_line_is_an_error() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.say(compound.code)
    here.say("60 g", key="a")
    with pytest.raises(KeyReused) as refused:
        here.say("70 g", key="a")
    assert refused.value.says == (
        "The key a was used for another line already. Send this one under a new key."
    )
    assert content(compound) == 90 * GRAM


def test_undo_takes_back_the_whole_last_act_of_this_person() -> None:
    world = larkmoor()
    coat = bottle(world, tidewall(world), 30 * ML)
    here = desk(world)
    here.hears(coat.code, "10 ml")
    assert here.hears("UNDO") == f"recorded: Taken back: 10 ml of Tidewall coating {coat.code[:4]}."
    coat.refresh_from_db()
    assert (coat.state, coat.content) == ("sealed", 30 * ML)


def test_undo_leaves_what_somebody_else_did() -> None:
    world = larkmoor()
    coat = bottle(world, tidewall(world), 30 * ML)
    here = desk(world)
    here.hears(coat.code, "10 ml", world.ines.code)
    assert here.hears("UNDO") == "tell: There is nothing of yours to take back at this station."
    assert here.hears(world.tomas.code, "UNDO").startswith("recorded: Taken back: 10 ml")


def test_undo_that_a_later_entry_forbids_is_refused_by_name_and_can_be_tried_again() -> None:
    world = larkmoor()
    drum, spray = bottle(world, fenmoor(world), 5 * LITRE), spray_bottle(world)
    tomas, ines = desk(world), desk(world, world.ines, name="Store screen")
    tomas.hears(drum.code, "FILL", "1:10", spray.code)
    ines.hears(spray.code, "900 ml", "YES")
    assert tomas.hears("UNDO").startswith("stop: Entry ")
    ines.hears("UNDO")
    assert tomas.hears("UNDO").startswith("recorded: Taken back: the filling of spray bottle")


def test_an_entry_that_comes_late_says_so() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.say(compound.code)
    spoken = here.say("60 g", at=NOON - timedelta(minutes=30))
    assert spoken["next"].startswith("Entered late: marked so.")
    assert Movement.objects.get(kind="use").facts["late"] is True


def test_an_entry_in_time_is_not_called_late() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    desk(world).hears(compound.code, "60 g")
    assert "late" not in Movement.objects.get(kind="use").facts


def test_an_unknown_number_is_set_aside_and_blocks_nothing() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    assert here.hears("4006381333931") == (
        "unknown: No product here has the number 4006381333931. It is set aside."
    )
    assert Heard.objects.get(set_aside=True).line == "4006381333931"
    assert here.hears(compound.code, "60 g").startswith("recorded: ")


def test_a_revoked_station_keeps_what_it_recorded() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.hears(compound.code, "60 g")
    actions.revoke(here.station, at=NOON)
    assert Movement.objects.filter(kind="use").count() == 1


def test_a_half_said_receipt_is_not_lost_to_the_next_scan() -> None:
    world = larkmoor()
    coat, compound = tidewall(world), bottle(world, marl(world), 150 * GRAM)
    pack(coat, 30 * ML, gtin="04006381333931")
    here = desk(world)
    here.hears("4006381333931", "3", "B-7", "none")
    assert here.hears(compound.code) == "ask: Tidewall coating is not received yet: the place is missing."
    assert here.hears(world.store.code).startswith("recorded: Received 3 bottles of Tidewall coating")


def test_no_lets_a_half_said_receipt_go() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    pack(tidewall(world), 30 * ML, gtin="04006381333931")
    here = desk(world)
    assert here.hears("4006381333931", "3", "NO") == "tell: Nothing was recorded."
    assert here.hears(compound.code, "60 g").startswith("recorded: ")


def test_undo_of_a_question_takes_back_nothing_that_was_recorded() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.hears(compound.code, "60 g", "USE")
    assert here.hears("UNDO") == "tell: Nothing was recorded."
    assert content(compound) == 90 * GRAM
    assert here.hears("UNDO").startswith("recorded: Taken back: 60 g")
