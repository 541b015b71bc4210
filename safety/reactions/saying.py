"""From pairs to one finding: the gravest says it, the others are folded into the reason, marks travel."""

from collections.abc import Iterable

from safety.findings import Finding
from safety.reactions.meeting import gravest_first
from safety.reactions.values import MARKS, Pair, Substance, in_words


def both(a: Substance, b: Substance) -> str:
    """Return the names of two products, in one order whoever came first."""
    one, other = sorted((a.name, b.name))
    return f"{one} and {other}"


def finding(
    code: str, grade: str, says: str, pairs: Iterable[Pair], do: str, about: tuple[Substance, Substance]
) -> Finding:
    """Return one finding for two products; `pairs` is not empty."""
    first, *rest = gravest_first(tuple(pairs))
    return Finding(
        code=code,
        grade=grade,
        says=f"{says} {first.says}",
        because=because(first, rest),
        do=do,
        source=source([first, *rest]),
        about=tuple(sorted(each.name for each in about)),
    )


def because(first: Pair, rest: list[Pair]) -> str:
    """Return what the first pair gives, and what else was found, shortly."""
    told = f"{first.cites[:1].upper()}{first.cites[1:]}: {in_words(first.codes)}."
    also = dict.fromkeys(f"{each.cites}: {in_words(each.codes)}" for each in rest)
    return f"{told} Also found: {'; '.join(also)}." if also else told


def source(pairs: list[Pair]) -> str:
    """Return the sources of pairs, each once, each with its mark in words."""
    return "; ".join(dict.fromkeys(f"{each.source} ({MARKS[each.mark]})" for each in pairs))
