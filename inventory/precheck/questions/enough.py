"""Is there enough that is usable at each step, after earlier jobs took theirs?"""

from collections.abc import Iterable

from inventory.codes import pair
from inventory.stock.rules.reserve import Need, serves

from .asking import Finding, question
from .case import Case, Supply
from .other_make import other_make
from .words import amount, joined, moment, order_by, wanted


@question("steps", "needs", "shelf", "products")
def enough_for_each_step(case: Case) -> list[Finding]:
    """Ask, once a product or kind, where too little is free; a shortage with a graver cause is left to it."""
    groups: dict[str, list[Supply]] = {}
    for supply in case.supplies:
        groups.setdefault(supply.need.product or supply.need.kind, []).append(supply)
    return [_short(case, group) for group in groups.values() if any(_unexplained(supply) for supply in group)]


def _unexplained(supply: Supply) -> bool:
    return supply.lacks and not (supply.held or supply.dead)


def _short(case: Case, group: list[Supply]) -> Finding:
    first = next(supply for supply in group if _unexplained(supply))
    product = wanted(case, first.need)
    needed = sum(supply.need.amount for supply in group)
    free = needed - sum(supply.missing for supply in group)
    name = _name(case, first.need)
    starts = moment(first.need.starts_at, case.facts.zone, case.at)
    if product is None:
        return _unknown_kind(first, name, starts)
    said = [amount(each, product, case.facts.system) for each in (needed, free, needed - free)]
    return Finding(
        "too_little",
        "ask",
        f"{name}: {said[0]} needed, {said[1]} free{_nothing(case, group, first)}.",
        f"This job still takes {said[0]}, {first.step.name} from {starts}; {said[1]} is left for it "
        f"after earlier jobs, so {said[2]} is missing.",
        joined(_earlier(case, first), other_make(case, first), order_by(case, first))
        or "Count the shelf, or order.",
        "the ledger, and what open jobs are planned to take",
        (first.need.product or first.need.kind, first.step.code),
    )


def _nothing(case: Case, group: list[Supply], first: Supply) -> str:
    """Say so where the shelf holds nothing at all of it, whoever it is booked for."""
    here = any(serves(supply.need, bottle) for supply in group for bottle in case.plan.shelf)
    return "" if here else f": there is nothing of it here, and {first.step.name} cannot be done"


def _unknown_kind(supply: Supply, name: str, starts: str) -> Finding:
    return Finding(
        "too_little",
        "ask",
        f"{name}: this shop has no product of this kind.",
        f"{supply.step.name} takes some from {starts}, and no product is of that kind.",
        "Make the product, or plan another one for this step.",
        "the list of products",
        (supply.need.kind, supply.step.code),
    )


def _name(case: Case, need: Need) -> str:
    product = wanted(case, need)
    if need.product and product:
        return product.name
    words = product.kind_words if product else need.kind
    return words[:1].upper() + words[1:]


def _earlier(case: Case, supply: Supply) -> str:
    """Name the jobs that take the same thing first, at most two."""
    amounts: dict[str, int] = {}
    for need in _before(case, supply.need):
        for taken in case.plan.by_need.get(need.id, ()):
            if _alike(case, supply.need, taken.container):
                amounts[need.job] = amounts.get(need.job, 0) + taken.amount
    product = wanted(case, supply.need)
    assert product is not None
    said = []
    for key, taken_before in list(amounts.items())[:2]:
        job = case.facts.jobs[key]
        on = job.starts_at.astimezone(case.facts.zone)
        said.append(f"Job {pair(job.code)} on {on:%A} {on.day} {on:%B} takes "
                    f"{amount(taken_before, product, case.facts.system)} first.")  # fmt: skip
    return joined(*said)


def _before(case: Case, need: Need) -> Iterable[Need]:
    for other in case.plan.needs:
        if other.id == need.id:
            return
        if other.job != need.job:
            yield other


def _alike(case: Case, need: Need, container: str) -> bool:
    bottle = next(bottle for bottle in case.plan.shelf if bottle.code == container)
    return bottle.product == need.product if need.product else bottle.kind == need.kind
