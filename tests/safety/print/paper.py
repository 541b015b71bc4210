"""Reading our paper back: pages as pictures at 200 dpi, codes, text boxes by the PDF's own coordinates."""

from dataclasses import dataclass

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
