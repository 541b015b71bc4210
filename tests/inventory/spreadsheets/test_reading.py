"""Files that are refused, each in a moment; then files that are read."""

import time
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile

import openpyxl
import pytest

from inventory.spreadsheets.rules.table import Bounds, Unreadable
from inventory.spreadsheets.sheets import read_table, write_csv, write_xlsx

# What a trap may cost: seconds on a loaded machine; without the bounds they cost minutes, and gigabytes.
A_MOMENT = 5


def workbook(cells: dict[str, object]) -> bytes:
    """Return a workbook with these cells."""
    book = openpyxl.Workbook()
    for place, value in cells.items():
        book.worksheets[0][place] = value
    into = BytesIO()
    book.save(into)
    return into.getvalue()


def repacked(data: bytes, member: str, content: bytes) -> bytes:
    """Return a workbook in which one member says something else."""
    into = BytesIO()
    with ZipFile(BytesIO(data)) as old, ZipFile(into, "w", ZIP_DEFLATED) as new:
        for name in old.namelist():
            if name != member:
                new.writestr(name, old.read(name))
        new.writestr(member, content)
    return into.getvalue()


def says(data: bytes, bounds: Bounds | None = None) -> str:
    """Return the refusal of a file."""
    with pytest.raises(Unreadable) as refused:
        read_table(data, bounds)
    return refused.value.says


PLAIN = workbook({"A1": "name", "A2": "Orlo Supply"})
STRINGS = b'<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><si><t>%s</t></si></sst>'


@pytest.mark.parametrize(
    ("place", "word"),
    [("XFD1048576", "20 000 rows"), ("XFD2", "beyond column 40"), ("A1048576", "20 000 rows")],
)
def test_one_cell_far_out_is_refused_in_a_moment(place: str, word: str) -> None:
    data, started = workbook({"A1": "name", place: 1}), time.monotonic()
    assert (word in says(data), len(data) < 6_000) == (True, True)
    assert time.monotonic() - started < A_MOMENT


def test_half_a_megabyte_that_unpacks_to_half_a_gigabyte_is_refused_unopened() -> None:
    bomb = repacked(PLAIN, "xl/sharedStrings.xml", STRINGS % (b"x" * 500 * 2**20))
    started = time.monotonic()
    assert "unpacks to more than is read" in says(bomb)
    assert (time.monotonic() - started < A_MOMENT, len(bomb) < 2**20) == (True, True)


def test_an_entity_bomb_is_refused() -> None:
    bomb = repacked(PLAIN, "xl/sharedStrings.xml", b'<!DOCTYPE x [<!ENTITY a "aaaa">]>' + STRINGS % b"&a;")
    assert "damaged" in says(bomb)


@pytest.mark.parametrize(
    ("data", "bounds", "word", "because"),
    [
        (b"x" * 101, Bounds(bytes=100), "larger than", "too many bytes"),
        (write_csv(["a"], [[1]] * 4), Bounds(rows=3), "more than 3 rows", "too many rows of text"),
        (
            write_xlsx(["a"], [[1]] * 4, "t"),
            Bounds(rows=3),
            "more than 3 rows",
            "too many rows of a workbook",
        ),
        (write_csv(list("abcd"), [[1] * 4]), Bounds(columns=3), "beyond column 3", "too many columns"),
        (write_xlsx(list("abcd"), [[1] * 4], "t"), Bounds(columns=3), "beyond column 3", "the same"),
        (write_xlsx(list("abcd"), [[1] * 4] * 3, "t"), Bounds(cells=9), "more than", "too many cells"),
        (write_csv(["a"], [["x" * 11]]), Bounds(characters=10), "Row 2, column “a”", "a text too long"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1", None, ".xls workbook", "an old workbook, or one with a password"),
        (b"PK\x03\x04 and nothing more", None, "damaged", "a broken workbook"),
        ("na\u00efve".encode("latin-1"), None, "UTF-8", "another encoding"),
        (b'name\n"never closed', None, "quotation mark", "a quote that is not closed"),
        (b"", None, "no rows", "nothing"),
        (b"name,email\r\n", None, "no rows", "heads alone"),
        (b"name\nOrlo,7\n", None, "Row 2 has more cells", "a cell without a head"),
        (
            workbook({"A1": "a", "A2": "=1+1"}),
            None,
            "Cell A2 holds a formula",
            "a formula's value is not known",
        ),
        (repacked(PLAIN, "xl/vbaProject.bin", b"x"), None, "macros", "a program inside"),
    ],
)
def test_a_file_is_refused_with_the_way_out(data: bytes, bounds: Bounds, word: str, because: str) -> None:
    assert word in says(data, bounds), because


@pytest.mark.parametrize(
    ("data", "because"),
    [
        (b"name,email\r\nOrlo,o@orlo.example\r\n", "RFC 4180"),
        (b"\xef\xbb\xbfname,email\r\nOrlo,o@orlo.example\r\n", "with a BOM"),
        (b"name;email\nOrlo;o@orlo.example\n", "as spreadsheets of half of Europe write it"),
        (b"name\temail\rOrlo\to@orlo.example\r", "tabs, and the line ends of an old system"),
        (b'name,email\n\n"Orlo",o@orlo.example,,\n\n', "empty rows and cells at the end say nothing"),
        (workbook({"A1": "name", "B1": "email", "A2": "Orlo", "B2": "o@orlo.example"}), "a workbook"),
    ],
)
def test_the_same_table_is_read_from(data: bytes, because: str) -> None:
    table = read_table(data)
    assert (table.heads, table.rows[0].cells) == (("name", "email"), ("Orlo", "o@orlo.example")), because


def test_rows_keep_the_numbers_that_the_spreadsheet_shows() -> None:
    assert [row.number for row in read_table(workbook({"A1": "n", "A3": 1, "A7": 2})).rows] == [3, 7]
    assert [row.number for row in read_table(b'n\n"two\nlines"\n\n5\n').rows] == [2, 4]


def test_numbers_go_out_as_numbers_and_text_never_as_a_formula() -> None:
    sheet = openpyxl.load_workbook(BytesIO(write_xlsx(["a"], [[-5], ["=1+1"], ["#N/A"]], "t"))).worksheets[0]
    assert [(cell.value, cell.data_type) for (cell,) in sheet.iter_rows(min_row=2)] == [
        (-5, "n"), ("'=1+1", "s"), ("#N/A", "s"),
    ]  # fmt: skip
    assert write_csv(["a"], [[-5], ["=1+1"]]) == b"\xef\xbb\xbfa\r\n-5\r\n'=1+1\r\n"
