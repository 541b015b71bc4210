"""Results of a measurement at the nose, judged against the limits: shown to be below, at or above, or open.

The preliminary test: three results all below a tenth of the limit, four below 15 %, or five below 20 %, show
that it is kept; one result at the limit shows that it is not. Between, more results are needed, and from six
on a statistician's test. A result of 0 shows nothing: what was not found lies below
the method's reporting limit.
Trap: the lowest of the regime's limits judges, and a result is compared in a unit that both publish; without
one it is not judged. Trap: the NCO limits count a result whole, for a report gives it as NCO.
Source: EN 689:2018, 5.5.2 (from memory).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from safety.air.limits import LISTS, judging, lowest
from safety.air.substances import substances
from safety.air.values import IN_WORDS, KINDS, Emission, Limit, Measured
from safety.findings import MARKS

EN_689 = "EN 689:2018, 5.5.2 (from memory: check it)"
# How many results at least, all below which part of the limit; the strictest last.
BARS = ((5, 0.20), (4, 0.15), (3, 0.10))
REACHED = 1.0
BELOW, OVER, OPEN, NOT_JUDGED = "below", "over", "open", "not judged"
NOTHING_FOUND = "type the reporting limit of the method where nothing was found"
IN_UNIT = {"ppm": "ppm", "mg_m3": "mg/m³"}
Typed = Mapping[str, tuple[Limit, ...]]


@dataclass(frozen=True)
class Sample:
    """One result of a report: a substance against a kind of limit; `unit` is "ppm" or "mg_m3"."""

    name: str
    cas: str
    kind: str
    value: float
    unit: str


def bar(results: int) -> float:
    """Return the part of the limit that all of so many results must stay below; 0: too few for the test."""
    return next((share for least, share in BARS if results >= least), 0.0)


def verdict(one: Measured) -> str:
    """Return what the results of one substance against one kind of limit show."""
    if one.limit is None:
        return NOT_JUDGED
    if one.largest >= REACHED:
        return OVER
    return BELOW if one.largest < bar(len(one.shares)) and min(one.shares) > 0 else OPEN


def judged(samples: Iterable[Sample], regime: str, on: date, typed: Typed) -> tuple[Measured, ...]:
    """Return the results by substance and kind of limit, each against the lowest limit of a regime."""
    groups: dict[tuple[str, str], list[Sample]] = {}
    for one in samples:
        groups.setdefault((one.cas, one.kind), []).append(one)
    return tuple(_group(group, regime, on, typed) for group in groups.values())


def _group(group: list[Sample], regime: str, on: date, typed: Typed) -> Measured:
    first = group[0]
    name = _name(first)
    limits = lowest(limits_of(first.cas, name, regime, on, typed), first.kind)
    top = max(group, key=lambda one: one.value)
    bare = Measured(name, first.cas, first.kind, None, (), top.value, top.unit)
    compared = [(limit, shares) for limit in limits if (shares := _shares(group, limit)) is not None]
    worst = max(compared, key=lambda pair: max(pair[1]), default=None)
    # A limit of another unit might be the lower one: it withholds the good news, never the bad.
    if worst is not None and (len(compared) == len(limits) or max(worst[1]) >= REACHED):
        return _against(bare, group, *worst)
    return replace(bare, why=_why(bare, group, limits, regime))


def limits_of(cas: str, name: str, regime: str, on: date, typed: Typed) -> tuple[Limit, ...]:
    """Return every limit that a regime holds against a substance."""
    return judging(Emission(name, cas, None, typed=typed.get(cas, ())), regime, on)


def _name(one: Sample) -> str:
    known = substances().get(one.cas)
    return one.name if known is None else known.name


def _shares(group: list[Sample], limit: Limit) -> tuple[float, ...] | None:
    found = []
    for one in group:
        value = limit.ppm if one.unit == "ppm" else limit.mg_m3
        if value is None:
            return None
        found.append(one.value / value)
    return tuple(found)


def _against(bare: Measured, group: list[Sample], limit: Limit, shares: tuple[float, ...]) -> Measured:
    top = group[shares.index(max(shares))]
    return replace(bare, limit=limit, shares=shares, most=top.value, unit=top.unit)


def _why(bare: Measured, group: list[Sample], limits: tuple[Limit, ...], regime: str) -> str:
    kind = IN_WORDS[bare.kind]
    if not limits:
        return f"no {kind} of {bare.name} is listed in {' or '.join(LISTS[regime])}"
    units = " and ".join(dict.fromkeys(IN_UNIT[one.unit] for one in group))
    apart = next(limit for limit in limits if _shares(group, limit) is None)
    return f"it was measured in {units}, and {apart.source} does not publish that {kind} in it"


def not_measured(
    measured: Iterable[Measured], regime: str, on: date, typed: Typed
) -> tuple[tuple[str, str], ...]:
    """Return name and kind of each limit of a substance that was measured, against which nothing was."""
    listed = tuple(measured)
    done = {(one.cas, one.kind) for one in listed}
    names = {one.cas: one.name for one in listed}
    return tuple(
        (name, kind)
        for cas, name in names.items()
        for kind in KINDS
        if (cas, kind) not in done and lowest(limits_of(cas, name, regime, on, typed), kind)
    )


def in_words(one: Measured) -> str:
    """Return what the results of one kind show, as one sentence with its numbers."""
    count = len(one.shares)
    if one.limit is None:
        return f"{_capital(one.name)} against the {IN_WORDS[one.kind]} cannot be judged: {one.why}."
    value = f"{one.limit.ppm:g} ppm" if one.unit == "ppm" else f"{one.limit.mg_m3:g} mg/m³"
    results = f"1 result, {one.most:g}" if count == 1 else f"{count} results, the largest {one.most:g}"
    numbers = (
        f"{_capital(one.name)} against the {IN_WORDS[one.kind]}: {results} {IN_UNIT[one.unit]}, "
        f"{100 * one.largest:.3g} % of {value} ({one.limit.source}, {MARKS[one.limit.mark]})"
    )
    return f"{numbers}: {_shows(one)}"


def told_of(measured: Iterable[Measured]) -> list[str]:
    """Return what was measured by whom, each measurement once with all its results."""
    found: dict[str, list[str]] = {}
    for one in measured:
        found.setdefault(f"Measured {one.by}: {one.within}.", []).append(in_words(one))
    return [" ".join([who, *results]) for who, results in found.items()]


def _shows(one: Measured) -> str:
    found = verdict(one)
    if found == BELOW:
        return "shown to be below it."
    return "at or above it." if found == OVER else f"not decided. {still_wanted(one)}"


def still_wanted(one: Measured) -> str:
    """Return what would decide results that decide nothing yet."""
    if min(one.shares) <= 0:
        return f"{_capital(NOTHING_FOUND)}: a result of 0 shows nothing."
    count = len(one.shares)
    for least, share in reversed(BARS):
        if count < least and one.largest < share:
            more = least - count
            results = "One more result is" if more == 1 else f"{more} more results are"
            return f"{results} needed, and all {least} below {100 * share:.0f} %."
    return "The preliminary test cannot decide it: six results or more and a statistician's test can."


def _capital(text: str) -> str:
    # The letter before a hyphen says how a molecule is built: n-butyl acetate.
    return text if text[1:2] == "-" else text[:1].upper() + text[1:]
