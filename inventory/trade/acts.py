"""The values that a job is played with: a surface as it arrives, an act upon it, and what was in the way."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime

from .profile import Profile
from .surfaces import AREAS, materials

# Whoever bleaches inside a car with a soft top meets the top.
BLEACH, INTERIOR, TOP = "bleach", "interior", "top"
OTHER = "other"


@dataclass(frozen=True)
class Surface:
    """A surface as the car arrives with it.

    `key` is of surfaces.csv; `since_on` is the day of the refinish or film; `baked` None counts as air-dried;
    `arrives` maps a residue to since when (None: not known). A coating it arrives with has a name, an
    instant (None: not known) and its profile (None: the default of a coating). `no_wheel`: this
    metal is not of the wheels. `as_paint`: this film or wrap is what work on the paint meets.
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
    no_wheel: bool = False
    as_paint: bool = False

    @property
    def areas(self) -> frozenset[str]:
        """Areas in which work reaches it; raise KeyError for a surface that is not in the table."""
        areas = materials()[self.key].areas - ({"wheels"} if self.no_wheel else set())
        return areas | ({"paint"} if self.as_paint else set())


@dataclass(frozen=True)
class Act:
    """One product at one step. `touches` overrides the areas of its profile.

    `spot` is spot-cleaning with water, wiped dry; `strips_coating` is what the job says of this step.
    `panels` are the only ones it meets; None is all that its areas reach.
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
    panels: frozenset[str] | None = None

    @property
    def areas(self) -> frozenset[str]:
        """Areas that it reaches: what the step says, else what the product does."""
        if self.touches is not None:
            return self.touches
        if self.anywhere:
            return frozenset(AREAS)
        inside = self.has(BLEACH) and INTERIOR in self.profile.touches
        return self.profile.touches | ({TOP} if inside else set())

    @property
    def anywhere(self) -> bool:
        """Whether nobody said what it touches, neither its kind nor the step, and some surface refuses it."""
        said = self.touches is not None or self.profile.touches or self.kind != OTHER
        return not said and bool(self.profile.never)

    def meets(self, surface: Surface) -> bool:
        """Whether it touches a surface; raise KeyError for one that is not in the table."""
        return bool(surface.areas & self.areas) and (self.panels is None or surface.panel in self.panels)

    def has(self, trait: str) -> bool:
        """Whether the product has a trait."""
        return trait in self.profile.traits


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


@dataclass(frozen=True)
class Found:
    """A clash on one surface; `{where}` in `says` waits for the names of all.

    `origin` is the sentence that may differ from panel to panel; the one of greatest `weight` is said.
    """

    code: str
    grade: str
    says: str
    because: str
    origin: str
    do: str
    source: str
    weight: float = 0.0
