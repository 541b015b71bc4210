"""What a station refuses, asks and writes, a line at a time, through the real ledger."""

from datetime import date, timedelta

import pytest

from inventory.models import Head, Heard, Movement, Override, Station
from inventory.scan import actions
from inventory.stock.requests import KeyReused
from tests.inventory.scan.desk import Desk, content, desk, kinds
from tests.world import (
    GRAM,
    LITRE,
    ML,
    NOON,
    TODAY,
    bottle,
    fenmoor,
    hollin,
    job,
    larkmoor,
    marl,
    need,
    pack,
    product,
    spray_bottle,
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


def test_a_bottle_past_the_shops_own_estimate_asks_and_the_answer_is_kept() -> None:
    world = larkmoor()
    old = bottle(world, marl(world), 150 * GRAM, at=LONG_AGO, opened_at=LONG_AGO)
    here = desk(world)
    assert here.hears(old.code, "60 g") == (
        f"ask: Marl cutting compound {old.code[:4]} is past 28 July: "
        "opened 29 January + 180 days, given by this shop."
    )
    assert here.hears("YES") == f"recorded: Marl cutting compound {old.code[:4]}: took 60 g, 90 g left."
    assert Movement.objects.get(kind="use").facts["answered"] == ["past_estimate"]


def test_a_maker_given_open_life_stops_where_an_estimate_asks() -> None:
    world = larkmoor()
    old = bottle(world, tidewall(world), 30 * ML, at=LONG_AGO, opened_at=LONG_AGO)
    assert desk(world).hears(old.code, "10 ml").startswith("stop: Tidewall coating")


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


def test_more_than_the_book_holds_asks_and_yes_counts_and_uses_at_once() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 90 * GRAM, opened_at=NOON - timedelta(days=1))
    here = desk(world)
    assert here.hears(compound.code, "120 g") == (
        f"ask: {compound.code[:4]} is booked at 90 g. You said 120 g."
    )
    assert kinds(here.say("YES")) == ["count", "use"]
    assert content(compound) == 0


def test_no_writes_nothing() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 90 * GRAM)
    here = desk(world)
    before = Head.objects.get().seq
    assert here.hears(compound.code, "120 g", "NO") == "tell: Nothing was recorded."
    assert (Head.objects.get().seq, content(compound)) == (before, 90 * GRAM)


def test_another_amount_after_the_question_takes_its_place() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 90 * GRAM, opened_at=NOON - timedelta(days=1))
    here = desk(world)
    here.hears(compound.code, "120 g")
    assert here.hears("20 g") == f"recorded: Marl cutting compound {compound.code[:4]}: took 20 g, 70 g left."


def test_two_stations_cannot_take_the_same_millilitre() -> None:
    world = larkmoor()
    coat = bottle(world, tidewall(world), 30 * ML, opened_at=NOON - timedelta(days=1))
    tomas, ines = desk(world), desk(world, world.ines, name="Store screen")
    assert tomas.hears(coat.code, "30 ml").startswith("recorded: ")
    assert ines.hears(coat.code, "10 ml") == f"ask: {coat.code[:4]} is booked at 0 ml. You said 10 ml."


def test_what_an_earlier_job_is_booked_to_get_is_asked_for_by_name() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    only = bottle(world, coat, 30 * ML)
    need(step(job(world)), coat, 25 * ML)
    here = desk(world)
    assert here.hears(only.code, "10 ml") == (
        f"ask: Tidewall coating {only.code[:4]} is wanted by Grey estate: 5 ml would be missing there."
    )
    assert kinds(here.say("YES")) == ["open", "use"]


def test_what_leaves_enough_for_the_booked_job_is_not_asked() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    only = bottle(world, coat, 30 * ML)
    need(step(job(world)), coat, 20 * ML)
    assert desk(world).hears(only.code, "10 ml").startswith("recorded: ")


def test_a_coating_from_a_second_lot_is_asked_on_one_step() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first = bottle(world, coat, 30 * ML, lot="A")
    second = bottle(world, coat, 30 * ML, lot="B")
    car = job(world, NOON)
    need(step(car), coat, 40 * ML)
    here = desk(world)
    here.hears(car.code, first.code, "30 ml")
    assert here.hears(second.code) == "ask: This step has Tidewall coating from another lot on it already."


def test_a_missing_data_sheet_asks_once_a_step_and_who_answered_is_kept() -> None:
    world = larkmoor()
    wipe = hollin(world)
    here_is = bottle(world, wipe, 500 * ML)
    car = job(world, NOON)
    need(step(car), wipe, 40 * ML)
    here = desk(world)
    assert here.hears(car.code, here_is.code) == "ask: Hollin panel wipe has no data sheet."
    assert here.hears("YES").startswith("recorded: ")
    assert Override.objects.get().by == world.tomas
    assert here.hears("UNDO", here_is.code).startswith("recorded: ")


