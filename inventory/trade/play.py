"""The steps of a job, played in order over each surface of a car: what is in the way, and what mends it."""

from collections.abc import Collection, Iterable, Mapping
from datetime import UTC, tzinfo

from .acts import Act, Clash, Found, Surface
from .in_time import in_time
from .kinds import turn
from .on_surface import cool, on_surface
from .over_residue import over_residue
from .saying import where
from .standing import Standing, arrived, began, drift, leave, strip
from .surface_rules import GRADES

__all__ = ["Act", "Clash", "Surface", "play", "play_service"]

RULES = (over_residue, on_surface, in_time)
# In a service the missing polish is asked about once, when it is written; each job then only tells of it.
IN_A_SERVICE = {"order.no_refining": "ask"}
Pile = dict[tuple[str, str, Act], list[tuple[str, Found]]]


def play(
    surfaces: Iterable[Surface], acts: Iterable[Act], zone: tzinfo, done: Collection[str] = ()
) -> tuple[Clash, ...]:
    """Return what the steps run into, the gravest first; one cause is one clash, on however many panels.

    Steps that are `done` count for what they left; nothing is said of them, and a cause that they met is
    said of the next step that meets it.
    """
    return _played(surfaces, acts, zone, {}, done)


def play_service(acts: Iterable[Act]) -> tuple[Clash, ...]:
    """Return what a service's steps run into on a clean clear-coated car."""
    return _played([Surface("whole car", "clear_coat")], acts, UTC, IN_A_SERVICE, ())


def in_order(acts: Iterable[Act]) -> list[Act]:
    """Return acts by their start; those that start together in the order of work."""
    return sorted(acts, key=lambda act: (began(act), turn(act.kind, act.profile.family), act.layer))


def _played(
    surfaces: Iterable[Surface],
    acts: Iterable[Act],
    zone: tzinfo,
    regraded: Mapping[str, str],
    done: Collection[str],
) -> tuple[Clash, ...]:
    car, pile = [arrived(surface) for surface in surfaces], Pile()
    ordered = in_order(acts)
    for act in ordered:
        for standing in car:
            for found in _met(standing, act, zone, act.step in done):
                grade = regraded.get(found.code, found.grade) if found.grade == "tell" else found.grade
                pile.setdefault((found.code, grade, act), []).append((standing.surface.name, found))
    # The gravest first, then in the order of work; never in that of the panels, which says nothing.
    turns = {act: number for number, act in reversed(list(enumerate(ordered)))}
    keys = sorted(pile, key=lambda key: (GRADES.index(key[1]), turns[key[2]], key[0]))
    return tuple(_clash(*key, pile[key]) for key in keys)


def _met(standing: Standing, act: Act, zone: tzinfo, done: bool) -> list[Found]:
    """Return what an act runs into on one surface, and leave the surface as the act leaves it."""
    if not act.meets(standing.surface):
        drift(standing, act)
        return []
    if act.strips_coating:
        strip(standing)
    if done:
        cool(standing, act)
    found = [] if done else [one for rule in RULES for one in rule(standing, act, zone)]
    if not act.spot:
        leave(standing, act)
    return found


def _clash(code: str, grade: str, act: Act, on: list[tuple[str, Found]]) -> Clash:
    """Make one clash of what an act met on several surfaces: the gravest numbers, every origin."""
    said = max((found for _, found in on), key=lambda one: (one.weight, one.says))
    origins = sorted({one.origin for _, one in on if one.origin})
    names = tuple(sorted({name for name, _ in on}))
    return Clash(
        code=code,
        grade=grade,
        says=said.says.replace("{where}", where(names)),
        because=" ".join([said.because, *origins]),
        do=said.do,
        source=said.source,
        step=act.step,
        product=act.product,
        surfaces=names,
    )
