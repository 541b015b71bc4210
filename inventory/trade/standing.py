"""What lies on one surface between two steps: residues, layers that cure, what must flash off."""

from dataclasses import dataclass, field
from datetime import UTC, datetime

from .acts import Act, Surface
from .profile import Profile, profile
from .residues import residues


@dataclass(frozen=True)
class Origin:
    """Who left a residue, at which step and when; an empty step: the car arrived with it."""

    by: str = ""
    step: str = ""
    step_name: str = ""
    at: datetime | None = None


@dataclass(frozen=True)
class Layer:
    """A coating on a surface and when it was put on (None: not known)."""

    name: str
    profile: Profile
    at: datetime | None
    step: str = ""


@dataclass
class Standing:
    """A surface as the steps so far have left it. `told` keeps one cause from being told twice."""

    surface: Surface
    residues: dict[str, Origin] = field(default_factory=dict)
    layers: list[Layer] = field(default_factory=list)
    flashing: list[Act] = field(default_factory=list)
    told: set[tuple[object, ...]] = field(default_factory=set)

    def once(self, *cause: object) -> bool:
        """Whether this cause is told for the first time on this surface."""
        new = cause not in self.told
        self.told.add(cause)
        return new


def began(act: Act) -> datetime:
    """Return when an act starts, in UTC: lengths of time are taken there, whatever the clocks did."""
    return act.starts_at.astimezone(UTC)


def ended(act: Act) -> datetime:
    """Return when an act ends, in UTC."""
    return act.ends_at.astimezone(UTC)


def arrived(surface: Surface) -> Standing:
    """Return a surface as the car brings it; raise KeyError for a residue that no table has."""
    found = Standing(surface)
    for key, since in surface.arrives.items():
        found.residues[residues()[key].key] = Origin(at=since)
    if surface.coating or "coating" in surface.arrives:
        at = surface.coated_at or surface.arrives.get("coating")
        name = surface.coating or "the coating that the car arrives with"
        coated = surface.coating_profile or profile("coating")
        found.layers.append(Layer(name, coated, at.astimezone(UTC) if at else None))
        found.residues["coating"] = Origin(at=at)
    return found


def strip(standing: Standing) -> None:
    """Take the coating off, as the job says that this step does."""
    standing.layers.clear()
    standing.residues.pop("coating", None)


def leave(standing: Standing, act: Act) -> None:
    """Change a surface by an act upon it. A layer buries what lay below: it is told once, at the layer."""
    origin = Origin(act.name, act.step, act.step_name, act.ends_at)
    for key in act.profile.lifts:
        standing.residues.pop(key, None)
    if act.has("coats"):
        standing.residues = {"coating": origin}
        standing.layers.append(Layer(act.name, act.profile, ended(act), act.step))
    standing.residues.update(dict.fromkeys(act.profile.leaves, origin))
    if act.profile.waits.flash_min:
        standing.flashing.append(act)


def drift(standing: Standing, act: Act) -> None:
    """Let settle on a surface what an act elsewhere on the car gave to the air."""
    for key in act.profile.leaves:
        if residues()[key].spreads == "air":
            standing.residues[key] = Origin(act.name, act.step, act.step_name, act.ends_at)
