"""Turns of phrase of the played steps: instants, lengths of time, and where on the car."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta, tzinfo

MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)


def day(on: date) -> str:
    """Return "Thursday 26 November 2026"."""
    return f"{on:%A} {on.day} {on:%B %Y}"


def moment(at: datetime, zone: tzinfo) -> str:
    """Return "Thursday 26 November 2026, 14:00" on the shop's clock."""
    local = at.astimezone(zone)
    return f"{day(local.date())}, {local:%H:%M}"


def span(length: timedelta) -> str:
    """Return a length of time rounded down, "45 min", "4 h", "4 h 30 min", "3 d", "3 d 4 h"."""
    minutes = max(int(length / MINUTE), 0)
    if minutes < 120:
        return f"{minutes} min"
    if minutes < 72 * 60:
        return _two(minutes, 60, "h", "min")
    return _two(minutes // 60, 24, "d", "h")


def _two(amount: int, size: int, large: str, small: str) -> str:
    whole, rest = divmod(amount, size)
    return f"{whole} {large}" + (f" {rest} {small}" if rest else "")


def where(names: Iterable[str]) -> str:
    """Return "on the bonnet", "on the bonnet and the roof", "on 8 panels"."""
    found = sorted(names)
    if len(found) > 2:
        return f"on {len(found)} panels"
    return "on " + " and ".join(f"the {name}" for name in found)
