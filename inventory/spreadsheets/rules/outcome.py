"""What a file would do, row by row: told before anything is written."""

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Becomes(StrEnum):
    """What becomes of a row."""

    WRONG = "wrong"
    NEW = "new"
    CHANGED = "changed"
    SAME = "same"


@dataclass(frozen=True)
class Problem:
    """Why a row cannot be taken: the column, empty where it is the whole row, and a whole sentence."""

    row: int
    column: str
    because: str

    @property
    def says(self) -> str:
        """Return the sentence with its place: Row 12, column “open life”: …"""
        where = f"Row {self.row}, column “{self.column}”" if self.column else f"Row {self.row}"
        return f"{where}: {self.because}"


@dataclass(frozen=True)
class Change:
    """One cell that would change; empty means nothing there."""

    column: str
    before: str
    after: str


@dataclass(frozen=True)
class Outcome:
    """What becomes of one row: `about` names the thing, `note` says what was estimated."""

    row: int
    becomes: Becomes
    about: str
    changes: tuple[Change, ...] = ()
    problems: tuple[Problem, ...] = ()
    note: str = ""


def count(outcomes: Iterable[Outcome], becomes: Becomes) -> int:
    """Return how many rows become this."""
    return sum(outcome.becomes is becomes for outcome in outcomes)


def summary(outcomes: list[Outcome]) -> str:
    """Return the sentence that leads the page."""
    wrong, new, changed, same = (count(outcomes, each) for each in Becomes)
    if wrong:
        return f"{_rows(wrong)} of {len(outcomes)} cannot be taken, so nothing comes in yet."
    if not new + changed:
        are = "the one row is" if same == 1 else f"all {same} rows are"
        return f"Nothing would change: {are} known as written."
    parts = [
        f"{new} new" if new else "",
        f"{changed} changed" if changed else "",
        f"{same} unchanged" if same else "",
    ]
    return f"{_rows(len(outcomes))}: {', '.join(part for part in parts if part)}."


def _rows(number: int) -> str:
    return "1 row" if number == 1 else f"{number} rows"


def fingerprint(outcomes: Iterable[Outcome]) -> str:
    """Return a hash of everything that the outcomes say: equal where nothing moved in between."""
    told = [
        [each.row, each.becomes, each.about, each.note]
        + [[change.column, change.before, change.after] for change in each.changes]
        + [[problem.column, problem.because] for problem in each.problems]
        for each in outcomes
    ]
    return hashlib.sha256(json.dumps(told, ensure_ascii=False).encode()).hexdigest()
