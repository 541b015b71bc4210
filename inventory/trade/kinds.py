"""Kinds of product and their families: the rows of defaults, the order of work, traits by composition."""

from functools import cache

from .reading import listed, rows

LAST = 99


@cache
def families(kind: str) -> tuple[str, ...]:
    """Return the families that split a kind, its default first; ("",) where nothing splits it."""
    return tuple(row["family"] for row in rows("kinds") if row["kind"] == kind)


def default(kind: str, family: str = "") -> dict[str, str]:
    """Return the row of a kind's family, the kind's first where none is named; raise KeyError without one."""
    for row in rows("kinds"):
        if row["kind"] == kind and family in ("", row["family"]):
            return row
    raise KeyError(f"{kind} {family}".strip())


@cache
def turn(kind: str, family: str = "") -> int:
    """Return a kind's place in the order of work, for what one step takes without saying in which order."""
    found = (row for row in rows("order_of_work") if row["kind"] == kind and row["family"] in ("", family))
    return next((int(row["turn"]) for row in found), LAST)


def traits_of(groups: frozenset[str]) -> frozenset[str]:
    """Return the traits that reactivity groups and tags of a product mean for a surface."""
    meant = (row for row in rows("group_traits") if row["group"] in groups and row["unless"] not in groups)
    return frozenset(trait for row in meant for trait in listed(row["traits"]))


@cache
def traits() -> tuple[str, ...]:
    """Return every trait that a table knows, for a form's choices."""
    cells = [row["traits"] for name in ("kinds", "group_traits") for row in rows(name)]
    return tuple(
        sorted({*(t for cell in cells for t in listed(cell)), *(r["trait"] for r in rows("surface_rules"))})
    )