def test_an_acid_without_its_sheet_is_stopped_whatever_is_answered() -> None:
    world = larkmoor()
    acid = product(world, "Brack wheel acid", "acid", traced=True)
    here_is = bottle(world, acid, LITRE)
    car = job(world, NOON)
    need(step(car), acid, 40 * ML)
    here = desk(world)
    assert here.hears(car.code, here_is.code) == "stop: Brack wheel acid has no data sheet."
    assert content(here_is) == LITRE


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


def test_a_filled_bottle_without_a_label_asks() -> None:
    world = larkmoor()
    drum, spray = bottle(world, fenmoor(world), 5 * LITRE), spray_bottle(world)
    here = desk(world)
    here.hears(drum.code, "FILL", "1:10", spray.code)
    assert here.hears(spray.code, "100 ml") == (
        f"ask: Fenmoor iron remover {spray.code[:4]} has no label for what is in it now."
    )


def test_a_product_that_the_poster_does_not_list_asks_before_it_moves_there() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    world.bay_1.posters.create(version=1, printed_on=TODAY, snapshot={})
    here = desk(world)
    assert here.hears(compound.code, "MOVE", world.bay_1.code) == (
        "ask: Marl cutting compound is not on the poster of Bay 1. Put it there all the same?"
    )
    assert here.hears("YES") == f"recorded: Moved Marl cutting compound {compound.code[:4]} to Bay 1."
    assert here.hears(compound.code, "MOVE", world.bay_2.code).startswith("recorded: ")


def test_a_scan_before_any_badge_waits_and_runs_when_the_badge_comes() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = Desk(Station.objects.create(shop=world.shop, name="Bay screen"))
    assert here.hears(compound.code) == "ask: This scan waits: who are you?"
    assert here.hears("60 g") == "ask: 2 scans wait: who are you?"
    spoken = here.say(world.tomas.code)
    assert spoken["says"] == f"Marl cutting compound {compound.code[:4]}: took 60 g, 90 g left."
    assert Movement.objects.get(kind="use").person == world.tomas


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


def test_an_unknown_number_is_set_aside_and_blocks_nothing() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    assert here.hears("4006381333931") == (
        "unknown: No product here has the number 4006381333931. It is set aside."
    )
    assert Heard.objects.get(set_aside=True).line == "4006381333931"
    assert here.hears(compound.code, "60 g").startswith("recorded: ")


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


def test_a_scan_onto_a_car_takes_as_few_statements_in_a_long_ledger_as_in_a_short_one() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car = job(world, NOON)
    for hour in (0, 2):
        need(step(car, after_hours=hour), coat, 10 * ML)
    bottles = [bottle(world, coat, 30 * ML, lot="A") for _ in range(2)]
    here = desk(world)
    here.say(car.code)
    short = statements(here, bottles[0].code)
    for _ in range(40):
        bottle(world, coat, 30 * ML, place=world.bay_2)
    fill_ledger(here, bottles[0].code, 1000)
    assert (short, statements(here, bottles[1].code)) == (19, 19)


def statements(here: Desk, line: str) -> int:
    """Return how many statements one line takes, the transaction's own apart."""
    from django.db import connection
    from django.test.utils import CaptureQueriesContext

    with CaptureQueriesContext(connection) as captured:
        here.say(line)
    control = ("SAVEPOINT", "RELEASE", "BEGIN", "COMMIT")
    return sum(not query["sql"].startswith(control) for query in captured.captured_queries)


def fill_ledger(here: Desk, code: str, entries: int) -> None:
    """Write so many entries about one bottle."""
    from inventory.stock import ledger
    from inventory.stock.rules.acts import Act

    later = NOON + timedelta(hours=2)
    acts = [Act("count", later, target=code, amount=29 * ML) for _ in range(entries)]
    ledger.record(here.station.shop, acts, by=None, recorded_at=later)


def test_a_revoked_station_keeps_what_it_recorded() -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    here = desk(world)
    here.hears(compound.code, "60 g")
    actions.revoke(here.station, at=NOON)
    assert Movement.objects.filter(kind="use").count() == 1


def test_a_kit_is_one_code_and_several_bottles() -> None:
    world = larkmoor()
    coat, primer = tidewall(world), product(world, "Tidewall primer", "coating", dated=False)
    kit = pack(coat, 30 * ML, gtin="04006381333931")
    kit.parts.create(product=primer, amount=10 * ML)
    here = desk(world)
    said = here.hears("4006381333931", "2", "K-1", "none", world.store.code)
    assert said == (
        "recorded: Received 2 bottles of Tidewall coating and 2 bottles of Tidewall primer, lot K-1, into Store."
    )
    assert len(here.heard[-1]["labels"]) == 4
