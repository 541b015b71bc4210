"""Who gets which bottle: reservations are computed from open jobs and the shelf, never stored.

Jobs in order of (starts_at, booked_at, id); in a job named products before kinds; from the shelf what is
usable through the step, first expired first, open before sealed. Amounts are concentrate, in base units.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, tzinfo

from .lines import NEAT, Parts
from .mixes import gross, share
from .one_lot import NOTHING, Batch, batch_of, of_one_lot
from .use_by import NEVER, Dates, Life, Term, over, terms

UNDATED = Dates()


@dataclass(frozen=True)
class OnShelf:
    """A container as the shelf offers it; `content` in base units, mixed with water as `parts` says."""

    code: str
    product: str
    kind: str
    content: int
    parts: Parts = NEAT
    lots: frozenset[str] = frozenset()
    sealed: bool = True
    dates: Dates = UNDATED
    held: str = ""
    place: str | None = None
    mixes_lots: bool = False
    dimension: str = ""

    @property
    def batch(self) -> Batch:
        """What must stay the same within a step that keeps to one lot."""
        return batch_of(self.product, self.lots, self.mixes_lots)

    @property
    def concentrate(self) -> int:
        """How much of the product itself is in it, rounded down."""
        return share(self.content, self.parts)


@dataclass(frozen=True)
class Need:
    """What one step still needs: concentrate of a named product, or of any product of a kind.

    With `one_lot` all of it comes from the lot that the step has `had`, or from one where it had none.
    `dimension` is what a kind is measured in: 50 ml of any polish are not served by 50 g of another one.
    """

    id: str
    job: str
    starts_at: datetime
    ends_at: datetime
    job_starts_at: datetime
    booked_at: datetime
    amount: int
    product: str | None = None
    kind: str = ""
    parts: Parts = NEAT
    one_lot: bool = False
    had: Batch = NOTHING
    dimension: str = ""


@dataclass(frozen=True)
class Taken:
    """So much concentrate from that container for that need; `opens`: it was sealed until then."""

    need: str
    container: str
    amount: int
    opens: bool


@dataclass(frozen=True)
class Reserved:
    """What everybody gets, and what is missing by need."""

    taken: tuple[Taken, ...]
    short: dict[str, int]

    def of(self, need: str) -> list[Taken]:
        """Return what one need gets."""
        return [taken for taken in self.taken if taken.need == need]


def in_order(needs: Iterable[Need]) -> list[Need]:
    """Return needs in the order in which they are served."""
    return sorted(
        needs,
        key=lambda need: (
            need.job_starts_at,
            need.booked_at,
            need.job,
            need.product is None,
            need.starts_at,
            need.id,
        ),
    )


def reserve(needs: Iterable[Need], shelf: Iterable[OnShelf], zone: tzinfo) -> Reserved:
    """Return who gets what; a bottle that one step opens has its open life for the next ones."""
    left = {bottle.code: bottle for bottle in shelf if bottle.content and not bottle.held}
    taken: list[Taken] = []
    short: dict[str, int] = {}
    for need in in_order(needs):
        given, missing = _serve(need, left, zone)
        taken += given
        if missing:
            short[need.id] = missing
    return Reserved(tuple(taken), short)


def _serve(need: Need, left: dict[str, OnShelf], zone: tzinfo) -> tuple[list[Taken], int]:
    missing, given = need.amount, []
    for bottle in pick(need, left.values(), zone):
        if not missing:
            break
        amount = min(missing, bottle.concentrate)
        given.append(Taken(need.id, bottle.code, amount, opens=bottle.sealed))
        left[bottle.code] = less(bottle, amount, need.starts_at)
        missing -= amount
    return given, missing


def less(bottle: OnShelf, amount: int, at: datetime) -> OnShelf:
    """Return a bottle without so much concentrate; a sealed one was opened for it then."""
    gone = gross(amount, bottle.parts)
    dates = replace(bottle.dates, opened_at=at) if bottle.sealed else bottle.dates
    return replace(bottle, content=max(0, bottle.content - gone), sealed=False, dates=dates)


def pick(need: Need, shelf: Iterable[OnShelf], zone: tzinfo) -> list[OnShelf]:
    """Return the bottles that may serve a need, in the order in which they are taken."""
    fit = [bottle for bottle in shelf if serves(need, bottle) and lasts(bottle, need, zone)]
    queue = sorted(fit, key=lambda bottle: (dies_at(bottle, zone), bottle.sealed, bottle.code))
    return of_one_lot(queue, need.amount, need.had) if need.one_lot else queue


def serves(need: Need, bottle: OnShelf) -> bool:
    """Say whether a bottle holds what the need asks for: concentrate serves any mix, a mix only its own."""
    if not bottle.concentrate or bottle.held:
        return False
    if need.product is not None and bottle.product != need.product:
        return False
    if need.product is None and (bottle.kind, bottle.dimension) != (need.kind, need.dimension):
        return False
    return bottle.parts in (NEAT, need.parts)


def lasts(bottle: OnShelf, need: Need, zone: tzinfo) -> bool:
    """Say whether no firm term of a bottle ends before the step does, its opening for the step included."""
    return not (ended := ends_before(bottle, need.starts_at, need.ends_at, zone)) or not ended.firm


def ends_before(bottle: OnShelf, starts_at: datetime, ends_at: datetime, zone: tzinfo) -> Term | None:
    """Return the gravest term that is over when the step ends, or None."""
    dates = replace(bottle.dates, opened_at=starts_at) if bottle.sealed else bottle.dates
    return over(dates, zone, ends_at)


def dies_at(bottle: OnShelf, zone: tzinfo) -> datetime:
    """Return the instant at which the first of its terms ends; far away where none does."""
    ends = terms(bottle.dates, zone)
    return ends[0].at if ends else NEVER


def life_or_none(count: int | None, unit: str, given_by: str) -> Life | None:
    """Return a life from its three columns, or None where none was entered."""
    return Life(count, unit, given_by) if count else None
