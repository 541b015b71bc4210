"""Results of isopropanol, judged: what the tests of measurements share."""

from datetime import date

from safety.air.measured import Sample

ON = date(2026, 11, 25)
TWA, SHORT, CEILING = "TWA", "short term 15 min", "ceiling"


def samples(*values: float, kind: str = TWA, unit: str = "ppm", cas: str = "67-63-0") -> list[Sample]:
    """Return results of isopropanol, unless said otherwise."""
    return [Sample("Propan-2-ol", cas, kind, value, unit) for value in values]
