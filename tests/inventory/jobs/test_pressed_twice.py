"""A button pressed twice writes once: each page that adds something comes with a key of its own."""

import re
from datetime import UTC, datetime

import pytest
from django.test import Client
from django.urls import reverse

from inventory.jobs import actions
from inventory.models import Job, Service, Step, Vehicle
from tests import world as w
from tests.world import NOON

pytestmark = pytest.mark.django_db

EMPTY_ROWS = {"needs-TOTAL_FORMS": "0", "needs-INITIAL_FORMS": "0"}
CAR = {"starts_at": "2026-11-26T08:30", "name": "Grey estate", "size": "mid", "title": "Two layers"}
STEP = {"name": "Cure", "stage": "cure", "starts_at": "2026-11-26T09:00", "ends_at": "2026-11-26T21:00"}
SERVICE_STEP = {"name": "Cure", "stage": "cure", "starts_after": "0:00", "minutes": "12:00"}


def text(response) -> str:
    return " ".join(response.content.decode().split())


def key_on(page) -> str:
    return re.search(r'name="key" value="([0-9a-f-]{36})"', text(page))[1]


def test_a_double_tap_books_one_car_and_both_lead_to_it(ines: Client, shop: w.World) -> None:
    service = Service.objects.create(shop=shop.shop, name="Winter coat")
    service.steps.create(position=1, stage="coat", name="Coat", starts_after=0, minutes=60)
    sent = CAR | {"service": service.pk, "key": "same"}

    first, second = (ines.post(reverse("jobs:book"), sent) for _ in range(2))

    job = Job.objects.get()
    assert first.headers["Location"] == second.headers["Location"] == reverse("jobs:job", args=[job.code])
    assert (Vehicle.objects.count(), job.steps.count(), job.title) == (1, 1, "Two layers")


def test_a_double_tap_without_a_service_books_one_car(ines: Client) -> None:
    for _ in range(2):
        ines.post(reverse("jobs:book"), CAR | {"key": "same"})
    assert Job.objects.count() == 1


def test_without_one_key_the_double_tap_books_two_cars(ines: Client) -> None:
    for key in ("one", "two"):
        ines.post(reverse("jobs:book"), CAR | {"key": key})
    assert (Job.objects.count(), Vehicle.objects.count()) == (2, 2)


@pytest.mark.parametrize("missing", [{}, {"key": ""}, {"key": "k" * 65}])
def test_a_booking_without_a_key_is_refused(ines: Client, missing: dict[str, str]) -> None:
    assert ines.post(reverse("jobs:book"), CAR | missing).status_code == 200
    assert not Job.objects.exists()


def test_each_page_comes_with_a_key_of_its_own_and_keeps_it_when_something_is_put_right(ines: Client) -> None:
    first, other = (key_on(ines.get(reverse("jobs:book"))) for _ in range(2))
    assert first != other
    assert key_on(ines.post(reverse("jobs:book"), CAR | {"key": first, "title": ""})) == first


def test_going_back_and_changing_the_booking_asks_before_it_books_another(ines: Client) -> None:
    ines.post(reverse("jobs:book"), CAR | {"key": "same"})

    changed = CAR | {"key": "same", "name": "Red van"}
    page = ines.post(reverse("jobs:book"), changed)
    assert "From this page another booking was written already. Press again to book this one too." in text(
        page
    )
    assert [str(job.vehicle) for job in Job.objects.all()] == ["Grey estate"]

    ines.post(reverse("jobs:book"), changed | {"key": key_on(page)})
    assert sorted(str(job.vehicle) for job in Job.objects.all()) == ["Grey estate", "Red van"]


def test_a_key_of_one_shop_says_nothing_of_another_one(shop: w.World) -> None:
    other = w.larkmoor("elsewhere")
    at = datetime(2026, 11, 26, 8, 30, tzinfo=UTC)
    for world in (shop, other):
        car = Vehicle(shop=world.shop, name="Grey estate", size="mid")
        actions.book(world.shop, None, car, at, title="Two layers", key="same", at=NOON)
    assert {job.shop for job in Job.objects.all()} == {shop.shop, other.shop}


@pytest.mark.parametrize(
    ("keys", "steps", "because"),
    [
        (("same", "same"), 1, "the button was pressed twice"),
        (("one", "two"), 2, "two pages add two steps, as a double tap would without a key"),
    ],
)
def test_a_step_is_added_once_for_a_key(ines: Client, shop: w.World, keys, steps: int, because: str) -> None:
    job = w.job(shop, NOON)
    service = Service.objects.create(shop=shop.shop, name="Winter coat")
    for key in keys:
        new = reverse("jobs:new_step", args=[job.code])
        assert ines.post(new, STEP | EMPTY_ROWS | {"key": key}).status_code == 302
        new = reverse("jobs:new_service_step", args=[service.pk])
        assert ines.post(new, SERVICE_STEP | EMPTY_ROWS | {"key": f"{key} service"}).status_code == 302
    assert (job.steps.count(), service.steps.count()) == (steps, steps), because


def test_another_step_under_a_used_key_is_asked_about(ines: Client, shop: w.World) -> None:
    job = w.job(shop, NOON)
    service = Service.objects.create(shop=shop.shop, name="Winter coat")
    pages = [
        (reverse("jobs:new_step", args=[job.code]), STEP),
        (reverse("jobs:new_service_step", args=[service.pk]), SERVICE_STEP),
    ]
    for address, typed in pages:
        sent = EMPTY_ROWS | {"key": address}
        ines.post(address, typed | sent)
        page = ines.post(address, typed | sent | {"name": "Check under the lamp"})
        assert "Press again to add this one too." in text(page)
        ines.post(address, typed | sent | {"name": "Check under the lamp", "key": key_on(page)})
    for steps in (job.steps, service.steps):
        assert list(steps.order_by("position").values_list("name", flat=True)) == [
            "Cure",
            "Check under the lamp",
        ]


def test_a_step_is_changed_without_a_key(ines: Client, shop: w.World) -> None:
    step = w.step(w.job(shop, NOON))
    address = reverse("jobs:step", args=[step.job.code, step.code])
    assert 'name="key"' not in text(ines.get(address))

    ines.post(address, STEP | EMPTY_ROWS)

    assert Step.objects.get().name == "Cure"
