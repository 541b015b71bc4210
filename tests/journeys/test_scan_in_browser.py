"""The station in a browser against the real server: scan in, scan out, a stop, a device of its own."""

from datetime import timedelta
from typing import Any

import pytest
from django.utils import timezone

from tests.world import GRAM, ML, World, bottle, hollin, larkmoor, marl, pack, tidewall

pytestmark = pytest.mark.django_db(transaction=True)
PATIENCE = 20_000  # ms: the first amount builds the table of units


def at_station(page: Any, live_server: Any, who: str) -> None:
    """Sign somebody in and open the scan page."""
    page.goto(f"{live_server.url}/people/sign-in/?next=/scan/")
    page.fill("[name=username]", who)
    page.fill("[name=password]", "clear coat")
    page.press("[name=password]", "Enter")
    page.wait_for_selector("[data-says]")
    page.wait_for_load_state()  # nobody listens to a scanner before the page's scripts have run


def scan(page: Any, line: str, says: str) -> None:
    """Type a line as a scanner does, and wait for the sentence."""
    page.keyboard.type(line, delay=2)
    page.keyboard.press("Enter")
    page.get_by_text(says, exact=True).and_(page.locator("[data-says]")).wait_for(timeout=PATIENCE)


def shelf() -> tuple[World, Any, Any]:
    """Return the shop with a compound that is good and a panel wipe that died."""
    world, now = larkmoor(), timezone.now()
    month_ago = now - timedelta(days=30)
    good = bottle(world, marl(world), 150 * GRAM, at=month_ago, opened_at=month_ago)
    dead = bottle(world, hollin(world), 500 * ML, at=month_ago, expires_on=(now - timedelta(days=3)).date())
    return world, good, dead


def test_scan_out_and_a_stop_that_holds_until_it_is_seen(page: Any, live_server: Any) -> None:
    _, good, dead = shelf()
    at_station(page, live_server, "tomas")
    page.keyboard.type(good.code, delay=2)
    page.keyboard.press("Enter")
    page.locator("[data-says]", has_text=good.code[:4]).wait_for(timeout=PATIENCE)
    scan(page, "60 g", f"Marl cutting compound {good.code[:4]}: took 60 g, 90 g left.")
    page.keyboard.type(dead.code, delay=2)
    page.keyboard.press("Enter")
    page.locator("#station[data-grade=stop]").wait_for(timeout=PATIENCE)
    page.keyboard.type(good.code, delay=2)
    page.keyboard.press("Enter")
    page.locator("[data-refused]").wait_for(timeout=PATIENCE)
    good.refresh_from_db()
    assert good.content == 90 * GRAM


def test_scan_in_offers_the_strip_of_labels(page: Any, live_server: Any) -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin="04006381333931")
    at_station(page, live_server, "tomas")
    scan(page, "4006381333931", "Tidewall coating: how many?")
    scan(page, "2", "2 bottles of Tidewall coating: which lot?")
    page.get_by_role("button", name="Lot not given").click()
    page.get_by_role("button", name="Use by").click()
    page.locator("[data-typed-line]", has_text="use by").wait_for()
    page.keyboard.type("2030-03-31", delay=80)
    page.keyboard.press("Enter")
    page.locator("[data-says]", has_text="Where does the Tidewall coating go?").wait_for(timeout=PATIENCE)
    says = "Received 2 bottles of Tidewall coating, lot not given, use by 31 March 2030, into Store."
    scan(page, world.store.code, says)
    strip = page.get_by_role("link", name="Print 2 labels").get_attribute("href")
    assert page.request.get(f"{live_server.url}{strip}").ok


def test_an_enrolled_device_needs_a_badge_and_no_sign_in(page: Any, live_server: Any) -> None:
    world, good, _ = shelf()
    at_station(page, live_server, "ines")
    page.goto(f"{live_server.url}/scan/stations/enrol/")
    page.fill("[name=name]", "Bay 1 tablet")
    page.get_by_role("button", name="Enrol this device").click()
    page.locator("[data-says]", has_text="Scan your badge.").wait_for()
    scan(page, good.code, "This scan waits: who are you?")
    page.keyboard.type(world.tomas.code, delay=2)
    page.keyboard.press("Enter")
    page.locator("[data-says]", has_text=good.code[:4]).wait_for(timeout=PATIENCE)
    assert page.locator(".now dd").first.inner_text() == "Tomas"
