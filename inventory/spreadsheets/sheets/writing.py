"""A table becomes a file: text guarded against being run as a formula, numbers and days real ones."""

import csv
import re
from collections.abc import Iterable, Sequence
from datetime import date, datetime, time
from io import BytesIO, StringIO

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from inventory.cells import guard
from inventory.spreadsheets.rules.table import Cell

# Office Open XML writes what XML cannot hold, and a carriage return, as _x000D_; the pattern itself likewise.
ESCAPED = re.compile("_(?=x[0-9A-Fa-f]{4}_)|[\x00-\x08\x0b-\x1f\ufffe\uffff]")
WIDTH = 18


def write_csv(heads: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """Return comma-separated text as RFC 4180 has it, UTF-8 with BOM, ISO 8601 days."""
    into = StringIO(newline="")
    writer = csv.writer(into, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows([_plain(cell) for cell in row] for row in rows)
    return into.getvalue().encode("utf-8-sig")


def _plain(cell: Cell) -> Cell:
    return cell.isoformat() if isinstance(cell, date) else guard(cell)


def write_xlsx(heads: Sequence[str], rows: Iterable[Sequence[Cell]], title: str) -> bytes:
    """Return a workbook of one sheet."""
    book = Workbook(write_only=True)
    sheet = book.create_sheet(title)
    sheet.freeze_panes = "A2"
    for column in range(1, len(heads) + 1):
        sheet.column_dimensions[get_column_letter(column)].width = WIDTH
    sheet.append([_text(sheet, head, strong=True) for head in heads])
    for row in rows:
        sheet.append([_cell(sheet, cell) for cell in row])
    into = BytesIO()
    book.save(into)
    return into.getvalue()


def _cell(sheet: Worksheet, cell: Cell) -> object:
    if isinstance(cell, str):
        return _text(sheet, guard(cell)) if cell else None
    if isinstance(cell, date) and not isinstance(cell, datetime):
        day = WriteOnlyCell(sheet, datetime.combine(cell, time()))
        day.number_format = "yyyy-mm-dd"
        return day
    return cell


def _text(sheet: Worksheet, text: str, *, strong: bool = False) -> object:
    """Return a cell that is text whatever stands in it: "=1+1" and "#N/A" are words here."""
    cell = WriteOnlyCell(sheet, "")
    cell.value = ESCAPED.sub(lambda found: f"_x{ord(found[0]):04X}_", text)
    cell.data_type = "s"
    if strong:
        cell.font = Font(bold=True)
    return cell
