"""`amount TEXT`: how an amount is read, for scripts and for settling an argument at the bench."""

from argparse import ArgumentParser
from typing import Any

from inventory.management.scripted import Answer, ScriptedCommand
from inventory.units import AmountError, Dimension, in_words, parse_amount


class Command(ScriptedCommand):
    """Reads one amount. Needs no database."""

    help = "Say how an amount is read, in base units (µl, mg, pieces, µm) and in words."
    domain_errors = (AmountError,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the text, and what the product and the shop would settle."""
        parser.add_argument("text", help='an amount such as "16 fl oz", 0.5l or "2 1/2 gal"')
        parser.add_argument("--dimension", choices=[each.value for each in Dimension])
        parser.add_argument("--system", choices=["us", "imperial", "metric"])
        parser.add_argument("--decimal", choices=["point", "comma"], help="what 1,000 and 1.000 mean")

    def answer(self, **options: Any) -> Answer:
        """Return the amount in words, and with its base units."""
        text, system = options["text"], options["system"]
        amount = parse_amount(text, dimension=options["dimension"], system=system, decimal=options["decimal"])
        says = in_words(text, amount, system)
        return f"{says} ({amount.base} {amount.unit})", {
            "base": amount.base,
            "unit": amount.unit,
            "says": says,
        }
