"""The guard that keeps a step to one lot of a coating, with the way back to the first one."""

from dataclasses import replace

from inventory.stock.rules import one_lot
from inventory.stock.rules.reserve import Need, serves

from . import words
from .answers import STOP, Key
from .facts import Facts, JobFacts, ProductFacts
from .instead import instead_of
from .objections import Objection, Taking


def other_lot(taking: Taking, facts: Facts) -> Objection | None:
    """One step takes a coating from one lot, unless its product allows more or an owner said why."""
    product, shelf = taking.bottle.product, taking.bottle.shelf
    if product is None or not one_lot.binds(product.kind, product.mixes_lots):
        return None
    if taking.job and not taking.step:
        return _other_lot_after_signing(taking, taking.job, product, facts)
    need = next((need for need in facts.needs if _for_step(need, taking, facts)), None)
    thing = need.product or need.kind if need else product.code
    had = facts.step_had.get((taking.step, thing), one_lot.NOTHING)
    allowed = facts.two_lots_allowed
    if one_lot.joins(shelf.batch, had) or one_lot.stands(allowed, taking.step, product.code, product.kind):
        return None
    same = (taking.step, product.code) in facts.step_had
    other = f"{product.name} from another lot" if same else "another coating"
    says = f"This step has {other} on it already."
    return Objection("other_lot", STOP, says, *_first_lot(taking, facts, had, planned=need is not None))


def _other_lot_after_signing(
    taking: Taking, job: JobFacts, product: ProductFacts, facts: Facts
) -> Objection | None:
    """Judge what names no step any more by what the car's steps have had of it: a signature ends no rule."""
    steps = [step.code for step in job.steps]
    had = one_lot.NOTHING.union(*(facts.step_had.get((step, product.code), ()) for step in steps))
    allowed = any(one_lot.stands(facts.two_lots_allowed, step, product.code, product.kind) for step in steps)
    if allowed or one_lot.joins(taking.bottle.shelf.batch, had):
        return None
    says = f"{job.name} has {product.name} from another lot on it already, and that stage is signed."
    way = "Take the first lot. If this one is on the car already: ALREADY, it is written down and flagged."
    return Objection("other_lot", STOP, says, way)


def _for_step(need: Need, taking: Taking, facts: Facts) -> bool:
    free = replace(taking.bottle.shelf, held="")
    return facts.step_of.get(need.id) == taking.step and serves(need, free)


def _first_lot(
    taking: Taking, facts: Facts, had: one_lot.Batch, *, planned: bool
) -> tuple[str, tuple[Key, ...]]:
    """Return the way back to the first lot; what the check finds, an owner may override there."""
    of_it = [each for each in facts.bottles.values() if one_lot.joins(each.shelf.batch, had)]
    first = instead_of(taking.bottle, replace(facts, bottles={each.code: each for each in of_it}))
    job = taking.job.code if taking.job else ""
    found = any(one.code == one_lot.TWO_LOTS and taking.step in one.about for one in facts.findings)
    key = () if first is None else (Key(f"Use {words.short(first.code)}", first.code, main=True),)
    take = "Take the first lot"
    if first is not None:
        take += f", {words.short(first.code)}" + (f" from {first.place_name}" if first.place_name else "")
    if found:
        return f"{take}, or {one_lot.CHECK_PAGE}.", (*key, Key("See its check", page="check", about=job))
    if planned:
        return f"{take}. If it is not there, count it: then {one_lot.CHECK_PAGE}.", key
    plan = "If there is none, plan what is still needed on the job's page: then"
    return f"{take}. {plan} {one_lot.CHECK_PAGE}.", (*key, Key("The job's page", page="job", about=job))
