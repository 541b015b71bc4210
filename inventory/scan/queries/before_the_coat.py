"""What ought to be done before a coating goes on, and nobody signed: asked once a job, at the bottle.

A planned job that lies ahead is no trouble, so that the check's page says nothing of it.
"""

from collections.abc import Iterable, Sequence

from inventory.models import Container, Job, Step
from inventory.models.service import Stage
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Finding
from inventory.precheck.rules import NOT_SIGNED
from inventory.stock.conversation import Said, State
from inventory.stock.conversation.facts import Facts

from .pouring import bottle_in_hand, product_of, step_of, uses

OILS = "oils"
ORDER = tuple(Stage.values)


def unsigned_before(
    job: Job, steps: Sequence[Step], state: State, said: Said, facts: Facts, rows: Iterable[Container]
) -> tuple[Finding, ...]:
    """Return the ask where what is in hand wants bare paint and an earlier stage of the car is unsigned."""
    product = product_of(bottle_in_hand(state, said), rows) if uses(state, said) else None
    if product is None or OILS not in precheck.does(product).needs_absent:
        return ()
    named = step_of(state, said, facts)
    its = next((step for step in steps if step.code == named), None)
    stages = {step.stage for step in steps if _left_open(step, its)}
    if not stages:
        return ()
    return (_asked(job, product.code, [stage for stage in ORDER if stage in stages]),)


def _left_open(step: Step, its: Step | None) -> bool:
    """Say whether a step is of an earlier stage and nobody signed it; a rinse is judged by itself."""
    if step.signed_at or step.rinses:
        return False
    before = ORDER.index(step.stage) < ORDER.index(its.stage if its else Stage.COAT)
    return before and (its is None or step.starts_at <= its.starts_at)


def _asked(job: Job, product: str, stages: Sequence[str]) -> Finding:
    names = " and ".join(part for part in (", ".join(stages[:-1]), stages[-1]) if part)
    verb, done = ("are", "Are they") if len(stages) > 1 else ("is", "Is it")
    return Finding(
        NOT_SIGNED, "ask",
        f"{names[:1].upper()}{names[1:]} {verb} not signed on {job.vehicle.name}. {done} done?",
        "A coating keeps what lies below it.",
        "YES if so; SIGN says it for everybody. If not, do that first: a coating keeps what lies below it.",
        "common practice, no source", (product, job.code),
    )  # fmt: skip
