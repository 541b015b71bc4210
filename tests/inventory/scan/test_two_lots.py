"""A coating from a second lot on one step: stopped at the station, at signing and at closing.

Each has a twin in which an owner said why two lots are right, or the product may mix its lots.
"""

from datetime import timedelta

import pytest

from inventory.codes import pair
from inventory.jobs import actions
from inventory.models import Container, Job, Movement, Override, Person, Product, StepNeed
from inventory.precheck.queries import check
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import sign_stage
from tests.inventory.scan.desk import Desk, content, desk, kinds
from tests.world import ML, NOON, World, bottle, job, larkmoor, need, product, record, step, tidewall
from tests.world import car as vehicle

pytestmark = pytest.mark.django_db
LATER = timedelta(hours=1)
ANOTHER_LOT = "stop: This step has Tidewall coating from another lot on it already."


def two_lots(world: World, coat: Product, planned: int = 40) -> tuple[Job, Container, Container]:
    """Book one step that takes more than either of two bottles of different lots holds."""
    first, second = (bottle(world, coat, 30 * ML, lot=lot) for lot in ("A", "B"))
    car = job(world, NOON)
    need(step(car), coat, planned * ML)
    return car, first, second


def override(car: Job, coat: Product, by: Person) -> Override:
    """Keep a word on the check's finding about lots."""
    about = f"{coat.code} {car.steps.get().code}"
    return Override.objects.create(
        job=car, code="two_lots", about=about, grade="stop", says="…", reason="Boot lid only.", by=by,
        given_at=NOON,
    )  # fmt: skip


def begun(world: World, car: Job, first: Container) -> Desk:
    """Put the whole first lot on the car."""
    here = desk(world)
    here.hears(car.code, first.code, "30 ml")
    return here


def test_a_second_lot_is_stopped_on_one_step_and_no_badge_lifts_it() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    here = begun(world, car, first)
    assert here.hears(second.code) == ANOTHER_LOT
    assert "an owner says why two lots are right, on the check page" in here.heard[-1]["next"]
    here.hears("YES")
    assert content(second) == 30 * ML


def test_a_technicians_word_on_the_check_does_not_let_a_second_lot_pass() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    override(car, coat, world.tomas)
    assert begun(world, car, first).hears(second.code) == ANOTHER_LOT


def test_a_second_lot_passes_where_an_owner_said_why() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    override(car, coat, world.ines)
    here = begun(world, car, first)
    assert kinds(here.say(second.code)) == ["open", "use"]
    assert content(second) == 20 * ML


def test_a_second_lot_passes_where_the_product_may_mix_its_lots() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False, mixes_lots=True)
    car, first, second = two_lots(world, coat)
    assert kinds(begun(world, car, first).say(second.code)) == ["open", "use"]


def test_what_a_second_lot_put_on_the_car_already_is_written_down() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    here = begun(world, car, first)
    here.hears(second.code)
    assert here.hears("ALREADY", "10 ml").startswith("recorded: ")
    assert content(second) == 20 * ML


def closing(car: Job, amount: int, left: int | None = None) -> None:
    """Close a job, whose one need nobody had spoken for, or for all but what is `left`."""
    said = actions.Said(StepNeed.objects.get(step__job=car), amount * ML, left=left and left * ML)
    actions.close(car, [said], by=Person.objects.get(name="Tomas"), at=NOON + LATER)


def test_closing_books_no_step_out_of_two_lots_and_writes_nothing() -> None:
    world = larkmoor()
    car, *_ = two_lots(world, tidewall(world, needs_sheet=False))
    with pytest.raises(Refused) as refused:
        closing(car, 40)
    assert refused.value.says.startswith(
        "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest. Give what came of one lot, or"
    )
    assert not Movement.objects.filter(job=car).exists()
    car.refresh_from_db()
    assert car.state == "open"


def test_closing_books_what_one_lot_gives() -> None:
    world = larkmoor()
    car, first, second = two_lots(world, tidewall(world, needs_sheet=False))
    closing(car, 30)
    assert sorted([content(first), content(second)]) == [0, 30 * ML]


def test_closing_books_two_lots_where_an_owner_said_why() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    override(car, coat, world.ines)
    closing(car, 40)
    assert content(first) + content(second) == 20 * ML


