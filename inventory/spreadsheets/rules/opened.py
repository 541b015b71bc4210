"""When a bottle was opened, where nobody knows: estimated, marked, and never earlier than it was made.

The rule is ours: half of its open life ago, rounded up to a whole day, since an open bottle on a shelf is
somewhere between fresh and dead. A month counts as 30 days. Without an open life it is today.
"""

from datetime import date, timedelta

DAYS = {"day": 1, "month": 30}


def estimated_on(today: date, life: int | None, unit: str, made_on: date | None) -> date:
    """Return the day on which a bottle was probably opened; a life of minutes makes it today."""
    days = (life or 0) * DAYS.get(unit, 0)
    probably = today - timedelta(days=-(-days // 2))
    return min(today, max(probably, made_on or probably))


def says(on: date, today: date, life: int | None, unit: str) -> str:
    """Return the sentence that stands beside the row."""
    if not (life and unit in DAYS):
        return f"Opened day not known: {on.isoformat()} is written, marked as estimated."
    ago = (today - on).days
    return (
        f"Opened day not known: {on.isoformat()} is written ({ago} days ago, half of its open life of "
        f"{life} {unit}s at most), marked as estimated."
    )
