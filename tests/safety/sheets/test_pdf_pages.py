"""A sheet is opened before it is kept: locked, empty, broken and endless files are told apart."""

import re
import zlib
from io import BytesIO

import pytest
from pypdf import PdfWriter

from safety.pdf_pages import Unreadable, pages_in
from safety.print.pen import Pen


def pages(number: int, locked_with: tuple[str, str] | None = None) -> bytes:
    """Return a PDF of blank A4 pages, locked by what opens it and what changes it."""
    writer = PdfWriter()
    for _ in range(number):
        writer.add_blank_page(595, 842)
    if locked_with:
        writer.encrypt(*locked_with, algorithm="RC4-128")
    made = BytesIO()
    writer.write(made)
    return made.getvalue()


def pen() -> bytes:
    made = Pen(210, 297, "Hollin panel wipe")
    made.text(20, 20, "Hollin panel wipe", 4)
    return made.pdf()


def with_content(content: bytes) -> bytes:
    """Return a PDF whose one page holds these bytes, called compressed."""
    parts = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R >>",
        b"<< /Length %d /Filter /FlateDecode >>\nstream\n%s\nendstream" % (len(content), content),
    ]
    made, at = b"%PDF-1.4\n", []
    for number, part in enumerate(parts, 1):
        at.append(len(made))
        made += b"%d 0 obj\n%s\nendobj\n" % (number, part)
    table = b"".join(b"%010d 00000 n \n" % start for start in at)
    end = b"trailer << /Size 5 /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF" % len(made)
    return made + b"xref\n0 5\n0000000000 65535 f \n" + table + end


@pytest.mark.parametrize(
    ("data", "number", "because"),
    [
        (pages(1), 1, "one blank page"),
        (pages(12), 12, "a sheet of twelve pages"),
        (pen(), 1, "what this program prints"),
        (with_content(zlib.compress(b"BT ET")), 1, "a page with its text"),
    ],
)
def test_the_pages_of_an_ordinary_file_are_counted(data: bytes, number: int, because: str) -> None:
    assert pages_in(data) == number, because


@pytest.mark.parametrize(
    ("data", "says", "because"),
    [
        (pages(0), "This PDF has no page.", "an empty file"),
        (pages(1, ("k", "k")), "This PDF is locked", "it opens with a password only"),
        (
            pages(1, ("", "k")),
            "This PDF is locked",
            "it forbids printing, which not every reader passes over",
        ),
        (b"", "This PDF is damaged", "nothing at all"),
        (b"%PDF-1.4 nothing\nstartxref\n9\n%%EOF", "This PDF is damaged", "its marks and nothing between"),
        (
            with_content(zlib.compress(b"\0" * 10**9)),
            "This PDF is damaged",
            "a megabyte that unpacks to 1000",
        ),
    ],
)
def test_what_nobody_could_read_is_refused_with_a_way_out(data: bytes, says: str, because: str) -> None:
    with pytest.raises(Unreadable, match=re.escape(says)):
        pages_in(data)


def test_reading_ends_when_its_time_is_up() -> None:
    with pytest.raises(Unreadable, match=r"cannot be read within 0\.01 seconds"):
        pages_in(pages(1), seconds=0.01)