def opened_in_the_bay(world: World, coat: Product) -> Job:
    """Book a step in a bay where two open bottles of different lots stand, neither of them enough."""
    coat.traced = False
    coat.save()
    for lot in ("A", "B"):
        bottle(world, coat, 30 * ML, lot=lot, place=world.bay_2, opened_at=NOON)
    car = job(world, NOON)
    need(step(car, bay=world.bay_2), coat, 40 * ML)
    return car


def test_a_signature_posts_no_step_out_of_two_lots() -> None:
    world = larkmoor()
    car = opened_in_the_bay(world, tidewall(world, needs_sheet=False))
    stage = car.steps.get().stage
    with pytest.raises(Refused) as refused:
        sign_stage(car, stage, by=world.tomas, at=NOON)
    assert refused.value.says.startswith("Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest.")
    assert not Movement.objects.filter(job=car).exists()
    assert car.steps.get().signed_at is None
    said = desk(world).hears(car.code, "SIGN")
    assert said.startswith("stop: Tidewall coating: 40 ml needed from one lot")


def test_a_signature_posts_two_lots_where_the_product_may_mix_them() -> None:
    world = larkmoor()
    car = opened_in_the_bay(world, tidewall(world, needs_sheet=False, mixes_lots=True))
    sign_stage(car, car.steps.get().stage, by=world.tomas, at=NOON)
    assert sum(line.amount for line in Movement.objects.filter(job=car)) == 40 * ML


def test_a_step_that_began_with_a_lot_takes_the_rest_from_it_though_another_comes_first() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first, other = bottle(world, coat, 30 * ML, lot="A"), bottle(world, coat, 30 * ML, lot="B")
    car = job(world, NOON)
    need(step(car), coat, 20 * ML)
    begun_with = first if pair(first.code) > pair(other.code) else other
    begin_with = Act(
        "use", NOON, source=begun_with.code, amount=5 * ML, job=car.code, step=car.steps.get().code
    )
    record(world, begin_with)
    closing(car, 15, left=15)
    assert content(begun_with) == 10 * ML


def test_a_second_coating_for_any_coating_is_called_another_coating() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    first = bottle(world, coat, 30 * ML, lot="A")
    coat.pk, coat.code, coat.name, coat._state.adding = None, "sandmere", "Sandmere coating", True
    coat.save()
    second = bottle(world, coat, 30 * ML, lot="B")
    car = job(world, NOON)
    need(step(car), "coating", 40 * ML)
    here = desk(world)
    here.hears(car.code, first.code, "10 ml")
    assert here.hears(second.code) == "stop: This step has another coating on it already."


def test_signing_the_stage_is_no_way_round_the_rule() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    here = begun(world, car, first)
    here.hears("SIGN")
    said = here.hears(car.code, second.code, "10 ml")
    assert (
        said
        == "stop: Grey estate has Tidewall coating from another lot on it already, and that stage is signed."
    )
    assert content(second) == 30 * ML
    assert here.hears("ALREADY", "10 ml").startswith("recorded: ")
    assert content(second) == 20 * ML


def test_after_signing_a_second_lot_passes_where_an_owner_said_why() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car, first, second = two_lots(world, coat)
    override(car, coat, world.ines)
    here = begun(world, car, first)
    here.hears("SIGN")
    here.hears(car.code, second.code, "10 ml")
    assert content(second) == 20 * ML


def test_a_coating_asked_for_by_name_binds_no_need_of_any_coating_beside_it() -> None:
    world = larkmoor()
    coat, other = tidewall(world, needs_sheet=False), product(world, "Sandmere coating", "coating")
    other.needs_sheet = False
    other.save()
    first, second = bottle(world, coat, 30 * ML, lot="A"), bottle(world, other, 30 * ML, lot="S")
    car = job(world, NOON)
    of = step(car)
    need(of, coat, 10 * ML)
    need(of, "coating", 10 * ML)
    here = desk(world)
    here.hears(car.code, first.code, "10 ml")
    assert kinds(here.say(second.code)) == ["open", "use"]
    assert content(second) == 20 * ML


def test_an_owner_has_a_finding_to_override_even_where_the_other_lot_is_booked_for_another_car() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    earlier = job(world, NOON - LATER, vehicle=vehicle(world, "Blue van"))
    need(step(earlier), coat, 30 * ML)
    car, first, second = two_lots(world, coat)
    here = begun(world, car, first)
    here.hears("YES")
    assert here.hears(second.code) == ANOTHER_LOT
    found = [one for one in check(car, NOON).check.findings if one.code == "two_lots"]
    assert [one.about for one in found] == [(coat.code, car.steps.get().code)]
