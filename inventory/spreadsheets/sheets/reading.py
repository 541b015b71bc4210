"""A file becomes a table of cells, within bounds; what it is follows from its first bytes, not its name."""

import csv
from collections.abc import Iterable, Iterator
from io import StringIO

from inventory.cells import unguard
from inventory.spreadsheets.rules.table import (
    Bounds,
    Cell,
    Row,
    Table,
    Unreadable,
    too_many_rows,
    too_wide,
)
from inventory.spreadsheets.sheets.workbook import read_workbook

ZIP, OLD_EXCEL = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"
SEPARATORS = ",;\t"


def read_table(data: bytes, bounds: Bounds | None = None) -> Table:
    """Return the table in a file of comma-separated text or an .xlsx workbook.

    Raises Unreadable, with the way out, before anything beyond the bounds is unpacked or read.
    """
    bounds = bounds or Bounds()
    if len(data) > bounds.bytes:
        raise Unreadable(f"The file is larger than {bounds.bytes // 2**20} MB. Split it into parts.")
    if data.startswith(OLD_EXCEL):
        raise Unreadable("This is an .xls workbook or a protected one. Save it as .xlsx without a password.")
    rows = read_workbook(data, bounds) if data.startswith(ZIP) else _text_rows(data, bounds)
    return _table(rows, bounds)


def _text_rows(data: bytes, bounds: Bounds) -> Iterator[list[Cell]]:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Unreadable(
            "The file is neither a workbook nor text in UTF-8. Save it as .xlsx, or as “CSV UTF-8”."
        ) from None
    reader = csv.reader(StringIO(text, newline=""), delimiter=_separator(text), strict=True)
    number = 0
    try:
        for row in reader:
            number += 1
            yield list(row)
    except csv.Error:
        raise Unreadable(
            f"Row {number + 1} cannot be read: a quotation mark in it is not closed. Save it as CSV again."
        ) from None


def _separator(text: str) -> str:
    """Return the mark that separates the heads: the one that the first line has most of, outside quotes."""
    first = text.splitlines()[0] if text.strip() else ""
    outside = "".join(first.split('"')[::2])
    return max(SEPARATORS, key=outside.count)


def _table(rows: Iterable[list[Cell]], bounds: Bounds) -> Table:
    heads: tuple[str, ...] = ()
    found: list[Row] = []
    for number, raw in enumerate(rows, 1):
        cells = _trimmed(raw)
        if len(cells) > bounds.columns:
            raise too_wide(bounds)
        if number == 1:
            heads = tuple(str(cell or "") for cell in cells)
            continue
        if not cells:
            continue
        if len(found) == bounds.rows:
            raise too_many_rows(bounds)
        if len(cells) > len(heads):
            raise Unreadable(f"Row {number} has more cells than the first row has heads. Check that row.")
        found.append(Row(number, tuple(_fit(number, heads, cells, bounds))))
    if not heads or not found:
        raise Unreadable("The file has no rows. The first row holds the heads, the rows below it the things.")
    return Table(heads, tuple(found))


def _trimmed(raw: list[Cell]) -> list[Cell]:
    """Return the cells without the empty ones at the end."""
    end = len(raw)
    while end and raw[end - 1] in (None, ""):
        end -= 1
    return raw[:end]


def _fit(number: int, heads: tuple[str, ...], cells: list[Cell], bounds: Bounds) -> Iterator[Cell]:
    for head, cell in zip(heads, cells, strict=False):
        if isinstance(cell, str) and len(cell) > bounds.characters:
            raise Unreadable(
                f"Row {number}, column “{head}”: the text has {len(cell)} characters. Shorten it below "
                f"{bounds.characters}."
            )
        yield unguard(cell)
    yield from [None] * (len(heads) - len(cells))
