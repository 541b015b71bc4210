"""Hardness on two scales that are not one: Mohs, what scratches what; pencils, what marks a film."""

from dataclasses import dataclass
from functools import cache

from .reading import in_words, rows

PENCIL_IS_NOT_MOHS = (
    "Pencil 9H is not 9 on the Mohs scale: the pencil scale ends at 9H, and a film that no pencil marks "
    "is still scratched by quartz dust, 7 on the Mohs scale."
)


class HardnessError(ValueError):
    """A material that has no place on the scale asked about; the sentence names the way out."""


@dataclass(frozen=True)
class Hardness:
    """A material on the Mohs scale, from `low` to `high`; `mark` is in words."""

    name: str
    low: int
    high: int
    mark: str


@cache
def mohs() -> dict[str, Hardness]:
    """Return every material of the table on the Mohs scale, by name."""
    return {
        row["name"]: Hardness(row["name"], int(row["low"]), int(row["high"]), in_words(row["mark"]))
        for row in rows("hardness")
        if row["scale"] == "mohs"
    }


@cache
def pencils() -> tuple[str, ...]:
    """Return the pencil grades, the softest first."""
    found = [row for row in rows("hardness") if row["scale"] == "pencil"]
    return tuple(row["name"] for row in sorted(found, key=lambda row: int(row["low"])))


def scratches(harder: str, softer: str) -> bool | None:
    """Return whether one material scratches another by Mohs; None where their ranges touch: nobody can say.

    Raises HardnessError for a pencil grade, which says nothing of minerals, and for an unknown material.
    """
    one, other = _on_mohs(harder), _on_mohs(softer)
    if one.low > other.high:
        return True
    return False if one.high < other.low else None


def _on_mohs(name: str) -> Hardness:
    if name in pencils():
        raise HardnessError(PENCIL_IS_NOT_MOHS)
    if name not in mohs():
        raise HardnessError(f"“{name}” is not in the table of hardness: name {', '.join(mohs())}.")
    return mohs()[name]
