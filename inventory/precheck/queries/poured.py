"""What is at hand or was used comes beside the plan: rows as a step's needs, made here and never written.

The ledger says what was used on a car, the station what somebody is about to pour. What no step plans is a
further need of the step it was used in; what a step plans becomes the larger of planned and used.
"""

from collections.abc import Iterable, Mapping, Sequence
from copy import copy
from dataclasses import dataclass
from datetime import datetime

from inventory.models import Movement, Product, Step, StepNeed
from inventory.stock.rules.at_hand import at_hand


@dataclass(frozen=True)
class Pouring:
    """A product that somebody has in hand for a job; `amount` is concentrate beyond what the ledger has.

    None: nobody said an amount yet. `step` is a step's code where it is known.
    """

    product: Product
    amount: int | None = None
    step: str = ""


@dataclass
class Spent:
    """What one step had of one product."""

    step: Step
    product: Product
    amount: int = 0


# (step's id, product's id)
Key = tuple[int, int]


class Steps:
    """The steps of jobs and what they plan; says in which step something is used."""

    def __init__(self, rows: Sequence[Step], planned: Sequence[StepNeed], at: datetime | None) -> None:
        self.rows, self.planned, self.at = rows, planned, at

    def of(self, job: int, product: Product, named: int | None = None, code: str = "") -> Step | None:
        """Return the step that is named, else the one that plans it, else the one at hand."""
        mine = [row for row in self.rows if row.job_id == job]
        for row in mine:
            if row.pk == named or row.code == code:
                return row
        open_ = [row for row in mine if row.signed_at is None]
        planning = planned_for(product, self.planned)
        asked = [row for row in (*open_, *mine) if row.pk in planning]
        return asked[0] if asked else at_hand(open_, self.at) or (mine[-1] if mine else None)


def planned_for(product: Product, planned: Iterable[StepNeed]) -> set[int]:
    """Return the steps that plan a product: by its name, and where none does by its kind."""
    rows = list(planned)
    named = {row.step_id for row in rows if row.product_id == product.pk}
    return named or {row.step_id for row in rows if not row.product_id and row.kind == product.kind}


def spent(uses: Iterable[Movement], steps: Steps, pouring: Mapping[int, Pouring]) -> dict[Key, Spent]:
    """Return what steps had by the ledger, with what is in hand for a job on top."""
    found: dict[Key, Spent] = {}
    for use in uses:
        assert use.product is not None
        assert use.job_id is not None
        step = steps.of(use.job_id, use.product, use.step_id)
        _add(found, step, use.product, use.concentrate or 0)
    for job, one in pouring.items():
        _add(found, steps.of(job, one.product, code=one.step), one.product, one.amount or 0)
    return found


def _add(found: dict[Key, Spent], step: Step | None, product: Product, amount: int) -> None:
    """A job without steps has nothing that it could be used in."""
    if step is not None:
        found.setdefault((step.pk, product.pk), Spent(step, product)).amount += amount


def beside(planned: Sequence[StepNeed], had: Mapping[Key, Spent]) -> list[StepNeed]:
    """Return the plan's rows, larger where more was used, and a further row for what nobody planned."""
    rows: list[StepNeed] = list(planned)
    more: list[StepNeed] = []
    for key, one in had.items():
        named = [at for at, row in enumerate(rows) if (row.step_id, row.product_id) == key]
        alike = [at for at, row in enumerate(rows) if _any_of(row, one)]
        if named:
            over = one.amount - sum(rows[at].amount for at in named)
            rows[named[-1]] = _larger(rows[named[-1]], max(0, over))
        elif alike:
            rows[alike[0]] = _served(rows[alike[0]], one, _others(one, had))
        else:
            more.append(_further(one, -len(more) - 1))
    return [*rows, *more]


def _any_of(row: StepNeed, one: Spent) -> bool:
    return row.step_id == one.step.pk and not row.product_id and row.kind == one.product.kind


def _others(one: Spent, had: Mapping[Key, Spent]) -> int:
    """Return what the step had of other makes of the kind."""
    alike = (each for each in had.values() if each.step.pk == one.step.pk and each is not one)
    return sum(each.amount for each in alike if each.product.kind == one.product.kind)


def _larger(row: StepNeed, over: int) -> StepNeed:
    if not over:
        return row
    made = copy(row)
    made.amount += over
    return made


def _served(row: StepNeed, one: Spent, others: int) -> StepNeed:
    """A need of a kind is of the product that was used for it."""
    made = copy(row)
    made.product, made.kind = one.product, ""
    made.amount = max(one.amount, row.amount - others)
    return made


def _further(one: Spent, number: int) -> StepNeed:
    # A number of its own, so that rows are told apart; it is in no table.
    return StepNeed(pk=number, step=one.step, product=one.product, amount=one.amount)
