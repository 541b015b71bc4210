"""Is everything that stands in the database what the ledger says? Recomputes it all and names what differs.

Reads only. The chain is read once, line by line in the order of its numbers, and each line is folded as it
passes; only bottles and lots with late entries or reverses are folded again afterwards.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from django.db import connection

from inventory.models import Container, Head, Lot, Movement, Shop, guards
from inventory.stock import queries
from inventory.stock.audited import Bottles, Lots
from inventory.stock.bodies import COLUMNS, body_of_row
from inventory.stock.lots import state_of
from inventory.stock.rules.chain import GENESIS, hash_line
from inventory.stock.rules.lines import Line, Refused
from inventory.stock.rules.use_by import use_by
from inventory.stock.use_by_copy import put_use_by

CHAINED = ("format", "previous_hash", "hash", *COLUMNS)
CHUNK = 2_000


@dataclass(frozen=True)
class Problem:
    """One thing that is not as the ledger says; `entry` is the line's number where it is about a line."""

    shop: str
    entry: int | None
    says: str


def audit(progress: Callable[[int], object] = lambda count: None) -> Iterator[Problem]:
    """Yield every problem of every shop; `progress` hears how many rows were read since the last time."""
    with connection.cursor() as cursor:
        lacking = sorted(guards.missing(cursor, connection.vendor))
    if lacking:
        yield Problem("", None, f"The ledger's guards {', '.join(lacking)} are missing.")
    for shop in Shop.objects.order_by("id"):
        yield from _Audit(shop, progress).run()


def size() -> int:
    """Return how many rows an audit reads, for a progress bar."""
    return Movement.objects.count() + Container.objects.count() + Lot.objects.count()


class _Audit:
    """The audit of one shop: what the chain should go on with, what each bottle and lot is by now."""

    def __init__(self, shop: Shop, progress: Callable[[int], object]) -> None:
        self.shop, self.progress = shop, progress
        self.seq, self.hash = 0, GENESIS
        self.chained = True
        self.bottles, self.lots = Bottles(), Lots()

    def run(self) -> Iterator[Problem]:
        """Yield the first bad line of the chain, then whatever stands beside the ledger and differs."""
        yield from self._lines()
        yield from self._head()
        yield from self._containers()
        yield from self._batches()

    def _problem(self, says: str, entry: int | None = None) -> Problem:
        return Problem(self.shop.slug, entry, says)

    def _lines(self) -> Iterator[Problem]:
        rows = Movement.objects.filter(shop=self.shop).order_by("seq").values_list(*CHAINED)
        for row in rows.iterator(CHUNK):
            version, previous, kept, *columns = row
            body = body_of_row(columns)
            seq = int(str(body["seq"]))
            if self.chained and (says := self._broken(seq, version, previous, kept, body)):
                self.chained = False
                yield self._problem(says, min(seq, self.seq + 1))
            self.seq, self.hash = seq, kept
            self._fold(columns)
            self.progress(1)

    def _broken(self, seq: int, version: int, previous: str, kept: str, body: object) -> str:
        if seq != self.seq + 1:
            return f"Entry {self.seq + 1} is missing: after entry {self.seq} comes entry {seq}."
        if previous != self.hash:
            return f"Entry {seq} does not follow entry {self.seq}: it carries another hash of it."
        try:
            said = hash_line(previous, body, version=version)  # type: ignore[arg-type]
        except KeyError:
            return f"Entry {seq} is of format {version}, which is not known."
        return "" if said == kept else f"Entry {seq} was changed: its hash does not fit what it says."

    def _fold(self, columns: list[object]) -> None:
        body = dict(zip(COLUMNS, columns, strict=True))
        line = Line(*(body[name] for name in queries.LINE_COLUMNS))  # type: ignore[arg-type]
        self.bottles.pass_by(line)
        self.lots.pass_by(line)

    def _head(self) -> Iterator[Problem]:
        head = Head.objects.filter(shop=self.shop).first()
        if head is None:
            yield self._problem("The ledger has no head: whether its end was cut off cannot be told.")
        elif head.seq > self.seq:
            counts = f"the head counts {head.seq} entries, the ledger has {self.seq}"
            says = f"Entry {self.seq + 1} is missing: {counts}."
            yield self._problem(says, self.seq + 1)
        elif head.seq < self.seq:
            says = f"Entry {head.seq + 1} was slipped in: the head counts {head.seq} entries only."
            yield self._problem(says, head.seq + 1)
        elif head.hash != self.hash and self.chained:
            says = f"Entry {head.seq} is not the one that the head knows: the end was replaced."
            yield self._problem(says, head.seq)

    def _containers(self) -> Iterator[Problem]:
        rows = Container.objects.filter(shop=self.shop).order_by("id").select_related("product", "place")
        for container in rows.prefetch_related("lots").iterator(CHUNK):
            container.shop = self.shop
            yield from self._container(container)
            self.progress(1)

    def _container(self, container: Container) -> Iterator[Problem]:
        try:
            said = self.bottles.said(container)
        except Refused as refusal:
            yield self._problem(f"Entry {refusal.seq} does not fit: {refusal.says}", refusal.seq)
            return
        kept = queries.held_of(container, container.lots.all())
        for name in kept.__dataclass_fields__:
            stands, says = getattr(kept, name), getattr(said, name)
            if stands != says:
                yield self._problem(f"{container.code}: {name} stands as {stands}, the ledger says {says}.")
        # What is gone keeps the use by that it left with.
        here = container.state != Container.State.GONE
        if here and put_use_by(container, use_by(queries.dates_of_container(container), self.shop.zone)):
            yield self._problem(
                f"{container.code}: its use by is another one, {container.use_by_on}, by its dates."
            )

    def _batches(self) -> Iterator[Problem]:
        for lot in Lot.objects.filter(product__shop=self.shop).order_by("id").iterator(CHUNK):
            stands, said = state_of(lot), self.lots.said(lot)
            if stands != said:
                yield self._problem(f"Lot {lot.code}: {stands} stands there, the ledger says {said}.")
            self.progress(1)
