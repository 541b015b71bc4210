"""How long after the task the room's average is down to a tenth of every limit (V4).

Trap: purging uses Q′ = Q/K, as the build-up does.
Source: ACGIH *Industrial Ventilation* ch. 2; the equation was read. A tenth of the limit: our choice.
"""

from collections.abc import Iterable

from safety.air.room import fall
from safety.air.values import Place

CLEAR_AT = 0.1


def clear_after(place: Place, indices: Iterable[float | None]) -> float | None:
    """Return the minutes until every room average, given in parts of its limit, is at a tenth of it.

    None where one is not known, or where no air moves and it never clears by itself.
    """
    waits = [None if index is None else fall(place, index, CLEAR_AT) for index in indices]
    known = [wait for wait in waits if wait is not None]
    return max(known, default=0.0) if len(known) == len(waits) else None
