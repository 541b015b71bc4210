"""One answer from what the families found: of each outcome the gravest class, its reasons beside it."""

from collections.abc import Iterable

from safety.hazards.classes import plain
from safety.hazards.mixtures.values import Because, Found
from safety.hazards.mixtures.written import gravity, outcome, read


def joined(found: Iterable[Found], regime: str) -> Found:
    """Return all findings as one, in the order of the table of classes.

    A milder class of an outcome goes with its reasons; what is no class in the regime goes too.
    """
    all_found = list(found)
    hazards = gravest({text for one in all_found for text in one.hazards}, regime)
    because = [reason for one in all_found for reason in one.because if stands(reason, hazards)]
    ate: dict[str, float] = {}
    unknown: dict[str, float] = {}
    for one in all_found:
        ate |= one.ate
        unknown |= one.unknown_percent
    return Found(
        hazards=hazards,
        because=tuple(sorted(because, key=lambda reason: place(reason, hazards))),
        needs_review=tuple(dict.fromkeys(said for one in all_found for said in one.needs_review)),
        supplemental=tuple(sorted({text for one in all_found for text in one.supplemental})),
        ate=ate,
        unknown_percent=unknown,
    )


def gravest(hazards: set[str], regime: str) -> tuple[str, ...]:
    """Return the gravest hazard of each outcome; a code without suffix letters covers those with them."""
    best: dict[tuple[str, ...], list[str]] = {}
    for text in hazards:
        one = read(text)
        if regime not in one.of.regimes:
            continue
        rivals = best.setdefault(outcome(one), [])
        worst = min((gravity(read(rival)) for rival in rivals), default=gravity(one))
        if gravity(one) < worst:
            rivals[:] = [text]
        elif gravity(one) == worst:
            rivals.append(text)
    kept = [text for rivals in best.values() for text in without_covered(rivals)]
    return tuple(sorted(kept, key=lambda text: (gravity(read(text)), text)))


def without_covered(rivals: list[str]) -> list[str]:
    """Return hazards of one class without those that another covers: H350 covers H350i."""
    whole = [text for text in rivals if all(code == plain(code) for code in read(text).codes)]
    return whole or rivals


def stands(reason: Because, hazards: tuple[str, ...]) -> bool:
    """Return whether a reason speaks for a class that stands, or for what is no class."""
    return reason.hazard in hazards or reason.hazard.startswith("EUH")


def place(reason: Because, hazards: tuple[str, ...]) -> tuple[int, str]:
    """Return where a reason belongs: beside its class, then by its words."""
    at = hazards.index(reason.hazard) if reason.hazard in hazards else len(hazards)
    return at, f"{reason.rule} {reason.numbers}"
