"""A car's paint and panels on its pages: who may write, what is kept, what is refused, what is taken back."""

import re
from datetime import UTC, date, datetime, timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import Arrival, Job, Panel, Reading, Shop, Step
from tests import world as w
from tests.world import NOON

pytestmark = pytest.mark.django_db


@pytest.fixture
def job(shop: w.World) -> Job:
    return w.job(shop)


def at(name: str, job: Job, *more: object) -> str:
    return reverse(f"jobs:{name}", args=[job.code, *more])


def text(page) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", page.content.decode()).split())


def panel(job: Job, name: str = "bonnet", **facts: object) -> Panel:
    count = Panel.objects.filter(vehicle=job.vehicle).count()
    return Panel.objects.create(vehicle=job.vehicle, position=count + 1, name=name, **facts)


def reading(shop: w.World, of: Panel, job: Job, um: int | None, when: str = "before", **facts) -> Reading:
    known = {"taken_at": timezone.now(), "by": shop.tomas, **facts}
    return Reading.objects.create(panel=of, job=job, when=when, um=um, **known)


def sent(key: str = "one", **typed: object) -> dict[str, object]:
    return {"key": key, "when": "before", "film": "whole", **typed}


WRITING = ["usual_panels", "edit_panels", "read_panels", "arrivals"]


@pytest.mark.parametrize("name", WRITING)
def test_a_viewer_writes_nothing_about_a_car_s_paint(client: Client, shop: w.World, job: Job, name: str):
    client.force_login(shop.wren)
    assert client.post(at(name, job)).status_code == 403
    assert client.get(at("panels", job)).status_code == 200


def test_a_viewer_sees_no_button_that_writes(client: Client, shop: w.World, job: Job) -> None:
    client.force_login(shop.wren)
    panel(job)
    page = client.get(at("panels", job)).content.decode()
    assert "Type readings" not in page
    assert "Say what is on the car" not in page


@pytest.mark.parametrize("name", ["panels", *WRITING])
def test_another_shop_s_car_is_not_there(client: Client, shop: w.World, job: Job, name: str) -> None:
    other = w.larkmoor("elsewhere")
    client.force_login(other.ines)
    asked = client.get if name == "panels" else client.post
    assert asked(at(name, job)).status_code == 404


@pytest.mark.parametrize("name", WRITING)
def test_nothing_is_written_on_a_cancelled_job(ines: Client, job: Job, name: str) -> None:
    Job.objects.update(state="cancelled")
    assert ines.post(at(name, job)).status_code == 404


def test_the_job_leads_to_its_paint(ines: Client, job: Job) -> None:
    assert at("panels", job) in ines.get(reverse("jobs:job", args=[job.code])).content.decode()


def test_an_ask_about_paint_leads_to_the_panels(ines: Client, shop: w.World, job: Job) -> None:
    Step.objects.filter(pk=w.step(job).pk).update(cut="two_step")
    page = ines.get(reverse("precheck:job", args=[job.code])).content.decode()
    assert "Paint is to be cut, and no panel of this car is listed." in page
    assert f'href="{at("panels", job)}"' in page


def test_the_usual_panels_come_in_one_tap_and_once(ines: Client, job: Job) -> None:
    mine = panel(job, "bonnet", surface="single_stage")
    for _ in range(2):
        ines.post(at("usual_panels", job))
    found = Panel.objects.filter(vehicle=job.vehicle)
    assert [row.name for row in found] == [
        "bonnet", "roof", "boot lid", "left front door", "right front door", "left rear door",
        "right rear door", "left front wing", "right front wing", "left rear wing", "right rear wing",
        "front bumper", "rear bumper",
    ]  # fmt: skip
    mine.refresh_from_db()
    assert mine.surface == "single_stage"
    assert {row.substrate for row in found if row.surface == "painted_plastic"} == {"plastic"}


def test_a_thickness_is_kept_in_micrometres_and_shown_with_what_is_left(
    ines: Client, shop: w.World, job: Job
) -> None:
    bonnet, roof, bumper = panel(job), panel(job, "roof"), panel(job, "front bumper")
    Step.objects.filter(pk=w.step(job).pk).update(cut="two_step")

    ines.post(at("read_panels", job), sent(**{f"um_{bonnet.pk}": "120", f"not_{bumper.pk}": "on"}))

    kept = {(one.panel.name, one.um, one.when, one.film, one.by) for one in Reading.objects.all()}
    assert kept == {
        ("bonnet", 120, "before", "whole", shop.ines),
        ("front bumper", None, "before", "whole", shop.ines),
    }
    page = text(ines.get(at("panels", job)))
    assert "35 µm above the floor of 80 µm 120 µm whole film" in page
    assert "the gauge cannot read it" in page
    assert "not read yet" in page
    assert roof.readings.count() == 0


