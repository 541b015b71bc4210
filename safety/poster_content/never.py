"""What must never meet in a place: what the sheets say, by the names of the products that are here."""

import re
from collections.abc import Sequence

from safety.hazards.facts import SheetFacts
from safety.poster_content.judged import Judged, rank, some
from safety.print.values import NeverPair
from safety.print.words import ENGLISH

Pair = tuple[str, str, str]  # one product, the other thing, why


def never_together(judged: Sequence[Judged], language: str = ENGLISH) -> tuple[NeverPair, ...]:
    """Return each pair once, whichever of the two sheets named it, the gravest first.

    The gravest is told by the graver of the two products; of its pairs, those that can be done here (both are
    admitted) stand before those with something brought in. Products that must not meet the same things for
    the same reason share a line.
    """
    order = {one[0]: rank(one) for one in judged}
    pairs: dict[frozenset[str], Pair] = {}
    for name, facts, _ in judged:
        for other, why in met(name, facts, list(order)):
            pairs.setdefault(frozenset((name.lower(), other.lower())), (name, other, why))
    last = max(order.values(), default=0) + 1
    worst = sorted(
        (graver_first(pair, order) for pair in pairs.values()),
        key=lambda pair: (order[pair[0]], pair[1] not in order, order.get(pair[1], last)),
    )
    return tuple(
        NeverPair(some(ones, language, 3), some(others, language, 3), why)
        for ones, others, why in shared(worst)
    )


def met(name: str, facts: SheetFacts | None, here: Sequence[str]) -> list[tuple[str, str]]:
    """Return what a product must not meet, and why: by the names of products here, else as the sheet says."""
    found = []
    for said, why in facts.never_with if facts else ():
        for part in re.split(r"\s*[,;]\s*", said):
            meant = [other for other in here if other != name and means(part, other)]
            found += [(other, why) for other in meant or [part] if other]
    return found


def means(said: str, product: str) -> bool:
    """Return whether every word of what a sheet says stands in a product's name: “acids” in “Wheel acid”."""
    wanted, have = stems(said), stems(product)
    return bool(wanted) and wanted <= have


def stems(text: str) -> set[str]:
    """Return the words of a text in small letters, without the s of a plural."""
    return {word.removesuffix("s") for word in re.findall(r"\w+", text.lower())}


def graver_first(pair: Pair, order: dict[str, int]) -> Pair:
    """Return a pair with the graver product before the other."""
    one, other, why = pair
    return (other, one, why) if other in order and order[other] < order[one] else pair


def shared(pairs: Sequence[Pair]) -> list[tuple[list[str], list[str], str]]:
    """Return pairs joined: (products, what they must not meet, the one reason)."""
    others: dict[tuple[str, str], list[str]] = {}
    for name, other, why in pairs:
        others.setdefault((name, why), []).append(other)
    names: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for (name, why), known in others.items():
        names.setdefault((tuple(known), why), []).append(name)
    return [(ones, list(known), why) for (known, why), ones in names.items()]
