"""A car's paint and panels on their pages: who may write, what is kept, what is refused."""

from datetime import UTC, date, datetime

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from inventory.jobs.actions.panels import Arriving, save_arrivals
from inventory.models import Arrival, Job, Panel, Step
from inventory.stock.rules.lines import Refused
from tests import world as w
from tests.inventory.jobs.painted import at, panel, reading, rows, sent, text
from tests.world import NOON

pytestmark = pytest.mark.django_db


@pytest.fixture
def job(shop: w.World) -> Job:
    return w.job(shop)


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
        (
            [{"residue": "nothing"}, {"residue": "wax"}, {"residue": "sealant"}],
            "The whole car cannot bear nothing and wax and sealant, glaze or topper. "
            "Keep what is so, and empty the other row.",
        ),
        (
            [{"residue": "coating", "panel": "bonnet"}, {"residue": "nothing", "panel": "bonnet"}],
            "The bonnet cannot bear nothing and a coating. Keep what is so, and empty the other row.",
        ),
        (
            [{"residue": "nothing", "since_on": "2026-11-02"}],
            "Nothing has no day and no product. Empty both, or say what is there.",
        ),
    ],
)
def test_arrivals_that_say_nothing_sensible_are_refused(
    ines: Client, job: Job, typed: list[dict[str, object]], says: str
) -> None:
    bonnet = panel(job)
    named = [{**row, "panel": bonnet.pk if "panel" in row else ""} for row in typed]
    page = ines.post(at("arrivals", job), rows("arrivals", *named))
    assert says in page.content.decode()
    assert not Arrival.objects.exists()


def test_nothing_on_the_car_and_wax_on_one_panel_are_kept_and_listed(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    typed = [{"residue": "nothing"}, {"residue": "wax", "panel": bonnet.pk}]
    ines.post(at("arrivals", job), rows("arrivals", *typed))
    page = text(ines.get(at("panels", job)))
    assert "The whole car: looked, nothing on it" in page
    assert "Bonnet: wax" in page


def test_what_cannot_be_is_refused_past_the_form_too(job: Job) -> None:
    said = [Arriving("nothing"), Arriving("wax")]
    with pytest.raises(Refused) as refused:
        save_arrivals(job, said, job.shop.zone)
    assert refused.value.says == (
        "The whole car cannot bear nothing and wax. Keep what is so, and empty the other row."
    )
    assert not Arrival.objects.exists()


def test_on_a_closed_job_the_paint_is_still_read_and_arrivals_are_not(ines: Client, job: Job) -> None:
    bonnet = panel(job)
    Job.objects.update(state="closed", closed_at=NOON)
    ines.post(at("read_panels", job), sent(**{f"um_{bonnet.pk}": "118", "when": "after"}))
    assert [one.um for one in bonnet.readings.all()] == [118]
    assert ines.post(at("arrivals", job)).status_code == 404


def test_the_page_asks_as_many_queries_for_fifteen_panels_as_for_three(ines: Client, shop: w.World) -> None:
    counted = []
    for name, count in (("Small", 3), ("Large", 15)):
        of = w.job(shop, vehicle=w.car(shop, name))
        Step.objects.filter(pk=w.step(of).pk).update(cut="one_step")
        for n in range(count):
            reading(shop, panel(of, f"panel {n}"), of, 120)
        with CaptureQueriesContext(connection) as asked:
            assert ines.get(at("panels", of)).status_code == 200
        counted.append(len(asked))
    assert counted[0] == counted[1]
