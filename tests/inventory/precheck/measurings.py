"""What somebody measured at the wipe of Bay 2, and the arm that was on: 200 ml in 30 minutes.

WEL of isopropanol: 400 ppm in 8 hours, 500 ppm in 15 minutes (exposure.md section 2): 49 ppm are 9.8 %.
"""

from dataclasses import replace
from datetime import date

from inventory.precheck.questions.topics.air import AirPlace
from inventory.precheck.questions.topics.measured import Exhaust, Measurement
from safety.air.measured import Sample
from tests.inventory.precheck.airs import BAY_2, HOLLIN
from tests.inventory.precheck.cases import ML

ARM = Exhaust("Extraction arm", "both", date(2026, 1, 12), date(2027, 3, 1))
SHORT, TWA = "short term 15 min", "TWA"


def samples(
    *ppm: float, kind: str = SHORT, cas: str = "67-63-0", name: str = "Propan-2-ol"
) -> tuple[Sample, ...]:
    """Return results in ppm."""
    return tuple(Sample(name, cas, kind, value, "ppm") for value in ppm)


SHOWN = (*samples(49, 48, 47), *samples(39, 38, 35, kind=TWA))


def measured(*results: Sample, **facts: object) -> Measurement:
    """Return a measurement of the panel wipe, without exhaust unless it is named."""
    known: dict[str, object] = {
        "product": HOLLIN.code, "name": HOLLIN.name, "dimension": "volume", "amount": 200 * ML, "minutes": 30,
        "exhaust": "", "measured_on": date(2026, 6, 2), "until_on": date(2027, 6, 1),
        "by_whom": "A. Finch, pumped tubes", "samples": results or SHOWN, **facts,
    }  # fmt: skip
    return Measurement(**known)  # type: ignore[arg-type]


def bay(*measurements: Measurement, exhausts: tuple[Exhaust, ...] = (), **facts: object) -> AirPlace:
    """Return Bay 2 with what was measured in it and what catches vapour there."""
    return replace(BAY_2, measurements=measurements, exhausts=exhausts, **facts)  # type: ignore[arg-type]
