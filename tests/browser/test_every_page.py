"""Every page of the site, as an owner sees the demo's shop: on three widths, in light and dark.

No violation by axe, nothing wider than the screen, one heading, a title, and not one complaint in the
browser's console. The list of pages is held against the site's own addresses, so that no page is forgotten.
"""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.urls import URLPattern, URLResolver, get_resolver, reverse
from django.utils import timezone

from inventory.models import (
    AirMeasurement,
    Container,
    Job,
    Order,
    Person,
    Place,
    Product,
    Service,
    Shop,
    Supplier,
)
from inventory.precheck.queries import verdicts
from inventory.spreadsheets import actions, queries
from inventory.spreadsheets.sheets import write_csv
from safety.models import DataSheet, SheetVersion
from tests.browser.conftest import Site, cookies

WIDTHS = ((1280, 900), (800, 1280), (360, 740))
# Another suite's rules, or a third party's pages; ours are those with a name in a namespace.
NOT_OURS = {"admin"}


def bottle(shop: Shop) -> str:
    """Return the open coating that dies tomorrow: its page has the most on it."""
    return Container.objects.get(shop=shop, lots__number="TW-2291").code


def finding(shop: Shop) -> tuple[str, str, str]:
    """Return a job with an ask that a word can answer, the finding's code and what it is about."""
    jobs = Job.objects.filter(shop=shop, state="open").select_related("shop", "vehicle")
    for job, verdict in verdicts(shop, timezone.now(), jobs).items():
        for one in verdict.check.findings:
            if one.code in {"past_estimate", "too_little"}:
                return job, one.code, " ".join(one.about)
    raise AssertionError("no booked job of the demo has a question to answer")


def asked(shop: Shop) -> str:
    """Return the address of the page that answers an ask."""
    job, code, about = finding(shop)
    return reverse("precheck:answer", args=[job, code]) + f"?about={about.replace(' ', '+')}"


def job(shop: Shop, title: str = "correction") -> Job:
    """Return a booked job by how its title begins."""
    return Job.objects.filter(shop=shop, state="open", title__startswith=title).order_by("starts_at")[0]


def bay(shop: Shop) -> str:
    """Return the code of bay 2."""
    return Place.objects.get(shop=shop, name="Bay 2").code


def measured(shop: Shop) -> AirMeasurement:
    """Return what was measured of the panel wipe."""
    return AirMeasurement.objects.get(place__shop=shop)


def product(shop: Shop) -> Product:
    """Return the coating of which two lots are here."""
    return Product.objects.get(shop=shop, name="Tidewall coating")


def service(shop: Shop) -> Service:
    """Return the service with the most steps."""
    return Service.objects.get(shop=shop, name="Correction and two-layer coating")


def sheet(shop: Shop) -> int:
    """Return the sheet of the coating."""
    sheet = product(shop).sheet
    assert isinstance(sheet, DataSheet)
    return sheet.pk


def tomas() -> str:
    """Return the badge of who has the fullest record."""
    return Person.objects.get(username="tomas").code


def gloves(shop: Shop) -> str:
    """Return the product that protects hands."""
    return Product.objects.get(shop=shop, equipment__serves="gloves").code


def brought(shop: Shop) -> str:
    """Return the preview of a file that somebody brings: the suppliers as they are, and a new one."""
    now = timezone.now()
    table, rows = queries.export(shop, "suppliers", now)
    more = [list(row) for row in rows]
    more.append(["Merrow Coatings", *more[0][1:]])
    file = actions.keep(
        Person.objects.get(username="ines"), "suppliers", "suppliers.csv", write_csv(table.heads, more), now
    )
    return reverse("spreadsheets:preview", args=[file.token])


