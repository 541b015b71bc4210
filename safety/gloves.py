"""Gloves: what the letters on them were tested against, and when they are through.

Traps: no open table of breakthrough times exists, so the minutes are those that the shop types from its glove
maker's list, for this product. They count from the first drop, not while hands are busy: what is in the glove
goes on through it, also on the bench. A letter says nothing about a mix.
Source: safety/tables/glove_letters.csv (EN ISO 374-1:2016); the levels from memory.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache

from safety.findings import MARKS, Finding
from safety.hazards.tables import rows

MORE_THAN_MIN = (10, 30, 60, 120, 240, 480)  # levels 1 to 6, from memory
MAKERS = "The glove maker's own minutes, as the shop typed them"
LETTERS = "EN ISO 374-1:2016, Annex A"
# Stands beside every level that is shown.
LEVELS = f"EN ISO 374-1:2016, performance levels ({MARKS['M']})"
CHANGE = "Take them off without touching the outside, wash your hands, put on a new pair."


class GloveError(ValueError):
    """A letter, level or time that cannot be; the sentence names it and what was expected."""


@dataclass(frozen=True)
class Letter:
    """One letter of the standard: chemical, CAS number, strength, mark."""

    letter: str
    chemical: str
    cas: str
    strength: str
    mark: str


@cache
def letters() -> dict[str, Letter]:
    """Return the table by letter."""
    return {row["letter"]: Letter(**row) for row in rows("glove_letters")}


def chemicals_of(marking: str) -> tuple[Letter, ...]:
    """Return what the letters on a glove, "AKL", were tested against; raise GloveError for a stray letter."""
    table, written = letters(), marking.replace(" ", "").upper()
    stray = next((one for one in written if one not in table), None)
    if stray is not None:
        raise GloveError(f"marking: letters of {''.join(table)} were expected, not “{stray}”.")
    return tuple(table[one] for one in dict.fromkeys(written))


def letter_for(cas: str) -> Letter | None:
    """Return the letter that stands for a chemical, None where the standard has none."""
    return next((one for one in letters().values() if cas and one.cas == cas), None)


def not_tested(glove: str, marking: str, name: str, cas: str) -> tuple[Finding, ...]:
    """Return the finding on a glove whose letters leave out a chemical that the standard has a letter for."""
    wanted = letter_for(cas)
    if wanted is None or wanted in chemicals_of(marking):
        return ()
    says = f"{glove} carries no letter {wanted.letter}: its letters do not say that it holds {name} back."
    because = f"It is marked {marking or 'with no letter'}; {name} is letter {wanted.letter}."
    do = f"Look up {name} in the glove maker's list and type its minutes, or take a glove with that letter."
    source = f"{LETTERS} ({MARKS[wanted.mark]})"
    return (Finding("gloves.letter", "ask", says, because, do, source, (glove, name)),)


def level_minutes(level: int) -> int:
    """Return the minutes that a breakthrough level promises to exceed; raise GloveError outside 1 to 6."""
    if not 1 <= level <= len(MORE_THAN_MIN):
        raise GloveError(f"level: 1 to 6 was expected, not {level}.")
    return MORE_THAN_MIN[level - 1]


def level(minutes: float) -> int:
    """Return the breakthrough level of so many minutes, 0 below the first."""
    return sum(minutes > least for least in MORE_THAN_MIN)


@dataclass(frozen=True)
class GloveChange:
    """When a pair is through, the minutes left, and what is to be said. None: nobody typed minutes."""

    due_at: datetime | None
    minutes_left: float | None
    findings: tuple[Finding, ...]


def glove_change(
    glove: str, against: str, minutes: float | None, since: datetime, at: datetime, task_minutes: float = 0.0
) -> GloveChange:
    """Return when to change gloves that first met a product at `since`; both instants are aware."""
    if minutes is not None and not minutes > 0:
        raise GloveError(f"minutes: more than 0 was expected, not {minutes:g}.")
    if minutes is None:
        return GloveChange(None, None, (_unknown(glove, against),))
    due = since + timedelta(minutes=minutes)
    left = (due - at).total_seconds() / 60
    if left <= 0:
        worn = (at - since).total_seconds() / 60
        says = f"{against} is through {glove} by now: {worn:.0f} minutes of {minutes:g}."
        because = f"Its maker gives {minutes:g} minutes against {against}, from the first drop."
        found = Finding("gloves.through", "stop", says, because, CHANGE, MAKERS, (glove, against))
        return GloveChange(due, left, (found,))
    if task_minutes <= left:
        return GloveChange(due, left, ())
    says = f"{glove} will not last the task: {left:.0f} of its {task_minutes:g} minutes are left."
    because = f"Its maker gives {minutes:g} minutes against {against}, from the first drop."
    do = f"Change them by {due:%H:%M}; lay a new pair ready before you start."
    return GloveChange(
        due, left, (Finding("gloves.change", "tell", says, because, do, MAKERS, (glove, against)),)
    )


def _unknown(glove: str, against: str) -> Finding:
    says = f"Nobody typed how many minutes {glove} holds {against} back."
    because = "No open table of breakthrough times exists; each maker measures its own."
    do = f"Type the minutes against {against} from the glove maker's list."
    return Finding("gloves.minutes", "ask", says, because, do, MAKERS, (glove, against))
