"""What may stand between a scan and its entry: one function a reason, in this order, stops before asks."""

from collections.abc import Iterable
from dataclasses import replace

from inventory.stock.rules import one_lot
from inventory.stock.rules.reserve import Need, OnShelf, in_order, reserve
from inventory.stock.rules.use_by import over

from . import words
from .answers import ASK, STOP, Key
from .facts import Facts, Found
from .instead import instead, label_key
from .lots import other_lot
from .objections import Guard, Objection, Taking

YES = "YES"
# What the guards here judge of the very bottle and amount; the check judges it of the whole job.
JUDGED_HERE = {
    "out_of_date", "past_estimate", "held", "recalled", "too_little", "unlabelled", one_lot.TWO_LOTS,
    "reaction.rinse",
}  # fmt: skip
# Asks that end by doing what they name: a yes at the badge would not end them.
NO_BAY = "air.no_bay"
ENDED_BY_DOING = frozenset({"people.eyewash_run", "rags.emptied", NO_BAY})
CHECK = "check."
PEOPLE = ("people.", "air.", "tools.")
# One question says so many sentences; the next one says the rest.
TOGETHER = 3


def first_objection(
    taking: Taking, facts: Facts, answered: Iterable[str], guards: Iterable[Guard]
) -> Objection | None:
    """Return the first stop, else the first ask that was not answered yet, else None."""
    found = [objection for guard in guards if (objection := guard(taking, facts))]
    said_yes = set(answered)
    stops = (each for each in found if each.grade == STOP)
    asks = (each for each in found if each.grade == ASK and each.code not in said_yes)
    return next(stops, None) or next(asks, None)


def gone(taking: Taking, facts: Facts) -> Objection | None:
    """What left the shelf is not used."""
    if taking.bottle.state != "gone":
        return None
    says = f"{words.name(taking.bottle)} was booked out of the shop."
    return Objection("gone", STOP, says, "If it is here after all: UNDO that entry, or ask an owner.")


def held(taking: Taking, facts: Facts) -> Objection | None:
    """Held means not usable, whatever its date."""
    reason = taking.bottle.shelf.held
    if not reason:
        return None
    says = f"{words.name(taking.bottle)} is held: {reason}."
    return Objection("held", STOP, says, *instead(taking.bottle, facts, "Leave it"))


def nothing_in_it(taking: Taking, facts: Facts) -> Objection | None:
    """A bottle that was never filled gives nothing."""
    if taking.bottle.product:
        return None
    return Objection(
        "unfilled", STOP, f"{words.name(taking.bottle)} is empty.", "Fill it first: scan the drum, then FILL."
    )


def out_of_date(taking: Taking, facts: Facts) -> Objection | None:
    """A firm term stops, an estimate or a best-before date asks; judged when it happens."""
    term = over(taking.bottle.shelf.dates, facts.zone, facts.at)
    if term is None:
        return None
    died = f"{words.name(taking.bottle)} died on {words.until(term, facts)}: {term.why}."
    if "minute" in term.why:
        died = f"{words.name(taking.bottle)} died at {words.until(term, facts)}: {term.why}."
    if term.firm:
        return Objection("out_of_date", STOP, died, *instead(taking.bottle, facts, "Empty it"))
    says = f"{words.name(taking.bottle)} is past {words.until(term, facts)}: {term.why}."
    next = "Gelled, cloudy, stringy? Then DISCARD it. If it is sound, try it on a test spot first, then YES."
    return Objection(
        "past_estimate",
        ASK,
        says,
        next,
        (Key("Yes, test spot is good", YES, main=True), Key("Discard it", "DISCARD")),
    )


def unlabelled(taking: Taking, facts: Facts) -> Objection | None:
    """A bottle that was filled here says what is in it, or nobody knows."""
    bottle = taking.bottle
    if not bottle.refillable or bottle.filled_at is None:
        return None
    if bottle.labelled_at and bottle.labelled_at >= bottle.filled_at:
        return None
    says = f"{words.name(bottle)} has no label for what is in it now."
    return Objection(
        "unlabelled",
        ASK,
        says,
        "Print its label, or YES if you know what is in it.",
        (label_key(bottle.code, main=True), Key("Yes, I know what it is", YES)),
    )


def too_little(taking: Taking, facts: Facts) -> Objection | None:
    """More than the book holds: the person in front of the bottle knows better than the book."""
    bottle = taking.bottle
    if taking.amount <= bottle.content:
        return None
    said = words.amount(taking.amount, bottle.product, facts.shop)
    says = f"{words.short(bottle.code)} is booked at {words.holds(bottle, facts)}. You said {said}."
    next = f"If the {bottle.noun} holds more than the book says: YES. To give another amount: type it."
    return Objection(
        "too_little",
        ASK,
        says,
        next,
        (Key("Yes, it holds more", YES, main=True), Key("Another amount", "USE")),
    )


