"""What the check is told of a car's surfaces: panels, arrivals, earlier visits, other cars in the bay."""

from datetime import date, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Arrival, Job, Panel, Profile, Step, Vehicle
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.surfaces import load
from inventory.trade.acts import Surface
from tests import world as w
from tests.inventory.precheck.cars import TOMORROW, coating_job, dressing, facts, visit, wax
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


# The car


def test_a_car_of_which_nothing_is_said_is_one_clear_coated_surface(shop: w.World) -> None:
    found = facts(coating_job(shop, w.tidewall(shop)))

    assert found.surfaces == (Surface("paint", "clear_coat"),)
    assert (found.described, found.unread) == (False, ())


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
