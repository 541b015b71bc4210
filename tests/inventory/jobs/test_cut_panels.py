"""Which panels a step cuts: chosen on its page, none for all; a service has no panels."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Job, Panel, Service, Step
from inventory.stock import booking
from inventory.templatetags.work import does
from tests import world as w
from tests.inventory.jobs.painted import at, panel, rows, text
from tests.inventory.jobs.test_work import SERVICE_STEP, STEP
from tests.world import NOON

pytestmark = pytest.mark.django_db
SANDING = STEP | {"cut": "sanding"}


@pytest.fixture
def job(shop: w.World) -> Job:
    return w.job(shop)


def new(job: Job) -> str:
    return reverse("jobs:new_step", args=[job.code])


def cut(step: Step) -> list[str]:
    return [one.name for one in step.panels.all()]


def test_another_car_s_panel_cannot_be_chosen(ines: Client, shop: w.World, job: Job) -> None:
    panel(job)
    theirs = panel(w.job(shop, vehicle=w.car(shop, "Red van")), "tailgate")
    page = ines.post(new(job), SANDING | {"panels": [theirs.pk]})
    assert "Select a valid choice." in page.content.decode()
    assert not job.steps.exists()


def test_glass_is_no_paint_and_is_not_offered(ines: Client, job: Job) -> None:
    panel(job, "bonnet")
    glass = panel(job, "windscreen", surface="glass")
    assert "Bonnet" in ines.get(new(job)).content.decode().replace("bonnet", "Bonnet")
    assert "windscreen" not in ines.get(new(job)).content.decode()
    assert "Select a valid choice." in ines.post(new(job), SANDING | {"panels": [glass.pk]}).content.decode()


def test_panels_of_a_step_that_cuts_nothing_are_refused_at_their_field(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    page = ines.post(new(job), STEP | {"panels": [bonnet.pk]}).content.decode()
    assert "This step cuts nothing. Say what it takes off, or untick the panels." in page
    assert '<details class="columns" open>' in page
    assert not job.steps.exists()


def test_a_car_without_panels_is_asked_for_none(ines: Client, job: Job) -> None:
    assert "Cuts only these panels" not in ines.get(new(job)).content.decode()
    ines.post(new(job), SANDING)
    assert cut(job.steps.get()) == []


def test_the_panels_that_are_ticked_are_cut_and_unticked_all_are(ines: Client, job: Job) -> None:
    bonnet, roof, door = (panel(job, name) for name in ("bonnet", "roof", "left front door"))
    ines.post(new(job), SANDING | {"panels": [bonnet.pk, roof.pk]})
    step = job.steps.get()
    assert cut(step) == ["bonnet", "roof"]
    assert does(step) == "wet sanding, on bonnet and roof only"
    assert "wet sanding, on bonnet and roof only" in text(ines.get(reverse("jobs:job", args=[job.code])))

    address = reverse("jobs:step", args=[job.code, step.code])
    page = ines.get(address).content.decode()
    ticked = {one.pk for one in (bonnet, roof, door) if _ticked(page, one)}
    assert ticked == {bonnet.pk, roof.pk}

    ines.post(address, SANDING)

    assert (cut(step), does(Step.objects.get(pk=step.pk))) == ([], "wet sanding")


def test_a_panel_that_was_wrapped_since_stays_chosen_and_no_cut_grows(ines: Client, job: Job) -> None:
    bonnet, _ = panel(job, "bonnet"), panel(job, "roof")
    ines.post(new(job), SANDING | {"panels": [bonnet.pk]})
    Panel.objects.filter(pk=bonnet.pk).update(surface="wrap_gloss")
    step = job.steps.get()
    address = reverse("jobs:step", args=[job.code, step.code])

    assert _ticked(ines.get(address).content.decode(), bonnet)

    ines.post(address, SANDING | {"panels": [bonnet.pk]})
    assert cut(step) == ["bonnet"]


def _ticked(page: str, one: Panel) -> bool:
    [box] = [part for part in page.split("<input") if f'name="panels" value="{one.pk}"' in part]
    return "checked" in box.split(">")[0]


def test_one_key_with_other_panels_is_another_step(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    ines.post(new(job), SANDING)
    page = ines.post(new(job), SANDING | {"panels": [bonnet.pk]})
    assert "another step was added already" in page.content.decode()
    assert cut(job.steps.get()) == []


def test_a_service_s_step_has_no_panels_and_booking_leaves_all(ines: Client, shop: w.World) -> None:
    service = Service.objects.create(shop=shop.shop, name="Correction")
    assert (
        "panels" not in ines.get(reverse("jobs:new_service_step", args=[service.pk])).context["form"].fields
    )
    ines.post(reverse("jobs:new_service_step", args=[service.pk]), SERVICE_STEP | {"cut": "sanding"})
    car = w.car(shop)
    Panel.objects.create(vehicle=car, position=1, name="bonnet")

    job = booking.book(shop.shop, service, car, NOON, title="Correction", at=NOON)

    assert [(step.cut, cut(step)) for step in job.steps.all()] == [("sanding", [])]


def test_a_panel_that_a_cut_names_stays_and_another_goes(ines: Client, job: Job) -> None:
    bonnet, roof = panel(job, "bonnet"), panel(job, "roof")
    ines.post(new(job), SANDING | {"panels": [bonnet.pk]})
    typed = [
        {"id": one.pk, "name": one.name, "surface": "clear_coat", "remove": "on"} for one in (bonnet, roof)
    ]

    page = ines.post(at("edit_panels", job), rows("panels", *typed, initial=2))

    assert "“Cut” is planned to cut the bonnet, so it stays. Choose other panels there first." in text(page)
    assert Panel.objects.count() == 2
    typed[0].pop("remove")
    ines.post(at("edit_panels", job), rows("panels", *typed, initial=2))
    assert [one.name for one in Panel.objects.all()] == ["bonnet"]
