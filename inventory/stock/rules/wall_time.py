"""Shifting what is planned by the clock on the wall: half past eight stays half past eight over a change."""

from datetime import UTC, datetime, timedelta, tzinfo


def on_the_wall(was: datetime, now: datetime, zone: tzinfo) -> timedelta:
    """Return how far two instants lie apart on the wall of a zone."""
    # Within one zone Python subtracts and adds what the wall shows.
    return now.astimezone(zone) - was.astimezone(zone)


def later(at: datetime, by: timedelta, zone: tzinfo) -> datetime:
    """Return an instant so much later on the wall of a zone; an hour that is skipped there counts on."""
    local = at.astimezone(zone)
    # Adding forgets which of an hour's two passes it was.
    return (local + by).replace(fold=local.fold).astimezone(UTC)
