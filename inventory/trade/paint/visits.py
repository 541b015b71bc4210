"""One panel's readings, parted into visits: what each visit took, and what is there now."""

from collections.abc import Iterable, Sequence
from datetime import timedelta

from .values import AFTER, BEFORE, CLEAR, WHOLE, Reading

# Points of one panel are read in one go; what was read a day earlier is another state of the paint.
ONE_GO = timedelta(days=1)


def visits(readings: Iterable[Reading]) -> list[list[Reading]]:
    """Part one panel's readings: a reading before work that follows one after work opens a visit."""
    found: list[list[Reading]] = []
    for reading in sorted(readings, key=lambda one: (one.at, one.when == AFTER)):
        if not found or (reading.when == BEFORE and found[-1][-1].when == AFTER):
            found.append([])
        found[-1].append(reading)
    return found


def visit_removal(visit: Sequence[Reading]) -> int | None:
    """Return before − after in µm of one panel's visit; of both films the larger, None if neither has both.

    Of several points the thinnest counts on either side: it is where paint runs out.
    """
    taken = []
    for film in (WHOLE, CLEAR):
        before = thinnest([one for one in visit if one.when == BEFORE], film)
        after = thinnest([one for one in visit if one.when == AFTER], film)
        if before and after and before.um is not None and after.um is not None:
            taken.append(before.um - after.um)
    return max(taken, default=None)


def removed_over_life(readings: Iterable[Reading]) -> int:
    """Return what all visits together took off one panel, in µm; a visit that gained took nothing."""
    return sum(max(0, visit_removal(visit) or 0) for visit in visits(readings))


def thinnest(readings: Iterable[Reading], film: str) -> Reading | None:
    """Return the thinnest of the latest readings of a film that were taken in one go, None without any."""
    read = [one for one in readings if one.film == film and one.um is not None]
    if not read:
        return None
    last = max(one.at for one in read)
    return min((one for one in read if last - one.at < ONE_GO), key=lambda one: one.um or 0)


def last_of(readings: Iterable[Reading], film: str) -> Reading | None:
    """Return the reading of a film that holds: after a visit's work if there is one, else before it."""
    of_film = [one for one in readings if one.film == film and one.um is not None]
    if not of_film:
        return None
    visit = visits(of_film)[-1]
    return thinnest([one for one in visit if one.when == visit[-1].when], film)


def gone_since(readings: Iterable[Reading], last: Reading) -> int:
    """Return what later work took, in µm, where only the other film was read before and after it."""
    gone = 0
    for visit in reversed(visits(readings)):
        if last not in visit:
            gone += max(0, visit_removal(visit) or 0)
            continue
        return gone + (max(0, visit_removal(visit) or 0) if last.when == BEFORE else 0)
    return gone