@pytest.mark.parametrize(
    ("typed", "um", "because"),
    [
        ("4.3", 109, "4.3 mil is 109.22 µm"),
        ("4.33", 110, "4.33 mil is 109.982 µm"),
        ("110 µm", 110, "a unit that is typed is the unit"),
    ],
)
def test_mils_become_whole_micrometres(ines: Client, job: Job, typed: str, um: int, because: str) -> None:
    Shop.objects.update(film_unit="mil")
    bonnet = panel(job)
    ines.post(at("read_panels", job), sent(**{f"um_{bonnet.pk}": typed}))
    assert [one.um for one in bonnet.readings.all()] == [um], because


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({"um": "thick"}, "has no number"),
        ({"um": "0"}, "“0” is no thickness of paint. Type what the gauge shows."),
        ({"um": "5001"}, "“5001” is no thickness of paint."),
        ({"um": "92 ml"}, "ml"),
        ({"um": "92", "not": "on"}, "It is readable or it is not. Empty one of the two."),
        ({}, "Nothing was typed. Type at least one reading, or leave this page."),
    ],
)
def test_what_no_gauge_shows_is_refused_and_stays_typed(
    ines: Client, job: Job, typed: dict[str, str], says: str
) -> None:
    bonnet = panel(job)
    page = ines.post(at("read_panels", job), sent(**{f"{k}_{bonnet.pk}": v for k, v in typed.items()}))
    assert says in page.content.decode()
    assert not Reading.objects.exists()
    if typed.get("um"):
        assert f'value="{typed["um"]}"' in page.content.decode()


def test_a_double_tap_keeps_readings_once_and_another_page_keeps_its_own(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    for key, um in (("one", "92"), ("one", "92"), ("two", "93")):
        ines.post(at("read_panels", job), sent(key, **{f"um_{bonnet.pk}": um}))
    assert sorted(one.um for one in bonnet.readings.all()) == [92, 93]
    page = ines.post(at("read_panels", job), sent("two", **{f"um_{bonnet.pk}": "99"}))
    assert "other readings were kept already" in page.content.decode()


def test_another_car_s_panel_cannot_be_read_from_this_page(ines: Client, shop: w.World, job: Job) -> None:
    panel(job)
    theirs = panel(w.job(shop, vehicle=w.car(shop, "Red van")))
    ines.post(at("read_panels", job), sent(**{f"um_{theirs.pk}": "92"}))
    assert not Reading.objects.exists()


@pytest.mark.parametrize(("signed", "checked"), [(False, "before"), (True, "after")])
def test_the_gauge_is_taken_to_come_after_a_signed_cut(
    ines: Client, job: Job, signed: bool, checked: str
) -> None:
    panel(job)
    facts = {"cut": "two_step", "signed_at": NOON if signed else None}
    Step.objects.filter(pk=w.step(job).pk).update(**facts)
    page = ines.get(at("read_panels", job)).content.decode()
    assert re.findall(r'value="(before|after)"[^>]*checked', page) == [checked]


@pytest.mark.parametrize(
    ("who", "days_ago", "gone", "because"),
    [
        ("tomas", 0, True, "who typed it, on the same day"),
        ("tomas", 1, False, "a day later it is a fact"),
        ("ines", 1, True, "an owner always"),
        ("other", 0, False, "somebody else's reading"),
    ],
)
def test_a_wrong_reading_is_taken_back(
    client: Client, shop: w.World, job: Job, who: str, days_ago: int, gone: bool, because: str
) -> None:
    other = w.person(shop.shop, "Nell", "technician")
    client.force_login({"tomas": shop.tomas, "ines": shop.ines, "other": other}[who])
    row = reading(shop, panel(job), job, 9, taken_at=timezone.now() - timedelta(days=days_ago))

    page = client.post(at("undo_reading", job, row.pk), follow=True)

    assert Reading.objects.exists() is not gone, because
    says = "is taken back" if gone else "Only Tomas on the same day, or an owner, takes this reading back."
    assert says in text(page)


def test_a_viewer_takes_no_reading_back(client: Client, shop: w.World, job: Job) -> None:
    row = reading(shop, panel(job), job, 9, by=shop.wren)
    client.force_login(shop.wren)
    assert client.post(at("undo_reading", job, row.pk)).status_code == 403


def test_what_went_over_all_visits_is_shown(ines: Client, shop: w.World, job: Job) -> None:
    bonnet = panel(job)
    past = w.job(shop, NOON - timedelta(days=300), vehicle=job.vehicle)
    then = NOON - timedelta(days=300)
    reading(shop, bonnet, past, 130, taken_at=then)
    reading(shop, bonnet, past, 126, "after", taken_at=then + timedelta(hours=5))
    reading(shop, bonnet, job, 125)
    reading(shop, bonnet, job, 122, "after")
    page = text(ines.get(at("panels", job)))
    assert "42 µm above the floor of 80 µm 122 µm whole film" in page
    assert " 7 µm " in page


def rows(prefix: str, *typed: dict[str, object], initial: int = 0) -> dict[str, object]:
    sent: dict[str, object] = {f"{prefix}-TOTAL_FORMS": len(typed), f"{prefix}-INITIAL_FORMS": initial}
    return sent | {
        f"{prefix}-{n}-{name}": value for n, row in enumerate(typed) for name, value in row.items()
    }


def test_panels_change_places_are_added_and_taken_out(ines: Client, job: Job) -> None:
    first, second, third = panel(job, "left wing"), panel(job, "right wing"), panel(job, "spoiler")
    ines.post(
        at("edit_panels", job),
        rows(
            "panels",
            {"id": first.pk, "name": "right wing", "surface": "clear_coat", "substrate": "steel"},
            {"id": second.pk, "name": "left wing", "surface": "fresh_refinish", "since_on": "2026-11-02",
             "baked": "true"},
            {"id": third.pk, "name": "spoiler", "surface": "carbon", "remove": "on"},
            {"name": "roof", "surface": "matte"},
            {"name": "", "surface": "clear_coat"},
            initial=3,
        ),
    )  # fmt: skip
    kept = [(p.name, p.surface, p.substrate, p.since_on, p.baked) for p in Panel.objects.all()]
    assert kept == [
        ("right wing", "clear_coat", "steel", None, None),
        ("left wing", "fresh_refinish", "", date(2026, 11, 2), True),
        ("roof", "matte", "", None, None),
    ]


def test_a_panel_that_was_read_stays(ines: Client, shop: w.World, job: Job) -> None:
    bonnet = panel(job)
    reading(shop, bonnet, job, 120)
    typed = {"id": bonnet.pk, "name": "bonnet", "surface": "clear_coat", "remove": "on"}
    page = ines.post(at("edit_panels", job), rows("panels", typed, initial=1))
    assert "The gauge has read the bonnet, so it stays." in page.content.decode()
    assert Panel.objects.exists()


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (
            [{"name": "roof", "surface": "clear_coat"}, {"name": "Roof", "surface": "matte"}],
            "is there already",
        ),
        ([{"name": "roof", "surface": "gold leaf"}], "Select a valid choice."),
        ([{"name": "", "surface": "matte"}], "This field is required."),
    ],
)
def test_panels_that_cannot_be_are_refused(
    ines: Client, job: Job, typed: list[dict[str, object]], says: str
) -> None:
    page = ines.post(at("edit_panels", job), rows("panels", *typed))
    assert says in page.content.decode()
    assert not Panel.objects.exists()


