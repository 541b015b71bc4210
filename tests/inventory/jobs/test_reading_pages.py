"""What the gauge read, typed on one page: what is kept, what is refused, who takes a reading back."""

import re
from datetime import timedelta

import pytest
from django.test import Client
from django.utils import timezone

from inventory.models import Job, Reading, Shop, Step
from tests import world as w
from tests.inventory.jobs.painted import at, panel, reading, sent, text
from tests.world import NOON

pytestmark = pytest.mark.django_db


@pytest.fixture
def job(shop: w.World) -> Job:
    return w.job(shop)


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
