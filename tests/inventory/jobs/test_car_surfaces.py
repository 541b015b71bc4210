"""What is special about a car: ticked when it is booked or edited, and held against what touches it."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Job, Panel, Profile, Vehicle
from inventory.precheck import queries as precheck
from tests import world as w
from tests.inventory.jobs.painted import text
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db

BOOKED = {
    "key": "k1", "starts_at": "2026-11-27T08:30", "title": "Polish", "name": "grey estate", "size": "mid",
}  # fmt: skip


def findings(job: Job) -> list[tuple[str, str]]:
    """Return grade and sentence of what the check finds about the surfaces of a job's car."""
    fresh = Job.objects.select_related("vehicle", "shop").get(pk=job.pk)
    found = precheck.check(fresh, NOON).check.findings
    return [(one.grade, one.says) for one in found if one.code.startswith(("surface.", "wait."))]


def compounding(world: w.World, *surfaces: str) -> Job:
    """Return a job that takes compound to a car of which this was ticked or written."""
    made = w.job(world)
    Vehicle.objects.filter(pk=made.vehicle_id).update(surfaces=list(surfaces))
    w.need(w.step(made, "Cut"), w.marl(world), 100)
    return made


# The check


def test_compound_on_a_car_of_which_nothing_is_special_is_no_matter_of_surfaces(shop: w.World) -> None:
    assert findings(compounding(shop)) == []


@pytest.mark.parametrize(
    "said", ["wrap_matte", "matte wrap", "matte film"], ids=["ticked", "written", "as the page once proposed"]
)
def test_compound_on_a_matte_wrap_of_the_whole_car_is_a_stop(shop: w.World, said: str) -> None:
    assert findings(compounding(shop, said)) == [
        ("stop", "Cut: Marl cutting compound (abrasive, compound) would harm matte vinyl wrap on the car.")
    ]


def test_words_that_nobody_can_read_are_asked_about(shop: w.World) -> None:
    job = compounding(shop, "satin foil")
    assert findings(job) == [("ask", "Nobody ticked what “satin foil” is.")]

    Panel.objects.create(vehicle=job.vehicle, position=1, name="bonnet", surface="clear_coat")
    assert findings(job) == []


def test_a_fresh_refinish_without_its_day_waits_for_it(shop: w.World) -> None:
    job = w.job(shop)
    Vehicle.objects.update(surfaces=["fresh refinish"])
    w.need(w.step(job, "Coating", stage="coat"), w.tidewall(shop), 20 * ML)

    assert ("stop", "Nobody said when the car was resprayed or covered.") in findings(job)


def test_wheels_that_are_ticked_are_not_asked_about(shop: w.World) -> None:
    job = w.job(shop)
    acid = w.product(shop, "Brack wheel cleaner", "wheel")
    Profile.objects.create(product=acid, family="acid")
    w.need(w.step(job, "Wheels"), acid, 100 * ML)

    assert findings(job) == [
        (
            "ask",
            "Wheels: is anything of the wheels anodised aluminium or bare or polished aluminium? Brack wheel "
            "cleaner (acid) would harm it.",
        )
    ]
    Vehicle.objects.update(surfaces=["lacquered_wheel"])
    assert findings(job) == []
    Vehicle.objects.update(surfaces=["aluminium"])
    assert findings(job) == [
        ("stop", "Wheels: Brack wheel cleaner (acid) would harm bare or polished aluminium on the car.")
    ]


@pytest.mark.parametrize("areas", [["wheels"], ["metal"], None], ids=["wheels", "metal", "nothing ticked"])
def test_rims_of_bare_metal_are_reached_by_whatever_is_for_wheels(
    shop: w.World, areas: list[str] | None
) -> None:
    job = w.job(shop)
    acid = w.product(shop, "Brack wheel cleaner", "wheel")
    Profile.objects.create(product=acid, family="acid")
    step = w.step(job, "Wheels")
    step.touches = areas
    step.save()
    w.need(step, acid, 100 * ML)
    Panel.objects.create(vehicle=job.vehicle, position=1, name="rims", surface="aluminium")

    assert findings(job) == [
        ("stop", "Wheels: Brack wheel cleaner (acid) would harm bare or polished aluminium on the rims.")
    ]


