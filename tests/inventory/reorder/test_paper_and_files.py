"""The report read back from its files: what stands on paper and in cells is what the rules said."""

import csv
import json
from io import BytesIO, StringIO

import openpyxl
import pypdfium2
import pytest

from inventory.reorder.pdf import report_pdf
from inventory.reorder.rules import Stock, reorder_report
from inventory.reorder.sheets import report_csv, report_json, report_xlsx

from .shelf import CHAIN_HEAD, DECEMBER, MADE_ON, ML, december_report, product


def pages_of(pdf: bytes) -> list[str]:
    """Return the text of each page, its lines joined."""
    document = pypdfium2.PdfDocument(pdf)
    return [" ".join(page.get_textpage().get_text_range().split()) for page in document]


@pytest.mark.parametrize(
    ("paper", "width", "height", "sheets"),
    [("A4", 595.276, 841.89, 3), ("Letter", 612, 792, 4)],
    ids=["A4", "Letter"],
)
def test_the_paper_has_its_size_and_every_page_its_number_head_and_caution(
    paper, width, height, sheets
) -> None:
    pdf = report_pdf(december_report(), paper)
    for page in pypdfium2.PdfDocument(pdf):
        assert page.get_size() == pytest.approx((width, height), abs=0.01)
    pages = pages_of(pdf)
    assert len(pages) == sheets
    for number, text in enumerate(pages, 1):
        assert f"Page {number} of {sheets}" in text
        assert f"Ledger head {CHAIN_HEAD}" in text
        assert "The product's own label and data sheet, local codes and licensed practice come first." in text


def test_every_line_and_every_sentence_stands_on_paper() -> None:
    report = december_report()
    text = " ".join(pages_of(report_pdf(report)))
    assert "Orders for December 2026" in text
    assert report.says in text
    for order in report.orders:
        assert order.says in text
        for line in (*order.lines, *order.enough):
            assert line.product.name in text
            assert line.because in text
    for shown in (
        "3 × 50 ml bottle",
        "5 × bag of 5",
        "by 13 December",
        "€499.00",
        "not recorded",
        "0 = empty",
    ):
        assert shown in text


def test_a_name_with_marks_of_a_markup_language_prints_as_it_is() -> None:
    report = reorder_report(
        [product(name="<b>Hollin</b> & co")], "Larkmoor Works", DECEMBER, MADE_ON, "EUR", CHAIN_HEAD
    )
    assert "<b>Hollin</b> & co" in " ".join(pages_of(report_pdf(report)))


def test_a_report_with_nothing_to_order_says_so_on_one_page() -> None:
    enough = product(stock=(Stock(20_000 * ML),))
    report = reorder_report([enough], "Larkmoor Works", DECEMBER, MADE_ON, "EUR", CHAIN_HEAD)
    (page,) = pages_of(report_pdf(report))
    assert "Nothing to order: what is on hand and on order is enough." in page


def test_the_workbook_opens_again_with_real_and_equal_numbers() -> None:
    report = december_report()
    book = openpyxl.load_workbook(BytesIO(report_xlsx(report)))
    assert book.sheetnames == ["Order", "All products", "Stock to come", "About"]
    rows = list(book["Order"].values)
    heads = rows[0]
    read = [dict(zip(heads, row, strict=True)) for row in rows[1:-1]]
    assert len(read) == 7
    for row, line in zip(read, report.lines, strict=True):
        scale = 1 if row["Unit"] == "pieces" else 1000
        assert row["Usable on hand (in Unit)"] == pytest.approx(line.usable / scale, rel=1e-15)
        assert row["Order up to (in Unit)"] == pytest.approx(line.wanted.order_up_to / scale, rel=1e-15)
        assert row["Packs to order"] == line.packs
        assert row["Because"] == line.because
    assert read[0]["Product"] == "Tidewall coating"
    assert read[0]["Cost (EUR)"] == 240
    assert read[0]["Order by"].isoformat() == "2026-12-13T00:00:00"
    assert read[4]["Cost (EUR)"] is None, "the price of the pads is not recorded"
    assert dict(zip(heads, rows[-1], strict=True))["Cost (EUR)"] == 499
    weeks = list(book["Stock to come"].values)
    assert weeks[1][:3] == ("PCTLDWLL", "Tidewall coating", "ml")
    assert weeks[1][3].isoformat() == "2026-12-07T00:00:00"
    assert weeks[1][4] == pytest.approx(54)
    assert ("Ledger head", CHAIN_HEAD) in list(book["About"].values)


HOSTILE = '=HYPERLINK("http://example.invalid")'


def test_a_name_that_is_a_formula_is_text_in_every_file() -> None:
    report = reorder_report([product(name=HOSTILE)], "Larkmoor Works", DECEMBER, MADE_ON, "EUR", CHAIN_HEAD)
    cell = openpyxl.load_workbook(BytesIO(report_xlsx(report)))["Order"]["C2"]
    assert (cell.value, cell.data_type) == ("'" + HOSTILE, "s")
    rows = list(csv.DictReader(StringIO(report_csv(report).decode("utf-8-sig"))))
    assert rows[0]["Product"] == "'" + HOSTILE


def test_the_twin_without_the_guard_is_a_formula() -> None:
    book = openpyxl.Workbook()
    book.active["C2"] = HOSTILE
    kept = BytesIO()
    book.save(kept)
    assert openpyxl.load_workbook(kept).active["C2"].data_type == "f"


def test_a_control_character_in_a_name_does_not_break_the_workbook() -> None:
    report = reorder_report(
        [product(name="Hollin\x0bwipe")], "Larkmoor Works", DECEMBER, MADE_ON, "EUR", CHAIN_HEAD
    )
    assert openpyxl.load_workbook(BytesIO(report_xlsx(report)))["Order"]["C2"].value == "Hollin\ufffdwipe"


def test_the_comma_separated_text_keeps_its_standard() -> None:
    raw = report_csv(december_report())
    assert raw.startswith(b"\xef\xbb\xbfSupplier,Code,Product,Unit,Usable on hand (in Unit)")
    assert raw.count(b"\r\n") == 8, "a line a product and the heads"
    rows = list(csv.DictReader(StringIO(raw.decode("utf-8-sig"))))
    assert rows[0]["Order by"] == "2026-12-13"
    assert float(rows[0]["Cost (EUR)"]) == 240
    assert rows[4]["Cost (EUR)"] == ""
    assert float(rows[2]["Usable on hand (in Unit)"]) == 0


def test_the_document_carries_base_units_unrounded() -> None:
    report = december_report()
    document = json.loads(report_json(report))
    assert (document["month"], document["made_on"], document["currency"]) == ("2026-12", "2026-12-01", "EUR")
    assert document["ledger_head"] == CHAIN_HEAD
    assert document["total_minor"] == 49_900
    tidewall = document["suppliers"][0]["lines"][0]
    assert tidewall["unit"] == "µl"
    assert tidewall["usable"] == pytest.approx(68_000)
    assert tidewall["order_up_to"] == report.lines[0].wanted.order_up_to
    assert (tidewall["packs"], tidewall["pack"], tidewall["cost_minor"]) == (3, "TW50", 24_000)
    assert (tidewall["order_by_on"], tidewall["empty_on"]) == ("2026-12-13", "2026-12-22")
    assert tidewall["weeks"][0]["on"] == "2026-12-07"
    names = [line["product"] for line in document["suppliers"][1]["enough"]]
    assert names == ["Sorrel clay lubricant", "Verdigan glaze"]
