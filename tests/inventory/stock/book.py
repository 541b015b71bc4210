"""A second, simpler book of what bottles hold, written apart from the product: the stateful test's oracle.

It knows amounts alone. Entries are played in the order in which things happened, without what was taken back.
"""

from dataclasses import dataclass, field


class Impossible(Exception):
    """The entries do not fit one another: something before the receipt, after the end, or below zero."""


@dataclass
class Entry:
    """One entry about one bottle; `amount` comes (receive, pour in), goes (use, pour out), or is counted."""

    seq: int
    hour: float
    kind: str
    amount: int = 0


@dataclass
class Totals:
    """What became of what came."""

    content: int = 0
    came: int = 0
    went: int = 0
    discarded: int = 0
    counted: int = 0


@dataclass
class Book:
    """Entries by bottle."""

    entries: dict[str, list[Entry]] = field(default_factory=dict)

    def write(self, code: str, entry: Entry) -> None:
        """Keep an entry."""
        self.entries.setdefault(code, []).append(entry)

    def take_back(self, seq: int) -> None:
        """Forget an entry."""
        for code, entries in self.entries.items():
            self.entries[code] = [entry for entry in entries if entry.seq != seq]

    def with_one_more(self, code: str, entry: Entry) -> list[Entry]:
        """Return a bottle's entries as they would be."""
        return [*self.entries.get(code, []), entry]

    def without(self, seq: int) -> dict[str, list[Entry]]:
        """Return the bottles that an entry is about, without it."""
        about = {
            code: entries
            for code, entries in self.entries.items()
            if any(each.seq == seq for each in entries)
        }
        return {code: [each for each in entries if each.seq != seq] for code, entries in about.items()}

    def total(self, code: str) -> Totals:
        """Return what a bottle holds and what went through it."""
        return played(self.entries.get(code, []))


def played(entries: list[Entry]) -> Totals:
    """Play entries; raises Impossible."""
    totals, here, gone = Totals(), False, False
    for entry in sorted(entries, key=lambda each: (each.hour, each.seq)):
        if here == (entry.kind == "receive") or gone:
            raise Impossible
        here = True
        if entry.kind in ("receive", "pour in"):
            totals.came += entry.amount
            totals.content += entry.amount
        elif entry.kind in ("use", "pour out"):
            totals.went += entry.amount
            totals.content -= entry.amount
        elif entry.kind == "count":
            totals.counted += entry.amount - totals.content
            totals.content = entry.amount
        elif entry.kind == "discard":
            totals.discarded += totals.content
            totals.content, gone = 0, True
        if totals.content < 0:
            raise Impossible
    return totals
