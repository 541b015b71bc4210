"""A printed date as it is typed: its kind is always said, never guessed; two readings are asked."""

import re
from collections.abc import Callable
from datetime import date
from typing import Any

from inventory.codes import CodeError, Meaning, read_printed_date

from ..answers import Heard, Key
from ..turn import Turn

DATE_KEYS = (
    Key("Use by", "use by …"),
    Key("Best before", "best before …"),
    Key("Made", "made …"),
    Key("No date on it", "NO DATE"),
)
_COLUMN = {Meaning.USE_BY: "expires_on", Meaning.BEST_BEFORE: "best_before_on", Meaning.MADE: "made_on"}
_WORDS = (
    (Meaning.BEST_BEFORE, re.compile(r"(?:best before(?: end)?|best by|bbe|bbd|bb)\b", re.IGNORECASE)),
    (Meaning.USE_BY, re.compile(r"(?:use by|expiry|expires|exp)\b", re.IGNORECASE)),
    (Meaning.MADE, re.compile(r"(?:made(?: in| on)?|manufactured|mfg|mfd|prod|dom)\b", re.IGNORECASE)),
)

Then = Callable[[dict[str, str]], Heard]


def read_date(turn: Turn, then: Then) -> Heard:
    """Read the line as a date with its word; a word alone is kept until the date comes."""
    text = turn.said.text
    meaning = next((each for each, word in _WORDS if word.match(text)), None)
    bare = re.sub(r"^[A-Za-z][A-Za-z ]*?[.: ]+(?=[0-9A-Za-z]*[0-9])", "", text) if meaning else text
    meaning = meaning or (Meaning(turn.state.slots["meaning"]) if "meaning" in turn.state.slots else None)
    if meaning and not re.search(r"[0-9]", text):
        return _wait(
            turn,
            f"{_said(meaning)}: which date?",
            "Type it as printed, or as 2027-03-31.",
            meaning=str(meaning),
        )
    if meaning is None:
        keys = tuple(
            Key(_said(each), f"{_said(each).lower()} {text}")
            for each in (Meaning.USE_BY, Meaning.BEST_BEFORE, Meaning.MADE)
        )
        return turn.again(
            f"“{text}”: use by, best before or made?", "The word beside the date says which.", *keys
        )
    return _read(turn, bare, meaning, then)


def _read(turn: Turn, bare: str, meaning: Meaning, then: Then) -> Heard:
    try:
        printed = read_printed_date(bare, meaning=meaning, order=turn.facts.shop.date_order)
    except CodeError as refusal:
        return turn.again(str(refusal), "", *DATE_KEYS)
    if printed.date:
        return then({_COLUMN[meaning]: printed.date.isoformat()})
    keys = tuple(Key(f"{day.day} {day:%B %Y}", day.isoformat()) for day in printed.readings)
    return turn.ask(
        " ".join(printed.asks),
        "",
        *keys,
        verb=turn.state.verb,
        waits="which_date",
        **{
            **turn.state.slots,
            "meaning": str(meaning),
            "readings": [day.isoformat() for day in printed.readings],
        },
    )


def choose(turn: Turn, then: Then) -> Heard | None:
    """Take one of the readings, by its key or typed as ISO."""
    if not turn.said.words:
        return None
    slots: dict[str, Any] = turn.state.slots
    try:
        chosen = date.fromisoformat(turn.said.text.strip())
    except ValueError:
        chosen = None
    if chosen is None or chosen.isoformat() not in slots["readings"]:
        return turn.again(f"Which is it: {' or '.join(slots['readings'])}?")
    return then({_COLUMN[Meaning(slots["meaning"])]: chosen.isoformat()})


def _wait(turn: Turn, says: str, next: str, **more: str) -> Heard:
    return turn.ask(says, next, verb=turn.state.verb, waits="date", **{**turn.state.slots, **more})


def _said(meaning: Meaning) -> str:
    return {Meaning.USE_BY: "Use by", Meaning.BEST_BEFORE: "Best before", Meaning.MADE: "Made"}[meaning]
