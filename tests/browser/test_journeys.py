"""A day at the shop in Chromium: the scanner is a keyboard that types fast and ends with Enter.

What the check, the posters and the report show is the demo's shop; what is scanned was put on its shelf here,
so that every sentence is known to the letter.
"""

import io
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
import zxingcpp
from django.urls import reverse
from django.utils import timezone
from openpyxl import load_workbook

from inventory.codes import code_of, pair
from inventory.models import Container, Job, Kind, Movement, Pack, Person, Place, Product, Shop, Step, Vehicle
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from tests.browser.conftest import Site, cookies

GTIN = "09520000002008"
ML = 1_000
MM_A_POINT = 25.4 / 72


@pytest.fixture
def signed_in(open_page: Any, demo_site: Site) -> Any:
    """Return a function that opens a page on a screen, signed in as somebody."""

    def opened(username: str, screen: str = "desktop") -> Any:
        page = open_page(screen)
        page.context.add_cookies(cookies(username, demo_site.url))
        return page

    return opened


@pytest.fixture
def wipe(demo_site: Site) -> Product:
    """A product of which nothing is here yet: Saltmere glass wipe, in bottles of 500 ml."""
    shop = demo_site.shop
    made = Product.objects.create(
        shop=shop, name="Saltmere glass wipe", kind=Kind.SOLVENT, dimension="volume", needs_sheet=False
    )
    Pack.objects.create(product=made, amount=500 * ML, gtin=GTIN)
    return made


def bottle_of(product: Product, shop: Shop, expires_on: date) -> Container:
    """Receive a bottle with a printed date into the store, ten days ago."""
    store = Place.objects.get(shop=shop, name="Store")
    new = NewBottle(product.code, 500 * ML, lot=LotFacts(f"S-{expires_on:%j}", expires_on))
    at = timezone.now() - timedelta(days=10)
    act = Act("receive", at, new=new, amount=500 * ML, place=store.code)
    written = ledger.record(shop, [act], by=Person.objects.get(username="tomas"), recorded_at=at)
    bottle = written[0].target
    assert bottle is not None
    return bottle


def scan(page: Any, line: str) -> str:
    """Type as a scanner does, and return the sentence that answers."""
    with page.expect_response("**/scan/say/"):
        page.keyboard.type(line)
        page.keyboard.press("Enter")
    page.wait_for_function("!document.querySelector('[data-says]').textContent.startsWith('Heard ')")
    return str(page.inner_text("[data-says]"))


def graded(page: Any) -> str:
    """Return the grade of the answer on the screen."""
    return str(page.get_attribute("#station", "data-grade"))


def printed(page: Any, form: str) -> bytes:
    """Return the PDF that a form's button makes; Chromium would open it in a viewer of its own."""
    sent = page.locator(form).first.evaluate("form => Object.fromEntries(new FormData(form))")
    where = page.locator(form).first.evaluate("form => form.action")
    answer = page.request.post(where, form=sent, headers={"Referer": page.url})
    assert answer.status == 200, answer.text()[:400]
    assert answer.headers["content-type"] == "application/pdf"
    return bytes(answer.body())


def codes_on(pdf: bytes) -> list[str]:
    """Return what a scanner reads from the first page, printed at 200 dpi."""
    page = pypdfium2.PdfDocument(pdf)[0]
    picture = page.render(scale=200 / 72).to_pil().convert("L")
    return [found.text for found in zxingcpp.read_barcodes(picture)]


def size_in_mm(pdf: bytes) -> tuple[int, int]:
    """Return the size of the first page."""
    width, height = pypdfium2.PdfDocument(pdf)[0].get_size()
    return round(width * MM_A_POINT), round(height * MM_A_POINT)


