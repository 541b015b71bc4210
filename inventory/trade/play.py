"""The steps of a job, played in order over each surface of a car: what is in the way, and what mends it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, tzinfo

from .profile import Profile


@dataclass(frozen=True)
class Surface:
    """A surface as the car arrives with it.

    `key` is of surfaces.csv; `since_on` is the day of the refinish or film; `baked` None counts as air-dried;
    `arrives` maps a residue to since when (None: not known). A coating it arrives with has a name, an
    instant and its profile (None: the default of a coating).
    """

    name: str
    key: str
    panel: str = ""
    since_on: date | None = None
    baked: bool | None = None
    arrives: Mapping[str, datetime | None] = field(default_factory=dict, hash=False)
    hot: bool = False
    coating: str = ""
    coated_at: datetime | None = None
    coating_profile: Profile | None = None


@dataclass(frozen=True)
class Act:
    """One product at one step. `touches` overrides the areas of its profile.

    `spot` is spot-cleaning with water, wiped dry; `strips_coating` is what the job says of this step.
    """

    step: str
    step_name: str
    product: str
    name: str
    kind: str
    profile: Profile
    starts_at: datetime
    ends_at: datetime
    touches: frozenset[str] | None = None
    strips_coating: bool = False
    spot: bool = False
    layer: int = 1


@dataclass(frozen=True)
class Clash:
    """One cause: what is so, why with the numbers, what to do, whose word it is, and where."""

    code: str
    grade: str
    says: str
    because: str
    do: str
    source: str
    step: str
    product: str
    surfaces: tuple[str, ...]


def play(surfaces: Iterable[Surface], acts: Iterable[Act], zone: tzinfo) -> tuple[Clash, ...]:
    """Return what the steps run into, the gravest first; one cause is one clash, on however many panels."""
    raise NotImplementedError


def play_service(acts: Iterable[Act]) -> tuple[Clash, ...]:
    """Return what a service's steps run into on a clean clear-coated car."""
    raise NotImplementedError
