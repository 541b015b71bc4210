"""Does everything last through its step, what opening it does to its open life included?"""

from datetime import timedelta

from inventory.stock.rules.reserve import OnShelf, ends_before
from inventory.stock.rules.use_by import Term

from .asking import Finding, question
from .case import Case, Supply
from .words import amount, instead, joined, moment, named, offered, order_by, until, wanted

NEAR = timedelta(days=7)
SOURCES = {
    "printed": "the date printed on the bottle",
    "best before": "the date printed on the bottle",
    "sealed": "the date it was made and the sealed life kept with the product",
    "opened": "the day it was opened and the open life kept with the product",
    "mixed": "when it was mixed and the mix life kept with the product",
    "retest": "the retest recorded here",
}


@question("steps", "needs", "shelf", "products")
def lasts_through_its_step(case: Case) -> list[Finding]:
    """Stop where a firm date ends before the step does, and a hand would take it or nothing else is there.

    A week or more ahead, with enough of what lasts, it is told: that bottle stops at its own scan, and here
    once the step is near.
    """
    found: dict[str, Finding] = {}
    for supply in case.supplies:
        dead = [(b, term) for b, term in supply.dead if supply.lacks or _reached_for(supply, b)]
        known = found.get(dead[0][0].product) if dead else None
        if dead and (known is None or (known.grade == "tell" and not _far_and_covered(case, supply))):
            dead.sort(key=lambda one: (not supply.at_hand(one[0]), one[1].at, one[0].code))
            found[dead[0][0].product] = _dies(case, supply, dead)
    return list(found.values())


def _reached_for(supply: Supply, bottle: OnShelf) -> bool:
    return supply.at_hand(bottle) and not supply.good_at_hand


def _far_and_covered(case: Case, supply: Supply) -> bool:
    return not supply.lacks and supply.need.starts_at - case.at > NEAR


def _dies(case: Case, supply: Supply, dead: list[tuple[OnShelf, Term]]) -> Finding:
    bottle, term = dead[0]
    other = instead(case, supply)
    about = (bottle.code, supply.step.code, *([other.code] if other else []))
    starts = moment(supply.need.starts_at, case.facts.zone, case.at)
    ends = moment(supply.need.ends_at, case.facts.zone, case.at)
    after = f"{starts} is after its use-by, {until(term, case.facts.zone)}."
    if term.at > supply.need.starts_at:
        after = f"{supply.step.name} ends {ends}; its use-by is {until(term, case.facts.zone)}."
    return Finding(
        "out_of_date",
        "tell" if _far_and_covered(case, supply) else "stop",
        f"{_subject(case, dead)} {_verb(case, supply, dead)}",
        f"{named(case, bottle)}: {term.why}, so the last of it is {until(term, case.facts.zone)}. "
        f"{supply.step.name} runs from {starts} to {ends}.",
        joined(after, _way_out(case, supply, other, over=term.at <= case.at)),
        SOURCES[term.name],
        about,
    )


def _subject(case: Case, dead: list[tuple[OnShelf, Term]]) -> str:
    more = f" and {len(dead) - 1} more" if len(dead) > 1 else ""
    return named(case, dead[0][0]) + more


def _verb(case: Case, supply: Supply, dead: list[tuple[OnShelf, Term]]) -> str:
    one = len(dead) == 1
    if dead[0][1].at <= case.at:
        return "is out of date." if one else "are out of date."
    when = "during" if dead[0][1].at > supply.need.starts_at else "before"
    return f"dies {when} its step." if one else f"die {when} their step."


def _way_out(case: Case, supply: Supply, other: OnShelf | None, *, over: bool) -> str:
    if _far_and_covered(case, supply):
        this = "empty this one" if over else "use this one up first, or empty it once it is over"
        return f"There is enough that lasts until then: {this}."
    if other is None and not supply.lacks:
        return "What else is free for it is past an estimated life: look at it first, and say what you saw."
    if other is None:
        return joined(_what_lasts(case, supply), order_by(case, supply))
    put = f"bring it to {supply.step.bay_name}" if supply.step.bay_name else "open it for this step"
    return f"Take {offered(case, supply, other)}: {put}, and put the other aside."


def _what_lasts(case: Case, supply: Supply) -> str:
    product = wanted(case, supply.need)
    if not supply.taken or product is None:
        return "Nothing else that lasts is free for it."
    got = supply.need.amount - supply.missing
    said = [amount(each, product, case.facts.system) for each in (got, supply.need.amount)]
    return f"Of what lasts, {said[0]} of {said[1]} is free."


@question("steps", "needs", "shelf", "products")
def past_an_estimate(case: Case) -> list[Finding]:
    """Ask where only an estimate or a best-before date ends before the step does."""
    found: dict[str, Finding] = {}
    for supply in case.supplies:
        for bottle, _ in supply.taken:
            term = ends_before(bottle, supply.need.starts_at, supply.need.ends_at, case.facts.zone)
            if term and bottle.code not in found:
                found[bottle.code] = _estimate(case, supply, bottle, term)
    return list(found.values())


def _estimate(case: Case, supply: Supply, bottle: OnShelf, term: Term) -> Finding:
    what = "best-before date" if term.name == "best before" else "estimated life"
    starts = moment(supply.need.starts_at, case.facts.zone, case.at)
    return Finding(
        "past_estimate",
        "ask",
        f"{named(case, bottle)} is past its {what} at its step.",
        f"{term.why}, so the last of it is {until(term, case.facts.zone)}. "
        f"{supply.step.name} starts {starts}.",
        "Look first: gelled, cloudy, stringy? Try it on a test spot, then say what you saw.",
        SOURCES[term.name],
        (bottle.code, supply.step.code),
    )