def starves(taking: Taking, facts: Facts) -> Objection | None:
    """What an earlier job is booked to get is not taken from it unasked."""
    others = [need for need in facts.needs if not taking.job or need.job != taking.job.code]
    earlier = [need for need in others if _earlier(need, taking)]
    shelf = [bottle.shelf for bottle in facts.bottles.values()]
    before = reserve(earlier, shelf, facts.zone).short
    after = reserve(earlier, [_without(bottle, taking) for bottle in shelf], facts.zone).short
    harmed = next(
        (need for need in in_order(earlier) if after.get(need.id, 0) > before.get(need.id, 0)), None
    )
    if harmed is None:
        return None
    missing = words.amount(after[harmed.id] - before.get(harmed.id, 0), taking.bottle.product, facts.shop)
    whose = facts.booked.get(harmed.job, harmed.job)
    says = f"{words.name(taking.bottle)} is wanted by {whose}: {missing} would be missing there."
    way = "YES takes it all the same. Then that car needs more ordered, or another bottle."
    return Objection(
        "starves", ASK, says, way, (Key("Yes, take it", YES), Key("No, leave it", "NO", main=True))
    )


def _earlier(need: Need, taking: Taking) -> bool:
    if taking.job is None:
        return True
    mine = (taking.job.starts_at, taking.job.booked_at, taking.job.code)
    return (need.job_starts_at, need.booked_at, need.job) < mine


def _without(bottle: OnShelf, taking: Taking) -> OnShelf:
    if bottle.code != taking.bottle.code:
        return bottle
    return replace(bottle, content=max(0, bottle.content - taking.amount))


def the_check(taking: Taking, facts: Facts) -> Objection | None:
    """What the pre-job check says about this bottle, its product or who takes it: stops stop, asks ask."""
    about = [found for found in facts.findings if concerns(found, taking)]
    for found in about:
        if found.grade == STOP:
            return Objection(f"{CHECK}{found.code}", STOP, found.says, found.do)
    open_ = [one for one in about if one.grade == ASK and CHECK + one.code not in taking.answered]
    return _asked(sorted(open_, key=lambda one: not one.code.startswith(PEOPLE))) if open_ else None


def _asked(found: list[Found]) -> Objection:
    """Return one question: what protects people leads, the others are said after it and answered with it."""
    now = found[:TOGETHER]
    more = " ".join(one.says for one in now[1:])
    return Objection(
        "+".join(dict.fromkeys(CHECK + one.code for one in now)),
        ASK,
        now[0].says,
        f"{now[0].do} YES answers this, too: {more}" if more else now[0].do,
        (Key("Yes, carry on", YES),),
    )


def concerns(found: Found, taking: Taking) -> bool:
    """Say whether a finding is about this bottle, its product, or who takes it.

    What nobody planned is why its step has what protects people open; a planned bottle is asked only about
    itself and who has it in hand. What another product of the step raises is asked with that one.
    """
    if taking.job is None or found.code in JUDGED_HERE | ENDED_BY_DOING:
        return False
    if {taking.bottle.code, taking.bottle.shelf.product} & set(found.about):
        return True
    others = bool(found.of) and not {taking.bottle.shelf.product, taking.step} & {*found.of}
    if not found.code.startswith(PEOPLE) or (found.grade == ASK and others):
        return False
    mine = taking.who in found.about and taking.job.of_one_stage(taking.step, found.about)
    if found.grade == STOP:
        return taking.step in found.about or (mine and not taking.planned)
    return mine or (not taking.planned and taking.step in found.about)


def no_bay(taking: Taking, facts: Facts) -> Objection | None:
    """What goes into the air of no bay that anybody named is judged by nobody: a yes would pass it."""
    product, job = taking.bottle.shelf.product, taking.job
    mine = (one for one in facts.findings if one.code == NO_BAY and {taking.step, product} <= {*one.about})
    found = next(mine, None)
    if found is None or job is None:
        return None
    page = Key("See its check", page="check", about=job.code)
    return Objection(f"{CHECK}{NO_BAY}", STOP, found.says, f"{found.do} Then scan it again.", (page,))


def met_on_the_car(taking: Taking, facts: Facts) -> Objection | None:
    """What was used on the car since its last signed rinse must not meet this."""
    mine = (one for one in facts.on_the_car if taking.job and taking.bottle.code in one.about)
    found = next(mine, None)
    return Objection(f"{CHECK}{found.code}", STOP, found.says, found.do) if found else None


USING: tuple[Guard, ...] = (
    gone,
    nothing_in_it,
    held,
    out_of_date,
    the_check,
    no_bay,
    met_on_the_car,
    unlabelled,
    other_lot,
    too_little,
    starves,
)
OPENING: tuple[Guard, ...] = (gone, held, out_of_date)
# What is on a car already is written down; only what cannot be is refused.
DECLARED: tuple[Guard, ...] = (gone, nothing_in_it, too_little)
