"""What jobs used, from the ledger: amounts, and which lots each step has had; an owner's word about lots."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Set
from dataclasses import dataclass, field

from django.db.models import Count, Q, Sum

from inventory.models import Job, Movement, Override
from inventory.stock.rules import one_lot
from inventory.stock.rules.remaining import Key

COLUMNS = (
    "job_id", "step__code", "product__code", "product__kind", "product__mixes_lots", "product__wear_uses",
    "product__wear_minutes", "source_id", "source__lots__code",
)  # fmt: skip
# A typed amount says what a step used, except of a bottle that held less than the step wanted: then it says
# what that bottle gave.
TYPED = Q(facts__measured=True, facts__part__isnull=True)


@dataclass
class Used:
    """Concentrate by job, step and product; each product's kind; what is not used up; each step's lots.

    `typed`: of what somebody typed, or weighed, how much a step used.
    """

    amounts: dict[Key, int] = field(default_factory=lambda: defaultdict(int))
    kinds: dict[str, str] = field(default_factory=dict)
    worn: set[str] = field(default_factory=set)
    had: dict[tuple[str, str], one_lot.Batch] = field(default_factory=dict)
    typed: set[Key] = field(default_factory=set)


def used(
    jobs: Iterable[int],
    key: Callable[[int], str],
    kinds: Set[str] | None = None,
    named: Set[tuple[str, str]] = frozenset(),
) -> Used:
    """Return what jobs used, of some kinds or of all, in one query; `key` writes a job's id.

    `named` are (step, product) that a need asks for by name: they bind no need of "any" beside it.
    """
    # Named one by one: by their state alone PostgreSQL reads the whole ledger for what was taken back.
    rows = Movement.objects.filter(job__in=set(jobs), kind=Movement.Kind.USE, reversed_by=None)
    if kinds is not None:
        rows = rows.filter(product__kind__in=kinds)
    found, counted = Used(), set()
    sums = rows.filter(product__isnull=False).values_list(*COLUMNS)
    for job, step, product, kind, mixes, uses, minutes, source, lot, amount, typed in sums.annotate(
        Sum("concentrate"), typed=Count("pk", filter=TYPED)
    ).order_by():
        if lot and step and kind == one_lot.KIND:
            batch = one_lot.batch_of(product, frozenset({lot}), mixes)
            for thing in (product,) if (step, product) in named else (product, kind):
                found.had[step, thing] = found.had.get((step, thing), one_lot.NOTHING) | batch
        # A bottle of several lots comes once a lot, each time with the whole sum.
        if (job, step, product, source) not in counted:
            counted.add((job, step, product, source))
            found.amounts[key(job), step or "", product] += amount or 0
        found.kinds[product] = kind
        if step and typed:
            found.typed.add((key(job), step, product))
        if uses or minutes:
            found.worn.add(product)
    return found


def two_lots_allowed(job: Job) -> frozenset[tuple[str, str]]:
    """Return (product or kind, step) for which an owner's word for two lots stands, in one query."""
    rows = Override.objects.filter(job=job, code=one_lot.TWO_LOTS).select_related("by")
    about = [row.about.split() for row in rows if row.by.is_owner]
    return frozenset((one[0], one[1]) for one in about if len(one) == 2)
