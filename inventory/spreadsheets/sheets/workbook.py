"""The first sheet of an .xlsx workbook, looked over before openpyxl may unpack and keep anything.

openpyxl has no limits of its own: one cell at XFD1048576 keeps it busy for minutes, half a megabyte of packed
text takes a gigabyte. So the zip's own list is read first, then the sheet's XML is walked without keeping it.
"""

import warnings
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from io import BytesIO
from xml.parsers import expat
from zipfile import BadZipFile, ZipFile, ZipInfo

from openpyxl import load_workbook
from openpyxl.utils.cell import column_index_from_string, coordinate_from_string
from openpyxl.utils.escape import unescape

from inventory.spreadsheets.rules.table import Bounds, Cell, Unreadable, too_many_rows, too_wide

DAMAGED = "The workbook cannot be opened: it is damaged or protected. Open it, and save it again as .xlsx."
TOO_BIG = "The workbook unpacks to more than is read. Copy the rows into a new workbook and save that."
MACROS = "The workbook holds macros. Save it as .xlsx, which has none."
PIECE = 2**16


def read_workbook(data: bytes, bounds: Bounds) -> Iterator[list[Cell]]:
    """Return the rows of the first sheet, their numbers kept by empty ones between; raises Unreadable."""
    try:
        with ZipFile(BytesIO(data)) as packed:
            _look_over(packed, bounds)
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # about styles and validations, which are not read
            book = load_workbook(BytesIO(data), read_only=True, data_only=False, keep_links=False)
        sheet = book.worksheets[0]
        sheet.reset_dimensions()
        found = sheet.iter_rows(max_row=bounds.rows * 2, max_col=bounds.columns + 1)
        rows = [[_cell(cell) for cell in row] for row in found]
    except Unreadable:
        raise
    except (BadZipFile, KeyError, ValueError, IndexError, TypeError, AttributeError, OSError, EOFError,
            NotImplementedError, RuntimeError, SyntaxError, expat.ExpatError):  # fmt: skip
        raise Unreadable(DAMAGED) from None
    return iter(rows)


def _look_over(packed: ZipFile, bounds: Bounds) -> None:
    members = packed.infolist()
    if len(members) > bounds.members or sum(member.file_size for member in members) > bounds.unpacked:
        raise Unreadable(TOO_BIG)
    if any("vbaproject" in member.filename.lower() for member in members):
        raise Unreadable(MACROS)
    for member in members:
        if member.filename.endswith((".xml", ".rels")):
            _walk(packed, member, bounds)


class _Walk:
    """Counts what a member holds, and keeps nothing."""

    def __init__(self, bounds: Bounds) -> None:
        self.bounds, self.rows, self.cells = bounds, 0, 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        """Count an element; refuse a row or a cell that stands too far out."""
        local = name.rpartition(":")[2]
        if local == "row":
            self.rows = max(self.rows + 1, int(attributes.get("r", 0)))
            # Rows in between may be empty; those that hold something are counted when they are read.
            if self.rows > self.bounds.rows * 2:
                raise too_many_rows(self.bounds)
        elif local == "c":
            self.cells += 1
            if self.cells > self.bounds.cells:
                raise too_many_rows(self.bounds)
            if place := attributes.get("r"):
                letters, row = coordinate_from_string(place)
                if column_index_from_string(letters) > self.bounds.columns:
                    raise too_wide(self.bounds)
                if row > self.bounds.rows * 2:
                    raise too_many_rows(self.bounds)

    def doctype(self, *_: object) -> None:
        """Refuse a document type: no workbook has one, every entity bomb does."""
        raise Unreadable(DAMAGED)


def _walk(packed: ZipFile, member: ZipInfo, bounds: Bounds) -> None:
    walk, parser = _Walk(bounds), expat.ParserCreate()
    in_sheet = "worksheets/" in member.filename
    parser.StartDoctypeDeclHandler = walk.doctype
    if in_sheet:
        parser.StartElementHandler = walk.start
    with packed.open(member) as unpacked:
        while piece := unpacked.read(PIECE):
            parser.Parse(piece)
    parser.Parse(b"", True)


def _cell(cell: object) -> Cell:
    """Return a cell's value: numbers exactly as the file writes them, text as it was written."""
    value = getattr(cell, "value", None)
    if getattr(cell, "data_type", "") == "f":
        raise Unreadable(
            f"Cell {cell.coordinate} holds a formula. Copy the cells and paste them as values, then save."  # type: ignore[attr-defined]
        )
    if isinstance(value, float):
        return int(value) if value.is_integer() else Decimal(repr(value))
    if isinstance(value, time | timedelta):
        return str(value)
    if isinstance(value, str):
        return unescape(value)
    return value if isinstance(value, int | bool | datetime | date) else None
