"""Pieces of the sentences about paint: thicknesses with their film, panels in a row, whose word it is."""

from collections.abc import Callable, Sequence

from inventory.trade.naming import row, sentence
from inventory.trade.thickness import thickness
from safety.findings import Finding

from .left import FilmLeft, PanelLeft
from .values import CLEAR, WHOLE, Floor

COMMON = "Common practice, no source; the shop's own floor"
TRADE = "Trade pages, no authority; the shop's own floor"
REFINISH = "A refinish guide, read on trade pages, no authority"
FILMS = {WHOLE: "whole film", CLEAR: "clear coat"}


def names(lines: Sequence[PanelLeft]) -> str:
    """Return panels as a sentence starts with them."""
    return sentence(row([one.panel.name for one in lines]))


def each(lines: Sequence[PanelLeft], what: Callable[[PanelLeft], str]) -> str:
    """Return a piece about every panel."""
    return "; ".join(f"{one.panel.name} {what(one)}" for one in lines)


def reading(film: FilmLeft | None, unit: str) -> str:
    """Return "84 µm of whole film"."""
    return f"{thickness(film.now_um, unit)} of {FILMS[film.film]}" if film else ""


def floors(floor: Floor, unit: str) -> str:
    """Return both floors of the shop."""
    return f"{thickness(floor.whole_um, unit)} of whole film, {thickness(floor.clear_um, unit)} of clear coat"


def finding(
    code: str, grade: str, says: str, because: str, do: str, source: str, lines: Sequence[PanelLeft]
) -> Finding:
    """Return a finding about panels, by their codes."""
    return Finding(code, grade, says, because, do, source, tuple(one.panel.code for one in lines))