def test_another_car_s_panel_is_not_changed_from_this_page(ines: Client, shop: w.World, job: Job) -> None:
    theirs = panel(w.job(shop, vehicle=w.car(shop, "Red van")))
    typed = {"id": theirs.pk, "name": "mine", "surface": "matte"}
    ines.post(at("edit_panels", job), rows("panels", typed, initial=1))
    theirs.refresh_from_db()
    assert (theirs.name, theirs.surface) == ("bonnet", "clear_coat")


def test_what_a_car_arrives_with_is_kept_and_replaced(ines: Client, shop: w.World, job: Job) -> None:
    bonnet, wax = panel(job), w.product(shop, "Sallow wax", "wax")
    address = at("arrivals", job)
    old = {"residue": "wax", "since_on": "2026-11-02", "product": wax.pk}
    ines.post(address, rows("arrivals", old, {"residue": "coating", "panel": bonnet.pk}, {"residue": ""}))
    kept = {(one.residue, one.panel, one.product, one.since_at) for one in Arrival.objects.all()}
    assert kept == {
        ("wax", None, wax, datetime(2026, 11, 2, tzinfo=UTC)),
        ("coating", bonnet, None, None),
    }
    assert "The whole car: wax, Sallow wax, since Monday 2 November 2026" in text(ines.get(at("panels", job)))

    ines.post(address, rows("arrivals", {"residue": ""}, {"residue": ""}, initial=2))

    assert not Arrival.objects.exists()


def test_an_hour_that_was_known_stays_when_the_day_stays(ines: Client, job: Job) -> None:
    known = datetime(2026, 11, 2, 14, 30, tzinfo=UTC)
    Arrival.objects.create(job=job, residue="coating", since_at=known)
    same = {"residue": "coating", "since_on": "2026-11-02"}
    ines.post(at("arrivals", job), rows("arrivals", same, initial=1))
    assert Arrival.objects.get().since_at == known


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ([{"residue": "wax"}, {"residue": "wax"}], "This is said above already."),
        ([{"residue": "", "since_on": "2026-11-02"}], "Say what this is about, or empty the row."),
        ([{"residue": "wax", "since_on": "2999-01-01"}], "This day is still to come."),
        ([{"residue": "honey"}], "Select a valid choice."),
    ],
)
def test_arrivals_that_say_nothing_sensible_are_refused(
    ines: Client, job: Job, typed: list[dict[str, object]], says: str
) -> None:
    page = ines.post(at("arrivals", job), rows("arrivals", *typed))
    assert says in page.content.decode()
    assert not Arrival.objects.exists()


def test_on_a_closed_job_the_paint_is_still_read_and_arrivals_are_not(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    Job.objects.update(state="closed", closed_at=NOON)
    ines.post(at("read_panels", job), sent(**{f"um_{bonnet.pk}": "118", "when": "after"}))
    assert [one.um for one in bonnet.readings.all()] == [118]
    assert ines.post(at("arrivals", job)).status_code == 404
