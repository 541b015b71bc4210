"""What open jobs still need, read as plain values: no row of a model is built for a scan."""

from datetime import datetime
from typing import NamedTuple

from inventory.models import Product
from inventory.precheck import queries as precheck
from inventory.precheck.questions import JobFacts
from inventory.stock.rules.one_lot import NOTHING, Had, binds
from inventory.stock.rules.reserve import Need

NEED_COLUMNS = (
    "id", "amount", "kind", "parts_product", "parts_water", "product__code", "product__kind",
    "product__mixes_lots", "step__code", "step__starts_at", "step__ends_at", "step__job_id",
    "step__job__code", "step__job__title", "step__job__starts_at", "step__job__ends_at",
    "step__job__booked_at", "step__job__vehicle__name", "kind_dimension",
)  # fmt: skip


class NeedRow(NamedTuple):
    """The values of NEED_COLUMNS."""

    id: int
    amount: int
    kind: str
    parts_product: int
    parts_water: int
    product: str | None
    product_kind: str | None
    mixes_lots: bool | None
    step: str
    starts_at: datetime
    ends_at: datetime
    job_id: int
    job_code: str
    title: str
    job_starts_at: datetime
    job_ends_at: datetime
    booked_at: datetime
    car: str
    kind_dimension: str | None

    @property
    def job_key(self) -> str:
        """The job, as the check sorts it."""
        return precheck.key(self.job_id)

    @property
    def job(self) -> JobFacts:
        """The job, as the check sees it."""
        named = f"{self.car} · {self.title}"
        return JobFacts(self.job_key, self.job_code, named, self.job_starts_at, self.job_ends_at)

    def need(self, had: Had) -> Need:
        """Return the need, before anything was used; `had`: what steps have had."""
        return Need(
            id=str(self.id), job=self.job_key, starts_at=self.starts_at, ends_at=self.ends_at,
            job_starts_at=self.job_starts_at, booked_at=self.booked_at, amount=self.amount,
            product=self.product, kind=self.kind, parts=(self.parts_product, self.parts_water),
            one_lot=binds(self.product_kind or self.kind, self.mixes_lots),
            had=had.get((self.step, self.product or self.kind), NOTHING),
            dimension="" if self.product else self.kind_dimension or Product.Dimension.VOLUME,
        )  # fmt: skip
