"""The report as workbook and as comma-separated text (RFC 4180, UTF-8 with BOM, ISO 8601 dates).

Text cells are guarded against being run as formulas; numbers and dates are real ones.
"""

import csv
import re
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from io import BytesIO, StringIO

from openpyxl import Workbook
from openpyxl.cell.cell import Cell
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from inventory.cells import guard
from inventory.money import minor_digits
from inventory.reorder.charts import weeks
from inventory.reorder.rules import Line, Report, words
from inventory.reorder.sheets.columns import Value, columns, in_currency

# Control characters that no workbook may hold (XML 1.0).
FORBIDDEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]")
WEEK_COLUMNS = ("Without this order", "Short in the week", "Comes", "Expires", "With this order")
WIDE = {"Because": 60, "Says": 60, "Product": 26, "Supplier": 26, "What": 26}
STRONG, TOP, WRAPPED = Font(bold=True), Alignment(vertical="top"), Alignment(vertical="top", wrap_text=True)


def report_csv(report: Report) -> bytes:
    """Return the lines to order as comma-separated text; an empty cell means unknown, or none."""
    into = StringIO()
    writer = csv.writer(into, lineterminator="\r\n")
    shape = columns(report.currency)
    writer.writerow([name for name, _ in shape])
    for line in report.lines:
        writer.writerow([_plain(read(line)) for _, read in shape])
    return into.getvalue().encode("utf-8-sig")


def _plain(value: Value) -> str | int | float | None:
    return value.isoformat() if isinstance(value, date) else guard(value)


def report_xlsx(report: Report) -> bytes:
    """Return a workbook: Order (what to buy), All products, Stock to come (a row a week), About."""
    book = Workbook()
    book.remove(book.worksheets[0])
    everything = [line for order in report.orders for line in (*order.lines, *order.enough)]
    shape = columns(report.currency)
    names = [name for name, _ in shape]
    money = _money_format(report.currency)
    for title, lines in (("Order", report.lines), ("All products", everything)):
        rows = [[read(line) for _, read in shape] for line in lines]
        _fill_sheet(
            book.create_sheet(title), names, rows, {name: money for name in names if report.currency in name}
        )
    _total(book["Order"], names.index(f"Cost ({report.currency})") + 1, report)
    week_names = ["Code", "Product", "Unit", "End of", *(f"{name} (in Unit)" for name in WEEK_COLUMNS)]
    _fill_sheet(book.create_sheet("Stock to come"), week_names, _week_rows(everything))
    _fill_sheet(book.create_sheet("About"), ["What", "Says"], _about(report))
    into = BytesIO()
    book.save(into)
    return into.getvalue()


def _money_format(currency: str) -> str:
    digits = minor_digits(currency)
    return "#,##0" + (f".{'0' * digits}" if digits else "")


def _week_rows(lines: Iterable[Line]) -> Iterator[list[Value]]:
    for line in lines:
        dimension = line.product.dimension
        said: list[Value] = [line.product.code, line.product.name, words.COLUMN_UNITS[dimension][1]]
        for week in weeks(line):
            figures = (week.level, week.short, week.comes, week.expires, week.level_with_order)
            yield [*said, week.on, *(words.column_number(base, dimension) for base in figures)]


def _about(report: Report) -> list[list[Value]]:
    orders: list[list[Value]] = [[order.supplier.name, order.says] for order in report.orders]
    return [
        ["Shop", report.shop],
        ["Month", f"{report.month:%Y-%m}"],
        ["Made on", report.made_on],
        ["Summary", report.says],
        *orders,
        ["Cycle service (share)", report.service],
        ["Ledger head", report.chain_head],
    ]


def _fill_sheet(
    sheet: Worksheet, names: list[str], rows: Iterable[list[Value]], formats: dict[str, str] | None = None
) -> None:
    """Write heads and rows; `formats` names the number format of some columns."""
    sheet.freeze_panes = "A2"
    for column, name in enumerate(names, 1):
        _put(sheet, 1, column, name).font = STRONG
        sheet.column_dimensions[get_column_letter(column)].width = WIDE.get(name, 15)
    for number, values in enumerate(rows, 2):
        for column, (name, value) in enumerate(zip(names, values, strict=True), 1):
            cell = _put(sheet, number, column, value)
            if formats and name in formats:
                cell.number_format = formats[name]


def _total(sheet: Worksheet, column: int, report: Report) -> None:
    row = sheet.max_row + 1
    _put(sheet, row, 1, "Together").font = STRONG
    cell = _put(sheet, row, column, in_currency(report.total_minor, report.currency))
    cell.font, cell.number_format = STRONG, _money_format(report.currency)


def _put(sheet: Worksheet, row: int, column: int, value: Value) -> Cell:
    """Put a value in: text always as text, a day as a real date, a number as a real number."""
    cell = sheet.cell(row, column)
    assert isinstance(cell, Cell)
    cell.alignment = WRAPPED if isinstance(value, str) else TOP
    if isinstance(value, str):
        cell.value = FORBIDDEN.sub("\ufffd", guard(value))
        cell.data_type = "s"
    elif isinstance(value, date):
        # A workbook's dates have no zone.
        cell.value = datetime.combine(value, time())
        cell.number_format = "yyyy-mm-dd"
    else:
        cell.value = value
    return cell
