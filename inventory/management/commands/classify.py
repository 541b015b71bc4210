"""`classify [FILE] --regime`: what a mixture is, and why."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from inventory.management.scripted import Answer, ScriptedCommand, read_json
from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import Classified, classify
from safety.hazards.mixtures.values import Because
from safety.hazards.reasons import numbers_of
from safety.hazards.statements import UnknownStatement, wording

MARKS = {"S": "read", "S2": "read in a copy", "M": "from memory: check it"}


class Command(ScriptedCommand):
    """Classifies one mixture. Needs no database."""

    help = "Classify a mixture from its ingredients: hazards, label, open questions, and why."
    domain_errors = (MixtureError,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the mixture's file and the rules to go by."""
        parser.add_argument("file", nargs="?", help="the mixture as JSON; standard input where none is named")
        parser.add_argument("--regime", required=True, choices=REGIMES)

    def answer(self, **options: Any) -> Answer:
        """Return the classes with their reasons in sentences, and as JSON."""
        found = classify(read_mixture(read_json(options["file"])), options["regime"])
        return "\n".join(said(found, options["regime"])), found.as_json()


def said(found: Classified, regime: str) -> Iterator[str]:
    """Yield the answer line by line: the label, then each class with its reasons, then what is open."""
    yield found.signal_word or "No signal word"
    if found.pictograms:
        yield f"Pictograms: {', '.join(found.pictograms)}"
    for code in (*found.statements, *found.supplemental):
        yield f"  {in_words(code, regime)}"
    if not found.hazards:
        yield (
            "No class was found."
            if found.needs_review
            else "Not classified: every family of rules was asked."
        )
    for hazard in found.hazards:
        yield f"{hazard}, because"
        yield from (f"  {reason(one)}" for one in found.because if one.hazard == hazard)
    for one in found.because:
        if one.hazard not in found.hazards:
            yield f"{one.hazard}, because {reason(one)}"
    for route, value in found.ate.items():
        yield f"Acute toxicity estimate, {route.replace('_', ' ')}: {value:.4g}"
    for route, percent in found.unknown_percent.items():
        yield f"Of unknown acute toxicity, {route}: {percent:g} %"
    for open_question in found.needs_review:
        yield f"Needs review: {open_question}"


def in_words(code: str, regime: str) -> str:
    """Return a statement with its words; a sentence that is no code is its own."""
    try:
        return f"{code.partition(' ')[0]} {wording(code, regime)}"
    except UnknownStatement:
        return code


def reason(one: Because) -> str:
    """Return a rule with its numbers, where it is written, and how far that was checked."""
    return f"{one.rule} ({numbers_of(one)}). {one.source} ({MARKS.get(one.mark, one.mark)})"
