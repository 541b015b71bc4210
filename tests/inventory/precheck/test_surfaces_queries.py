"""What the check is told of a car's surfaces: panels, arrivals, earlier visits, other cars in the bay."""

from datetime import date, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Arrival, Job, Panel, Place, Product, Profile, Step, Vehicle
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.surfaces import load
from inventory.precheck.questions.topics import SurfaceFacts
from inventory.trade.acts import Surface
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
DAY = timedelta(days=1)
TOMORROW = NOON + DAY


def facts(*jobs: Job) -> SurfaceFacts:
    """Return what the check is told of the first of these jobs, all of them under check."""
    return load(Loading(jobs[0].shop, jobs))[jobs[0].pk]


def coating_job(world: w.World, coating: Product, vehicle: Vehicle | None = None, **facts_: object) -> Job:
    made = w.job(world, TOMORROW, vehicle=vehicle, **facts_)  # type: ignore[arg-type]
    w.need(w.step(made, "Coating", after_hours=2, bay=world.bay_2), coating, 20 * ML)
    return made


def visit(world: w.World, vehicle: Vehicle, *steps: tuple[str, Product | str], days_ago: int = 30) -> Job:
    """Book and close a visit of a car so many days ago, every step signed an hour after its start."""
    made = w.job(world, NOON - days_ago * DAY, vehicle=vehicle)
    for number, (name, takes) in enumerate(steps):
        step = w.step(made, name, after_hours=number)
        w.need(step, takes, 20 * ML)
        Step.objects.filter(pk=step.pk).update(signed_at=step.ends_at, signed_by=world.tomas)
    Job.objects.filter(pk=made.pk).update(state=Job.State.CLOSED)
    return made


def wax(world: w.World) -> Product:
    made = w.product(world, "Sallow paste wax", "wax")
    Profile.objects.create(product=made, family="wax")
    return made


# The car


def test_a_car_without_panels_is_one_clear_coated_surface_and_nothing_else(shop: w.World) -> None:
    vehicle = w.car(shop)
    vehicle.surfaces = ["matte wrap on the roof"]
    vehicle.save()

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert found.surfaces == (Surface("paint", "clear_coat"),)
    assert not found.described


def test_panels_stand_as_they_were_typed(shop: w.World) -> None:
    vehicle = w.car(shop)
    bonnet = Panel.objects.create(
        vehicle=vehicle,
        position=1,
        name="bonnet",
        surface="fresh_refinish",
        since_on=date(2026, 11, 20),
        baked=True,
    )

    (found,) = facts(coating_job(shop, w.tidewall(shop), vehicle)).surfaces

    assert found == Surface("bonnet", "fresh_refinish", f"panel{bonnet.pk}", date(2026, 11, 20), baked=True)


def test_what_a_car_arrives_with_lies_on_all_of_it_and_a_panels_own_on_that_panel(shop: w.World) -> None:
    vehicle = w.car(shop)
    _, roof = (
        Panel.objects.create(vehicle=vehicle, position=n, name=name)
        for n, name in enumerate(("bonnet", "roof"))
    )
    job = coating_job(shop, w.tidewall(shop), vehicle)
    Arrival.objects.create(job=job, residue="wax")
    Arrival.objects.create(job=job, panel=roof, residue="sealant", since_at=NOON)

    found = facts(job)

    assert [(one.name, one.arrives) for one in found.surfaces] == [
        ("bonnet", {"wax": None}),
        ("roof", {"wax": None, "sealant": NOON}),
    ]
    assert found.described


def test_an_old_coating_that_somebody_knows_brings_its_own_waits(shop: w.World) -> None:
    coating = w.tidewall(shop)
    Profile.objects.create(product=coating, keep_dry_h=12)
    job = coating_job(shop, coating)
    Arrival.objects.create(job=job, residue="coating", product=coating, since_at=NOON)

    (found,) = facts(job).surfaces

    assert (found.coating, found.coated_at) == ("Tidewall coating", NOON)
    assert found.coating_profile is not None
    assert found.coating_profile.waits.keep_dry_h == 12


