"""What a step is done with, and what a bay's page lists: what it does beside its work, by two tables."""

from dataclasses import dataclass
from functools import cache

from .reading import in_words, rows

OZONE_MINUTES = 60


@dataclass(frozen=True)
class Tool:
    """A tool of a step, or something that a bay lists: whether it lights vapour, and what it gives off."""

    name: str
    lights: bool
    breaks_down: bool
    carbon_monoxide: bool


@cache
def tools() -> dict[str, Tool]:
    """Return the tools of steps by key."""
    return _of("tool")


@cache
def sorts() -> dict[str, Tool]:
    """Return the sorts of what a bay lists by key; "" is what nobody sorted."""
    return _of("source")


def _of(what: str) -> dict[str, Tool]:
    return {
        row["key"]: Tool(
            row["name"], row["lights"] == "yes", row["breaks_down"] == "yes", row["carbon_monoxide"] == "yes"
        )
        for row in rows("tools")
        if row["what"] == what
    }


@cache
def source(code: str) -> str:
    """Return whose word a rule is, with its mark in words. Raises KeyError for a rule without a row."""
    by_code = {row["code"]: row for row in rows("tool_rules")}
    row = by_code[code]
    return f"{row['source']} ({in_words(row['mark'])})"


@cache
def rag_words() -> dict[str, str]:
    """Return what a product does on a rag, by a trait of it or a CAS number in it."""
    return {row["value"]: row["says"] for row in rows("rags")}


def on_a_rag(traits: frozenset[str], cas: frozenset[str]) -> str:
    """Return why a rag with it is dangerous, "" where nothing is found, which is not safe."""
    return next((says for value, says in rag_words().items() if value in traits | cas), "")
