"""What open jobs still need: planned minus already used, counted once and as concentrate."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from inventory.stock.rules.reserve import Need

# (job, step or "" where the entry names none, product) -> concentrate used, base units
Uses = Mapping[tuple[str, str, str], int]


def remaining(
    needs: Iterable[Need], step_of: Mapping[str, str], uses: Uses, kinds: Mapping[str, str]
) -> list[Need]:
    """Return needs less what their own step used, then less what their job used without naming a step.

    `kinds` gives each used product its kind. Named products are counted off before kinds; what is covered
    drops out.
    """
    left = dict(uses)
    queue = sorted(needs, key=lambda need: (need.product is None, need.starts_at, need.id))
    for step_named in (True, False):
        queue = [_less(need, step_of[need.id] if step_named else "", left, kinds) for need in queue]
    return [need for need in queue if need.amount]


def _less(need: Need, step: str, left: dict[tuple[str, str, str], int], kinds: Mapping[str, str]) -> Need:
    for key in [key for key in left if key[:2] == (need.job, step) and _fits(need, key[2], kinds)]:
        counted = min(need.amount, left[key])
        left[key] -= counted
        need = replace(need, amount=need.amount - counted)
    return need


def _fits(need: Need, product: str, kinds: Mapping[str, str]) -> bool:
    return need.product == product if need.product else kinds.get(product) == need.kind
