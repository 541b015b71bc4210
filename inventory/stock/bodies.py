"""What a line's hash covers, from the row as it is written and from the row as it is stored."""

from collections.abc import Mapping, Sequence

from inventory.models import Movement
from inventory.stock.rules.chain import microseconds

NAMES = (
    "seq", "shop", "kind", "happened_at", "recorded_at", "person", "source", "target", "lot", "place", "job",
    "step", "product", "amount", "concentrate", "reverses", "facts",
)  # fmt: skip
# Where each of NAMES stands in the database: codes, never names or keys.
COLUMNS = (
    "seq", "shop__slug", "kind", "happened_at", "recorded_at", "person__code", "source__code", "target__code",
    "lot__code", "place__code", "job__code", "step__code", "product__code", "amount", "concentrate",
    "reverses__seq", "facts",
)  # fmt: skip


def body_of(movement: Movement) -> dict[str, object]:
    """Return the body of a line that is about to be written."""
    return {
        "seq": movement.seq,
        "shop": movement.shop.slug,
        "kind": movement.kind,
        "happened_at": microseconds(movement.happened_at),
        "recorded_at": microseconds(movement.recorded_at),
        "person": _code(movement.person),
        "source": _code(movement.source),
        "target": _code(movement.target),
        "lot": _code(movement.lot),
        "place": _code(movement.place),
        "job": _code(movement.job),
        "step": _code(movement.step),
        "product": _code(movement.product),
        "amount": movement.amount,
        "concentrate": movement.concentrate,
        "reverses": movement.reverses.seq if movement.reverses else None,
        "facts": movement.facts,
    }


def body_of_row(row: Sequence[object]) -> Mapping[str, object]:
    """Return the body of a stored line, from the values of COLUMNS."""
    body = dict(zip(NAMES, row, strict=True))
    for name in ("happened_at", "recorded_at"):
        body[name] = microseconds(body[name])  # type: ignore[arg-type]
    return body


def _code(row: object) -> str | None:
    return None if row is None else str(row.code)  # type: ignore[attr-defined]
