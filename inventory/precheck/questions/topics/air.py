"""What evaporates in the bays of a job's steps, and who breathes it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta, tzinfo

from safety.air.evaporating import Ingredient
from safety.air.values import Limit, Place

from .measured import Exhaust, Measurement
from .weather import Reading

OFF = "off"


@dataclass(frozen=True)
class Spark:
    """What may spark or glow in a place, and when somebody last said how it stands: on, off or unknown.

    `sort`: a key of the trade's table of tools, "" where nobody says what it is.
    """

    name: str
    state: str
    said_at: datetime | None = None
    sort: str = ""

    def confirmed_off(self, moment: datetime, zone: tzinfo) -> bool:
        """Say whether somebody said that it is off, on the day of a moment."""
        said = self.said_at
        return (
            self.state == OFF
            and said is not None
            and said.astimezone(zone).date() == moment.astimezone(zone).date()
        )


@dataclass(frozen=True)
class AirPlace:
    """A place where people work: what its air does, what may spark in it, and what was measured there."""

    code: str
    name: str
    place: Place
    cabin: bool = False
    sparks: tuple[Spark, ...] = ()
    exhausts: tuple[Exhaust, ...] = ()
    measurements: tuple[Measurement, ...] = ()

    @property
    def known(self) -> bool:
        """Whether anybody can say what is breathed here."""
        return self.place.volume_m3 is not None and self.place.air_m3_h is not None


@dataclass(frozen=True)
class Makeup:
    """What a product is made of, of its newest confirmed sheet; `composed`: somebody typed section 3 in.

    `volatile`: its sheet's classes or form say that something of it evaporates.
    """

    code: str
    name: str
    kind: str
    dimension: str
    ingredients: tuple[Ingredient, ...] = ()
    composed: bool = False
    volatile: bool = False
    aerosol: bool = False
    density_kg_l: float | None = None
    flash_point_c: float | None = None


@dataclass(frozen=True)
class AirUse:
    """What a step is planned to take, in base units of the product's dimension."""

    need: str
    amount: int
    product: str | None = None
    kind: str = ""

    @property
    def planned(self) -> bool:
        """Whether a step plans it; what is at hand or was used beside the plan has a number below nought."""
        return not self.need.startswith("-")


QUARTER = timedelta(minutes=15)


@dataclass(frozen=True)
class AirStep:
    """A step of any open job; `inside`: it touches the car's interior. `person` is a code.

    `exhaust`: the step says that vapour or dust is caught where it arises; `tools`: what it is done with, by
    the keys of the trade's table.
    """

    code: str
    name: str
    job: str
    starts_at: datetime
    ends_at: datetime
    bay: str | None = None
    person: str = ""
    sprayed: bool = False
    respirator: str = "none"
    inside: bool = False
    exhaust: bool = False
    tools: tuple[str, ...] = ()
    dry_ice_g: int | None = None
    signed: bool = False
    uses: tuple[AirUse, ...] = ()

    def meets(self, other: "AirStep") -> bool:
        """Say whether two steps are done in one place at one time."""
        return self._meets_in_time(other) and self._beside(other)

    def hangs_over(self, later: "AirStep") -> bool:
        """Say whether what it lets go in its first quarter of an hour still hangs there as another begins.

        Within a quarter of an hour it counts whole: a step that is split starts in its own vapour.
        """
        let_go = min(self.ends_at, self.starts_at + QUARTER)
        just_before = timedelta(0) <= later.starts_at - let_go < QUARTER
        return just_before and self.ends_at <= later.starts_at and self._beside(later)

    def at_one_time(self, everyone: Iterable["AirStep"]) -> "list[AirStep]":
        """Return itself, and whoever works in its bay at the same time and is not done."""
        others = (each for each in everyone if each.code != self.code and not each.signed)
        return [
            self,
            *(each for each in others if self.bay and each.bay == self.bay and self._meets_in_time(each)),
        ]

    def _meets_in_time(self, other: "AirStep") -> bool:
        return self.starts_at < other.ends_at and other.starts_at < self.ends_at

    def _beside(self, other: "AirStep") -> bool:
        return self.bay is not None and self.bay == other.bay and self.inside == other.inside


@dataclass(frozen=True)
class AirFacts:
    """The regime whose lists judge, the shop's typed limits by CAS number, and who works with what where.

    `steps` are those of this job, `others` those of other open jobs near them in place, or of their people.
    """

    regime: str = "EU"
    limits: Mapping[str, tuple[Limit, ...]] = field(default_factory=dict, hash=False)
    places: Mapping[str, AirPlace] = field(default_factory=dict, hash=False)
    makeups: Mapping[str, Makeup] = field(default_factory=dict, hash=False)
    steps: tuple[AirStep, ...] = ()
    others: tuple[AirStep, ...] = ()
    readings: Mapping[str, Reading] = field(default_factory=dict, hash=False)
