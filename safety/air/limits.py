"""Which limits judge a substance: the regime's lists, what the shop typed, and the lowest of each kind.

Traps kept here: judge by the lowest of the regime's limits. US: the lower of PEL and REL, compared in a
unit that both publish; without one each stands in its own. EU: the limit that the shop typed, until then
the IOELV, which is only indicative. UK: the WEL, and hydrocarbon solvents by the reciprocal calculation.
Limits have effective dates. No limit found is not safe: `not_listed` says so. A published unit is never
made from the other.
Source: safety/tables/exposure_limits.csv, whose marks travel with each value.
"""

from collections.abc import Iterable
from datetime import date
from functools import cache

from safety.air.hydrocarbons import SOLVENTS, STRICTEST
from safety.air.substances import family, substances
from safety.air.values import EIGHT_HOURS, IDLH, KINDS, LEL, Emission, Limit
from safety.hazards.tables import rows

LISTS = {"US": ("OSHA PEL", "NIOSH REL"), "EU": ("EU IOELV",), "UK": ("UK WEL",)}
ALL_LISTS = tuple(name for names in LISTS.values() for name in names)
TYPED = "typed"
ALL_ISOCYANATES = "isocyanates, all (as NCO)"
WHOLE_MASS = 1.0  # of an isocyanate whose NCO content nobody gave, all of it counts
WEAKEST_FIRST = ("M", "S2", "S")
IN_MG = {"mg/m3": 1.0, "ug/m3": 0.001}


def listed(one: Emission, lists: Iterable[str], on: date) -> tuple[Limit, ...]:
    """Return what the lists publish for a substance on a day, in the lists' order; nothing for "none"."""
    share = nco_share(one)
    found: list[Limit] = []
    for name in lists:
        found += _of_list(one.cas, name, on)
        if share is not None:
            found += [_counting(limit, share) for limit in _of_list(ALL_ISOCYANATES, name, on)]
    return tuple(found)


def nco_share(one: Emission) -> float | None:
    """Return which part of an isocyanate counts as NCO, None for what is no isocyanate."""
    if family(one.name, one.cas) != "isocyanate":
        return None
    known = substances().get(one.cas)
    return WHOLE_MASS if known is None or known.nco_share is None else known.nco_share


def _counting(limit: Limit, share: float) -> Limit:
    return Limit(limit.source, limit.kind, limit.ppm, limit.mg_m3, limit.mark, limit.notation, share)


@cache
def _of_list(key: str, name: str, on: date) -> tuple[Limit, ...]:
    kinds: dict[str, list[dict[str, str]]] = {}
    for row in rows("exposure_limits"):
        mine = key in (row["cas"], row["substance"]) and row["list"] == name
        if key and mine and row["kind"] != "none" and holds(row, on):
            kinds.setdefault(IDLH if name == IDLH else LEL if name == LEL else row["kind"], []).append(row)
    return tuple(_one(name, kind, found) for kind, found in kinds.items())


def holds(row: dict[str, str], on: date) -> bool:
    """Return whether a row's limit is in force on a day; both its days are included."""
    day = on.isoformat()
    return (not row["from_on"] or row["from_on"] <= day) and (not row["until_on"] or day <= row["until_on"])


def _one(name: str, kind: str, found: list[dict[str, str]]) -> Limit:
    mg = [float(row["value"]) * IN_MG[row["unit"]] for row in found if row["unit"] in IN_MG]
    parts = [float(row["value"]) for row in found if row["unit"] == "ppm"]
    parts += [float(row["value"]) * 1e4 for row in found if row["unit"] == "%"]
    return Limit(
        source=name, kind=kind, ppm=min(parts, default=None), mg_m3=min(mg, default=None),
        mark=min((row["mark"] for row in found), key=WEAKEST_FIRST.index),
        notation=next((row["notation"] for row in found if row["notation"]), ""),
    )  # fmt: skip


def judging(one: Emission, regime: str, on: date) -> tuple[Limit, ...]:
    """Return every limit of any kind that the regime holds against a substance, typed ones with them."""
    found = list(listed(one, LISTS[regime], on))
    if regime == "UK" and one.cas in SOLVENTS and not any(limit.kind == EIGHT_HOURS for limit in found):
        found.append(Limit("UK WEL, reciprocal calculation", EIGHT_HOURS, None, STRICTEST, "M"))
    typed_kinds = {limit.kind for limit in one.typed}
    if regime == "EU":
        found = [limit for limit in found if limit.kind not in typed_kinds]
    return (*found, *one.typed)


def lowest(limits: Iterable[Limit], kind: str) -> tuple[Limit, ...]:
    """Return the limits of a kind that no other undercuts in a unit both publish; equal ones: the first."""
    of_kind = [limit for limit in limits if limit.kind == kind]
    return tuple(
        limit
        for at, limit in enumerate(of_kind)
        if not any(undercuts(other, limit, earlier=place < at) for place, other in enumerate(of_kind))
    )


def undercuts(other: Limit, limit: Limit, earlier: bool) -> bool:
    """Return whether another limit is lower in a unit of both, ppm before mg/m³."""
    if other is limit:
        return False
    if other.ppm is not None and limit.ppm is not None:
        return other.ppm < limit.ppm or (earlier and other.ppm == limit.ppm)
    if other.mg_m3 is not None and limit.mg_m3 is not None:
        mine, theirs = limit.mg_m3 / limit.share, other.mg_m3 / other.share
        return theirs < mine or (earlier and theirs == mine)
    return False


def anywhere(one: Emission, on: date) -> tuple[Limit, ...]:
    """Return the limits of every list in the table and those typed, whatever the regime."""
    return (*listed(one, ALL_LISTS, on), *one.typed)


def idlh(one: Emission, on: date) -> tuple[Limit, ...]:
    """Return the value immediately dangerous to life or health, of the table and as typed; () if unknown."""
    return (*listed(one, (IDLH,), on), *(limit for limit in one.typed if limit.kind == IDLH))


def lel_ppm(one: Emission, on: date) -> float | None:
    """Return the lowest known lower explosive limit in ppm, None if unknown."""
    known = [limit.ppm for limit in listed(one, (LEL,), on)]
    known += [limit.ppm for limit in one.typed if limit.kind == LEL]
    return min((value for value in known if value is not None), default=None)


def not_listed(limits: Iterable[Limit]) -> bool:
    """Return whether none of the limits judges what is breathed."""
    return not any(limit.kind in KINDS for limit in limits)
