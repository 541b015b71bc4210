"""Ledger lines as values, for tests of the rules: a bottle's life written down in a few words.

Each function returns one Line; `seq` counts on.
KTRV and BKTR are bottles; amounts are µl; hours count from NOON.
"""

from datetime import datetime, timedelta
from itertools import count

from inventory.stock.rules.lines import Line
from tests.world import LITRE, NOON

KTRV, BKTR = "KTRVNXHB", "BKTRVNXH"
_seqs = count(1)


def at(hours: float) -> datetime:
    """Return so many hours after NOON."""
    return NOON + timedelta(hours=hours)


def line(
    kind: str, hours: float = 0, *, seq: int | None = None, target: str | None = KTRV, **given: object
) -> Line:
    """Return a line about KTRV; what is no field of a line becomes one of its facts."""
    fields = {
        name: given.pop(name) for name in ("source", "lot", "place", "amount", "reverses") if name in given
    }
    if "source" in fields and kind != "fill":
        target = None
    return Line(seq or next(_seqs), kind, at(hours), target=target, facts=given, **fields)  # type: ignore[arg-type]


def received(hours: float = 0, content: int = LITRE, **given: object) -> Line:
    """KTRV arrives: a sealed litre of product TIDE, lot L1, unless said otherwise."""
    facts: dict[str, object] = {
        "content": content,
        "product": "TIDE",
        "parts": [1, 0],
        "lots": ["L1"],
        "sealed": True,
    }
    return line("receive", hours, **(facts | given))


def opened(hours: float = 0, **given: object) -> Line:
    """KTRV is opened."""
    return line("open", hours, **given)


def used(amount: int, hours: float = 0, **given: object) -> Line:
    """So much is taken out of KTRV."""
    return line("use", hours, source=KTRV, amount=amount, **given)


def counted(content: int, hours: float = 0, **given: object) -> Line:
    """KTRV is found to hold so much."""
    return line("count", hours, content=content, **given)


def filled(added: int, hours: float = 0, **given: object) -> Line:
    """KTRV gets so much out of BKTR: product TIDE, lot L2, neat, unless said otherwise."""
    facts: dict[str, object] = {
        "added": added,
        "amount": added,
        "product": "TIDE",
        "parts": [1, 0],
        "lots": ["L2"],
    }
    return line("fill", hours, source=BKTR, **(facts | given))


def taken_back(seq: int, hours: float = 0) -> Line:
    """A reverse of an entry."""
    return line("reverse", hours, reverses=seq)
