"""What the cars of jobs arrive with, what the steps do to them, and whose silicone is in the bay's air."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import tzinfo

from inventory.models import Arrival, Job, Panel, Step
from inventory.precheck.questions.topics import SurfaceFacts
from inventory.trade.acts import Act, Surface
from inventory.trade.profile import Profile
from inventory.trade.residues import NOTHING
from inventory.trade.surfaces import area, named
from inventory.trade.visits import arriving

from .acts import SILICONE, acts_of, rinses, silicone_beside
from .car_rows import CarRows, midnight
from .loading import Loading

COATING = "coating"
AN_OLD_COATING = "an old coating"
COATED = frozenset({"paint", "film"})
WHOLE_CAR = Surface("paint", "clear_coat")
WHOLE, WHEELS, PAINT, FILM = "car", "wheels", "paint", "film"
WHEEL_WORDS = ("wheel", "rim", "alloy")


def load(loading: Loading) -> dict[int, SurfaceFacts]:
    """Return by job the surfaces of its car and what is done to them."""
    rows = CarRows(loading)
    return {job.pk: _facts(rows, job) for job in loading.jobs}


def _facts(rows: CarRows, job: Job) -> SurfaceFacts:
    past = rows.earlier.get(job.vehicle_id, ())
    visits = [need for need in past if need.step.job.starts_at < job.starts_at]
    typed = rows.arrivals.get(job.pk, [])
    return SurfaceFacts(
        surfaces=_surfaces(rows, job, acts_of(visits, rows.profiles, rows.cut_panels), typed),
        acts=_acts(rows, job),
        described=bool(visits) or _described(typed, rows.panels.get(job.vehicle_id, [])),
        unread=() if rows.panels.get(job.vehicle_id) else unread(job.vehicle.surfaces),
        car=job.vehicle.code,
    )


def _described(typed: Sequence[Arrival], panels: Sequence[Panel]) -> bool:
    """Say whether somebody said what is on the car; a look at some of its panels says nothing of the rest."""
    if any(row.panel_id is None or row.residue != NOTHING for row in typed):
        return True
    looked = {row.panel_id for row in typed}
    to_coat = [panel.pk for panel in panels if area(panel.surface) in COATED]
    return bool(to_coat) and looked >= set(to_coat)


def _surfaces(rows: CarRows, job: Job, done: list[Act], typed: list[Arrival]) -> tuple[Surface, ...]:
    known = surfaces_of(rows.panels.get(job.vehicle_id, []), job.vehicle.surfaces)
    return tuple(
        _typed(
            arriving(surface, done), [row for row in typed if row.panel_id in (None, panel)], rows.profiles
        )
        for panel, surface in known
    )


def surfaces_of(panels: Sequence[Panel], said: Sequence[str]) -> list[tuple[int | None, Surface]]:
    """Return a car's surfaces with their panels: what is listed, what is ticked of the whole car beside it.

    A car of which no paint is listed is clear-coated, whatever was ticked beside that. Work on the paint
    meets a film or wrap of the whole car. Where something is known to be of the wheels, other metal is not.
    """
    listed = [(panel.pk, _surface(panel)) for panel in panels]
    ticked = dict.fromkeys(key for text in said if (key := named(text)))
    some = {one.key for _, one in listed}
    whole = [Surface(WHOLE, key, as_paint=area(key) == FILM) for key in ticked if key not in some]
    if PAINT not in {area(key) for key in some}:
        listed = [(panel, replace(one, as_paint=area(one.key) == FILM)) for panel, one in listed]
    painted = any(area(key) in COATED for key in some)
    found = [*listed, *([] if painted else [(None, WHOLE_CAR)]), *((None, one) for one in whole)]
    if not any(_of_a_wheel(one) for _, one in found):
        return found
    return [(panel, one if _of_a_wheel(one) else replace(one, no_wheel=True)) for panel, one in found]


def _of_a_wheel(surface: Surface) -> bool:
    called = any(word in surface.name.lower() for word in WHEEL_WORDS)
    return area(surface.key) == WHEELS or (called and WHEELS in surface.areas)


def unread(said: Sequence[str]) -> tuple[str, ...]:
    """Return the words on a car that name no surface."""
    return tuple(text for text in said if not named(text))


def _surface(panel: Panel) -> Surface:
    return Surface(panel.name, panel.surface, panel=panel.code, since_on=panel.since_on, baked=panel.baked)


def _typed(surface: Surface, arrivals: Sequence[Arrival], profiles: Mapping[int, Profile]) -> Surface:
    """What somebody saw on this car goes over what the shop remembers, a panel's word over the car's.

    Nobody sees a clear coating: where nothing was seen, one that this shop put on is still there.
    """
    own = [row for row in arrivals if row.panel_id is not None]
    if any(row.residue == NOTHING for row in own):
        arrivals = own
    for row in sorted(arrivals, key=lambda row: row.panel_id is not None):
        if row.residue == NOTHING:
            surface = replace(surface, arrives={})
            continue
        if row.residue != COATING:
            surface = replace(surface, arrives={**surface.arrives, row.residue: row.since_at})
            continue
        product = row.product
        surface = replace(
            surface,
            coating=product.name if product else AN_OLD_COATING,
            coated_at=row.since_at,
            coating_profile=profiles[product.pk] if product else None,
        )
    return surface


def _acts(rows: CarRows, job: Job) -> tuple[Act, ...]:
    needs = rows.needs.get(job.pk, [])
    steps = [step for step in rows.loading.step_rows if step.job_id == job.pk]
    own = [*acts_of(needs, rows.profiles, rows.cut_panels), *rinses(steps, needs)]
    return tuple(sorted([*own, *_silicone(rows, job, own)], key=lambda act: act.starts_at))


def _silicone(rows: CarRows, job: Job, own: Sequence[Act]) -> list[Act]:
    """Return what other cars' dressings spread in the bay of a coat, earlier on the coat's own day."""
    needing = {act.step for act in own if SILICONE in act.profile.needs_absent}
    coats = [step for step in rows.loading.step_rows if step.job_id == job.pk and step.code in needing]
    others = (need for need in rows.beside if need.step.job_id != job.pk)
    zone = rows.loading.shop.zone
    return [
        act
        for need, act in silicone_beside(others, rows.profiles)
        if any(_just_before(need.step, coat, zone) for coat in coats)
    ]


def _just_before(step: Step, coat: Step, zone: tzinfo) -> bool:
    """Say whether a step is in a coat's bay, before it, on the same local day."""
    same_day = midnight(coat.starts_at, zone) <= step.starts_at < coat.starts_at
    return coat.bay_id is not None and step.bay_id == coat.bay_id and same_day