Address = Callable[[Shop], str]
# Pages: their name, and the address on the demo's shop that shows the most.
PAGES: dict[str, Address] = {
    "today:home": lambda shop: reverse("today:home"),
    "people:list": lambda shop: reverse("people:list"),
    "people:login": lambda shop: reverse("people:login"),
    "people:new": lambda shop: reverse("people:new"),
    "people:first_day": lambda shop: reverse("people:first_day"),
    "people:cans": lambda shop: reverse("people:cans"),
    "people:protection": lambda shop: reverse("people:protection"),
    "people:new_equipment": lambda shop: reverse("people:new_equipment"),
    "people:equipment": lambda shop: reverse("people:equipment", args=[gloves(shop)]),
    "people:minutes": lambda shop: reverse("people:minutes", args=[gloves(shop)]),
    "people:person": lambda shop: reverse("people:person", args=[tomas()]),
    "people:training": lambda shop: reverse("people:training", args=[tomas()]),
    "people:evaluation": lambda shop: reverse("people:evaluation", args=[tomas()]),
    "people:fit_test": lambda shop: reverse("people:fit_test", args=[tomas()]),
    "people:face": lambda shop: reverse("people:face", args=[tomas()]),
    "people:edit": lambda shop: reverse("people:edit", args=[Person.objects.get(username="tomas").code]),
    "posters:list": lambda shop: reverse("posters:list"),
    "posters:place": lambda shop: reverse("posters:place", args=[bay(shop)]),
    "posters:card": lambda shop: reverse("posters:card", args=[product(shop).code]),
    "posters:chemicals": lambda shop: reverse("posters:chemicals", args=[shop.slug]),
    "posters:labels_pdf": lambda shop: reverse("posters:labels_pdf") + f"?codes={bottle(shop)}",
    "posters:label_pdf": lambda shop: reverse("posters:label_pdf", args=[bottle(shop)]),
    "safety:sheets": lambda shop: reverse("safety:sheets"),
    "safety:sheet": lambda shop: reverse("safety:sheet", args=[sheet(shop)]),
    "safety:new_sheet": lambda shop: reverse("safety:new_sheet"),
    "safety:new_version": lambda shop: reverse("safety:new_version", args=[sheet(shop)]),
    "safety:section_3": lambda shop: reverse(
        "safety:section_3", args=[sheet(shop), SheetVersion.objects.filter(sheet=sheet(shop)).latest("id").pk]
    ),
    "precheck:rules": lambda shop: reverse("precheck:rules"),
    "precheck:regrade": lambda shop: reverse("precheck:regrade", args=["wait.recoat"]),
    "scan:station": lambda shop: reverse("scan:station"),
    "scan:stations": lambda shop: reverse("scan:stations"),
    "scan:enrol": lambda shop: reverse("scan:enrol"),
    "shelf:list": lambda shop: reverse("shelf:list"),
    "shelf:container": lambda shop: reverse("shelf:container", args=[bottle(shop)]),
    "shelf:count": lambda shop: reverse("shelf:count", args=[bottle(shop)]),
    "shelf:move": lambda shop: reverse("shelf:move", args=[bottle(shop)]),
    "shelf:discard": lambda shop: reverse("shelf:discard", args=[bottle(shop)]),
    "shelf:hold": lambda shop: reverse("shelf:hold", args=[bottle(shop)]),
    "shelf:release": lambda shop: reverse("shelf:release", args=[held(shop)]),
    "shelf:correct": lambda shop: reverse("shelf:correct", args=[bottle(shop)]),
    "shelf:retest": lambda shop: reverse("shelf:retest", args=[bottle(shop)]),
    "bays:list": lambda shop: reverse("bays:list"),
    "bays:bay": lambda shop: reverse("bays:bay", args=[bay(shop)]),
    "bays:air": lambda shop: reverse("bays:air", args=[bay(shop)]),
    "bays:exhaust": lambda shop: reverse("bays:exhaust", args=[bay(shop)]),
    "bays:measure": lambda shop: (
        reverse("bays:measure", args=[bay(shop)]) + f"?product={measured(shop).product.code}"
    ),
    "bays:measurement": lambda shop: reverse(
        "bays:measurement", args=[measured(shop).place.code, measured(shop).pk]
    ),
    "bays:step": lambda shop: reverse("bays:step", args=[job(shop).steps.get(name="Panel wipe").code]),
    "products:list": lambda shop: reverse("products:list"),
    "products:new": lambda shop: reverse("products:new"),
    "products:product": lambda shop: reverse("products:product", args=[product(shop).code]),
    "products:edit": lambda shop: reverse("products:edit", args=[product(shop).code]),
    "products:profile": lambda shop: reverse("products:profile", args=[product(shop).code]),
    "products:edit_profile": lambda shop: reverse("products:edit_profile", args=[product(shop).code]),
    "products:sheet": lambda shop: reverse("products:sheet", args=[product(shop).code]),
    "products:new_pack": lambda shop: reverse("products:new_pack", args=[product(shop).code]),
    "products:edit_pack": lambda shop: reverse(
        "products:edit_pack", args=[product(shop).code, product(shop).packs.get().pk]
    ),
    "settings:home": lambda shop: reverse("settings:home"),
    "settings:shop": lambda shop: reverse("settings:shop"),
    "settings:new_place": lambda shop: reverse("settings:new_place"),
    "settings:place": lambda shop: reverse("settings:place", args=[bay(shop)]),
    "settings:new_supplier": lambda shop: reverse("settings:new_supplier"),
    "settings:supplier": lambda shop: reverse(
        "settings:supplier", args=[Supplier.objects.filter(shop=shop)[0].pk]
    ),
    "precheck:job": lambda shop: reverse("precheck:job", args=[job(shop).code]),
    "precheck:answer": asked,
    "jobs:list": lambda shop: reverse("jobs:list"),
    "jobs:book": lambda shop: reverse("jobs:book"),
    "jobs:services": lambda shop: reverse("jobs:services"),
    "jobs:new_service": lambda shop: reverse("jobs:new_service"),
    "jobs:service": lambda shop: reverse("jobs:service", args=[service(shop).pk]),
    "jobs:new_service_step": lambda shop: reverse("jobs:new_service_step", args=[service(shop).pk]),
    "jobs:service_step": lambda shop: reverse(
        "jobs:service_step", args=[service(shop).pk, service(shop).steps.all()[0].pk]
    ),
    "jobs:job": lambda shop: reverse("jobs:job", args=[job(shop).code]),
    "jobs:edit": lambda shop: reverse("jobs:edit", args=[job(shop).code]),
    "jobs:move": lambda shop: reverse("jobs:move", args=[job(shop).code]),
    "jobs:close": lambda shop: reverse("jobs:close", args=[job(shop, "maintenance").code]),
    "jobs:panels": lambda shop: reverse("jobs:panels", args=[job(shop).code]),
    "jobs:edit_panels": lambda shop: reverse("jobs:edit_panels", args=[job(shop).code]),
    "jobs:read_panels": lambda shop: reverse("jobs:read_panels", args=[job(shop).code]),
    "jobs:arrivals": lambda shop: reverse("jobs:arrivals", args=[job(shop).code]),
    "jobs:new_step": lambda shop: reverse("jobs:new_step", args=[job(shop).code]),
    "jobs:step": lambda shop: reverse("jobs:step", args=[job(shop).code, job(shop).steps.all()[0].code]),
    "reorder:orders": lambda shop: reverse("reorder:orders"),
    "reorder:report": lambda shop: reverse("reorder:report"),
    "reorder:order": lambda shop: reverse(
        "reorder:order", args=[Order.objects.filter(shop=shop, state="placed")[0].code]
    ),
    "spreadsheets:preview": brought,
    "spreadsheets:home": lambda shop: reverse("spreadsheets:home"),
}
PRESSED = "is pressed on a page, not opened"
FILE = "is a file; test_journeys.py and the tests of its feature read it"
# Addresses that are no pages, and why.
NO_PAGE = {
    "settings:open": "is shown once, to the first owner of an installation without a shop",
    "people:logout": PRESSED,
    "people:remove_name": PRESSED,
    "people:ran": PRESSED,
    "people:rags": PRESSED,
    "people:emptied": PRESSED,
    "people:forget_equipment": PRESSED,
    "people:sign_first_day": PRESSED,
    "people:first_day_pdf": FILE,
    "posters:print": PRESSED,
    "posters:admit": PRESSED,
    "posters:withdraw": PRESSED,
    "posters:badges_pdf": FILE,
    "posters:cards_pdf": FILE,
    "posters:weather_pdf": FILE,
    "posters:sheets_pdf": FILE,
    "posters:card_pdf": FILE,
    "posters:cabinet_pdf": FILE,
    "posters:chemicals_pdf": FILE,
    "bays:read": PRESSED,
    "bays:spark": PRESSED,
    "bays:end_exhaust": PRESSED,
    "bays:withdraw": PRESSED,
    "safety:sheet_pdf": FILE,
    "safety:pictogram": "is a picture on other pages",
    "safety:confirm": PRESSED,
    "scan:say": PRESSED,
    "scan:revoke": PRESSED,
    "scan:settled": PRESSED,
    "shelf:understood": "is a line inside a form: what was understood of an amount",
    "shelf:take_back": PRESSED,
    "shelf:washed": PRESSED,
    "shelf:undo_washed": PRESSED,
    "precheck:sign": PRESSED,
    "products:follow_kind": PRESSED,
    "products:confirm_groups": PRESSED,
    "jobs:remove_service_step": PRESSED,
    "jobs:archive_service": PRESSED,
    "jobs:cancel": PRESSED,
    "jobs:book_again": PRESSED,
    "jobs:sign": PRESSED,
    "jobs:sign_rinse": PRESSED,
    "jobs:remove_step": PRESSED,
    "jobs:usual_panels": PRESSED,
    "jobs:undo_reading": PRESSED,
    "reorder:download": FILE,
    "reorder:place": PRESSED,
    "reorder:place_draft": PRESSED,
    "reorder:postpone": PRESSED,
    "reorder:close_rest": PRESSED,
    "reorder:cancel": PRESSED,
    "spreadsheets:download": FILE,
    "spreadsheets:bring": PRESSED,
    "spreadsheets:leave": PRESSED,
}
# The station is black by design, and its own look does not follow the system.
BAY = {"scan:station"}


