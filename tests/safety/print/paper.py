"""Reading our paper back: pages as pictures at 200 dpi, codes, text boxes by the PDF's own coordinates.

How to use it: `faults(pdf) == []` says that on no page anything leaves the paper (or comes nearer to its edge
than `edge` mm), lies over something else, or is cut by a frame; each fault is a sentence with the page, what
it is and by how much. `codes(pdf, page)` is what a scanner reads off the page at 200 dpi, `text(pdf)` the
words in drawing order, `letters_mm(pdf, page)` how high each run's capitals are, `is_black(pdf)` whether a
page is free of colour. `drawn(pdf, page)` gives the boxes themselves: every string as it was written
(not as a reader would join it, so two strings on one line that run into each other are found), pictograms
(form objects), symbols (filled paths of 100 segments and more), images and frames (stroked rectangles).
"""

import ctypes
from dataclasses import dataclass
from itertools import combinations

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw
import zxingcpp

DPI = 200
MM = 72 / 25.4


@dataclass(frozen=True)
class Box:
    """One run of text: millimetres from the left and the bottom of the page."""

    text: str
    left: float
    bottom: float
    right: float
    top: float


def picture(pdf: bytes, page: int = 0, grey: bool = False) -> np.ndarray:
    """Return a page as an array of pixels."""
    return pdfium.PdfDocument(pdf)[page].render(scale=DPI / 72, grayscale=grey).to_numpy()


def codes(pdf: bytes, page: int = 0) -> list[str]:
    """Return what a scanner reads off the printed page."""
    return [found.text for found in zxingcpp.read_barcodes(picture(pdf, page))]


def size_mm(pdf: bytes, page: int = 0) -> tuple[float, float]:
    """Return width and height of a page."""
    width, height = pdfium.PdfDocument(pdf)[page].get_size()
    return round(width / MM, 1), round(height / MM, 1)


def pages(pdf: bytes) -> int:
    """Return how many pages there are."""
    return len(pdfium.PdfDocument(pdf))


def text(pdf: bytes, page: int | None = None) -> str:
    """Return the words of a page, or of all, on one line."""
    document = pdfium.PdfDocument(pdf)
    chosen = range(len(document)) if page is None else [page]
    return " ".join(" ".join(document[one].get_textpage().get_text_range().split()) for one in chosen)


def boxes(pdf: bytes, page: int = 0) -> list[Box]:
    """Return every run of text with the tight box of its letters."""
    found = pdfium.PdfDocument(pdf)[page].get_textpage()
    runs = []
    for number in range(found.count_rects()):
        left, bottom, right, top = found.get_rect(number)
        words = found.get_text_bounded(left, bottom, right, top)
        runs.append(Box(words, left / MM, bottom / MM, right / MM, top / MM))
    return runs


def outside(pdf: bytes, page: int = 0, edge: float = 0.0) -> list[Box]:
    """Return the runs that leave the page, or come nearer to its edge than allowed."""
    width, height = size_mm(pdf, page)
    return [
        box
        for box in boxes(pdf, page)
        if box.left < edge or box.bottom < edge or box.right > width - edge or box.top > height - edge
    ]


def diamonds(pdf: bytes, page: int = 0) -> list[Box]:
    """Return the boxes of the pictograms, which are the page's only forms."""
    found = []
    for one in pdfium.PdfDocument(pdf)[page].get_objects(filter=[raw.FPDF_PAGEOBJ_FORM], max_depth=1):
        left, bottom, right, top = one.get_bounds()
        found.append(Box("pictogram", left / MM, bottom / MM, right / MM, top / MM))
    return found


def overlaps(pdf: bytes, page: int = 0, slack: float = 0.15) -> list[tuple[str, str]]:
    """Return pairs of runs, or of a run and a pictogram, whose boxes share more than a hair."""
    runs = boxes(pdf, page) + diamonds(pdf, page)
    return [
        (one.text, other.text)
        for place, one in enumerate(runs)
        for other in runs[place + 1 :]
        if one.text != "pictogram"
        and min(one.right, other.right) - max(one.left, other.left) > slack
        and min(one.top, other.top) - max(one.bottom, other.bottom) > slack
    ]


@dataclass(frozen=True)
class Drawn:
    """One thing on a page, in millimetres from the left and the bottom: "text", "pictogram", "symbol",
    "image" or "frame"; of text its words and the height of its capitals."""

    kind: str
    box: Box
    capital: float = 0.0

    def __str__(self) -> str:
        return f"“{self.box.text}”" if self.kind == "text" else f"a {self.kind}"


