"""The values of a task: a place, what evaporates in it, and the limits that judge it. Units are in the names.

None means unknown, and unknown is never counted as nothing.
"""

from dataclasses import dataclass

from safety.hazards.classes import Hazard

REGIMES = ("US", "EU", "UK")
FORMS = ("vapour", "mist", "dust")
RESPIRATORS = (
    "none", "ffp1", "ffp2", "ffp3", "quarter", "half", "full", "powered_half", "powered_full", "hood",
    "air_fed",
)  # fmt: skip
EIGHT_HOURS, FIFTEEN_MINUTES, CEILING = "TWA", "short term 15 min", "ceiling"
IDLH, LEL = "IDLH", "LEL"
KINDS = (EIGHT_HOURS, FIFTEEN_MINUTES, CEILING)
IN_WORDS = {EIGHT_HOURS: "8-hour limit", FIFTEEN_MINUTES: "15-minute limit", CEILING: "ceiling"}


@dataclass(frozen=True)
class Limit:
    """One limit of one list, in each unit that the list publishes; neither is ever made from the other.

    `share` is the part of the substance's mass that the limit counts (isocyanates are limited as NCO).
    """

    source: str
    kind: str
    ppm: float | None
    mg_m3: float | None
    mark: str
    notation: str = ""
    share: float = 1.0


@dataclass(frozen=True)
class NearField:
    """The half sphere round what evaporates, and how fast the air in it drifts past."""

    radius_m: float = 0.8
    air_speed_m_min: float = 4.0


@dataclass(frozen=True)
class Place:
    """A room: its volume, the fresh air it gets, and K, by which its mixing falls short (1 is perfect)."""

    volume_m3: float | None
    air_m3_h: float | None
    mixing_k: float
    near_field: NearField = NearField()
    mixing_known: bool = True


@dataclass(frozen=True)
class Emission:
    """What goes into the air, spread evenly over the task. `hazards` None: nobody looked.

    `elsewhere`: grams that others let go in the same place at that time, out of reach of who works here.
    `lasts`: the minutes that it takes where they are not the task's, as for what a coating's cure gives off.
    """

    name: str
    cas: str
    grams: float | None
    form: str = "vapour"
    hazards: tuple[Hazard, ...] | None = None
    typed: tuple[Limit, ...] = ()
    elsewhere: float = 0.0
    lasts: float | None = None

    def minutes(self, task: float) -> float:
        """Return the minutes over which it goes into the air: its own, else the task's."""
        return task if self.lasts is None else self.lasts


@dataclass(frozen=True)
class Measured:
    """What was measured of a substance against one kind of limit: each result as a part of that limit.

    `limit` None: the results cannot be judged, `why` says so. `most` is the largest result, in `unit`. `by`
    says who measured and when, `within` what it holds for.
    """

    name: str
    cas: str
    kind: str
    limit: Limit | None
    shares: tuple[float, ...]
    most: float
    unit: str
    why: str = ""
    by: str = ""
    within: str = ""

    @property
    def largest(self) -> float:
        """Return the largest part that a result takes."""
        return max(self.shares)


@dataclass(frozen=True)
class Task:
    """A task of so many minutes in a place, judged by a regime's lists.

    `measured` was measured at the nose during this very work; `dust_caught`: examined local exhaust takes
    dust and mist away where they arise.
    """

    place: Place
    minutes: float
    regime: str
    emissions: tuple[Emission, ...]
    respirator: str = "none"
    air_c: float | None = None
    panel_c: float | None = None
    measured: tuple[Measured, ...] = ()
    dust_caught: bool = False
