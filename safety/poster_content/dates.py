"""Until when paper hangs."""

from datetime import date


def year_after(day: date) -> date:
    """Return the same day a year later, 28 February for a leap day."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        return day.replace(year=day.year + 1, day=28)
