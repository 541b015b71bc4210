"""What a step does to the car: written on a service, carried by a booked step, changed on either page."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Service, ServiceStep, Step
from inventory.stock import booking
from inventory.templatetags.work import does
from tests import world as w
from tests.world import NOON

pytestmark = pytest.mark.django_db

EMPTY_ROWS = {"needs-TOTAL_FORMS": "0", "needs-INITIAL_FORMS": "0"}
STEP = {"name": "Cut", "stage": "correct", "starts_at": "2026-11-26T09:00", "ends_at": "2026-11-26T12:00",
        "key": "one", **EMPTY_ROWS}  # fmt: skip
SERVICE_STEP = {"name": "Cut", "stage": "correct", "starts_after": "0:00", "minutes": "3:00", "key": "one",
                **EMPTY_ROWS}  # fmt: skip
EVERYTHING = {"cut": "two_step", "passes": 4, "strips_coating": "on", "rinses": "on", "spot": "on",
              "sprayed": "on", "tools": ["dry_ice", "vacuum"], "dry_ice_g": "1.5 kg", "local_exhaust": "on",
              "respirator": "powered_half", "touches": ["paint", "lamps"]}  # fmt: skip
AS_KEPT = {"cut": "two_step", "passes": 4, "strips_coating": True, "rinses": True, "spot": True,
           "sprayed": True, "tools": ["dry_ice", "vacuum"], "dry_ice_g": 1500, "local_exhaust": True,
           "respirator": "powered_half", "touches": ["paint", "lamps"]}  # fmt: skip
PLAIN = {"cut": "", "passes": 1, "strips_coating": False, "rinses": False, "spot": False,
         "sprayed": False, "tools": [], "dry_ice_g": None, "local_exhaust": False, "respirator": "none",
         "touches": None}  # fmt: skip


def work(step: Step | ServiceStep) -> dict[str, object]:
    return {name: getattr(step, name) for name in AS_KEPT}


@pytest.fixture
def service(shop: w.World) -> Service:
    return Service.objects.create(shop=shop.shop, name="Correction")


@pytest.mark.parametrize(
    ("sent", "kept", "because"),
    [
        (EVERYTHING, AS_KEPT, "all of it is kept"),
        ({}, PLAIN, "who opens nothing says nothing"),
        ({"passes": ""}, PLAIN, "no number of passes is one"),
    ],
)
def test_what_is_typed_on_a_service_s_step(
    ines: Client, service: Service, sent: dict[str, object], kept: dict[str, object], because: str
) -> None:
    ines.post(reverse("jobs:new_service_step", args=[service.pk]), SERVICE_STEP | sent)
    assert work(service.steps.get()) == kept, because


def test_what_is_typed_on_a_booked_step_is_kept(ines: Client, shop: w.World) -> None:
    job = w.job(shop)
    ines.post(reverse("jobs:new_step", args=[job.code]), STEP | EVERYTHING)
    assert work(job.steps.get()) == AS_KEPT


@pytest.mark.parametrize(
    ("sent", "says"),
    [
        ({"passes": 0}, "Give 1 to 20 passes."),
        ({"passes": 21}, "Give 1 to 20 passes."),
        ({"cut": "grinding"}, "Select a valid choice."),
        ({"touches": ["roof rack"]}, "Select a valid choice."),
        ({"tools": ["axe"]}, "Select a valid choice."),
        ({"tools": ["dry_ice"], "dry_ice_g": "2 litres"}, "litres"),
        ({"tools": ["dry_ice"], "dry_ice_g": "0 g"}, "Give at least 1 g, or leave it empty."),
        ({"dry_ice_g": "2 kg"}, "Tick the dry-ice blaster too, or empty this amount."),
    ],
)
def test_what_cannot_be_is_refused_and_stands_open(
    ines: Client, service: Service, sent: dict[str, object], says: str
) -> None:
    page = ines.post(reverse("jobs:new_service_step", args=[service.pk]), SERVICE_STEP | sent)
    assert not service.steps.exists()
    assert says in page.content.decode()
    assert '<details class="columns" open>' in page.content.decode()


def test_it_is_folded_until_somebody_opens_it(ines: Client, service: Service) -> None:
    page = ines.get(reverse("jobs:new_service_step", args=[service.pk])).content.decode()
    for title in (
        "What is worn, and what it is done with",
        "What it takes off the paint",
        "Where it works, and how it is rinsed",
    ):
        assert f'<details class="columns"><summary>{title}</summary>' in page


def test_the_fold_in_which_something_is_wrong_stands_open_and_no_other(
    ines: Client, service: Service
) -> None:
    typed = SERVICE_STEP | {"dry_ice_g": "2 kg"}
    page = ines.post(reverse("jobs:new_service_step", args=[service.pk]), typed).content.decode()
    assert page.count('<details class="columns" open>') == 1
    assert '<details class="columns" open><summary>What is worn, and what it is done with</summary>' in page


def test_dry_ice_is_shown_again_as_it_was_typed(ines: Client, service: Service) -> None:
    ines.post(reverse("jobs:new_service_step", args=[service.pk]), SERVICE_STEP | EVERYTHING)
    step = service.steps.get()

    page = ines.get(reverse("jobs:service_step", args=[service.pk, step.pk])).content.decode()
    assert 'name="dry_ice_g" value="1.5 kg"' in page


def test_booking_carries_what_the_service_wrote(shop: w.World, service: Service) -> None:
    service.steps.create(position=1, stage="correct", name="Cut", starts_after=0, minutes=60, **AS_KEPT)
    service.steps.create(position=2, stage="coat", name="Wipe", starts_after=60, minutes=60)

    job = booking.book(shop.shop, service, w.car(shop), NOON, title="Correction", at=NOON)

    assert [work(step) for step in job.steps.all()] == [AS_KEPT, PLAIN]


def test_a_service_that_is_changed_later_leaves_booked_steps_alone(shop: w.World, service: Service) -> None:
    step = service.steps.create(
        position=1, stage="correct", name="Cut", starts_after=0, minutes=60, cut="one_step"
    )
    job = booking.book(shop.shop, service, w.car(shop), NOON, title="Correction", at=NOON)
    step.cut = "sanding"
    step.save()
    assert job.steps.get().cut == "one_step"


def test_one_key_with_another_cut_is_another_step(ines: Client, shop: w.World) -> None:
    job = w.job(shop)
    address = reverse("jobs:new_step", args=[job.code])
    ines.post(address, STEP)
    page = ines.post(address, STEP | {"cut": "sanding"})
    assert "another step was added already" in page.content.decode()
    assert [step.cut for step in job.steps.all()] == [""]


@pytest.mark.parametrize(
    ("of", "says"),
    [
        ({}, ""),
        ({"cut": "two_step"}, "two steps"),
        ({"cut": "two_step", "passes": 3, "sprayed": True}, "two steps, 3 passes · sprays a mist"),
        ({"rinses": True, "respirator": "ffp2"}, "rinses to a clear drain · dust mask FFP2"),
        ({"touches": ["wheels", "brakes"]}, "touches wheels, brakes"),
        ({"tools": ["vacuum", "dry_ice"], "dry_ice_g": 1500}, "vacuum cleaner · dry-ice blaster, 1.5 kg"),
        ({"tools": ["dry_ice"]}, "dry-ice blaster"),
        ({"local_exhaust": True, "respirator": "powered_full"}, "local exhaust · powered full-face mask"),
    ],
)
def test_it_is_said_in_a_few_words(of: dict[str, object], says: str) -> None:
    assert does(Step(**of)) == says
