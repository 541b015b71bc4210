"""`reactions GROUP GROUP …` or `--products CODE CODE …`: what each two of several do to each other."""

from argparse import ArgumentParser
from collections.abc import Iterator
from typing import Any

from inventory.codes import tidy
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Product
from inventory.precheck.queries import substances
from safety.reactions.answer import Met, every_pair
from safety.reactions.groups import UnknownGroup, groups, read_group
from safety.reactions.values import Substance, in_words

CAUTION = (
    "What is not found is not safe. "
    "The product's own label and data sheet, local codes and licensed practice come first."
)


class Command(ScriptedCommand):
    """Answers for each unordered pair of the groups or products given. Groups need no database."""

    help = "Say what reactivity groups do to each other, by the shop's own rules and by the chart."
    domain_errors = (UnknownGroup,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take groups, or products by their codes."""
        parser.add_argument("groups", nargs="*", metavar="GROUP", help="a number of the chart or a tag")
        parser.add_argument(
            "--products", nargs="+", metavar="CODE", default=[], help="products' codes instead of groups"
        )

    def answer(self, **options: Any) -> Answer:
        """Return every pair in sentences, and as JSON."""
        if bool(options["groups"]) == bool(options["products"]):
            raise BadInput("Either groups, like “reactions 1 104”, or --products with codes was expected.")
        found = every_pair(read_products(options["products"]) or read(options["groups"]))
        return "\n".join(said(found)), {"pairs": [each.as_json() for each in found]}


def read(given: list[str]) -> list[Substance]:
    """Return each group once, as a substance that is nothing else; raise what refuses it."""
    named = list(dict.fromkeys(read_group(each) for each in given))
    if len(named) < 2:
        raise BadInput("At least two different groups were expected, like “reactions 1 104”.")
    return [Substance(each, frozenset({each})) for each in named]


def read_products(given: list[str]) -> list[Substance]:
    """Return each product once, by the code on its page; their groups confirmed or proposed."""
    codes = list(dict.fromkeys(tidy(each) or "" for each in given))
    rows = {row.code: row for row in Product.objects.filter(code__in=codes)}
    for text in given:
        code = tidy(text) or ""
        if code not in rows:
            raise BadInput(f"--products: “{text}” is no product's code. One such as XBRK KLNB was expected.")
    if given and len(codes) < 2:
        raise BadInput("--products: at least two different codes were expected.")
    of = substances(rows.values())
    return [of[code] for code in codes]


def said(found: tuple[Met, ...]) -> Iterator[str]:
    """Yield the answer line by line."""
    for one in found:
        gives = in_words(one.codes) if one.codes else "nothing found"
        yield f"{titled(one.a)} with {titled(one.b)}: {gives}."
        yield f"  {one.says}"
        yield f"  {one.sources}"
    yield CAUTION


def titled(group: str) -> str:
    """Return "1 mineral acids, non-oxidising"; a tag or a product by its name alone."""
    if group not in groups():
        return group
    name = groups()[group].name
    return f"{group} {name}" if group.isdigit() else name
