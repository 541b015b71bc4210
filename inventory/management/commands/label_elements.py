"""`label_elements [FILE] --regime`: what a label of these hazards shows."""

from argparse import ArgumentParser
from typing import Any

from inventory.management.scripted import Answer, BadInput, ScriptedCommand, read_json
from safety.hazards.classes import REGIMES, UnknownHazard
from safety.hazards.elements import Elements, elements
from safety.hazards.statements import UnknownStatement, wording

WANTED = '{"hazards": ["Flam. Liq. 2 H225", …]} was expected'


class Command(ScriptedCommand):
    """Puts precedence over hazards that are known. Needs no database."""

    help = "Say which pictograms, signal word and statements stand on a label for given hazards."
    domain_errors = (UnknownHazard, UnknownStatement)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the file of hazards and the rules to go by."""
        parser.add_argument("file", nargs="?", help="the hazards as JSON; standard input where none is named")
        parser.add_argument("--regime", required=True, choices=REGIMES)

    def answer(self, **options: Any) -> Answer:
        """Return the label in words, and as JSON."""
        hazards, regime = hazards_of(read_json(options["file"])), options["regime"]
        found = elements(hazards, regime)
        codes = [*found.statements, *found.supplemental]
        texts = [f"{code} {wording(code, regime)}" for code in codes]
        return "\n".join([*said(found, regime), *texts]), {
            "pictograms": found.pictograms,
            "signal_word": found.signal_word,
            "statements": codes,
        }


def hazards_of(document: object) -> list[str]:
    """Return the hazards of the document; raise BadInput with the place."""
    if not isinstance(document, dict) or set(document) != {"hazards"}:
        raise BadInput(f"The document: {WANTED}.")
    hazards = document["hazards"]
    if not isinstance(hazards, list):
        raise BadInput(f"The document, hazards: {WANTED}.")
    for at, hazard in enumerate(hazards, 1):
        if not isinstance(hazard, str):
            raise BadInput(f"Hazard {at}: a text like “Flam. Liq. 2 H225” was expected.")
    return hazards


def said(found: Elements, regime: str) -> list[str]:
    """Return word, pictograms, and what the regime has no class for."""
    lines = [found.signal_word or "No signal word"]
    if found.pictograms:
        lines.append(f"Pictograms: {', '.join(found.pictograms)}")
    if found.left_out:
        lines.append(f"No class in {regime}: {', '.join(found.left_out)}")
    return lines