KINDS = {raw.FPDF_PAGEOBJ_FORM: "pictogram", raw.FPDF_PAGEOBJ_IMAGE: "image", raw.FPDF_PAGEOBJ_TEXT: "text"}
CAPITAL = 0.668  # capitals of Atkinson Hyperlegible in em, from the face's own OS/2 table
SYMBOL_SEGMENTS = 100


def drawn(pdf: bytes, page: int = 0) -> list[Drawn]:
    """Return everything on a page that must neither leave it nor lie over anything else."""
    document = pdfium.PdfDocument(pdf)
    sheet = document[page]
    words = sheet.get_textpage()
    found = []
    for one in sheet.get_objects(max_depth=1):
        kind = KINDS.get(one.type) or _path(one)
        if kind is None:
            continue
        said = _words(one, words) if kind == "text" else kind
        if not said.strip():
            continue
        left, bottom, right, top = (side / MM for side in one.get_bounds())
        capital = _size(one) * CAPITAL / MM if kind == "text" else 0.0
        found.append(Drawn(kind, Box(said.strip(), left, bottom, right, top), capital))
    return found


def _path(one: pdfium.PdfObject) -> str | None:
    """Return what a path is: a frame, a symbol, or nothing that is kept clear (bars, rules, signs)."""
    if one.type != raw.FPDF_PAGEOBJ_PATH:
        return None
    fill, stroke = ctypes.c_int(), ctypes.c_int()
    raw.FPDFPath_GetDrawMode(one.raw, fill, stroke)
    segments = raw.FPDFPath_CountSegments(one.raw)
    if stroke.value and segments in (4, 5):
        return "frame"
    return "symbol" if fill.value and segments >= SYMBOL_SEGMENTS else None


def _words(one: pdfium.PdfObject, page: pdfium.PdfTextPage) -> str:
    length = raw.FPDFTextObj_GetText(one.raw, page.raw, None, 0)
    buffer = ctypes.create_string_buffer(length)
    raw.FPDFTextObj_GetText(one.raw, page.raw, ctypes.cast(buffer, ctypes.POINTER(raw.FPDF_WCHAR)), length)
    return buffer.raw[: length - 2].decode("utf-16-le")


def _size(one: pdfium.PdfObject) -> float:
    size = ctypes.c_float()
    raw.FPDFTextObj_GetFontSize(one.raw, size)
    return size.value


def faults(pdf: bytes, edge: float = 0.0, slack: float = 0.15) -> list[str]:
    """Return what is wrong on any page, each a sentence; [] is a sheet on which everything can be read.

    edge: how near to the paper's edge anything may come, mm; slack: what two boxes may share, mm.
    """
    found: list[str] = []
    for page in range(pages(pdf)):
        width, height = size_mm(pdf, page)
        things = drawn(pdf, page)
        for one in things:
            box = one.box
            over = max(edge - box.left, edge - box.bottom, box.right + edge - width, box.top + edge - height)
            if over > slack:
                found.append(f"page {page + 1}: {one} is {over:.1f} mm over the edge")
        for one, other in combinations(things, 2):
            if share := _shared(one, other, slack):
                found.append(f"page {page + 1}: {one} and {other} share {share[0]:.1f} × {share[1]:.1f} mm")
    return found


def _shared(one: Drawn, other: Drawn, slack: float) -> tuple[float, float] | None:
    """Return how far two things lie over each other, None where they do not."""
    a, b = one.box, other.box
    across = min(a.right, b.right) - max(a.left, b.left)
    up = min(a.top, b.top) - max(a.bottom, b.bottom)
    if across <= slack or up <= slack:
        return None
    if "frame" in (one.kind, other.kind):
        # A frame holds its text; only what its line cuts through is a fault.
        return None if _within(a, b, slack) or _within(b, a, slack) else (across, up)
    return across, up


def _within(inner: Box, outer: Box, slack: float) -> bool:
    return (
        inner.left >= outer.left - slack
        and inner.right <= outer.right + slack
        and inner.bottom >= outer.bottom - slack
        and inner.top <= outer.top + slack
    )


def letters_mm(pdf: bytes, page: int = 0) -> list[tuple[str, float]]:
    """Return every string with the height of its capitals in mm, as set (not as its letters happen to be)."""
    return [(one.box.text, round(one.capital, 2)) for one in drawn(pdf, page) if one.kind == "text"]


def is_black(pdf: bytes, page: int = 0) -> bool:
    """Return whether a page is printed in black, white and grey alone."""
    pixels = picture(pdf, page).astype(int)
    return bool((pixels.max(axis=-1) - pixels.min(axis=-1)).max() <= 8)
