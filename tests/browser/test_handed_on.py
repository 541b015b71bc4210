"""The bottle's own page hands its code to the scan page; nobody else's link does."""

import pytest
from django.conf import settings
from django.urls import reverse

from inventory.models import Heard, Station
from tests.world import GRAM, NOON, bottle, larkmoor, marl

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def signed_in(page, live_server, client):
    world = larkmoor()
    client.force_login(world.ines)
    cookie = client.cookies[settings.SESSION_COOKIE_NAME].value
    page.context.add_cookies(
        [{"name": settings.SESSION_COOKIE_NAME, "value": cookie, "url": live_server.url}]
    )
    return world, page, live_server.url


def test_a_link_from_elsewhere_is_not_a_scan(signed_in):
    world, page, site = signed_in
    kept = bottle(world, marl(world), 1000 * GRAM, opened_at=NOON)

    page.goto(f"{site}{reverse('scan:station')}?line={kept.code}")
    page.wait_for_timeout(400)

    assert not Station.objects.filter(state__has_key="answer").exists()
    assert not Heard.objects.exists()


def test_a_bottles_page_hands_its_code_to_the_station(signed_in):
    world, page, site = signed_in
    kept = bottle(world, marl(world), 1000 * GRAM, opened_at=NOON)

    page.goto(f"{site}{reverse('shelf:container', args=[kept.code])}")
    page.get_by_role("link", name="Use", exact=True).click()

    page.get_by_text("Marl cutting compound").first.wait_for()
    assert page.url == f"{site}{reverse('scan:station')}"
