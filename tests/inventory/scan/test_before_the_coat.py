"""A coating scanned onto a car whose earlier stages nobody signed is asked about, once a job."""

from datetime import timedelta

import pytest

from inventory.models import Job, Override, Product, Step
from inventory.precheck import queries
from inventory.scan import queries as scan
from tests.inventory.scan.desk import desk
from tests.inventory.scan.test_statements import statements
from tests.inventory.scan.unplanned import opened, plain, shop
from tests.world import ML, NOON, World, job, need, step

pytestmark = pytest.mark.django_db
STAGES = ("wash", "decontaminate", "correct", "coat")
ASKED = "ask: Wash, decontaminate and correct are not signed on Grey estate. Are they done?"


def booked(world: World, kind: str = "coating", *, signed: int = 0) -> tuple[Job, Product, str]:
    """Return a job of four stages of which some are signed, what the last one plans, and a bottle of it."""
    car = job(world, NOON)
    steps = [step(car, stage.capitalize(), stage=stage, bay=world.bay_1, after_hours=at)
             for at, stage in enumerate(STAGES)]  # fmt: skip
    made = plain(world, "Tidewall", kind)
    need(steps[-1], made, 20 * ML)
    Step.objects.filter(pk__in=[one.pk for one in steps[:signed]]).update(
        signed_at=NOON, signed_by=world.tomas
    )
    return car, made, opened(world, made)


def test_a_coating_onto_a_car_that_nobody_washed_is_asked_about_and_a_yes_is_kept_with_the_job() -> None:
    world = shop()
    car, _, full = booked(world)
    here = desk(world)
    here.say(car.code)

    spoken = here.say(full)

    assert f"{spoken['grade']}: {spoken['says']}" == ASKED
    assert spoken["next"].startswith("YES if so; SIGN says it for everybody. If not, do that first")
    assert here.hears("YES").startswith("recorded: Tidewall ")
    kept = Override.objects.get()
    assert (kept.code, kept.job, kept.by) == ("order.not_signed", car, world.tomas)
    assert here.hears("UNDO", full).startswith("recorded: Tidewall ")
    # A second coating of this car, and after one more signature: it was said of the job.
    car.steps.filter(stage="wash").update(signed_at=NOON, signed_by=world.tomas)
    other = plain(world, "Second coating", "coating")
    need(car.steps.get(stage="coat"), other, 10 * ML)
    assert here.hears(opened(world, other)).startswith("recorded: Second coating ")
    assert Override.objects.count() == 1


def test_no_takes_nothing_and_is_asked_again() -> None:
    world = shop()
    car, _, full = booked(world)
    here = desk(world)
    assert here.hears(car.code, full) == ASKED
    assert here.hears("NO") == "tell: Nothing was recorded."
    assert here.hears(full) == ASKED


@pytest.mark.parametrize(
    ("kind", "signed", "says", "because"),
    [
        ("coating", 2, "ask: Correct is not signed on Grey estate. Is it done?", "one stage is open"),
        ("coating", 3, "recorded: Tidewall ", "all before it is signed"),
        ("topper", 0, "recorded: Tidewall ", "it goes over what is there"),
        ("shampoo", 0, "recorded: Tidewall ", "it wants nothing absent"),
    ],
)
def test_what_is_asked_before_what_wants_bare_paint(kind: str, signed: int, says: str, because: str) -> None:
    world = shop()
    car, _, full = booked(world, kind, signed=signed)
    assert desk(world).hears(car.code, full).startswith(says), because


def test_a_rinse_that_waits_for_its_drain_is_no_open_stage() -> None:
    world = shop()
    car, _, full = booked(world, signed=3)
    rinse = step(car, "Rinse", stage="wash", bay=world.bay_1)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)
    assert desk(world).hears(car.code, full).startswith("recorded: ")


def test_what_comes_after_the_coating_is_none_of_its_business() -> None:
    world = shop()
    car, _, full = booked(world, signed=3)
    step(car, "Polish the lamps", stage="correct", bay=world.bay_1, after_hours=5)
    assert desk(world).hears(car.code, full).startswith("recorded: ")


def test_a_coating_that_nobody_planned_is_asked_about_as_well() -> None:
    world = shop()
    car, _, _ = booked(world)
    other = plain(world, "Second coating", "coating")
    assert desk(world).hears(car.code, opened(world, other), "20 ml") == ASKED


def test_the_check_of_a_planned_job_says_nothing_of_it() -> None:
    world = shop()
    car, _, _ = booked(world)
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=car.pk)
    for at in (NOON - timedelta(days=3), NOON):
        assert [
            one for one in queries.check(fresh, at).check.findings if one.code == "order.not_signed"
        ] == []


def test_a_coating_with_all_signed_costs_no_statement_for_the_question(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    world = shop()
    car, _, full = booked(world, signed=3)
    here = desk(world)
    here.say(car.code)
    asked = statements(here, full)
    here.say("UNDO")
    here.say(car.code)
    monkeypatch.setattr(scan, "unsigned_before", lambda *_: ())
    assert asked == statements(here, full)