def held(shop: Shop) -> str:
    """Return a bottle that is held."""
    return Container.objects.get(shop=shop, held="frozen").code


def named(resolver: URLResolver, space: str = "") -> Iterator[str]:
    """Yield the name of every address of ours, with its namespace."""
    for entry in resolver.url_patterns:
        if isinstance(entry, URLPattern):
            if entry.name and space:
                yield f"{space}:{entry.name}"
        elif entry.namespace not in NOT_OURS:
            yield from named(entry, entry.namespace or space)


def test_every_address_of_the_site_is_looked_at_or_has_a_reason_not_to_be() -> None:
    known = {*PAGES, *NO_PAGE}
    assert {"missing": set(named(get_resolver())) - known, "gone": known - set(named(get_resolver()))} == {
        "missing": set(),
        "gone": set(),
    }
    assert set(PAGES) & set(NO_PAGE) == set()


@pytest.fixture(scope="module")
def looked(browser: Any, demo_site: Site) -> Iterator[Callable[[str], Any]]:
    """Open a page as its owner, or as nobody; return it with the list that collects its complaints."""
    context = browser.new_context(reduced_motion="reduce")
    context.add_cookies(cookies("ines", demo_site.url))
    nobody = browser.new_context(reduced_motion="reduce")

    def opened(name: str) -> Any:
        page = (nobody if name == "people:login" else context).new_page()
        page.complaints = []
        page.on("console", lambda message: _heard(page, message))
        page.on("pageerror", lambda error: page.complaints.append(str(error)))
        page.on("request", lambda request: _left(page, request.url, demo_site.url))
        answer = page.goto(demo_site.url + PAGES[name](demo_site.shop))
        assert answer.status == 200, page.inner_text("body")[:400]
        return page

    yield opened
    context.close()
    nobody.close()


