"""Which precautionary statements a label prints: chosen by class, merged, and kept few.

Sources: CLP Art 22 and Art 28 (at most six unless the hazards need more) and Annex IV; 29 CFR 1910.1200
C.2.4.8 (leave out what does not apply); SOR/2015-17 s. 3.2 (combine only where nothing is lost). The merges
are from memory. The tables carry the marks of their rows.
"""

import re
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import cache

from safety.hazards.classes import REGIMES, Hazard, plain
from safety.hazards.elements import UnknownRegime, in_words_of
from safety.hazards.phrases import needs_filling, printed
from safety.hazards.statements import UnknownStatement, spelt
from safety.hazards.tables import rows

MOST = 6  # CLP Art 28(3)
FEW = ("EU",)
PHASES = ("general", "prevention", "response", "storage", "disposal")
PICKS = ("gloves", "clothing", "eyes", "face", "ears")
NONE = "-"  # the regime assigns no statement to the class
ANY = "*"
FIRST, NEXT, ONLY_IF = 1, 2, 3
WORDS = ("Danger", "Warning", None)
CODE = re.compile(r"P\d{3}(?:\+P\d{3})*")
# The one on the left says all that the one on the right does (from memory; P316 to P319 are Rev 9's).
OVER = (
    ("P310", "P312"),
    ("P316", "P319"),
    ("P260", "P261"),
    ("P303+P361+P353", "P302+P352"),
    ("P301+P310", "P301+P312"),
    ("P301+P316", "P301+P317"),
)
# Two statements in one sentence, for which no regulation has a code.
TOGETHER = (("P403+P233", "P403+P235"),)
# Where these begin, the parts are an if and a then: "Call a doctor" is not said by "IF SWALLOWED: call".
RESPONSE = "P3"


@dataclass(frozen=True)
class Choice:
    """A row of the table: what a class calls for. weight: 1 first, 2 next, 3 only where `condition` holds."""

    name: str
    categories: frozenset[str]
    codes: frozenset[str]
    regimes: frozenset[str]
    phase: str
    precaution: str
    pick: frozenset[str]
    weight: int
    condition: str
    mark: str


@dataclass(frozen=True)
class Precaution:
    """A statement that a label prints; pick: which parts of "Wear …", none for all; fill: its blank's words.

    Written as its code with these behind it: "P280 gloves eyes", "P370+P378 dry powder".
    """

    code: str
    pick: tuple[str, ...] = ()
    fill: str = ""

    def __str__(self) -> str:
        return " ".join(part for part in (self.code, *self.pick, self.fill) if part)


@dataclass(frozen=True)
class Precautions:
    """What is printed, in a label's order, and what is not, each with the reason."""

    printed: tuple[Precaution, ...]
    left_out: tuple[tuple[str, str], ...] = ()


@cache
def choices() -> tuple[Choice, ...]:
    """Return the rows of the table, in its order."""
    return tuple(
        Choice(
            name=row["class"],
            categories=frozenset(row["categories"].split()),
            codes=frozenset(row["codes"].split()),
            regimes=frozenset(row["regimes"].split()),
            phase=row["phase"],
            precaution=row["precaution"],
            pick=frozenset(row["pick"].split()),
            weight=int(row["weight"]),
            condition=row["condition"],
            mark=row["mark"],
        )
        for row in rows("precaution_choice")
    )


@cache
def texts() -> dict[tuple[str, str], dict[str, str]]:
    """Return (code, regime) → the row of the table of texts."""
    return {(row["code"], regime): row for row in rows("precautions") for regime in row["regimes"].split()}


def choose(
    hazards: Iterable[str], regime: str, *, public: bool = False, holds: Collection[str] = ()
) -> Precautions:
    """Return the statements for written hazards ("Flam. Liq. 2 H225"); their order does not matter.

    public: it is sold to the public. holds: the conditions of the table that are known to hold.
    Raises UnknownHazard, UnknownRegime.
    """
    if regime not in REGIMES:
        raise UnknownRegime(f"“{regime}” is not one of {', '.join(REGIMES)}.")
    asked: dict[str, list[tuple[Choice, Hazard | None]]] = {}
    for row, hazard in _called_for([in_words_of(regime, text) for text in hazards], regime, public):
        asked.setdefault(row.precaution, []).append((row, hazard))
    asked.pop(NONE, None)
    left_out = _conditional(asked, holds) | _blank(asked, regime)
    said = dict(_said_by_another(set(asked) - set(left_out)))
    left_out |= {gone: f"{by} says it" for gone, by in said.items()}
    kept = sorted(set(asked) - set(left_out), key=lambda code: _rank(code, asked[code]))
    if regime in FEW:
        first = sum(_weight(asked[code]) == FIRST for code in kept)
        few = kept[: max(MOST, first)]
        # What a statement would have said that is not printed itself is not said either.
        unsaid = [code for code, by in said.items() if by not in few]
        left_out |= dict.fromkeys([*kept[len(few) :], *unsaid], f"{len(few)} stand already (CLP Art 28(3))")
        kept = few
    in_order = sorted(kept, key=lambda code: (_phase(asked[code]), code))
    return Precautions(_joined(in_order, asked), tuple(sorted(left_out.items())))


