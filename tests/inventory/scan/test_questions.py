"""What a station asks first, and what it does after a yes or a no."""

from datetime import timedelta

import pytest

from inventory.codes import pair
from inventory.models import Head, Job, Movement, Override, Step
from inventory.stock.rules.acts import Act
from tests.inventory.scan.desk import content, desk, kinds
from tests.world import (
    GRAM,
    LITRE,
    ML,
    NOON,
    TODAY,
    World,
    bottle,
    fenmoor,
    hollin,
    job,
    larkmoor,
    marl,
    need,
    product,
    record,
    spray_bottle,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db
LONG_AGO = NOON - timedelta(days=300)


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


def test_a_missing_data_sheet_asks_once_a_job_says_who_attaches_it_and_who_answered_is_kept() -> None:
    world = larkmoor()
    wipe = hollin(world)
    here_is = bottle(world, wipe, 500 * ML)
    car = job(world, NOON)
    for hour in (0, 2):
        need(step(car, after_hours=hour), wipe, 40 * ML)
    here = desk(world)
    here.say(car.code)
    spoken = here.say(here_is.code)
    assert spoken["says"] == "Hollin panel wipe has no data sheet."
    assert spoken["next"] == (
        "Attach the maker's sheet and type its date; until then its own label comes first. "
        "Ines attaches it on the product's page."
    )
    assert here.hears("YES").startswith("recorded: ")
    assert Override.objects.get().by == world.tomas
    assert here.hears("UNDO", here_is.code).startswith("recorded: ")
    # The next step takes it, too: the bottle, its label and the word on it are the same.
    assert here.hears(here_is.code).startswith("recorded: ")
    assert Override.objects.count() == 1


def test_a_word_on_one_product_s_sheet_is_none_on_another_s_nor_on_another_job_s() -> None:
    world = larkmoor()
    wipe, glass = hollin(world), product(world, "Sallow glass cleaner", "glass")
    full, other = bottle(world, wipe, 500 * ML), bottle(world, glass, 500 * ML)
    car, next_car = job(world, NOON), job(world, NOON)
    for each in (car, next_car):
        need(step(each), wipe, 40 * ML)
    need(step(car), glass, 40 * ML)
    here = desk(world)
    here.hears(car.code, full.code, "YES")

    assert here.hears(other.code) == "ask: Sallow glass cleaner has no data sheet."
    here.hears("NO")
    assert here.hears(next_car.code, full.code) == "ask: Hollin panel wipe has no data sheet."


def test_an_acid_without_its_sheet_is_stopped_whatever_is_answered() -> None:
    world = larkmoor()
    acid = product(world, "Brack wheel acid", "acid", traced=True)
    here_is = bottle(world, acid, LITRE)
    car = job(world, NOON)
    need(step(car), acid, 40 * ML)
    here = desk(world)
    assert here.hears(car.code, here_is.code) == "stop: Brack wheel acid has no data sheet."
    assert content(here_is) == LITRE


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


def test_a_towel_needs_no_sheet_and_so_no_place_on_a_poster() -> None:
    world = larkmoor()
    towels = bottle(
        world, product(world, "Dunnock towel", "towel", dimension="pieces", needs_sheet=False), 50
    )
    world.bay_1.posters.create(version=1, printed_on=TODAY, snapshot={})
    here = desk(world)
    assert here.hears(towels.code, "MOVE", world.bay_1.code).startswith("recorded: Moved Dunnock towel")


def test_what_the_check_was_answered_once_is_not_asked_again_behind_another_question() -> None:
    world = larkmoor()
    wipe = hollin(world)
    can = bottle(world, wipe, 500 * ML)
    car = job(world, NOON)
    need(step(car), wipe, 100 * ML)
    here = desk(world)
    here.hears(car.code, can.code, "YES", "UNDO")
    assert here.hears(can.code, "600 ml") == f"ask: {can.code[:4]} is booked at 0.5 l. You said 0.6 l."
    assert here.hears("YES") == (
        f"recorded: Hollin panel wipe {can.code[:4]}: took 0.6 l instead of 100 ml, it is empty."
    )


def test_what_stops_a_later_stage_is_told_at_the_wash_and_stops_at_its_own() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    held = bottle(world, coat, 30 * ML, place=world.bay_1)
    record(world, Act("quarantine", NOON, target=held.code, facts={"reason": "gelled"}))
    car = job(world, NOON)
    wash = step(car, stage="wash", bay=world.bay_1)
    need(step(car, stage="coat", after_hours=20, bay=world.bay_1), coat, 10 * ML)
    here = desk(world)
    assert here.hears(car.code) == (
        f"tell: On Grey estate: wash, Bay 1. Before a later stage: {coat} {pair(held.code)} is held: gelled."
    )
    wash.signed_at, wash.signed_by = NOON, world.tomas
    wash.save()
    assert (
        here.hears(car.code)
        == f"stop: On Grey estate: coat, Bay 1. {coat} {pair(held.code)} is held: gelled."
    )


def rinsed_between(world: World) -> tuple[Job, Step]:
    car = job(world, NOON)
    step(car, "Wheel acid")
    rinse = step(car, "Rinse wheels", after_hours=1)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)
    return car, rinse


def test_rinse_with_a_car_in_hand_signs_its_rinse_and_an_undo_takes_the_signature_back() -> None:
    world = larkmoor()
    car, rinse = rinsed_between(world)
    here = desk(world)

    assert here.hears(car.code, "RINSE") == (
        "recorded: Signed Rinse wheels on Grey estate: rinsed to a clear drain."
    )
    rinse.refresh_from_db()
    assert rinse.signed_by == world.tomas
    assert here.hears("UNDO").startswith("recorded: ")
    rinse.refresh_from_db()
    assert rinse.signed_at is None


def test_rinse_with_a_refillable_bottle_in_hand_means_the_bottle() -> None:
    world = larkmoor()
    car, rinse = rinsed_between(world)
    here = desk(world)

    said = here.hears(car.code, spray_bottle(world).code, "RINSE")

    assert "Rinse wheels" not in said
    rinse.refresh_from_db()
    assert rinse.signed_at is None
