"""Hazard classes: what a written hazard means, and the row of the table that stands for it."""

import re
from dataclasses import dataclass
from functools import cache

from safety.hazards.tables import rows

REGIMES = ("EU", "US", "CA", "UN")

# "Flam. Liq. 2 H225" or, as sheets write it, "Flam. Liq. 2, H225"; "Aerosol 1 H222+H229", "Press. Gas H280",
# "Repr. 1B H360FD", "ED HH 1 EUH380"; what has no H-code may be written without one: "Simple Asphyxiant"
WRITTEN = re.compile(
    r"(?P<name>[A-Za-z][A-Za-z.() -]*?)"
    r"(?:\s+(?P<category>1\.[1-6]|[1-5][ABC]?|CD|EF|[A-F]))?"
    r"(?:[\s,;:]+(?P<codes>N-[A-Z-]+|(?:EU)?H\d{3}[A-Za-z]{0,2}(?:\s*[+,;]\s*H\d{3}[A-Za-z]{0,2})*))?"
)

TOGETHER = ("Aerosol", "Pyr. Gas", "Chem. Unst. Gas")
NOT_WRITTEN = "“{}” is not class, category and H-code, like “Flam. Liq. 2 H225”."


class UnknownHazard(ValueError):
    """A written hazard that no class of the table carries; the sentence names it."""


@dataclass(frozen=True)
class HazardClass:
    """A class and category with its label elements, and the regimes that know it."""

    name: str
    category: str
    pictograms: tuple[str, ...]
    signal_word: str | None
    codes: tuple[str, ...]
    regimes: tuple[str, ...]
    group: str
    mark: str


@dataclass(frozen=True)
class Hazard:
    """A hazard as a sheet's section 2 writes it: its class, and the codes with any suffix letters."""

    of: HazardClass
    codes: tuple[str, ...]

    def __str__(self) -> str:
        return " ".join(part for part in (self.of.name, self.of.category, "+".join(self.codes)) if part)


def plain(code: str) -> str:
    """Return a code without its suffix letters: H360FD is H360, H350i is H350."""
    return re.sub(r"(?<=\d)[A-Za-z]+$", "", code)


@cache
def classes() -> dict[tuple[str, str], HazardClass]:
    """Return every class and category of the table, by (class in lower case, category)."""
    table = [
        HazardClass(
            name=row["class"],
            category=row["category"],
            pictograms=tuple(row["pictograms"].split()),
            signal_word=row["signal_word"] or None,
            codes=tuple(row["codes"].split()),
            regimes=tuple(row["regimes"].split()),
            group=row["group"],
            mark=row["mark"],
        )
        for row in rows("classes")
    ]
    return {(one.name.lower(), one.category): one for one in table}


def read_hazard(text: str) -> Hazard:
    """Return the hazard written in text; raise UnknownHazard with what was expected."""
    found = WRITTEN.fullmatch(text.strip())
    if not found:
        raise UnknownHazard(NOT_WRITTEN.format(text))
    key = (found["name"].strip().lower(), found["category"] or "")
    of = classes().get(key)
    if found["codes"] is None:
        if of is None or not of.codes[0].startswith("N-"):
            raise UnknownHazard(NOT_WRITTEN.format(text))
        return Hazard(of, of.codes)
    if of is None:
        raise UnknownHazard(f"“{text}”: no class “{' '.join(filter(None, key))}” is in the table.")
    codes = tuple(re.split(r"\s*[+,;]\s*", found["codes"]))
    strange = [code for code in codes if plain(code) not in of.codes]
    if strange:
        expected = " or ".join(of.codes)
        raise UnknownHazard(f"“{text}”: {of.name} {of.category} carries {expected}, not {strange[0]}.")
    # Both statements of an aerosol or an unstable gas always stand together, however it was written.
    return Hazard(of, of.codes if of.name in TOGETHER else codes)