@pytest.mark.timeout(300)
def test_from_signing_in_to_taking_a_use_back_by_keyboard_and_scanner(
    page: Any, demo_site: Site, wipe: Product
) -> None:
    shop = demo_site.shop
    today = timezone.now().astimezone(shop.zone).date()
    died, lasts = today - timedelta(days=3), today + timedelta(days=60)
    dead = bottle_of(wipe, shop, died)
    tomas, store = Person.objects.get(username="tomas"), Place.objects.get(shop=shop, name="Store")
    car = Vehicle.objects.create(shop=shop, name="Yellow wagon")
    starts = timezone.now() - timedelta(minutes=5)
    job = Job.objects.create(
        shop=shop, vehicle=car, title="Glass", starts_at=starts, ends_at=starts + timedelta(hours=2),
        booked_at=starts,
    )  # fmt: skip
    plan = Step.objects.create(
        job=job, position=1, stage="wash", name="Glass", starts_at=starts, ends_at=starts + timedelta(hours=1)
    )
    plan.needs.create(product=wipe, amount=40 * ML)

    page.goto(f"{demo_site.url}{reverse('people:login')}?next={reverse('scan:enrol')}")
    page.focus("#id_username")
    page.keyboard.type("ines")
    page.keyboard.press("Tab")
    page.keyboard.type("clear coat")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**{reverse('scan:enrol')}")
    page.fill("#id_name", "Bay 2 tablet")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**{reverse('scan:station')}")
    assert page.inner_text("[data-says]") == "Scan your badge."

    assert scan(page, tomas.code) == "Hello Tomas."
    assert scan(page, f"]d201{GTIN}17{lasts:%y%m%d}10S-9001") == "Saltmere glass wipe: how many?"
    assert scan(page, "2") == "Where does the Saltmere glass wipe go?"
    received = scan(page, store.code)
    assert received == (
        f"Received 2 bottles of Saltmere glass wipe, lot S-9001, use by {lasts.day} {lasts:%B}, into Store."
    )
    new = Container.objects.filter(product=wipe, lots__number="S-9001").order_by("code")
    assert new.count() == 2
    scan(page, "done")

    assert scan(page, job.code) == "On Yellow wagon: wash."
    first = new[0]
    took = f"Saltmere glass wipe {first.code[:4]}: took 40 ml as planned, 460 ml left."
    assert scan(page, first.code) == took
    assert page.inner_text("[data-next]").startswith("That opened it.")
    assert graded(page) == "recorded"

    assert scan(page, dead.code) == (
        f"Saltmere glass wipe {dead.code[:4]} died on {died.day} {died:%B}: printed on it."
    )
    assert graded(page) == "stop"
    assert page.inner_text("[data-next]") == f"Empty it, or take {first.code[:4]} from Store."
    assert not Movement.objects.filter(source=dead).exists()
    page.click("[data-carry-on]")

    assert scan(page, code_of("undo")) == f"Taken back: 40 ml of Saltmere glass wipe {first.code[:4]}."
    first.refresh_from_db()
    assert first.content == 500 * ML


def booked(shop: Shop, title: str) -> Job:
    """Return the booked job whose title begins so."""
    return Job.objects.filter(shop=shop, state="open", title__startswith=title).order_by("starts_at")[0]


