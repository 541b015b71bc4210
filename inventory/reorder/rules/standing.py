"""How an order stands, in one sentence and the next step."""

from dataclasses import dataclass
from datetime import date

from inventory.reorder.rules import words


@dataclass(frozen=True)
class Standing:
    """A grade (ask, tell, ready, recorded), what is so, and what to do."""

    grade: str
    says: str
    do: str = ""


@dataclass(frozen=True)
class Progress:
    """Packs ordered, received and still to come; the day they are due."""

    ordered: int
    received: int
    to_come: int
    due_on: date | None


def late_days(due_on: date | None, on: date) -> int:
    """Return by how many days a delivery is late, 0 where it is not."""
    return max(0, (on - due_on).days) if due_on else 0


def standing(state: str, supplier: str, progress: Progress, on: date) -> Standing:
    """Return how an order stands on a day; `state` is draft, placed, received or cancelled."""
    if state == "draft":
        return Standing("ask", f"Not placed yet: {_packs(progress.ordered)} from {supplier}.", "")
    if state == "cancelled":
        return Standing("tell", f"Cancelled: nothing of it comes from {supplier}.")
    if state == "received":
        return _ended(progress)
    if late := late_days(progress.due_on, on):
        says = f"{words.days(late)} late: {_packs(progress.to_come)} should be here."
        return Standing("ask", says, f"Ask {supplier}, then change the day or close the rest.")
    due = f", due {_when(progress.due_on, on)}" if progress.due_on else ""
    came = f" {_packs(progress.received)} came." if progress.received else ""
    return Standing("ready", f"On its way: {_packs(progress.to_come)}{due}.{came}")


def _ended(progress: Progress) -> Standing:
    if progress.received >= progress.ordered:
        return Standing("recorded", f"All of it came: {_packs(progress.received)}.")
    short = progress.ordered - progress.received
    says = f"Closed: {progress.received} of {_packs(progress.ordered)} came, {short} will not."
    return Standing("tell", says)


def _packs(number: int) -> str:
    return "1 pack" if number == 1 else f"{number} packs"


def _when(due_on: date | None, on: date) -> str:
    return "today" if due_on == on or due_on is None else f"{due_on:%A} {words.day(due_on)}"
