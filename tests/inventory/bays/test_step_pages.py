"""A step's own page, and the steps of today on a bay's: what is breathed, drawn and said."""

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import Step
from tests import world as w
from tests.inventory.precheck.test_air_queries import ISOPROPANOL, aired, composed
from tests.world import ML, World

pytestmark = pytest.mark.django_db


@pytest.fixture
def tomas(client: Client, world: World) -> Client:
    """The browser in which the technician is signed in."""
    client.force_login(world.tomas)
    return client


def page(client: Client, world: World, name: str = "bay") -> str:
    """Return the text of a bay's page."""
    return client.get(reverse(f"bays:{name}", args=[world.bay_2.code])).content.decode()


def wipe_of_today(world: World) -> Step:
    """Book a wipe in a measured Bay 2 for now."""
    aired(world.bay_2)
    job = w.job(world, timezone.now())
    step = w.step(job, bay=world.bay_2, person=world.tomas)
    w.need(step, composed(w.hollin(world), ISOPROPANOL), 234 * ML)
    return step


def test_the_steps_of_today_are_drawn_and_lead_to_their_check(tomas: Client, world: World) -> None:
    assert "No step is booked here today" in page(tomas, world)
    step = wipe_of_today(world)
    text = page(tomas, world)
    assert text.count('<svg class="chart"') == 2
    assert "Over the worst quarter of an hour who works here breathes 119 % on average." in text
    assert reverse("precheck:job", args=[step.job.code]) in text
    Step.objects.update(signed_at=timezone.now())
    assert "No step is booked here today" in page(tomas, world)


def test_a_step_s_own_page_says_what_the_check_says_of_its_air(tomas: Client, world: World) -> None:
    step = wipe_of_today(world)
    text = tomas.get(reverse("bays:step", args=[step.code])).content.decode()
    assert "who works here breathes 119 % of the 15-minute limit (isopropanol)." in text
    bare = w.step(w.job(world), "Wash", bay=world.bay_2)
    text = tomas.get(reverse("bays:step", args=[bare.code])).content.decode()
    assert "Nothing that this step takes is known to go into the air." in text


@pytest.mark.parametrize("worn", [row.value for row in Step.Respirator])
def test_fumes_that_nobody_can_weigh_have_no_curve_whatever_is_worn(
    tomas: Client, world: World, worn: str
) -> None:
    """With a mask on, the page asked which cartridge filters nothing at all, and broke."""
    fluoride = {
        "name": "Hydrogen fluoride",
        "cas": "7664-39-3",
        "percent": 2,
        "hazards": ["Acute Tox. 2 H330"],
    }
    aired(world.bay_2)
    step = w.step(w.job(world, timezone.now()), bay=world.bay_2, person=world.tomas)
    w.need(step, composed(w.hollin(world), fluoride), 100 * ML)
    Step.objects.update(respirator=worn)
    answer = tomas.get(reverse("bays:step", args=[step.code]))
    assert answer.status_code == 200
    assert "how much hydrogen fluoride fumes from it is not known" in answer.content.decode()


def test_a_stop_of_the_check_leads_to_the_curve(tomas: Client, world: World) -> None:
    step = wipe_of_today(world)
    text = tomas.get(reverse("precheck:job", args=[step.job.code])).content.decode()
    assert f'href="{reverse("bays:step", args=[step.code])}">See the curve</a>' in text


def test_the_curve_leads_to_what_mends_it_and_a_viewer_is_not_sent_there(
    ines: Client, client: Client, world: World
) -> None:
    step = wipe_of_today(world)
    at, mend = reverse("bays:step", args=[step.code]), reverse("jobs:step", args=[step.job.code, step.code])
    air = reverse("bays:air", args=[world.bay_2.code])
    text = ines.get(at).content.decode()
    assert f'href="{mend}">Change the step: amount, bay, mask</a>' in text
    assert f'href="{air}">Change the air of Bay 2</a>' in text
    client.force_login(world.tomas)
    text = client.get(at).content.decode()
    assert (mend in text, air in text) == (True, False)
    client.force_login(world.wren)
    text = client.get(at).content.decode()
    assert (mend in text, air in text) == (False, False)
