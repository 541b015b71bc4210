"""A job's whole way by its pages: an owner writes a service, a technician books, edits, signs and closes."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Job, Movement, Person, Service
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)


@pytest.fixture
def shop() -> w.World:
    return w.larkmoor()


def at_the_screen(person: Person) -> Client:
    client = Client()
    client.force_login(person)
    return client


def text(response) -> str:
    return " ".join(response.content.decode().split())


def rows(*given: tuple[str, str, str]) -> dict[str, str]:
    """Return the form rows of what a step takes: (what, amount, mix)."""
    data = {"needs-TOTAL_FORMS": str(len(given)), "needs-INITIAL_FORMS": "0"}
    for at, (what, amount, mix) in enumerate(given):
        data |= {f"needs-{at}-what": what, f"needs-{at}-amount": amount, f"needs-{at}-mix": mix}
    return data


def written(client: Client, *needs: tuple[str, str, str]) -> Service:
    client.post(reverse("jobs:new_service"), {"name": "Winter coat"})
    service = Service.objects.get(name="Winter coat")
    step = {"name": "Panel wipe", "stage": "coat", "starts_after": "0:00", "minutes": "0:45", "key": "new"}
    response = client.post(reverse("jobs:new_service_step", args=[service.pk]), step | rows(*needs))
    assert response.status_code == 302, text(response)
    return service


def test_a_service_is_written_once_booked_edited_signed_and_closed(shop: w.World) -> None:
    soap = w.product(shop, "Brindle shampoo", "shampoo", needs_sheet=False)
    wipe = w.hollin(shop, needs_sheet=False)
    w.bottle(shop, soap, 500 * ML, opened_at=NOON - timedelta(days=1), place=shop.bay_2)
    w.bottle(shop, wipe, 500 * ML)
    ines, tomas = at_the_screen(shop.ines), at_the_screen(shop.tomas)
    service = written(ines, (f"p{soap.pk}", "30 ml", "1:500"), ("ksolvent", "", ""))

    tomas.post(
        reverse("jobs:book"),
        {"key": "booking", "service": service.pk, "starts_at": "2026-11-26T08:30"}
        | {"name": "Grey estate", "size": "large"},
    )
    job = Job.objects.get()
    step = job.steps.get()
    assert f"{job.starts_at:%d %H:%M} to {job.ends_at:%d %H:%M}" == "26 08:30 to 26 09:15"
    assert [need.amount for need in step.needs.order_by("id")] == [39 * ML, 195 * ML]
    page = text(tomas.get(reverse("jobs:job", args=[job.code])))
    assert "Brindle shampoo 39 ml at 1:500, any panel wipe 195 ml" in page

    changed = {
        "name": "Wash and wipe",
        "stage": "coat",
        "starts_at": "2026-11-26T09:00",
        "ends_at": "2026-11-26T10:00",
        "bay": shop.bay_2.pk,
        "person": shop.tomas.pk,
    }
    edited = rows((f"p{soap.pk}", "40 ml", "1:500"), (f"p{wipe.pk}", "150 ml", ""), ("", "", ""))
    tomas.post(reverse("jobs:step", args=[job.code, step.code]), changed | edited)
    job.refresh_from_db()
    assert f"{job.starts_at:%H:%M} to {job.ends_at:%H:%M}" == "09:00 to 10:00"

    page = tomas.post(reverse("jobs:sign", args=[job.code, "coat"]), follow=True)
    assert "Scan these, they are traced: Hollin panel wipe." in text(page)
    assert Movement.objects.get(job=job).amount == 40 * ML

    page = text(tomas.get(reverse("jobs:close", args=[job.code])))
    assert "Hollin panel wipe, Wash and wipe" in page
    assert "Brindle shampoo" not in page
    need = job.steps.get().needs.get(product=wipe)
    page = tomas.post(reverse("jobs:close", args=[job.code]), {f"amount_{need.pk}": "120 ml"}, follow=True)
    assert "This job is closed." in text(page)
    assert Movement.objects.get(job=job, product=wipe, kind="use").facts == {
        "assumed": False,
        "measured": True,
    }


def test_a_car_s_size_surfaces_and_contact_are_changed_with_its_job(shop: w.World) -> None:
    job = w.job(shop)
    given = {
        "title": "Two layers",
        "notes": "Key is at the desk.",
        "car-name": "Grey estate",
        "car-plate": "LM 204",
        "car-size": "van",
        "car-contact": "Mr Abel, 0100",
        "car-surfaces": ["wrap_matte", "top_fabric"],
    }

    page = at_the_screen(shop.tomas).post(reverse("jobs:edit", args=[job.code]), given, follow=True)

    job.vehicle.refresh_from_db()
    assert (job.vehicle.size, job.vehicle.surfaces) == ("van", ["wrap_matte", "top_fabric"])
    special = "matte vinyl wrap, soft-top fabric"
    for said in ("Two layers", "Key is at the desk.", "LM 204", "Mr Abel, 0100", special):
        assert said in text(page)


def test_closing_without_a_word_about_each_need_is_refused(shop: w.World) -> None:
    job = w.job(shop)
    w.need(w.step(job), w.hollin(shop), 100 * ML)

    page = at_the_screen(shop.tomas).post(reverse("jobs:close", args=[job.code]), {})

    assert "Say what became of it: as planned, another amount, or not done." in text(page)
    job.refresh_from_db()
    assert job.state == "open"


@pytest.mark.parametrize(
    ("row", "says"),
    [
        (("kwax", "", ""), "How much does it take? There is no usual amount for this."),
        (("ksolvent", "3 oz", ""), "oz"),
        (("ksolvent", "0 ml", ""), "Nothing is no amount. Empty the row if the step does not take it."),
        (("", "30 ml", ""), "Say what this amount is of, or empty the amount."),
        (("", "", "1:10"), "Say what this mix is of, or empty the mix."),
        (("ksolvent", "30 ml", "2/7"), "“2/7” is not a mix. Write product : water, like 1:10."),
        (("ksolvent", "30 ml", "10"), "“10” is not a mix. Write product : water, like 1:10."),
        (("ksolvent", "30 ml", "0:10"), "“0:10” is not a mix. Write product : water, like 1:10."),
    ],
)
def test_a_row_that_cannot_be_read_is_refused_at_its_field(
    shop: w.World, row: tuple[str, str, str], says: str
) -> None:
    ines = at_the_screen(shop.ines)
    ines.post(reverse("jobs:new_service"), {"name": "Winter coat"})
    service = Service.objects.get()
    step = {"name": "Wipe", "stage": "coat", "starts_after": "0:00", "minutes": "0:45", "key": "new"}

    page = ines.post(reverse("jobs:new_service_step", args=[service.pk]), step | rows(row))

    assert page.status_code == 200
    assert says in text(page)
    assert not service.steps.exists()


@pytest.mark.parametrize("typed", ["45", "0:75", "1h", "", "-1:00", "１:00"])
def test_hours_have_one_way_of_being_typed(shop: w.World, typed: str) -> None:
    ines = at_the_screen(shop.ines)
    ines.post(reverse("jobs:new_service"), {"name": "Winter coat"})
    service = Service.objects.get()
    step = {"name": "Wipe", "stage": "coat", "starts_after": "0:00", "minutes": typed, "key": "new"}

    ines.post(reverse("jobs:new_service_step", args=[service.pk]), step | rows())

    assert not service.steps.exists()


def test_the_list_shows_each_day_s_cars_with_their_verdicts(shop: w.World) -> None:
    wipe = w.hollin(shop, needs_sheet=False)
    w.bottle(shop, wipe, 100 * ML)
    for days, ml in ((1, 60), (2, 180)):
        job = w.job(shop, NOON + timedelta(days=days), vehicle=w.car(shop, f"Car {days}"))
        w.need(w.step(job), wipe, ml * ML)

    page = text(at_the_screen(shop.wren).get(reverse("jobs:list")))

    parts = ["Thursday 26 November", "Car 1", "Ready for Thursday 12:00.", "Friday 27 November", "Car 2",
             "One question to answer before Friday 12:00."]  # fmt: skip
    places = [page.find(part) for part in parts]
    assert -1 not in places
    assert places == sorted(places)


def test_cancelling_by_its_page_says_who_gains(shop: w.World) -> None:
    wipe = w.hollin(shop, needs_sheet=False)
    w.bottle(shop, wipe, 200 * ML)
    for days, ml, name in ((1, 60, "Grey estate"), (2, 180, "Red van")):
        job = w.job(shop, NOON + timedelta(days=days), vehicle=w.car(shop, name))
        w.need(w.step(job), wipe, ml * ML)
    first = Job.objects.order_by("starts_at")[0]

    page = text(at_the_screen(shop.tomas).post(reverse("jobs:cancel", args=[first.code]), follow=True))

    assert "Cancelled. What it would have taken is free." in page
    assert "Red van gains: it is ready now." in page


@pytest.mark.parametrize(
    ("who", "name", "because"),
    [
        ("wren", "jobs:book", "a viewer books nothing"),
        ("wren", "jobs:new_service", "a viewer writes nothing"),
        ("tomas", "jobs:new_service", "services are the owner's"),
    ],
)
def test_who_may_not(shop: w.World, who: str, name: str, because: str) -> None:
    assert at_the_screen(getattr(shop, who)).get(reverse(name)).status_code == 403, because


def test_another_shop_s_jobs_services_and_products_are_not_there(shop: w.World) -> None:
    other = w.larkmoor("elsewhere")
    theirs, soap = w.job(other), w.product(other, "Brindle shampoo", "shampoo")
    service = Service.objects.create(shop=other.shop, name="Theirs")
    ines = at_the_screen(shop.ines)

    assert ines.get(reverse("jobs:job", args=[theirs.code])).status_code == 404
    assert ines.post(reverse("jobs:cancel", args=[theirs.code])).status_code == 404
    assert ines.get(reverse("jobs:service", args=[service.pk])).status_code == 404
    own = Service.objects.create(shop=shop.shop, name="Ours")
    step = {"name": "Wash", "stage": "wash", "starts_after": "0:00", "minutes": "0:45", "key": "new"}
    ines.post(reverse("jobs:new_service_step", args=[own.pk]), step | rows((f"p{soap.pk}", "30 ml", "")))
    assert not own.steps.exists()
