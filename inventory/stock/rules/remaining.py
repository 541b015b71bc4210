"""What open jobs still need: planned minus already used, counted once and as concentrate."""

from collections.abc import Iterable, Mapping, Set
from dataclasses import replace

from .reserve import Need

# (job, step or "" where the entry names none, product) -> concentrate used, base units
Key = tuple[str, str, str]
Uses = Mapping[Key, int]


def remaining(
    needs: Iterable[Need],
    step_of: Mapping[str, str],
    uses: Uses,
    kinds: Mapping[str, str],
    worn: Set[str] = frozenset(),
    typed: Set[Key] = frozenset(),
) -> list[Need]:
    """Return needs less what their own step used, then less what their job used without naming a step.

    `kinds` gives each used product its kind; a use of a `worn` product, which is not used up, counts for all
    of one need. Named products are counted off before kinds; what is covered drops out.

    `typed`: of which a person typed how much a step used. It settles the first need that it serves there,
    since who types less than planned says that it took no more. An amount taken as planned says nothing of
    the kind: the first of two bottles gives what it holds, and the rest is still to come.
    """
    left, settling = dict(uses), set(typed)
    queue = sorted(needs, key=lambda need: (need.product is None, need.starts_at, need.id))
    for step_named in (True, False):
        queue = [_less(need, step_of[need.id] if step_named else "", left, kinds, worn) for need in queue]
        if step_named:
            queue = [_settled(need, step_of[need.id], settling, kinds) for need in queue]
    return [need for need in queue if need.amount]


def _less(need: Need, step: str, left: dict[Key, int], kinds: Mapping[str, str], worn: Set[str]) -> Need:
    alike = [key for key in left if key[:2] == (need.job, step) and _fits(need, key[2], kinds)]
    for key in alike if need.amount else ():
        counted = need.amount if key[2] in worn else min(need.amount, left[key])
        if key[2] in worn:
            del left[key]
        else:
            left[key] -= counted
        need = replace(need, amount=need.amount - counted)
    return need


def _settled(need: Need, step: str, typed: set[Key], kinds: Mapping[str, str]) -> Need:
    """Return a need with nothing left where somebody typed what its step used; that settles no other one."""
    said = {key for key in typed if key[:2] == (need.job, step) and _fits(need, key[2], kinds)}
    typed -= said
    return replace(need, amount=0) if said else need


def _fits(need: Need, product: str, kinds: Mapping[str, str]) -> bool:
    return need.product == product if need.product else kinds.get(product) == need.kind
