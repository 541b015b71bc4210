"""A car's panels and readings over all visits, what a job cuts, what the shop measured of such cuts."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import timedelta

from inventory.models import Job, Kind, Panel, Reading, Shop, Step, StepNeed
from inventory.precheck.questions.topics import PaintFacts
from inventory.trade import paint
from inventory.trade.paint import Cut, Floor, Measured, measured
from inventory.trade.paint.implied import Counted, Cutting, counted

from .loading import Loading
from .small_goods import small_goods, uses_of
from .values import KIND_WORDS

PAINT = "paint"
ABRASIVES = {Kind.COMPOUND, Kind.POLISH, Kind.ABRASIVE}
# A year, as for amounts: what was measured before that was another habit (our choice).
LOOK_BACK = timedelta(days=365)
# (code or kind, kind) of one need of a step
Taken = tuple[str, str]


def load(loading: Loading) -> dict[int, PaintFacts]:
    """Return by job what is known of its car's paint, and of the pads and towels that may touch it.

    Nothing is asked of the database for jobs that cut no paint and find no pad that is used again.
    """
    goods = small_goods(loading)
    grades = _grades(loading)
    cutting = {step.job_id for step in loading.step_rows if step.code in grades}
    if not cutting and not goods:
        return {}
    panels = panels_of(job.vehicle_id for job in loading.jobs)
    uses = uses_of(loading, {car: {one.surface for one in found} for car, found in panels.items()})
    cut = _cut(loading, cutting, panels, grades) if cutting else {}
    return {
        job.pk: replace(cut.get(job.pk, PaintFacts()), goods=goods, uses=uses.get(job.pk, {}))
        for job in loading.jobs
    }


def _cut(
    loading: Loading, jobs: set[int], panels: dict[int, list[paint.Panel]], grades: Mapping[str, Counted]
) -> dict[int, PaintFacts]:
    readings = readings_of(job.vehicle_id for job in loading.jobs if job.pk in jobs)
    cuts = _cuts(loading, grades)
    history = tuple(_history(loading, {cut.abrasive for found in cuts.values() for cut in found}))
    return {
        job.pk: PaintFacts(
            panels=tuple(panels[job.vehicle_id]),
            readings=tuple(readings[job.vehicle_id]),
            cuts=tuple(cuts[job.pk]),
            floor=floor_of(loading.shop),
            unit=loading.shop.film_unit,
            history=history,
        )
        for job in loading.jobs
        if job.pk in jobs
    }


def floor_of(shop: Shop) -> Floor:
    """Return the shop's floors; film that is at the floor is never thick enough for more than finishing."""
    finish_only = max(Floor().finish_only_um, shop.floor_whole_um)
    return Floor(shop.floor_whole_um, shop.floor_clear_um, finish_only)


def cuts_paint(grade: str, touches: list[str] | None) -> bool:
    """Say whether a step cuts, and cuts paint: sanding a lamp takes none."""
    return bool(grade) and (touches is None or PAINT in touches)


def _grades(loading: Loading) -> dict[str, Counted]:
    """Return by step what it cuts: what it says, and at least what its products take off."""
    takes: dict[int, dict[str, str]] = defaultdict(dict)
    for need in loading.work_rows:
        name = need.product.name if need.product else KIND_WORDS[need.kind]
        takes[need.step_id][name] = need.product.kind if need.product else need.kind
    by_job: dict[int, list[Cutting]] = defaultdict(list)
    for step in loading.step_rows:
        if step.touches is None or PAINT in step.touches:
            some = bool(step.cut) and step.pk in loading.cut_panels
            by_job[step.job_id].append(Cutting(step.code, step.cut, takes[step.pk], all_over=not some))
    return {step: one for steps in by_job.values() for step, one in counted(steps).items()}


def panels_of(vehicles: Iterable[int]) -> dict[int, list[paint.Panel]]:
    """Return the panels of vehicles, in one query."""
    found: dict[int, list[paint.Panel]] = defaultdict(list)
    for row in Panel.objects.filter(vehicle__in=set(vehicles)):
        found[row.vehicle_id].append(paint.Panel(row.code, row.name, row.substrate, row.surface))
    return found


def readings_of(vehicles: Iterable[int]) -> dict[int, list[paint.Reading]]:
    """Return the readings of vehicles over all their visits, the earliest first, in one query."""
    found: dict[int, list[paint.Reading]] = defaultdict(list)
    rows = Reading.objects.filter(panel__vehicle__in=set(vehicles)).select_related("panel")
    for row in rows.order_by("taken_at", "id"):
        found[row.panel.vehicle_id].append(_reading(row))
    return found


