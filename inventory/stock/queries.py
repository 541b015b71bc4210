"""What the database says about stock, as the values that the rules work on; a constant number of queries."""

from collections.abc import Iterable
from datetime import date, datetime

from django.db.models import OuterRef, Q, QuerySet, Subquery

from inventory.models import Container, Lot, Movement, Product, StepNeed
from inventory.stock.rules.lines import Held, Line
from inventory.stock.rules.reserve import OnShelf, life_or_none
from inventory.stock.rules.use_by import Dates

LINE_COLUMNS = (
    "seq", "kind", "happened_at", "source__code", "target__code", "lot__code", "place__code", "amount",
    "reverses__seq", "facts",
)  # fmt: skip


def lines_of(container: Container) -> list[Line]:
    """Return every ledger line that touches a container, their reverses included, in one query."""
    touching = Q(source=container) | Q(target=container)
    return _lines(Movement.objects.filter(touching))


def lines_of_lot(lot: Lot) -> list[Line]:
    """Return every ledger line about a lot itself: its receives, corrections, holds, retests and reverses."""
    return _lines(Movement.objects.filter(lot=lot))


def _lines(rows: "QuerySet[Movement]") -> list[Line]:
    return [Line(*row) for row in rows.order_by("happened_at", "seq").values_list(*LINE_COLUMNS)]


def held_of(container: Container, lots: Iterable[Lot]) -> Held:
    """Return the folded state that stands beside a container, as the value that `fold` returns."""
    return Held(
        state=container.state,
        product=container.product.code if container.product else None,
        parts=(container.parts_product, container.parts_water),
        lots=frozenset(lot.code for lot in lots),
        place=container.place.code if container.place else None,
        content=container.content,
        received_at=container.received_at,
        opened_at=container.opened_at,
        mixed_at=container.mixed_at,
        estimated=container.estimated,
        held=container.held,
        uses=container.uses,
        minutes=container.minutes,
        retest_on=container.retest_on,
        rinsed=container.rinsed,
        last_at=container.last_at,
        last_seq=container.last_seq,
    )


def dates_of(
    product: Product | None,
    lots: Iterable[Lot],
    *,
    opened_at: datetime | None,
    mixed_at: datetime | None,
    retest_on: date | None = None,
    estimated: bool = False,
) -> Dates:
    """Return everything that bears on a use by; of several lots the earliest date of each sort wins."""
    batch = list(lots)
    if product is None:
        return Dates()
    return Dates(
        expires_on=_first(None if lot.retest_on else lot.expires_on for lot in batch),
        best_before_on=_first(None if lot.retest_on else lot.best_before_on for lot in batch),
        made_on=_first(None if lot.retest_on else lot.made_on for lot in batch),
        retest_on=retest_on,
        lot_retest_on=_first(lot.retest_on for lot in batch),
        sealed=life_or_none(product.sealed_life, product.sealed_life_unit, product.sealed_life_by),
        opened_at=opened_at,
        open=life_or_none(product.open_life, product.open_life_unit, product.open_life_by),
        mixed_at=mixed_at,
        mix=life_or_none(product.mix_life, product.mix_life_unit, product.mix_life_by),
        estimated=estimated,
        guards=product.guards_people,
    )


def _first(days: Iterable[date | None]) -> date | None:
    return min((day for day in days if day), default=None)


def dates_of_container(container: Container) -> Dates:
    """Return the dates of a container whose product and lots are loaded."""
    return dates_of(
        container.product,
        container.lots.all(),
        opened_at=container.opened_at,
        mixed_at=container.mixed_at,
        retest_on=container.retest_on,
        estimated=container.estimated,
    )


def on_shelf(container: Container) -> OnShelf:
    """Return a container as reservations see it; product, place and lots must be loaded."""
    lots = list(container.lots.all())
    product = container.product
    return OnShelf(
        code=container.code,
        product=product.code if product else "",
        kind=product.kind if product else "",
        content=container.content,
        parts=(container.parts_product, container.parts_water),
        lots=frozenset(lot.code for lot in lots),
        sealed=container.state == Container.State.SEALED,
        dates=dates_of_container(container),
        held=why_held(container, lots),
        place=container.place.code if container.place else None,
        mixes_lots=bool(product and product.mixes_lots),
        dimension=product.dimension if product else "",
    )


def kind_dimension() -> Subquery:
    """Return, for a query of needs of steps, what each one's kind is measured in: as its first product is."""
    alike = Product.objects.filter(shop=OuterRef("step__job__shop"), kind=OuterRef("kind"), archived=False)
    return Subquery(alike.order_by("id").values("dimension")[:1])


def measured_in(row: StepNeed) -> str:
    """Return what a need of a kind is measured in; `kind_dimension` must be loaded."""
    return row.kind_dimension or Product.Dimension.VOLUME  # type: ignore[attr-defined]


def why_held(container: Container, lots: Iterable[Lot]) -> str:
    """Return why a container must not be used: its own reason, else its lot's, else nothing."""
    return container.held or next((lot.held for lot in lots if lot.held), "")


def containers(shop_id: int) -> "QuerySet[Container]":
    """Return what stands on a shop's shelf, with product, place, pack and lots loaded."""
    return (
        Container.objects.filter(shop_id=shop_id)
        .exclude(state__in=[Container.State.GONE, Container.State.EXPECTED])
        .select_related("product", "place", "pack")
        .prefetch_related("lots")
    )


def locked(shop_id: int, codes: Iterable[str]) -> list[Container]:
    """Return containers by code, locked in the order of their ids, with product, place and lots loaded."""
    rows = Container.objects.select_for_update(of=("self",)).filter(shop_id=shop_id, code__in=list(codes))
    return list(rows.select_related("product__supplier", "place").prefetch_related("lots").order_by("id"))
