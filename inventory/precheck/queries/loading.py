"""Rows of a check, asked for once, whichever topics want them."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime
from functools import cached_property

from django.db.models import Q

from inventory.models import (
    Container,
    Job,
    Movement,
    Override,
    Panel,
    Person,
    Place,
    Product,
    RuleGrade,
    Shop,
    Step,
    StepNeed,
)
from inventory.precheck.questions import Answer, StepFacts
from inventory.precheck.questions.topics.weather import Reading
from inventory.stock import queries as stock
from inventory.stock.rules.at_hand import at_hand
from inventory.stock.rules.remaining import remaining
from inventory.stock.rules.reserve import Need
from inventory.stock.used import used

from .poured import Pouring, Spent, Steps, beside, planned_for, spent
from .readings import newest
from .values import key, need_of, step_facts

LONG_AGO = datetime.min.replace(tzinfo=UTC)


class Loading:
    """Rows asked for once, whichever topics want them; `jobs` are those under check, of one shop.

    `doing`: who does the stage at hand, where that is known better than it was planned; `pouring`: what
    somebody has in hand, by the job's id; `at` says which step is at hand.
    """

    def __init__(
        self,
        shop: Shop,
        jobs: Sequence[Job],
        doing: Person | None = None,
        *,
        at: datetime | None = None,
        pouring: Mapping[int, Pouring] | None = None,
    ) -> None:
        self.shop, self.jobs, self.doing, self.at = shop, jobs, doing, at
        self.pouring: Mapping[int, Pouring] = pouring or {}

    @cached_property
    def grades(self) -> dict[str, str]:
        """The owner's grades by rule; the newest counts."""
        rows = RuleGrade.objects.filter(shop=self.shop).order_by("given_at", "id")
        return dict(rows.values_list("code", "grade"))

    @cached_property
    def step_rows(self) -> list[Step]:
        """The steps of the jobs under check, signed ones too, in their order."""
        rows = Step.objects.filter(job__in=self.jobs).select_related("bay", "person", "signed_by")
        found = list(rows.order_by("starts_at", "position"))
        if self.doing:
            self._done_by(self.doing, [row for row in found if row.signed_at is None])
        return found

    def _done_by(self, person: Person, unsigned: list[Step]) -> None:
        """Whoever has the bottle in hand does the stage at hand, and its own step, whoever was planned."""
        now = at_hand(unsigned, self.at)
        asked = set().union(*(planned_for(one.product, self.planned_rows) for one in self.pouring.values()))
        its = next((row for row in unsigned if row.pk in asked), None)
        for row in unsigned:
            if row is its or (now and row.stage == now.stage):
                row.person = person

    @cached_property
    def steps(self) -> dict[int, list[StepFacts]]:
        found: dict[int, list[StepFacts]] = defaultdict(list)
        for row in self.step_rows:
            found[row.job_id].append(step_facts(row))
        return found

    @cached_property
    def cut_panels(self) -> dict[int, frozenset[str]]:
        """The panels that a step of these cars cuts, by the step's id, earlier visits too; none is all."""
        cars = {job.vehicle_id for job in self.jobs}
        rows = Step.objects.filter(job__vehicle__in=cars, panels__isnull=False).exclude(cut="").order_by()
        found: dict[int, frozenset[str]] = defaultdict(frozenset)
        for step, panel in rows.values_list("pk", "panels"):
            found[step] |= {Panel(pk=panel).code}
        return dict(found)

    @cached_property
    def readings(self) -> dict[str, Reading]:
        """The newest reading of each bay of these steps, by the bay's code."""
        return newest({row.bay_id for row in self.step_rows if row.bay_id})

    @cached_property
    def uses(self) -> list[Movement]:
        """What the ledger says was used on the cars of these jobs and not taken back, in its order."""
        rows = Movement.objects.filter(
            job__in=[job.pk for job in self.jobs], kind=Movement.Kind.USE, reversed_by=None,
            product__isnull=False,
        )  # fmt: skip
        return list(rows.select_related("product").order_by("happened_at", "seq"))

    @cached_property
    def work_rows(self) -> list[StepNeed]:
        """What the steps of these jobs take, signed ones too: planned, used without a plan, or in hand."""
        return beside(self.planned_rows, self._spent(self.uses))

    @cached_property
    def at_work(self) -> list[StepNeed]:
        """What people still work with: the same, less what was used before a rinse that is signed."""
        rinsed: dict[int, datetime] = {}
        for row in self.step_rows:
            if row.rinses and row.signed_at:
                rinsed[row.job_id] = max(row.signed_at, rinsed.get(row.job_id, row.signed_at))
        left = [use for use in self.uses if use.happened_at > rinsed.get(use.job_id or 0, LONG_AGO)]
        return beside(self.planned_rows, self._spent(left))

    @cached_property
    def to_come(self) -> list[StepNeed]:
        """What is planned or in hand, for a topic that counts what was used by itself."""
        return beside(self.planned_rows, self._spent(()))

    def _spent(self, uses: Sequence[Movement]) -> dict[tuple[int, int], Spent]:
        return spent(uses, Steps(self.step_rows, self.planned_rows, self.at), self.pouring)

    @cached_property
    def planned_rows(self) -> list[StepNeed]:
        """What the steps of the jobs under check plan, signed ones too; a kind stands without product."""
        rows = StepNeed.objects.filter(step__job__in=self.jobs).exclude(outcome=StepNeed.Outcome.NOT_DONE)
        return list(
            rows.select_related("product", "step").order_by("step__starts_at", "step__position", "id")
        )

    @cached_property
    def answers(self) -> dict[int, list[Answer]]:
        found: dict[int, list[Answer]] = defaultdict(list)
        for row in Override.objects.filter(job__in=self.jobs).select_related("by").order_by("given_at"):
            said = Answer(
                row.code,
                tuple(row.about.split()),
                row.says,
                row.reason,
                row.by.name,
                row.given_at,
                row.by.is_owner,
            )
            found[row.job_id].append(said)
        return found

    @cached_property
    def need_rows(self) -> list[StepNeed]:
        rows = StepNeed.objects.filter(
            step__job__shop=self.shop,
            step__job__state=Job.State.OPEN,
            step__signed_at__isnull=True,
            outcome="",
        )
        if self.jobs:
            # What other jobs want of other kinds cannot touch these jobs.
            asked = StepNeed.objects.filter(step__job__in=self.jobs).order_by()
            kinds = {mine or its for mine, its in asked.values_list("kind", "product__kind").distinct()}
            rows = rows.filter(Q(kind__in=kinds) | Q(product__kind__in=kinds))
        measured = rows.annotate(kind_dimension=stock.kind_dimension())
        wanted = ("product__supplier", "product__profile", "step__job__vehicle")
        return list(measured.select_related(*wanted))

    @cached_property
    def needs(self) -> tuple[Need, ...]:
        named = {(row.step.code, row.product.code) for row in self.need_rows if row.product}
        found = used({row.step.job_id for row in self.need_rows}, key, named=named)
        needs = [need_of(row, found.had) for row in self.need_rows]
        return tuple(remaining(needs, self.step_of, found.amounts, found.kinds, found.worn))

    @cached_property
    def step_of(self) -> dict[str, str]:
        return {str(row.id): row.step.code for row in self.need_rows}

    @cached_property
    def product_rows(self) -> list[Product]:
        named = [row.product for row in self.need_rows if row.product]
        kinds = {row.kind for row in self.need_rows if row.kind} | {product.kind for product in named}
        rows = Product.objects.filter(shop=self.shop, kind__in=kinds, archived=False)
        rows = rows.select_related("supplier", "profile")
        return list({product.id: product for product in [*named, *rows]}.values())

    @cached_property
    def containers(self) -> list[Container]:
        rows = stock.containers(self.shop.id).select_related("place__within")
        # What stands at the waste point is on its way out: it serves nobody.
        here = rows.filter(product__in=self.product_rows, content__gt=0)
        return list(here.exclude(place__kind=Place.Kind.WASTE))
