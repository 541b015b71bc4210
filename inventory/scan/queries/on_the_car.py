"""What the bottle in hand would meet on the car: all that was used on it since its last signed rinse.

Planned or not, scanned a minute ago or yesterday: the ledger knows. One query; three more where something
was used.
"""

from collections.abc import Iterable, Sequence

from inventory.models import Container, Job, Movement, Step
from inventory.precheck import queries as precheck
from inventory.stock.conversation.facts import Found
from safety.reactions.car import on_one_car
from safety.reactions.rinsing import wants_rinse


def unrinsed(job: Job, steps: Sequence[Step]) -> bool:
    """Say whether something that wants rinsing off was used since the last signed rinse."""
    there = {row.product.code: row.product for row in _since_the_rinse(job, steps) if row.product}
    of = precheck.substances(there.values()) if there else {}
    return any(map(wants_rinse, of.values()))


def _since_the_rinse(job: Job, steps: Sequence[Step]) -> list[Movement]:
    rinsed_at = max((step.signed_at for step in steps if step.rinses and step.signed_at), default=None)
    return [row for row in precheck.uses_on([job]) if rinsed_at is None or row.happened_at > rinsed_at]


def on_the_car(job: Job, steps: Sequence[Step], meant: Iterable[Container]) -> tuple[Found, ...]:
    """Return the stops about each bottle meant, by its code; () where nothing of it would meet anything."""
    bottles = [row for row in meant if row.product and row.product.kind in precheck.WETS]
    if not bottles:
        return ()
    there = {row.product.code: row.product for row in _since_the_rinse(job, steps) if row.product}
    if not any(code != row.product.code for code in there for row in bottles if row.product):
        return ()
    of = precheck.substances([*there.values(), *(row.product for row in bottles if row.product)])
    found = []
    for row in bottles:
        assert row.product is not None
        for code in there:
            judged = on_one_car(of[code], of[row.product.code]) if code != row.product.code else None
            if judged and judged.grade == "stop":
                found.append(Found(judged.code, judged.grade, judged.says, judged.do, (row.code, code)))
    return tuple(found)