@pytest.mark.parametrize(("name", "surface"), [("seats", "leather"), ("roof", "top_fabric")])
@pytest.mark.parametrize(
    ("kind", "touches"), [("cleaner", ["interior"]), ("interior", None), ("other", None)]
)
def test_bleach_meets_listed_leather_and_a_listed_soft_top(
    shop: w.World, name: str, surface: str, kind: str, touches: list[str] | None
) -> None:
    job = w.job(shop)
    mould = w.product(shop, "Brack bleach cleaner", kind)
    Profile.objects.create(product=mould, touches=touches, traits=["wet", "bleach"])
    w.need(w.step(job, "Mould"), mould, 100 * ML)
    Panel.objects.create(vehicle=job.vehicle, position=1, name=name, surface=surface)

    assert any(grade == "stop" and f"on the {name}" in says for grade, says in findings(job))


# The pages


def test_a_new_car_is_booked_with_what_is_special_about_it(ines: Client, shop: w.World) -> None:
    page = ines.get(reverse("jobs:book"))
    assert "What is special about the new car" in text(page)
    assert "matte vinyl wrap" in text(page)

    ines.post(reverse("jobs:book"), {**BOOKED, "surfaces": ["wrap_matte", "leather"]})

    assert Vehicle.objects.get(name="grey estate").surfaces == ["wrap_matte", "leather"]


def test_a_fresh_refinish_that_is_ticked_leads_to_where_its_day_is_typed(ines: Client, shop: w.World) -> None:
    says = "Type the day of the fresh refinish under Paint and panels: the waits are counted from it."

    page = ines.post(reverse("jobs:book"), {**BOOKED, "surfaces": ["fresh_refinish", "leather"]}, follow=True)
    assert says in text(page)
    edit = ines.get(reverse("jobs:edit", args=[Job.objects.get().code])).content.decode()
    assert reverse("jobs:panels", args=[Job.objects.get().code]) in edit

    other = {**BOOKED, "key": "k2", "surfaces": ["leather"]}
    assert says not in text(ines.post(reverse("jobs:book"), other, follow=True))


def test_what_is_special_about_a_known_car_is_not_said_while_booking_it(ines: Client, shop: w.World) -> None:
    known = w.car(shop)
    page = ines.post(reverse("jobs:book"), {**BOOKED, "vehicle": known.pk, "surfaces": ["leather"]})

    says = "This car is known. Untick these; what is special about it is said where its job is edited."
    assert says in text(page)
    assert not Job.objects.exists()


def test_a_surface_of_no_table_is_refused(ines: Client, shop: w.World) -> None:
    page = ines.post(reverse("jobs:book"), {**BOOKED, "surfaces": ["satin foil"]})

    assert "satin foil is not one of the available choices" in text(page)


def test_old_words_stay_to_be_read_until_somebody_unticks_them(ines: Client, shop: w.World) -> None:
    job = w.job(shop)
    Vehicle.objects.update(surfaces=["satin foil", "soft top", "leather"])
    address = reverse("jobs:edit", args=[job.code])
    given = {"title": "Two layers", "car-name": "Grey estate", "car-size": "mid"}

    page = ines.get(address).content.decode()
    assert "As it was written before" in page
    assert "“satin foil”: names no surface" in page
    assert "“soft top”" in page

    ines.post(address, {**given, "car-surfaces": ["wrap_gloss", "leather", "soft top"]})
    assert Vehicle.objects.get().surfaces == ["wrap_gloss", "leather", "soft top"]
    assert "gloss vinyl wrap, leather, “soft top”" in text(ines.get(reverse("jobs:job", args=[job.code])))
