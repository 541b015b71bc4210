"""Text becomes an amount here, and nowhere else."""

import re
from dataclasses import dataclass
from fractions import Fraction

from inventory.units.amounts import Amount, AmountError, Dimension, whole
from inventory.units.numbers import VULGAR, read_number, refuse_signs_and_exponents
from inventory.units.showing import metric
from inventory.units.spellings import (
    FLUID_OUNCE,
    IN_BRACKETS,
    NAMED_SYSTEMS,
    OUNCE,
    PIECE,
    READ_UNITS,
    SPELLINGS,
    Unit,
    check_system,
    factor,
)

LONGEST = 60  # characters; an amount is short, and a long text is a mistaken paste
_SPACES = dict.fromkeys(map(ord, "\u00a0\u2009\u202f\t"), " ")
_BEYOND_ASCII = set(VULGAR) | set("µμΜ−–")


@dataclass(frozen=True)
class Reading:
    """The two halves of an amount, before conversion: `number` as typed and exact, and its unit."""

    said: str
    number: str
    exact: Fraction
    unit: Unit


def parse_amount(
    text: str,
    *,
    dimension: Dimension | str | None = None,
    system: str | None = None,
    decimal: str | None = None,
) -> Amount:
    """Return the amount that `text` names, rounded half-even once to base units.

    `dimension` is the product's; `system` (us, imperial, metric) the shop's measures; `decimal` (point,
    comma) its decimal mark. Raises AmountError, with both readings where there are two.
    """
    check_system(system)
    wanted = _dimension(dimension)
    read = read_parts(text, wanted, system, decimal)
    _refuse_other_dimension(read, wanted)
    if read.unit.by_system and system not in NAMED_SYSTEMS:
        raise AmountError(_both_systems(read))
    if read.unit is PIECE and read.exact.denominator != 1:
        raise AmountError(f"“{read.said}” is not a whole number of pieces. Count whole pieces.")
    return Amount(whole(read.exact * factor(read.unit, system), read.said), read.unit.dimension)


def read_parts(text: str, dimension: Dimension | None, system: str | None, decimal: str | None) -> Reading:
    """Split `text` into its number and its unit, both understood; a bare "oz" is told by the dimension."""
    said = text.strip()
    plain = _plain_text(said)
    refuse_signs_and_exponents(plain, said)
    number, spelling = _halves(plain, said, dimension)
    unit = SPELLINGS.get(spelling)
    if unit is None:
        raise AmountError(f"“{said}” has a unit that is not read here. Write the amount in {READ_UNITS}.")
    reading = Reading(said, number, read_number(number, said, decimal), unit)
    return _ounces(reading, dimension, system) if unit is OUNCE else reading


def _dimension(named: Dimension | str | None) -> Dimension | None:
    if named is None:
        return None
    try:
        return Dimension(named)
    except ValueError:
        raise AmountError(f"“{named}” is no dimension: name {', '.join(Dimension)}.") from None


def _plain_text(said: str) -> str:
    if len(said) > LONGEST:
        raise AmountError(
            f"An amount has at most {LONGEST} characters; this text has {len(said)}. Type it again."
        )
    spaced = said.translate(_SPACES)
    strange = next((mark for mark in spaced if not (" " <= mark <= "~" or mark in _BEYOND_ASCII)), None)
    if strange is not None:
        raise AmountError(
            f"“{said}” has a character that is not read here ({strange!r}). Type digits 0 to 9."
        )
    return spaced.lower().replace("μ", "µ")


def _halves(plain: str, said: str, dimension: Dimension | None) -> tuple[str, str]:
    found = re.fullmatch(r"([^a-zµ]*)(.*)", plain, re.DOTALL)
    number, spelling = (found[1].strip(), " ".join(found[2].split())) if found else ("", "")
    if not number:
        raise AmountError(f"“{said}” has no number. Write a number and a unit, like 250 ml.")
    if not spelling and dimension is Dimension.PIECES:
        return number, "pieces"  # counting is the one question that a bare number answers
    if not spelling:
        raise AmountError(f"“{said}” has no unit. Write it with {READ_UNITS}.")
    return number, spelling


def _ounces(read: Reading, dimension: Dimension | None, system: str | None) -> Reading:
    if dimension is Dimension.VOLUME:
        return Reading(read.said, read.number, read.exact, FLUID_OUNCE)
    if dimension is not None:
        return read
    by_weight = metric(round(read.exact * factor(OUNCE)), Dimension.MASS)
    systems = (system,) if system in NAMED_SYSTEMS else NAMED_SYSTEMS
    by_volume = " or ".join(_reading(read.exact, FLUID_OUNCE, name) for name in systems)
    raise AmountError(
        f"“{read.said}” has two readings: {by_weight} by weight, or {by_volume} as fluid ounces. "
        f"Write g or ml, or say whether it is a mass or a volume."
    )


def _reading(exact: Fraction, unit: Unit, system: str) -> str:
    return f"{metric(round(exact * factor(unit, system)), unit.dimension)} ({IN_BRACKETS[system]})"


def _both_systems(read: Reading) -> str:
    readings = " or ".join(_reading(read.exact, read.unit, system) for system in NAMED_SYSTEMS)
    return f"“{read.said}” has two readings: {readings}. Write ml or l, or name the system, us or imperial."


def _refuse_other_dimension(read: Reading, wanted: Dimension | None) -> None:
    has = read.unit.dimension
    if wanted is None or wanted is has:
        return
    known = [unit.name for unit in dict.fromkeys(SPELLINGS.values()) if unit.dimension is wanted]
    raise AmountError(
        f"“{read.said}” is {_NOUN[has]}, and {_NOUN[wanted]} is wanted. Write it in {', '.join(known)}."
    )


_NOUN = {
    Dimension.VOLUME: "a volume",
    Dimension.MASS: "a mass",
    Dimension.PIECES: "a number of pieces",
    Dimension.LENGTH: "a thickness",
}
