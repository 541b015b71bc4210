"""What a typed amount was understood to be, said back."""

from inventory.units.amounts import Amount
from inventory.units.reading import read_parts
from inventory.units.showing import metric
from inventory.units.spellings import IN_BRACKETS, NAMED_SYSTEMS


def in_words(text: str, amount: Amount, system: str | None = None) -> str:
    """Return "16 fl oz (US) = 473.2 ml" for other measures, and metric text as it is shown elsewhere.

    `text` must be one that `parse_amount` read as `amount`, by the same system.
    """
    shown = metric(amount.base, amount.dimension)
    # Either mark will do: the number is repeated as typed, not read again.
    read = read_parts(text, amount.dimension, system, "point")
    if read.unit.metric:
        return shown
    named = f" ({IN_BRACKETS[system]})" if read.unit.by_system and system in NAMED_SYSTEMS else ""
    return f"{read.number} {read.unit.name}{named} = {shown}"
