"""May what the job puts on the car meet: one after the other on the car, and with what is in its bay?

A rinse to a clear drain parts two products on a car once it is signed. Planned and not signed yet it stops
what comes after it, no sooner than that is at hand: a plan with its rinse in the right place is no trouble.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from safety.findings import Finding as Judged
from safety.reactions.bay import in_one_bay
from safety.reactions.car import on_one_car
from safety.reactions.values import Substance

from .asking import Finding, question
from .case import Case
from .topics.reactions import InBay, Wetted, on_the_car
from .words import joined

# How a step names any product of a kind.
ANY = "any-"


@question("steps", "needs", "shelf", "products", "reactions")
def one_after_the_other(case: Case) -> list[Finding]:
    """Stop where acid and iron remover, or bleach and either, follow one another without a signed rinse.

    What counts as on the car is what was used since the last rinse was signed: a rinse that was signed
    before the acid was poured rinsed nothing.
    """
    found: dict[tuple[str, ...], Finding] = {}
    for meeting in _meetings(case):
        for judged in _judged(case, meeting):
            found.setdefault((judged.code, *sorted((meeting.first, meeting.second))), judged)
    return list(found.values())


@dataclass(frozen=True)
class _Meeting:
    """A product that is on the car, or will be, and one that a later step puts on; rinses planned between.

    `done`: the first one is on the car by now.
    """

    first: str
    second: str
    later: Wetted
    rinses: tuple[Wetted, ...]
    done: bool


def _meetings(case: Case) -> Iterator[_Meeting]:
    topic = case.facts.reactions
    open_ = [step for step in topic.steps if not step.signed_at]
    on_it, used = on_the_car(topic.steps, topic.used), {one.product for one in topic.used}
    for at, later in enumerate(open_):
        for second in _put_on(case, later):
            for first in on_it:
                if first != second:
                    yield _Meeting(first, second, later, _rinses(open_[:at]), done=True)
            for index, earlier in enumerate(open_[: at + 1]):
                for first in _put_on(case, earlier):
                    twice = earlier is later and first > second
                    if first != second and first not in used and not twice:
                        yield _Meeting(first, second, later, _rinses(open_[index:at]), done=False)


def _put_on(case: Case, step: Wetted) -> list[str]:
    """Return the products of a step; for a kind those that the step gets from the shelf, else the kind."""
    found: list[str] = []
    for product in step.products:
        kind = product.removeprefix(ANY) if product.startswith(ANY) else None
        got = [
            bottle.product
            for supply in case.supplies
            if kind and supply.step.code == step.step and supply.need.kind == kind
            for bottle, _ in supply.taken
        ]
        found += got or [product]
    return list(dict.fromkeys(found))


def _rinses(steps: list[Wetted]) -> tuple[Wetted, ...]:
    return tuple(step for step in steps if step.rinses)


def _judged(case: Case, meeting: _Meeting) -> Iterator[Finding]:
    pair = _pair(case, meeting.first, meeting.second)
    judged = on_one_car(*pair) if pair else None
    if judged is None:
        return
    found = _finding(judged, (meeting.first, meeting.second, meeting.later.step))
    if not meeting.rinses:
        yield found
    elif judged.grade == "stop" and (meeting.done or case.at >= meeting.later.starts_at):
        rinse, later = meeting.rinses[-1], meeting.later
        yield replace(
            found,
            says=f"{later.name} waits for the rinse: {rinse.name} is not signed.",
            do=f"Rinse car and floor with water to a clear drain, then sign {rinse.name}.",
            because=joined(judged.says, judged.because),
        )


@question("steps", "needs", "shelf", "products", "reactions")
def in_the_bay(case: Case) -> list[Finding]:
    """Stop where bleach and acid are in use in one bay, ask where a rinse must part two; tell of the rest.

    The note is one for a bay; an ask stays apart from it, which would say its first pair alone.
    """
    in_use: dict[tuple[str, ...], Finding] = {}
    closed: dict[str, list[Finding]] = {}
    for step in case.facts.reactions.steps:
        for product in () if step.signed_at else _put_on(case, step):
            for other in case.facts.reactions.in_bays:
                judged = _beside(case, step, product, other)
                if judged and judged.grade != "tell":
                    in_use.setdefault(tuple(sorted((product, other.product))), judged)
                elif judged:
                    closed.setdefault(other.bay, []).append(judged)
    return [*in_use.values(), *(_once(found) for found in closed.values())]


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
