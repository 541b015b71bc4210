"""The report's page and files over the real ledger. It is noon on Wednesday 25 November 2026."""

import csv
import io
import json
from datetime import date

import pypdfium2
import pytest
from django.urls import reverse
from openpyxl import load_workbook

from inventory.models import Order, OrderLine, Product, Supplier
from tests.inventory.reorder.used_shop import pack_of, used_shop
from tests.world import LITRE, NOON, TODAY, World, larkmoor, pack, product

pytestmark = pytest.mark.django_db
REPORT = "reorder:report"


@pytest.fixture
def world(monkeypatch) -> World:
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)
    return used_shop()


@pytest.fixture
def tomas(client, world):
    client.force_login(world.tomas)
    return client


def text(response) -> str:
    return response.content.decode()


def form(world: World, key: str = "0001", **packs: object) -> dict[str, object]:
    """Return what the form of Orlo Supply posts: wipe=3, coating=6."""
    names = {"wipe": "Hollin panel wipe", "coating": "Tidewall coating"}
    prefix = f"from{world.orlo.pk}"
    fields = {f"{prefix}-pack_{pack_of(names[name]).pk}": number for name, number in packs.items()}
    return {f"{prefix}-key": key, **fields}


def place(client, world: World, **posted: object):
    return client.post(reverse("reorder:place", args=[world.orlo.pk]), form(world, **posted))


def test_nobody_reads_the_orders_without_signing_in(client, world):
    for name in ("reorder:orders", REPORT):
        assert client.get(reverse(name)).headers["Location"].startswith(reverse("people:login"))


def test_a_viewer_reads_the_report_and_may_not_place_it(client, world):
    client.force_login(world.wren)
    page = client.get(reverse(REPORT), {"month": "2026-11"})
    assert page.status_code == 200
    assert "Hollin panel wipe" in text(page)
    assert "Mark as placed" not in text(page)
    assert place(client, world, wipe=3).status_code == 403
    assert not Order.objects.exists()


def test_another_shops_order_and_supplier_are_not_found(tomas, world):
    other = larkmoor("farrow")
    theirs = Order.objects.create(shop=other.shop, supplier=other.orlo)
    assert tomas.get(reverse("reorder:order", args=[theirs.code])).status_code == 404
    assert tomas.post(reverse("reorder:place", args=[other.orlo.pk]), {}).status_code == 404


def test_a_pack_of_another_supplier_is_left_out_of_an_order(tomas, world):
    second = Supplier.objects.create(shop=world.shop, name="Pellow Trade")
    theirs = pack(product(world, "Sorrel wax", "wax", supplier=second), LITRE)
    posted = form(world, wipe=3) | {f"from{world.orlo.pk}-pack_{theirs.pk}": 9}
    tomas.post(reverse("reorder:place", args=[world.orlo.pk]), posted)
    assert [line.pack.product.name for line in OrderLine.objects.all()] == ["Hollin panel wipe"]


@pytest.mark.parametrize(
    ("month", "says"),
    [
        ("2026-13", "“2026-13” is no month: write it as YYYY-MM, 2026-11 for this one."),
        ("2026-10", "October 2026 ended before 25 November 2026. Ask for 2026-11 or a later month."),
    ],
)
def test_a_month_that_cannot_be_asked_for_is_refused_with_one_that_can(tomas, month, says):
    page = tomas.get(reverse(REPORT), {"month": month})
    assert page.status_code == 400
    assert says in text(page)
    file = tomas.get(reverse("reorder:download", args=["csv"]), {"month": month})
    assert (file.status_code, text(file)) == (400, says)


def test_only_four_kinds_of_file_are_made(tomas):
    assert tomas.get(reverse("reorder:download", args=["docx"])).status_code == 404


@pytest.mark.parametrize(
    ("packs", "says"),
    [
        ({"wipe": 0, "coating": 0}, "Nothing is ordered: give at least one pack."),
        ({"coating": 7}, "It is sold by 6: give 6 or 12."),
        ({"coating": 1}, "It is sold by 6: give 6."),
        ({"wipe": -1}, "Ensure this value is greater than or equal to 0."),
        ({"wipe": "many"}, "Give a whole number."),
        ({"wipe": ""}, "Give a number, 0 to leave it out."),
        ({"wipe": 10_000}, "Ensure this value is less than or equal to 9999."),
    ],
)
def test_an_order_that_cannot_be_placed_says_why_and_writes_nothing(tomas, world, packs, says):
    page = place(tomas, world, **packs)
    assert page.status_code == 422
    assert says in text(page)
    assert not Order.objects.exists()


def test_what_was_typed_stays_when_an_order_is_refused(tomas, world):
    page = text(place(tomas, world, wipe=41, coating=7))
    assert 'value="41"' in page
    assert 'value="7"' in page


