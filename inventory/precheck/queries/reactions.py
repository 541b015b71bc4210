"""What may meet what on the cars under check and in their bays: four queries, whatever they hold."""

from collections import defaultdict
from collections.abc import Iterable

from django.db.models import Q

from inventory.models import Container, Job, Kind, Movement, Product, Step, StepNeed
from inventory.models.product import TRACED_KINDS
from inventory.precheck.questions.reactions import ANY
from inventory.precheck.questions.topics.reactions import InBay, ReactionFacts, Used, Wetted

from .loading import Loading
from .substances import of_a_kind, substances

# What is put on a car or a floor; pads, towels, masks and gels are not.
WETS = {
    Kind.SHAMPOO, Kind.FOAM, Kind.ALKALINE, Kind.CLEANER, Kind.WHEEL, Kind.ACID, Kind.IRON, Kind.TAR,
    Kind.LUBRICANT, Kind.SOLVENT, Kind.COATING, Kind.TOPPER, Kind.DRESSING, Kind.GLASS, Kind.INTERIOR,
    Kind.OTHER,
}  # fmt: skip


def load(loading: Loading) -> dict[int, ReactionFacts]:
    """Return the facts of each job under check by its id."""
    needs: dict[int, list[str]] = defaultdict(list)
    traced: dict[int, list[str]] = defaultdict(list)
    rows = [row for row in loading.to_come if kind_of(row) in WETS]
    for row in rows:
        needs[row.step_id].append(code_of(row))
        if row.product.traced if row.product else row.kind in TRACED_KINDS:
            traced[row.step_id].append(code_of(row))
    bays = {row.bay_id for row in loading.step_rows if row.bay_id}
    standing, others = _standing(loading, bays), _others(loading, bays)
    kinds = {any_of(row.kind): of_a_kind(row.kind) for row in [*rows, *others] if not row.product}
    used = [row for row in loading.uses if row.product and row.product.kind in WETS]
    shelf = [row.product for row in standing if row.product]
    # A kind is served by one of its makes: each is known, for the bottle that the step gets.
    makes = [row for row in loading.product_rows if row.kind in WETS]
    spent = [row.product for row in used if row.product]
    known = kinds | substances([*_products(rows), *shelf, *_products(others), *makes, *spent])
    return {
        job.id: ReactionFacts(
            steps=tuple(
                _wetted(row, needs[row.pk], traced[row.pk])
                for row in loading.step_rows
                if row.job_id == job.id
            ),
            in_bays=(*_stands(standing), *_uses(others, job)),
            used=tuple(_used(row) for row in used if row.job_id == job.id),
            substances=known,
        )
        for job in loading.jobs
    }


def uses_on(jobs: Iterable[Job]) -> list[Movement]:
    """Return what the ledger says was put on these cars and not taken back, in its order."""
    rows = Movement.objects.filter(
        job__in=[job.pk for job in jobs], kind=Movement.Kind.USE, reversed_by=None, product__kind__in=WETS
    )
    return list(rows.select_related("product").order_by("happened_at", "seq"))


def _used(row: Movement) -> Used:
    assert row.product is not None
    return Used(row.product.code, row.happened_at)


def kind_of(row: StepNeed) -> str:
    """Return the kind of what a need takes, named or not."""
    return row.product.kind if row.product else row.kind


def code_of(row: StepNeed) -> str:
    """Return how findings name what a need takes."""
    return row.product.code if row.product else any_of(row.kind)


def any_of(kind: str) -> str:
    """Return how findings name any product of a kind."""
    return f"{ANY}{kind}"


def _standing(loading: Loading, bays: set[int]) -> list[Container]:
    here = Container.objects.filter(shop=loading.shop, state__in=["sealed", "open"], product__kind__in=WETS)
    inside = here.filter(Q(place__in=bays) | Q(place__within__in=bays))
    return list(inside.select_related("product", "place__within"))


def _others(loading: Loading, bays: set[int]) -> list[StepNeed]:
    """Return what the steps of all open cars take in these bays in the days under check."""
    if not loading.step_rows:
        return []
    starts = min(row.starts_at for row in loading.step_rows)
    ends = max(row.ends_at for row in loading.step_rows)
    rows = StepNeed.objects.filter(
        Q(product__kind__in=WETS) | Q(kind__in=WETS),
        step__job__shop=loading.shop, step__job__state=Job.State.OPEN, step__bay__in=bays,
        step__starts_at__lt=ends, step__ends_at__gt=starts, step__signed_at=None,
    ).exclude(outcome=StepNeed.Outcome.NOT_DONE)  # fmt: skip
    return list(rows.select_related("product", "step__job__vehicle", "step__bay"))


def _products(rows: Iterable[StepNeed]) -> list[Product]:
    return [row.product for row in rows if row.product]


def _wetted(row: Step, products: list[str], traced: list[str]) -> Wetted:
    codes = tuple(dict.fromkeys(products))
    return Wetted(
        row.code, row.name, row.starts_at, row.ends_at, row.bay.code if row.bay else None, codes,
        row.rinses, row.signed_at, tuple(traced),
    )  # fmt: skip


def _stands(rows: Iterable[Container]) -> tuple[InBay, ...]:
    found = {}
    for row in rows:
        assert row.place is not None
        assert row.product is not None
        bay = row.place.within if row.place.within and row.place.kind != "bay" else row.place
        found[bay.code, row.product.code] = InBay(bay.code, row.product.code)
    return tuple(found[key] for key in sorted(found))


def _uses(rows: Iterable[StepNeed], mine: Job) -> tuple[InBay, ...]:
    used = [row for row in rows if row.step.job_id != mine.pk]
    return tuple(
        InBay(row.step.bay.code, code_of(row), row.step.starts_at, row.step.ends_at,
              str(row.step.job.vehicle).capitalize())
        for row in sorted(used, key=lambda row: (row.step.starts_at, row.pk))
        if row.step.bay
    )  # fmt: skip
