"""Amounts: whole numbers of a base unit, read from text through one strict grammar and shown in words."""

from inventory.units.amounts import BASE_UNIT, LARGEST, Amount, AmountError, Dimension
from inventory.units.mixing import by_density, dilution, pour_in_words, read_mix, show_mix
from inventory.units.reading import parse_amount
from inventory.units.showing import show
from inventory.units.words import in_words

__all__ = [
    "BASE_UNIT",
    "LARGEST",
    "Amount",
    "AmountError",
    "Dimension",
    "by_density",
    "dilution",
    "in_words",
    "parse_amount",
    "pour_in_words",
    "read_mix",
    "show",
    "show_mix",
]