def _reading(row: Reading) -> paint.Reading:
    panel = row.panel
    return paint.Reading(panel.code, panel.name, row.taken_at, row.when, row.um, row.film, row.readable)


def _cuts(loading: Loading, grades: Mapping[str, Counted]) -> dict[int, list[Cut]]:
    taken: dict[int, list[Taken]] = defaultdict(list)
    for need in loading.work_rows:
        taken[need.step_id].append(_taken(need))
    found: dict[int, list[Cut]] = defaultdict(list)
    for step in loading.step_rows:
        if one := grades.get(step.code):
            panels = loading.cut_panels.get(step.pk, ())
            made = cuts_of(step.code, one.grade, step.passes, taken[step.pk], panels)
            found[step.job_id] += [replace(cut, raised=one.sentence(step.name)) for cut in made]
    return found


def _taken(need: StepNeed) -> Taken:
    product = need.product
    return (product.code, product.kind) if product else (need.kind, need.kind)


def cuts_of(
    step: str, grade: str, passes: int, taken: Iterable[Taken], panels: Iterable[str] = ()
) -> list[Cut]:
    """Return what a step cuts: one cut of all panels, or one of each that it is limited to.

    Two abrasives of one step count as what they are together.
    """
    listed = sorted(set(taken))
    abrasive = "+".join(code for code, kind in listed if kind in ABRASIVES)
    pad = "+".join(code for code, kind in listed if kind == Kind.PAD)
    of_all = Cut(step, None, grade, passes, abrasive, pad)
    return [replace(of_all, panel=panel) for panel in sorted(panels)] or [of_all]


def _history(loading: Loading, abrasives: set[str]) -> list[Measured]:
    """Return what other jobs measured of these abrasives, in two queries; none of cuts that named none."""
    codes = {code for one in abrasives for code in one.split("+") if code}
    since = min(job.starts_at for job in loading.jobs) - LOOK_BACK
    rows = Step.objects.filter(job__shop=loading.shop, starts_at__gte=since).exclude(cut="")
    jobs = Reading.objects.filter(when=Reading.When.AFTER, taken_at__gte=since).values("job")
    using = rows.filter(job__in=jobs).exclude(job__in=loading.jobs)
    cuts = _cuts_of(using.exclude(job__state=Job.State.CANCELLED), codes) if codes else {}
    readings: dict[int, list[paint.Reading]] = defaultdict(list)
    for row in Reading.objects.filter(job__in=cuts).select_related("panel").order_by("taken_at", "id"):
        readings[row.job_id].append(_reading(row))
    return [one for job, made in cuts.items() for one in measured(made, readings[job]) if one.abrasive]


def _cuts_of(steps: "Iterable[Step]", codes: set[str]) -> dict[int, list[Cut]]:
    """Return by job the cuts of steps, of jobs that used one of some abrasives."""
    rows: dict[tuple[int, int], tuple[str, int, list[Taken], set[str]]] = {}
    columns = ("job_id", "pk", "cut", "passes", "touches", "needs__product__code", "needs__product__kind",
               "needs__kind", "needs__outcome", "panels")  # fmt: skip
    for job, step, grade, passes, touches, code, its, kind, outcome, panel in steps.values_list(*columns):  # type: ignore[attr-defined]
        if cuts_paint(grade, touches):
            _, _, taken, panels = rows.setdefault((job, step), (grade, passes, [], set()))
            panels |= {Panel(pk=panel).code} if panel else set()
            if (code or kind) and outcome != StepNeed.Outcome.NOT_DONE:
                taken.append((code or kind, its or kind))
    found: dict[int, list[Cut]] = defaultdict(list)
    for (job, step), (grade, passes, taken, panels) in rows.items():
        found[job] += cuts_of(str(step), grade, passes, taken, panels)
    return {
        job: cuts for job, cuts in found.items() if any(codes & set(cut.abrasive.split("+")) for cut in cuts)
    }


def of_car(job: Job) -> PaintFacts:
    """Return what is known of a job's car, whether or not the job cuts it; the job has its shop loaded."""
    loading, car = Loading(job.shop, [job]), job.vehicle_id
    known = load(loading).get(job.pk, PaintFacts())
    open_steps = {step.code for step in loading.step_rows if not step.signed_at}
    return replace(
        known,
        panels=known.panels or tuple(panels_of([car])[car]),
        readings=known.readings or tuple(readings_of([car])[car]),
        cuts=tuple(cut for cut in known.cuts if cut.step in open_steps),
        floor=floor_of(job.shop),
        unit=job.shop.film_unit,
    )
