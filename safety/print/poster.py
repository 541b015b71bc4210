"""A place's poster: a set of single-purpose sheets with one look, two text tiers, re-flowed, never shrunk."""

from __future__ import annotations

from safety.print.poster_events import event_blocks
from safety.print.poster_never import never_blocks
from safety.print.poster_pages import PaperTooSmall, print_sheets
from safety.print.poster_place import place_blocks
from safety.print.poster_products import product_blocks
from safety.print.poster_sheets import DistanceOutOfRange, Frame, Purpose
from safety.print.values import Masthead, PosterContent
from safety.print.words import ENGLISH, SHEETS_SPEAK, say

__all__ = ["DistanceOutOfRange", "PaperTooSmall", "print_poster"]


def print_poster(content: PosterContent, paper: str = "A3") -> tuple[bytes, dict[str, object]]:
    """Return the PDF and what is on it. Raises UnknownPaper, DistanceOutOfRange, PaperTooSmall."""
    head = masthead(content)
    printed = print_sheets(head, lambda frame: purposes(content, frame), paper)
    return printed.pdf, {"place": content.place.name} | printed.said(head) | said(content)


def masthead(content: PosterContent) -> Masthead:
    """Return the head and foot of a poster."""
    issue = say(
        "{name}, version {version}, {day} · replace after {until} or when the site says so.",
        content.language,
        name=content.place.name,
        version=content.version,
        day=content.printed_on,
        until=content.replace_after,
    )
    if content.language != ENGLISH:
        issue = f"{issue} {say(SHEETS_SPEAK, content.language)}"
    place = content.place
    return Masthead(place.name, content.url, issue, content.language, content.read_at_m, place.binder_at)


def purposes(content: PosterContent, frame: Frame) -> list[Purpose]:
    """Return what the sheets are for, in the order that they hang."""
    place, language, type_, width = content.place, content.language, frame.type, frame.inner
    about = " · ".join(part for part in (place.task, admitted(content)) if part)
    where = ", ".join(part for part in (place.shop, place.address) if part)
    not_in_one = say("Not in one bottle, bucket, cloth or drain", language)
    first = say("Look after yourself first, then the other person, then call", language)
    gravest = say("What is admitted here, the gravest first", language)
    products = product_blocks(content.products, type_, width, language)
    return [
        Purpose("", tuple(part for part in (about, where) if part), place_blocks(content, type_, width)),
        # The red frame carries its own title.
        Purpose(
            say("never together", language), (not_in_one,), never_blocks(content, type_, width), headed=False
        ),
        Purpose(say("if it happens", language), (first,), event_blocks(content, type_, width)),
        Purpose(say("products", language), (gravest,), products),
    ]


def admitted(content: PosterContent) -> str:
    """Return how many products are admitted, nothing where none is."""
    count = len(content.products)
    words = "1 product admitted" if count == 1 else "{count} products admitted"
    return say(words, content.language, count=count) if count else ""


def said(content: PosterContent) -> dict[str, object]:
    """Return what is on the poster, for scripts."""
    return {
        "version": content.version,
        "printed_on": content.printed_on,
        "replace_after": content.replace_after,
        "regime": content.regime,
        "signal_word": content.signal_word,
        "dangers": [{"pictogram": one.pictogram, "says": one.heading} for one in content.dangers],
        "never_together": [[pair.one, pair.other] for pair in content.never],
        "products": [one.said() for one in content.products],
        "no_data_sheet": list(content.unknown),
    }
