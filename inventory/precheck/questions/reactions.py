"""May what the job puts on the car meet: one after the other on the car, and with what is in its bay?

A rinse to a clear drain parts two products on a car once it is signed. Planned and not signed yet it stops
what comes after it, no sooner than that is at hand: a plan with its rinse in the right place is no trouble.
"""

from collections.abc import Iterator
from dataclasses import replace

from safety.findings import Finding as Judged
from safety.reactions.bay import in_one_bay
from safety.reactions.car import on_one_car
from safety.reactions.values import Substance

from .asking import Finding, question
from .case import Case
from .topics.reactions import InBay, Wetted
from .words import joined

CLOSED = "reaction.bay_closed"


@question("steps", "reactions")
def one_after_the_other(case: Case) -> list[Finding]:
    """Stop where acid and iron remover, or bleach and either, follow one another without a signed rinse."""
    found: dict[tuple[str, ...], Finding] = {}
    steps = case.facts.reactions.steps
    for at, later in enumerate(steps):
        if later.signed:
            continue
        for first, second, between in _before(steps, at):
            for judged in _judged(case, first, second, later, between):
                found.setdefault((judged.code, *sorted((first, second))), judged)
    return list(found.values())


def _before(steps: tuple[Wetted, ...], at: int) -> Iterator[tuple[str, str, tuple[Wetted, ...]]]:
    """Yield what was put on before a step, what the step puts on, and the steps from the one to the other."""
    later = steps[at]
    for index, earlier in enumerate(steps[: at + 1]):
        for first in earlier.products:
            for second in later.products:
                if first != second and not (earlier is later and first > second):
                    yield first, second, steps[index:at]


def _judged(
    case: Case, first: str, second: str, later: Wetted, between: tuple[Wetted, ...]
) -> Iterator[Finding]:
    pair = _pair(case, first, second)
    rinses = [step for step in between if step.rinses]
    if pair is None or any(rinse.signed for rinse in rinses):
        return
    if rinses:
        yield from _waits_for_its_rinse(case, pair, (first, second), later, rinses[-1])
    elif judged := on_one_car(*pair):
        yield _finding(judged, (first, second, later.step))


def _waits_for_its_rinse(
    case: Case, pair: tuple[Substance, Substance], about: tuple[str, str], later: Wetted, rinse: Wetted
) -> Iterator[Finding]:
    unrinsed = on_one_car(*pair)
    earlier = [step for step in case.facts.reactions.steps if step.starts_at < rinse.starts_at]
    at_hand = case.at >= later.starts_at or (earlier and all(step.signed for step in earlier))
    if unrinsed is None or unrinsed.grade != "stop" or not at_hand:
        return
    says = f"{later.name} waits for the rinse: {rinse.name} is not signed."
    do = f"Rinse car and floor with water to a clear drain, then sign {rinse.name}."
    yield replace(_finding(unrinsed, (*about, later.step)), says=says, do=do, because=joined(
        unrinsed.says, unrinsed.because
    ))  # fmt: skip


@question("steps", "reactions")
def in_the_bay(case: Case) -> list[Finding]:
    """Stop where bleach and acid are in use in one bay; tell, once a bay, of what merely stands there."""
    stops: dict[tuple[str, ...], Finding] = {}
    closed: dict[str, list[Finding]] = {}
    for step in case.facts.reactions.steps:
        for product in () if step.signed else step.products:
            for other in case.facts.reactions.in_bays:
                judged = _beside(case, step, product, other)
                if judged and judged.grade == "stop":
                    stops.setdefault(tuple(sorted((product, other.product))), judged)
                elif judged:
                    closed.setdefault(other.bay, []).append(judged)
    return [*stops.values(), *(_once(found) for found in closed.values())]


def _beside(case: Case, step: Wetted, product: str, other: InBay) -> Finding | None:
    pair = _pair(case, product, other.product)
    if pair is None or step.bay != other.bay or product == other.product:
        return None
    meets = bool(other.starts_at and other.ends_at) and _overlap(step, other)
    if other.in_use and not meets:
        return None
    judged = in_one_bay(*pair, both_in_use=meets)
    if judged is None:
        return None
    found = _finding(judged, (product, other.product, step.step))
    return replace(found, says=f"{found.says} {other.car} is in the bay then.") if meets else found


def _overlap(step: Wetted, other: InBay) -> bool:
    assert other.starts_at is not None
    assert other.ends_at is not None
    return step.starts_at < other.ends_at and other.starts_at < step.ends_at


def _once(found: list[Finding]) -> Finding:
    """Return one note for a bay: the first pair says it, the others are counted in its reason."""
    by_pair = {tuple(sorted(one.about[:2])): one for one in found}
    first, *rest = (by_pair[key] for key in sorted(by_pair))
    more = " ".join(one.says for one in rest)
    return replace(first, because=joined(first.because, more))


def _pair(case: Case, first: str, second: str) -> tuple[Substance, Substance] | None:
    known = case.facts.reactions.substances
    return (known[first], known[second]) if first in known and second in known else None


def _finding(judged: Judged, about: tuple[str, ...]) -> Finding:
    """Return it with its first sentence alone said; what the two give off stands in the reason."""
    says, _, chemistry = judged.says.partition(". ")
    says, because = (f"{says}.", joined(chemistry, judged.because)) if chemistry else (says, judged.because)
    return Finding(judged.code, judged.grade, says, because, judged.do, judged.source, about)
