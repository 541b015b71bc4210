"""Stock comes in through the ledger: what is new is received, what holds otherwise is counted or moved."""

from collections.abc import Iterator
from datetime import UTC, datetime, time

from inventory.models import Person, Request
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.resources import Known, StockRow
from inventory.spreadsheets.resources.stock import UNKNOWN, opened_day
from inventory.spreadsheets.rules.outcome import Becomes
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle

NOON = time(12)


def bring_stock(preview: Preview, by: Person, request: Request) -> None:
    """Record every new bottle, every count and every move in one call."""
    known = preview.known
    acts = [act for row in preview.becoming(Becomes.NEW) for act in _received(row, known)]
    acts += [act for row in preview.becoming(Becomes.CHANGED) for act in _changed(row, known)]
    ledger.record(known.shop, acts, by=by, recorded_at=known.at, request=request)


def _received(row: StockRow, known: Known) -> Iterator[Act]:
    assert row.product is not None
    assert row.place is not None
    assert row.full is not None
    assert row.content is not None
    times, each = (1, row.count) if row.box else (row.count, 1)
    lot = LotFacts(row.lot, row.expires_on, row.best_before_on, row.made_on)
    new = NewBottle(
        product=row.product.code,
        full=row.full * each,
        noun=row.noun,
        code=row.code,
        pack=row.pack.pk if row.pack and each == 1 else None,
        lot=lot,
        sealed=bool(row.sealed),
        opened_at=_opened_at(row, known),
        estimated=row.opened_on == UNKNOWN,
    )
    for _ in range(times):
        yield Act("receive", known.at, new=new, amount=row.content * each, place=row.place.code)


def _opened_at(row: StockRow, known: Known) -> datetime | None:
    """Return local noon of the opened day, or now where that is still to come."""
    if row.sealed:
        return None
    noon = datetime.combine(opened_day(row, known), NOON, known.shop.zone)
    return min(noon.astimezone(UTC), known.at)


def _changed(row: StockRow, known: Known) -> Iterator[Act]:
    assert row.container is not None
    if row.content != row.container.content:
        yield Act("count", known.at, target=row.code, amount=row.content)
    if row.place is not None and row.place.pk != row.container.place_id:
        yield Act("move", known.at, target=row.code, place=row.place.code)
