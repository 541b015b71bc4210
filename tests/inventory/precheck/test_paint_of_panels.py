"""What is cut on some panels of a car takes nothing from the others: in the check and on the page's bars."""

from datetime import timedelta

import pytest

from inventory.jobs.queries import panels as page
from inventory.models import Job, Shop
from inventory.trade.paint import Measured
from tests import world as w
from tests.inventory.precheck.test_paint_queries import cutting, load, panels, read, said
from tests.world import NOON

pytestmark = pytest.mark.django_db
EIGHT = ("bonnet", "roof", "boot lid", "left door", "right door", "left wing", "right wing", "tailgate")


def test_wet_sanding_two_of_eight_panels_takes_nothing_from_the_other_six(shop: w.World) -> None:
    job = w.job(shop)
    eight = panels(job.vehicle, *EIGHT)
    for panel in eight:
        read(shop, panel, job, 105)
    step = cutting(shop, job, "sanding")
    # the twin: unchosen, all eight go through the floor of 90 (wet sanding takes up to 20, trade pages)
    Shop.objects.update(floor_whole_um=90)
    assert said(job)[0][1].count("105 µm of whole film less 20 µm is 85 µm") == 8

    step.panels.set(eight[:2])

    assert [(cut.panel, cut.grade) for cut in load(job).cuts] == [
        (eight[0].code, "sanding"), (eight[1].code, "sanding"),
    ]  # fmt: skip
    assert said(job) == [
        (
            "stop",
            "The planned cut goes below the shop's floor: bonnet 105 µm of whole film less 20 µm is 85 µm; "
            "roof 105 µm of whole film less 20 µm is 85 µm.",
        ),
        ("ask", "More than 12.7 µm would be gone: bonnet 0 µm gone so far, 20 µm planned; "
                "roof 0 µm gone so far, 20 µm planned."),
    ]  # fmt: skip
    fresh = Job.objects.get(pk=job.pk)
    left = {row.panel.name: (row.left.says, row.left.planned) for row in page.rows(fresh)}
    assert left["roof"] == ("5 µm under the floor of 90 µm", "20 µm")
    assert {left[name] for name in EIGHT[2:]} == {("15 µm above the floor of 90 µm", "")}


def test_a_missing_reading_is_asked_of_the_panels_to_be_cut_alone(shop: w.World) -> None:
    job = w.job(shop)
    eight = panels(job.vehicle, *EIGHT)
    cutting(shop, job, "sanding").panels.set(eight[:2])
    assert said(job) == [
        ("ask", "Bonnet and roof are to be cut, and their paint was not read."),
        ("ask", "More than 12.7 µm would be gone: bonnet 0 µm gone so far, 20 µm planned; "
                "roof 0 µm gone so far, 20 µm planned."),
    ]  # fmt: skip


def test_only_a_panel_that_one_cut_touched_teaches_what_that_cut_takes(shop: w.World) -> None:
    marl, pad = w.marl(shop), w.product(shop, "Dunnock pad", "pad", dimension="pieces")
    at = NOON - timedelta(days=30)
    past = w.job(shop, at, vehicle=w.car(shop, "Red van"))
    bonnet, roof = panels(past.vehicle, "bonnet", "roof")
    for panel, after in ((bonnet, 126), (roof, 130)):
        read(shop, panel, past, 130, at=at)
        read(shop, panel, past, after, "after", at + timedelta(hours=4))
    step = cutting(shop, past, "two_step", marl, pad)
    job = w.job(shop)
    cutting(shop, job, "two_step", marl, pad)
    # the twin: where the whole car was cut, the roof says that the cut takes nothing
    assert sorted(one.um for one in load(job).history) == [0, 4]

    step.panels.set([bonnet])

    assert load(job).history == (Measured(marl.code, pad.code, 2, 4),)
