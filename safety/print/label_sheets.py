"""Many labels in one file: one a page for a label printer, or a grid on a sheet of label stock."""

from collections.abc import Sequence
from dataclasses import replace

from safety.print import label
from safety.print.label import Size
from safety.print.pen import Pen, paper_size
from safety.print.values import LabelContent

ROLL = "roll"
EDGE = 4.2


class NoSuchPlace(ValueError):
    """A first label position that the sheet does not have."""


def grid(size: Size, paper: str) -> tuple[int, int]:
    """Return columns and rows of a label size on a paper."""
    width, height = paper_size(paper)
    return int(width // size.width), int(height // size.height)


def print_labels(
    contents: Sequence[LabelContent], size: Size, paper: str = ROLL, first: int = 1
) -> tuple[bytes, dict[str, object]]:
    """Return the PDF and what is on it. `first` is the first free label of a begun sheet, counted from 1.

    Raises LabelTooSmall, UnknownPaper, NoSuchPlace.
    """
    if paper == ROLL:
        return on_roll(contents, size)
    columns, rows = grid(size, paper)
    if not 1 <= first <= columns * rows:
        raise NoSuchPlace(f"A sheet of {paper} has the labels 1 to {columns * rows}, not {first}.")
    width, height = paper_size(paper)
    left, above = (width - columns * size.width) / 2, (height - rows * size.height) / 2
    size = on_paper(size, paper)
    pen = Pen(width, height, "Labels")
    listed = []
    for count, content in enumerate(contents):
        sheet, place = divmod(first - 1 + count, columns * rows)
        if count and not place:
            pen.next_page()
        row, column = divmod(place, columns)
        way = label.draw(pen, content, size, left + column * size.width, above + row * size.height)
        listed.append(label.said(content, size, way) | {"page": sheet + 1, "place": place + 1})
    return pen.pdf(), {"paper": paper, "size": size.name, "labels": listed}


def on_paper(size: Size, paper: str) -> Size:
    """Return a size as it can be printed: on stock without margins, labels keep clear of the paper's edge.

    Raises UnknownPaper, and NoSuchPlace where the paper does not hold one.
    """
    if paper == ROLL:
        return size
    width, height = paper_size(paper)
    columns, rows = grid(size, paper)
    if not columns * rows:
        raise NoSuchPlace(f"A sheet of {paper} does not hold a {size.name} label.")
    # Printers leave the paper's edge white.
    spare = min((width - columns * size.width) / 2, (height - rows * size.height) / 2)
    return replace(size, pad=max(size.pad, EDGE - spare))


def on_roll(contents: Sequence[LabelContent], size: Size) -> tuple[bytes, dict[str, object]]:
    """Return one page a label, each of the label's own size."""
    pen = Pen(size.width, size.height, "Labels")
    listed = []
    for count, content in enumerate(contents):
        if count:
            pen.next_page()
        listed.append(label.said(content, size, label.draw(pen, content, size)) | {"page": count + 1})
    return pen.pdf(), {"paper": ROLL, "size": size.name, "labels": listed}
