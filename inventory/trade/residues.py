"""What may lie on a surface between two steps."""

from dataclasses import dataclass
from functools import cache

from .reading import listed, rows

# Somebody looked at a car or a panel and found nothing on it: no residue, so it stands in no table.
NOTHING, LOOKED = "nothing", "looked, nothing on it"


@dataclass(frozen=True)
class Residue:
    """A residue: its words, how far it spreads, and what is said where something goes over it."""

    key: str
    words: str
    spreads: str
    yields_to: frozenset[str]
    code: str
    because: str
    do: str
    mark: str


@cache
def residues() -> dict[str, Residue]:
    """Return every residue by its key, in the table's order."""
    return {row["key"]: _residue(row) for row in rows("residues")}


def words_of(key: str) -> str:
    """Return what is on a surface in words; a key that the table lost is shown as it is."""
    known = residues().get(key)
    return LOOKED if key == NOTHING else known.words if known else key


def _residue(row: dict[str, str]) -> Residue:
    texts = {name: cell for name, cell in row.items() if name != "yields_to"}
    return Residue(**texts, yields_to=frozenset(listed(row["yields_to"])))
