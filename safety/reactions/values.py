"""The values of a meeting: a substance as reactivity sees it, and what two of them do to each other."""

from dataclasses import dataclass

EVERYWHERE, VESSEL = "everywhere", "vessel"
# Gravest first; the words are the chart's own, except that a harmless gas still bursts a bottle.
IN_WORDS = {
    "E": "explosion",
    "GT": "toxic gas",
    "F": "fire",
    "P": "violent polymerisation",
    "GF": "flammable gas",
    "H": "heat",
    "G": "pressure of gas",
    "S": "toxic matter dissolving",
    "U": "perhaps a hazard",
}
REFUSED = frozenset({"GT", "GF", "E", "P", "F"})
# Whose rule an id is, by how it begins; any other is one of the chart.
WHOSE = {"S": "house rule ", "EUH": "label statement ", "H": "label statement "}
WITH_CELL = {"107": "chart, group 107", "cabinet": "house rule for cabinets"}
MARKS = {
    "S": "read",
    "S2": "read in a copy",
    "M": "from memory: check it",
    "doubtful": "the transcription is doubtful in this cell: the union of its readings is given",
}


@dataclass(frozen=True)
class Substance:
    """A product as reactivity sees it.

    groups: numbers of the chart and tags of our own, as text; statements: H and EUH codes of its label;
    hazards: its classes as a sheet writes them. `water_based` counts it with water.
    """

    name: str
    groups: frozenset[str] = frozenset()
    statements: frozenset[str] = frozenset()
    water_based: bool = False
    hazards: tuple[str, ...] = ()
    liquid: bool = True


@dataclass(frozen=True)
class Pair:
    """One thing that two substances do to each other, by one rule or one cell.

    `rule` is its id, which says nothing to a reader; `about` says what it is about.
    """

    a: str
    b: str
    codes: tuple[str, ...]
    source: str
    mark: str
    says: str
    rule: str
    where: str = EVERYWHERE
    about: str = ""

    @property
    def cites(self) -> str:
        """Return the rule as a reason names it: "house rule S6 (thioglycolate and alkali)"."""
        named = in_full(self.rule)
        return f"{named} ({self.about})" if self.about else named

    @property
    def grave(self) -> bool:
        """Return whether it may never happen in one vessel: toxic or flammable gas, fire, explosion …"""
        return bool(REFUSED & set(self.codes))


def in_full(rule: str) -> str:
    """Return a rule's id with whose it is: "house rule S6", "label statement EUH031", "chart, cell 1-20"."""
    whose = next((words for start, words in WHOSE.items() if rule.startswith(start)), "")
    return f"{whose}{rule}" if whose else WITH_CELL.get(rule, f"chart, cell {rule}")


def ordered(codes: set[str] | frozenset[str]) -> tuple[str, ...]:
    """Return codes gravest first."""
    return tuple(code for code in IN_WORDS if code in codes)


def in_words(codes: tuple[str, ...]) -> str:
    """Return codes as a sentence names them: "toxic gas and heat"."""
    named = [IN_WORDS[code] for code in ordered(set(codes))]
    return named[0] if len(named) == 1 else f"{', '.join(named[:-1])} and {named[-1]}"