def _heard(page: Any, message: Any) -> None:
    if message.type in {"error", "warning"} or "Content Security Policy" in message.text:
        page.complaints.append(message.text)


def _left(page: Any, url: str, home: str) -> None:
    if not url.startswith((home, "data:", "blob:")):
        page.complaints.append(f"asks outside: {url}")


def broken(page: Any) -> list[str]:
    """Return what axe finds, one line a violation, with the first element that shows it."""
    found = Axe().run(page).response["violations"]
    return [
        f"{one['id']}: {one['help']}: {len(one['nodes'])} times, first {one['nodes'][0]['html'][:160]} "
        f"{one['nodes'][0].get('failureSummary', '')[:200]}"
        for one in found
    ]


def too_wide(page: Any) -> list[str]:
    """Return how much wider than the screen a page is, and what sticks out; nothing if it fits."""
    over = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    if over <= 0:
        return []
    out = page.evaluate(
        "[...document.querySelectorAll('main *')].filter(e => e.getBoundingClientRect().right > innerWidth)"
        ".slice(0, 3).map(e => e.tagName + '.' + e.className + ' ' + e.textContent.slice(0, 40))"
    )
    return [f"{over} px wider than {page.viewport_size['width']}: {out}"]


@pytest.mark.parametrize("name", sorted(PAGES))
def test_a_page_is_whole_on_every_screen_and_in_every_look(name: str, looked: Callable[[str], Any]) -> None:
    page = looked(name)
    problems: dict[str, list[str]] = {}
    for width, height in WIDTHS:
        page.set_viewport_size({"width": width, "height": height})
        problems[f"light, {width}"] = [*broken(page), *too_wide(page)]
    if name not in BAY:
        page.emulate_media(color_scheme="dark")
        problems["dark, 360"] = broken(page)
    problems["console"] = page.complaints
    assert {screen: found for screen, found in problems.items() if found} == {}
    assert page.locator("h1").count() == 1
    assert page.title().strip()
    page.close()


def test_a_fault_on_a_page_is_found(page: Any) -> None:
    page.set_content(
        '<!doctype html><html lang="en"><title>Faults</title><main><h1>Faults</h1>'
        '<img src="data:,"><p class="wide">wide</p></main></html>'
    )
    page.evaluate("document.querySelector('.wide').style.width = '3000px'")
    assert [line.split(":")[0] for line in broken(page)] == ["image-alt"]
    assert too_wide(page)[0].endswith("['P.wide wide']")
