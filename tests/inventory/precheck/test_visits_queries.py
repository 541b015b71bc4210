"""What earlier visits left on a car, and what other cars in the bay give to its paint."""

import pytest

from inventory.models import Job, Profile
from tests import world as w
from tests.inventory.precheck.cars import DAY, coating_job, dressing, facts, visit, wax
from tests.world import NOON

pytestmark = pytest.mark.django_db


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


# The bay


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
