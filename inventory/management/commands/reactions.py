"""`reactions GROUP GROUP …`: what each two of several reactivity groups do to each other."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from safety.reactions.answer import Met, every_pair
from safety.reactions.groups import UnknownGroup, groups, read_group
from safety.reactions.values import Substance, in_words

CAUTION = (
    "What is not found is not safe. "
    "The product's own label and data sheet, local codes and licensed practice come first."
)


class Command(ScriptedCommand):
    """Answers for each unordered pair of the groups given. Needs no database."""

    help = "Say what reactivity groups do to each other, by the shop's own rules and by the chart."
    domain_errors = (UnknownGroup,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take groups."""
        parser.add_argument("groups", nargs="+", metavar="GROUP", help="a number of the chart or a tag")

    def answer(self, **options: Any) -> Answer:
        """Return every pair in sentences, and as JSON."""
        found = every_pair(read(options["groups"]))
        return "\n".join(said(found)), {"pairs": [each.as_json() for each in found]}


def read(given: list[str]) -> list[Substance]:
    """Return each group once, as a substance that is nothing else; raise what refuses it."""
    named = list(dict.fromkeys(read_group(each) for each in given))
    if len(named) < 2:
        raise BadInput("At least two different groups were expected, like “reactions 1 104”.")
    return [Substance(each, frozenset({each})) for each in named]


def said(found: tuple[Met, ...]) -> Iterator[str]:
    """Yield the answer line by line."""
    for one in found:
        gives = in_words(one.codes) if one.codes else "nothing found"
        yield f"{titled(one.a)} with {titled(one.b)}: {gives}."
        yield f"  {one.says}"
        yield f"  {one.sources}"
    yield CAUTION


def titled(group: str) -> str:
    """Return "1 mineral acids, non-oxidising"; a tag by its name alone."""
    name = groups()[group].name
    return f"{group} {name}" if group.isdigit() else name