def read(text: str, called_for: Iterable[Precaution] = ()) -> Precaution:
    """Return a written statement; a bare "Wear …" asks for what the classes call for, else for all parts."""
    words = text.split()
    code = " ".join(word for word in words if CODE.fullmatch(word))
    rest = [word for word in words if not CODE.fullmatch(word)]
    if set(rest) <= set(PICKS):
        known = next((one for one in called_for if one.code == code and not rest), None)
        return known or Precaution(code, tuple(rest))
    return Precaution(code, fill=" ".join(rest))


def wording(one: Precaution, regime: str, language: str = "en") -> str:
    """Return a statement's text as a label prints it.

    Raises UnknownStatement, for one with a blank that nobody filled in as well, and UnknownLanguage.
    """
    row = texts().get((one.code, regime))
    if row is None:
        raise UnknownStatement(f"The statement {one.code} is not in the table for {regime}.")
    if needs_filling(row["en"]) and not one.fill:
        raise UnknownStatement(f"The statement {one.code} has a blank: write its words behind the code.")
    picks = [PICKS.index(part) for part in one.pick]
    return printed(spelt(row, regime, language), language, picks, one.fill)


def _called_for(hazards: list[Hazard], regime: str, public: bool) -> Iterable[tuple[Choice, Hazard | None]]:
    for row in choices():
        if regime not in row.regimes:
            continue
        if row.name == ANY:
            if public:
                yield row, None
            continue
        yield from ((row, hazard) for hazard in hazards if _is_of(hazard, row))


def _is_of(hazard: Hazard, row: Choice) -> bool:
    codes = {plain(code) for code in hazard.codes}
    return (
        hazard.of.name == row.name
        and (ANY in row.categories or hazard.of.category in row.categories)
        and (ANY in row.codes or bool(codes & row.codes))
    )


Asked = dict[str, list[tuple[Choice, Hazard | None]]]


def _conditional(asked: Asked, holds: Collection[str]) -> dict[str, str]:
    """Return what stands only where a condition holds that nobody vouched for."""
    return {
        code: f"only {rows[0][0].condition}"
        for code, rows in asked.items()
        if all(row.weight == ONLY_IF and row.condition not in holds for row, _ in rows)
    }


def _blank(asked: Asked, regime: str) -> dict[str, str]:
    return {
        code: "its blank is filled in by the maker"
        for code in asked
        if (row := texts().get((code, regime))) and needs_filling(row["en"])
    }


def _said_by_another(codes: set[str]) -> Iterable[tuple[str, str]]:
    yield from ((less, more) for more, less in OVER if {more, less} <= codes)
    for code in codes:
        parts = set(code.split("+"))
        whole = (other for other in codes if parts < set(other.split("+")))
        if not code.startswith(RESPONSE) and (other := next(iter(sorted(whole)), None)):
            yield code, other


def _weight(rows: list[tuple[Choice, Hazard | None]]) -> int:
    return min(row.weight for row, _ in rows)


def _phase(rows: list[tuple[Choice, Hazard | None]]) -> int:
    return min(PHASES.index(row.phase) for row, _ in rows)


def _rank(code: str, rows: list[tuple[Choice, Hazard | None]]) -> tuple[int, int, int, str]:
    """Return the place of a statement in the queue for six: by weight, then the gravest hazard's first."""
    grave = min(WORDS.index(hazard.of.signal_word) if hazard else len(WORDS) for _, hazard in rows)
    return (_weight(rows), grave, _phase(rows), code)


def _joined(codes: list[str], asked: Asked) -> tuple[Precaution, ...]:
    out = []
    for code in codes:
        pair = next((pair for pair in TOGETHER if code in pair and set(pair) <= set(codes)), None)
        if pair is None:
            picks = {part for row, _ in asked[code] for part in row.pick}
            out.append(Precaution(code, tuple(part for part in PICKS if part in picks)))
        elif code == pair[0]:
            out.append(Precaution(" ".join(pair)))
    return tuple(out)
