"""Pads and towels on the shelf: what they carried before, as the ledger's uses say; and what they are for."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Exists, OuterRef

from inventory.models import Container, Kind, Movement, Panel, Washed
from inventory.trade.small_goods import COARSENESS, FOREIGN, PAD, TOWEL, SmallGood, Use

from .loading import Loading

SMALL = {Kind.PAD: PAD, Kind.TOWEL: TOWEL}
PAINT, METAL, BARE_METAL = "paint", "metal", "bare metal"
COATING = "coating"


@dataclass(frozen=True)
class Carried:
    """One use of a pad or towel: its step if one was named, the car, the areas, and the kinds it met."""

    step: int | None
    vehicle: int | None
    touches: tuple[str, ...] | None
    kinds: frozenset[str]
    washed_since: bool = False


def small_goods(loading: Loading) -> dict[str, SmallGood]:
    """Return pads and towels that are used again, by container code, in two queries.

    A piece taken out of a box is a fresh one: only what wears by uses or minutes has a past.
    """
    kept = [row for row in loading.containers if _is_kept(row)]
    if not kept:
        return {}
    past = _past(kept)
    surfaces = _foreign_surfaces(use.vehicle for uses in past.values() for use in uses if use.vehicle)
    return {row.code: _good(row, past[row.code], surfaces) for row in kept}


def _is_kept(row: Container) -> bool:
    product = row.product
    return product is not None and product.kind in SMALL and bool(product.wear_uses or product.wear_minutes)


def uses_of(loading: Loading, surfaces: dict[int, set[str]]) -> dict[int, dict[str, Use]]:
    """Return by job and step what its pads and towels are to be used for; `surfaces` are by vehicle."""
    kinds: dict[int, set[str]] = defaultdict(set)
    for need in loading.work_rows:
        kinds[need.step_id].add(need.product.kind if need.product else need.kind)
    cars = {job.pk: job.vehicle_id for job in loading.jobs}
    found: dict[int, dict[str, Use]] = defaultdict(dict)
    for step in loading.step_rows:
        single = "single_stage" in surfaces.get(cars[step.job_id], ())
        found[step.job_id][step.code] = Use(
            abrasive=_abrasive(kinds[step.pk]),
            surface="single_stage" if single else "clear_coat",
            on_paint=step.touches is None or PAINT in step.touches,
        )
    return found


def _past(kept: Iterable[Container]) -> dict[str, list[Carried]]:
    rows = Movement.objects.filter(source__in=list(kept), kind=Movement.Kind.USE, reversed_by=None)
    # Asked along with the uses: what was never used needs no wash.
    wash = Washed.objects.filter(container=OuterRef("source"), washed_at__gt=OuterRef("happened_at"))
    rows = rows.annotate(washed_since=Exists(wash))
    columns = ("source__code", "seq", "washed_since", "step_id", "step__job__vehicle_id", "step__touches",
               "step__needs__kind", "step__needs__product__kind")  # fmt: skip
    met: dict[tuple[str, int], Carried] = {}
    for code, seq, washed, step, vehicle, touches, kind, its in rows.order_by(
        "happened_at", "seq"
    ).values_list(*columns):
        before = met.get((code, seq))
        kinds = (before.kinds if before else frozenset()) | {its or kind or ""}
        met[code, seq] = Carried(
            step, vehicle, tuple(touches) if touches is not None else None, kinds, washed
        )
    found: dict[str, list[Carried]] = defaultdict(list)
    for (code, _), use in met.items():
        found[code].append(use)
    return found


def _foreign_surfaces(vehicles: Iterable[int]) -> dict[int, set[str]]:
    foreign = frozenset().union(*FOREIGN.values())
    found: dict[int, set[str]] = defaultdict(set)
    rows = Panel.objects.filter(vehicle__in=set(vehicles), surface__in=foreign)
    for vehicle, surface in rows.values_list("vehicle_id", "surface"):
        found[vehicle].add(surface)
    return found


def _good(row: Container, uses: list[Carried], surfaces: dict[int, set[str]]) -> SmallGood:
    product = row.product
    assert product is not None
    kind = SMALL[Kind(product.kind)]
    last = _on_towel(uses) if kind == TOWEL else _on_pad(uses, surfaces)
    unsaid = [use for use in uses if use.step is None]
    known = not unsaid if kind == TOWEL else not uses or uses[-1].step is not None
    washed = bool(uses) and uses[-1].washed_since
    return SmallGood(
        row.code, product.name, kind, last, washed, known or bool(last and kind == TOWEL),
        abrasive=_abrasive(uses[-1].kinds) if last in FOREIGN else "",
    )  # fmt: skip


def _on_towel(uses: list[Carried]) -> str:
    return COATING if any(COATING in use.kinds for use in uses) else ""


def _on_pad(uses: list[Carried], surfaces: dict[int, set[str]]) -> str:
    """What stays in the foam for good comes before what it carried last."""
    for use in uses:
        met = surfaces.get(use.vehicle or 0, set())
        if "single_stage" in met and (use.touches is None or PAINT in use.touches):
            return "single-stage"
        if met & FOREIGN[BARE_METAL] and use.touches is not None and METAL in use.touches:
            return BARE_METAL
    return _abrasive(uses[-1].kinds) if uses else ""


def _abrasive(kinds: Iterable[str]) -> str:
    return max((kind for kind in kinds if kind in COARSENESS), key=COARSENESS.__getitem__, default="")