def test_an_order_is_placed_today_and_due_after_the_slowest_product(tomas, world):
    product_ = pack_of("Tidewall coating").product
    product_.lead_days = 9
    product_.save()
    answer = place(tomas, world, wipe=4, coating=6)

    order = Order.objects.get()
    assert answer.headers["Location"] == reverse("reorder:order", args=[order.code])
    assert (order.state, order.placed_on, order.due_on) == ("placed", TODAY, date(2026, 12, 4))
    assert order.placed_by == world.tomas
    lines = order.lines.order_by("pack__product__name").values_list("packs", "price_minor")
    assert list(lines) == [(4, 1_450), (6, 5_500)]


def test_a_product_at_nought_is_left_out(tomas, world):
    place(tomas, world, wipe=4, coating=0)
    assert [line.pack.product.name for line in OrderLine.objects.all()] == ["Hollin panel wipe"]


def test_pressing_twice_orders_once(tomas, world):
    first, second = (place(tomas, world, key="same", wipe=4) for _ in range(2))
    assert first.headers["Location"] == second.headers["Location"]
    assert Order.objects.count() == 1


def test_another_key_is_another_order(tomas, world):
    for key in ("one", "two"):
        place(tomas, world, key=key, wipe=4)
    assert Order.objects.count() == 2


def test_one_key_with_other_numbers_adds_nothing(tomas, world):
    place(tomas, world, key="same", wipe=4)
    answer = tomas.post(
        reverse("reorder:place", args=[world.orlo.pk]), form(world, key="same", wipe=5), follow=True
    )
    assert "This order was placed already, with other numbers. Nothing was added to it." in text(answer)
    assert OrderLine.objects.get().packs == 4


def test_the_report_leads_with_one_sentence_and_says_why_of_every_product(tomas, world):
    page = text(tomas.get(reverse(REPORT), {"month": "2026-11"}))
    assert "Order 2 products from 1 supplier for €359.00, the first today." in page
    assert "2 products, €359.00." in page
    assert (
        "Empty on 28 November; lead time 6 days: ordered today it comes 3 days late, on 1 December." in page
    )
    assert page.count('<svg class="chart"') == 4, "two products, each for a wide and for a narrow screen"


def test_a_placed_order_counts_and_the_report_orders_nothing_more(tomas, world):
    place(tomas, world, wipe=3, coating=6)
    page = text(tomas.get(reverse(REPORT), {"month": "2026-11"}))
    assert "Nothing to order: what is on hand and on order is enough." in page

    Order.objects.update(state=Order.State.CANCELLED)
    page = text(tomas.get(reverse(REPORT), {"month": "2026-11"}))
    assert "Order 2 products from 1 supplier for €359.00, the first today." in page


def test_the_four_files_say_the_same_numbers(tomas, world):
    files = {
        kind: tomas.get(reverse("reorder:download", args=[kind]), {"month": "2026-11"})
        for kind in ("json", "csv", "xlsx", "pdf")
    }
    assert files["pdf"].headers["Content-Disposition"] == 'attachment; filename="orders-2026-11.pdf"'
    assert files["csv"].headers["Content-Type"] == "text/csv; charset=utf-8"

    document = json.loads(files["json"].content)
    assert document["total_minor"] == 35_900
    rows = list(csv.DictReader(io.StringIO(files["csv"].content.decode("utf-8-sig"))))
    assert [(row["Product"], row["Packs to order"], row["Cost (EUR)"]) for row in rows] == [
        ("Tidewall coating", "6", "330.0"),
        ("Hollin panel wipe", "2", "29.0"),
    ]
    sheet = load_workbook(io.BytesIO(files["xlsx"].content))["Order"]
    head = [cell.value for cell in sheet[1]]
    assert sheet.cell(4, head.index("Cost (EUR)") + 1).value == 359
    read = pypdfium2.PdfDocument(files["pdf"].content)
    assert "€359.00" in read[0].get_textpage().get_text_range()
    assert [round(side) for side in read[0].get_size()] == [595, 842], "A4 in Britain"


def test_an_american_shop_prints_on_letter(tomas, world):
    world.shop.country = "US"
    world.shop.save()
    read = pypdfium2.PdfDocument(tomas.get(reverse("reorder:download", args=["pdf"])).content)
    assert [round(side) for side in read[0].get_size()] == [612, 792]


def test_products_without_a_supplier_are_shown_and_cannot_be_placed(tomas, world):
    Product.objects.update(supplier=None)
    page = text(tomas.get(reverse(REPORT), {"month": "2026-11"}))
    assert "No supplier yet" in page
    assert "Nobody sells these yet." in page
    assert "Mark as placed" not in page
