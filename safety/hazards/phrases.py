"""Reading the notation of the table of precautions: choosing what "/" offers, filling in what "…" leaves.

{a|b} is a choice joined by "or", {a&b} one joined by "and", <words> a blank with words of its own, <> a blank
that somebody has to fill, [words] words that stand where they apply.
"""

import re
from collections.abc import Sequence

CHOICE = re.compile(r"\{([^}]*)\}")
BLANK = re.compile(r"<([^>]*)>")
CONDITION = re.compile(r"^\[[^]]*\] *")
OPEN = "…"
AND_OR = {"en": (" and ", " or "), "es": (" y ", " o ")}


def regulation(text: str) -> str:
    """Return the text as the regulation prints it, with its "/" and "…"."""
    slashed = CHOICE.sub(lambda found: re.sub("[|&]", "/", found[1]), text)
    return BLANK.sub(OPEN, slashed)


def needs_filling(text: str) -> bool:
    """Return whether a blank is left that has no words of its own."""
    return "<>" in text


def printed(text: str, language: str, picks: Sequence[int] = (), fill: str = "") -> str:
    """Return the text as a label prints it: chosen, filled, without brackets.

    picks are places in the choice, from 0; none picks all. A condition in front is dropped: what it asks for
    then stands without it, which is the stricter reading.
    """
    chosen = CHOICE.sub(lambda found: joined(found[1], language, picks), text)
    filled = BLANK.sub(lambda blank: fill or blank[1], chosen)
    bare = CONDITION.sub("", filled)
    if bare != filled:
        bare = bare[:1].upper() + bare[1:]
    return re.sub(r"[][]", "", bare)


def joined(choice: str, language: str, picks: Sequence[int]) -> str:
    """Return the picked parts of a choice as a list in words: a, b and c."""
    last = AND_OR[language][0 if "&" in choice else 1]
    parts = re.split("[|&]", choice)
    kept = [
        part
        for place, part in enumerate(parts)
        if not part.startswith(OPEN) and (not picks or place in picks)
    ]
    return last.join(filter(None, (", ".join(kept[:-1]), kept[-1])))