def test_a_check_says_its_stop_and_keeps_the_answer_to_its_ask(signed_in: Any, demo_site: Site) -> None:
    page = signed_in("ines")
    page.goto(demo_site.url + reverse("precheck:job", args=[booked(demo_site.shop, "wheels").code]))
    assert page.locator(".row", has_text="is recalled: cures cloudy, says its maker.").is_visible()
    assert page.locator("text=Sign: I read this, it is ready").count() == 0

    job = booked(demo_site.shop, "interior")
    page.goto(demo_site.url + reverse("precheck:job", args=[job.code]))
    row = page.locator(".row", has_text="Quell leather cream")
    row.get_by_role("link", name="Answer", exact=True).focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/answer/**")
    page.locator("textarea, input[type=text]").first.fill("No lumps, good on a test spot.")
    page.get_by_role("button", name="Keep my answer").focus()
    page.keyboard.press("Enter")
    page.wait_for_url(f"**{reverse('precheck:job', args=[job.code])}")
    assert page.locator(".row", has_text="Quell leather cream").locator(".lead").inner_text() == "Answered"
    kept = job.overrides.get()
    assert (kept.code, kept.reason, kept.by.name) == (
        "past_estimate",
        "No lumps, good on a test spot.",
        "Ines",
    )


def test_a_poster_is_printed_on_a3_with_a_code_that_opens_its_page(signed_in: Any, demo_site: Site) -> None:
    page, bay = signed_in("ines"), Place.objects.get(shop=demo_site.shop, name="Bay 1")
    page.goto(demo_site.url + reverse("posters:place", args=[bay.code]))
    pdf = printed(page, f"form[action='{reverse('posters:print', args=[bay.code])}']")
    assert pdf.startswith(b"%PDF-")
    assert sorted(size_in_mm(pdf)) == [297, 420]
    assert demo_site.url + reverse("posters:place", args=[bay.code]) in codes_on(pdf)
    page.goto(demo_site.url + reverse("posters:list"))
    row = page.locator(".row", has_text="Bay 1").first
    assert "version 1, printed" in row.inner_text()


def test_a_phone_on_the_shops_network_reads_the_poster_without_a_login(
    open_page: Any, demo_site: Site
) -> None:
    page, bay = open_page("phone"), Place.objects.get(shop=demo_site.shop, name="Bay 1")
    answer = page.goto(demo_site.url + reverse("posters:place", args=[bay.code]))
    assert answer.status == 200
    assert "Bay 1" in page.inner_text("h1")
    assert page.get_by_text("Brack wheel acid").first.is_visible()
    assert page.locator("form").count() == 0
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_the_report_is_downloaded_as_paper_and_as_a_workbook(signed_in: Any, demo_site: Site) -> None:
    page = signed_in("ines")
    page.goto(demo_site.url + reverse("reorder:report"))
    with page.expect_download() as paper:
        page.get_by_role("link", name="Print it (PDF)").click()
    with page.expect_download() as workbook:
        page.get_by_role("link", name="Workbook").click()
    pdf = Path(paper.value.path()).read_bytes()
    assert pdf.startswith(b"%PDF-")
    assert "Orlo Supply" in pypdfium2.PdfDocument(pdf)[0].get_textpage().get_text_bounded()
    cells = load_workbook(io.BytesIO(Path(workbook.value.path()).read_bytes())).active
    assert "Orlo tar remover" in {cell.value for row in cells.iter_rows() for cell in row}


def test_a_label_is_printed_and_reads_as_its_bottle(signed_in: Any, demo_site: Site) -> None:
    bare = Container.objects.get(shop=demo_site.shop, lots__number="MA-0902")
    page = signed_in("tomas")
    page.goto(demo_site.url + reverse("posters:label_pdf", args=[bare.code]))
    assert page.inner_text("h1") == f"Print the label of {pair(bare.code)}"
    pdf = printed(page, "form:has(button:text('Print the label'))")
    assert bare.code in codes_on(pdf)
    bare.refresh_from_db()
    assert bare.labelled_at is not None


@pytest.mark.parametrize(
    ("name", "arguments", "begins"),
    [
        ("posters:badges_pdf", [], b"%PDF-"),
        ("posters:cards_pdf", [], b"%PDF-"),
        ("reorder:download", ["csv"], b"\xef\xbb\xbf"),
        ("reorder:download", ["json"], b"{"),
        ("spreadsheets:download", ["products", "xlsx"], b"PK"),
        ("spreadsheets:download", ["products", "csv"], b"\xef\xbb\xbf"),
    ],
)
def test_every_other_file_is_what_its_name_says(
    signed_in: Any, demo_site: Site, name: str, arguments: list[str], begins: bytes
) -> None:
    answer = signed_in("ines").request.get(demo_site.url + reverse(name, args=arguments))
    assert answer.status == 200
    assert answer.body().startswith(begins)