def test_an_old_coating_that_nobody_knows_has_no_name(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    Arrival.objects.create(job=job, residue="coating")

    (found,) = facts(job).surfaces

    assert (found.coating, found.coated_at, found.coating_profile) == ("an old coating", None, None)


# Earlier visits


def test_wax_of_an_earlier_visit_is_what_the_car_arrives_with(shop: w.World) -> None:
    vehicle = w.car(shop)
    before = visit(shop, vehicle, ("Wax", wax(shop)))

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert found.surfaces[0].arrives == {"wax": before.steps.get().ends_at}
    assert found.described


def test_wax_that_the_same_visit_polished_off_again_is_gone(shop: w.World) -> None:
    vehicle = w.car(shop)
    visit(shop, vehicle, ("Wax", wax(shop)), ("Polish", "polish"))

    assert facts(coating_job(shop, w.tidewall(shop), vehicle)).surfaces[0].arrives == {}


def test_a_coating_of_an_earlier_visit_is_named_with_when_it_was_done(shop: w.World) -> None:
    vehicle, coating = w.car(shop), w.tidewall(shop)
    before = visit(shop, vehicle, ("Coating", coating))

    (found,) = facts(coating_job(shop, coating, vehicle)).surfaces

    assert (found.coating, found.coated_at) == ("Tidewall coating", before.steps.get().ends_at)


def test_a_coating_that_a_later_visit_stripped_is_gone(shop: w.World) -> None:
    vehicle, coating = w.car(shop), w.tidewall(shop)
    visit(shop, vehicle, ("Coating", coating), days_ago=60)
    stripped = visit(shop, vehicle, ("Correction", "compound"))
    stripped.steps.update(strips_coating=True)

    assert facts(coating_job(shop, coating, vehicle)).surfaces[0].coating == ""


@pytest.mark.parametrize(
    ("change", "because"),
    [
        ({"state": Job.State.CANCELLED}, "a cancelled visit left nothing"),
        ({"starts_at": NOON + 9 * DAY, "ends_at": NOON + 10 * DAY}, "nor one that comes after this job"),
    ],
)
def test_only_closed_visits_before_this_job_left_something(shop: w.World, change, because: str) -> None:
    vehicle = w.car(shop)
    before = visit(shop, vehicle, ("Wax", wax(shop)))
    Job.objects.filter(pk=before.pk).update(**change)

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert (found.surfaces[0].arrives, found.described) == ({}, False), because


def test_a_wax_that_was_planned_and_not_done_left_nothing(shop: w.World) -> None:
    vehicle = w.car(shop)
    before = visit(shop, vehicle, ("Wax", wax(shop)))
    before.steps.get().needs.update(outcome="not_done")

    assert facts(coating_job(shop, w.tidewall(shop), vehicle)).surfaces[0].arrives == {}


def test_another_car_has_its_own_past(shop: w.World) -> None:
    visit(shop, w.car(shop, "Red van"), ("Wax", wax(shop)))

    assert facts(coating_job(shop, w.tidewall(shop))).surfaces[0].arrives == {}


def test_a_tyre_dressing_of_an_earlier_visit_is_not_on_the_paint_today(shop: w.World) -> None:
    vehicle = w.car(shop)
    visit(shop, vehicle, ("Tyres", "dressing"))

    assert facts(coating_job(shop, w.tidewall(shop), vehicle)).surfaces[0].arrives == {}


# The work


def test_a_step_acts_with_what_it_takes_and_carries_its_own_word(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    step = w.step(job, "Strip", stage="correct")
    Step.objects.filter(pk=step.pk).update(strips_coating=True, spot=True, touches=["paint"])
    compound = w.marl(shop)
    w.need(step, compound, 100)
    w.need(step, "polish", 80)

    first, second = facts(job).acts

    assert (first.product, first.name, first.kind) == (compound.code, "Marl cutting compound", "compound")
    assert (second.product, second.name, second.kind) == ("polish", "polish", "polish")
    assert (first.strips_coating, first.spot, first.touches) == (True, True, frozenset({"paint"}))


def test_a_further_layer_carries_its_number(shop: w.World) -> None:
    coating = w.tidewall(shop)
    job = coating_job(shop, coating)
    w.need(w.step(job, "Second layer", after_hours=4), coating, 20 * ML)

    assert [one.layer for one in facts(job).acts] == [1, 2]


def test_what_a_signed_step_did_ends_when_it_was_signed(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    late = TOMORROW + timedelta(hours=6)
    job.steps.update(signed_at=late, signed_by=shop.tomas)

    assert facts(job).acts[0].ends_at == late


def test_a_rinse_that_takes_nothing_brings_water_all_the_same(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    rinse = w.step(job, "Rinse", after_hours=5)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)

    last = facts(job).acts[-1]

    assert (last.step, last.name, last.has("wet")) == (rinse.code, "rinse water", True)
    assert last.profile.lifts == frozenset()


def test_groups_that_an_owner_confirmed_say_what_a_product_is(shop: w.World) -> None:
    cleaner = w.product(shop, "Brack wheel cleaner", "wheel")
    rows = Profile.objects.create(
        product=cleaner,
        family="neutral",
        groups=["1"],
        groups_confirmed_on=NOON.date(),
        groups_confirmed_by="Ines",
    )
    job = w.job(shop, TOMORROW)
    w.need(w.step(job, "Wheels"), cleaner, 100 * ML)

    assert facts(job).acts[0].has("acid")

    rows.groups = []
    rows.save()
    assert not facts(job).acts[0].has("acid")


# The bay


def dressing(
    world: w.World, at_hours: float, bay: Place, *, of: Product | str = "dressing", days: int = 0
) -> Job:
    """Book another car whose tyres are dressed so many hours before the coat of `coating_job`."""
    made = w.job(world, TOMORROW + days * DAY, vehicle=w.car(world, "Red van"))
    w.need(w.step(made, "Tyres", after_hours=2 - at_hours, hours=0.5, bay=bay), of, 20 * ML)
    return made


def beside(job: Job) -> list[tuple[str, frozenset[str]]]:
    own = set(job.steps.values_list("code", flat=True))
    return [(one.name, one.profile.leaves) for one in facts(job).acts if one.step not in own]


def test_silicone_of_another_car_in_the_coats_bay_that_day_is_on_this_paint(shop: w.World) -> None:
    dressing(shop, 1, shop.bay_2)

    assert beside(coating_job(shop, w.tidewall(shop))) == [("dressing on Red van", frozenset({"silicone"}))]


@pytest.mark.parametrize(
    ("facts_", "because"),
    [
        ({"at_hours": -1}, "what comes after the coat does not land under it"),
        ({"at_hours": 1, "days": -1}, "yesterday's has settled"),
    ],
)
def test_silicone_that_is_not_before_the_coat_on_its_day_is_left_out(
    shop: w.World, facts_, because: str
) -> None:
    dressing(shop, bay=shop.bay_2, **facts_)

    assert beside(coating_job(shop, w.tidewall(shop))) == [], because


def test_silicone_in_another_bay_is_left_out(shop: w.World) -> None:
    dressing(shop, 1, shop.bay_1)

    assert beside(coating_job(shop, w.tidewall(shop))) == []


def test_a_dressing_of_water_gives_nothing_to_the_air(shop: w.World) -> None:
    water = w.product(shop, "Quell rubber dressing", "dressing")
    Profile.objects.create(product=water, family="water")
    dressing(shop, 1, shop.bay_2, of=water)

    assert beside(coating_job(shop, w.tidewall(shop))) == []


def test_anything_that_the_shop_says_leaves_silicone_counts_like_a_dressing(shop: w.World) -> None:
    spray = w.product(shop, "Ossen belt spray", "other")
    Profile.objects.create(product=spray, leaves=["silicone"])
    dressing(shop, 1, shop.bay_2, of=spray)

    assert [name for name, _ in beside(coating_job(shop, w.tidewall(shop)))] == [
        "Ossen belt spray on Red van"
    ]


def test_a_cancelled_car_dresses_nothing(shop: w.World) -> None:
    other = dressing(shop, 1, shop.bay_2)
    Job.objects.filter(pk=other.pk).update(state=Job.State.CANCELLED)

    assert beside(coating_job(shop, w.tidewall(shop))) == []


# How much is asked


def test_as_many_queries_for_fifteen_steps_of_ten_cars_as_for_three_of_one(shop: w.World) -> None:
    def asked(*jobs: Job) -> int:
        with CaptureQueriesContext(connection) as queries:
            load(Loading(shop.shop, jobs))
        return len(queries)

    def loaded(steps: int, vehicle: Vehicle) -> Job:
        visit(shop, vehicle, ("Wax", wax_), ("Coating", coating))
        Panel.objects.create(vehicle=vehicle, position=1, name="bonnet")
        made = w.job(shop, TOMORROW, vehicle=vehicle)
        for number in range(steps):
            w.need(w.step(made, f"Step {number}", after_hours=number, bay=shop.bay_2), coating, 20 * ML)
        Arrival.objects.create(job=made, residue="coating", product=coating)
        return made

    coating, wax_ = w.tidewall(shop), wax(shop)
    dressing(shop, 1, shop.bay_2)
    small = loaded(3, w.car(shop))
    few = asked(small)
    many = asked(*(loaded(15, w.car(shop, f"Car {n}")) for n in range(10)))

    assert many == few
