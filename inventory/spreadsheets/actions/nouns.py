"""Suppliers, products and packs: written in bulk, with what hangs on them."""

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from inventory.codes import new_code
from inventory.models import Container, Pack, Person, Product, Request
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.rules.outcome import Becomes
from inventory.stock import ledger

BATCH = 200


def bring_suppliers(preview: Preview, by: Person, request: Request) -> None:
    """Write new and changed suppliers."""
    _write(preview)


def bring_products(preview: Preview, by: Person, request: Request) -> None:
    """Write new and changed products; the use by of what is on the shelf follows the lives."""
    fresh = _codes_unused(Product.objects.values_list("code", flat=True), "X")
    for product in preview.becoming(Becomes.NEW):
        product.code = next(fresh)
    _write(preview)
    changed = [product.pk for product in preview.becoming(Becomes.CHANGED)]
    for start in range(0, len(changed), BATCH):
        rows = Container.objects.filter(product__in=changed[start : start + BATCH])
        rows = rows.exclude(state=Container.State.GONE).select_related("product", "shop")
        ledger.refresh_use_by(rows.prefetch_related("lots"))


def bring_packs(preview: Preview, by: Person, request: Request) -> None:
    """Write new and changed packs; a size made the usual one takes that from the others."""
    heading = preview.sheet.heading("usual")
    becomes = {
        row.thing.product_id: row.thing
        for row in preview.rows
        if any((change.column, change.after) == (heading, "yes") for change in row.outcome.changes)
    }
    for pack in preview.becoming(Becomes.CHANGED):
        pack.usual = pack.usual and becomes.get(pack.product_id, pack) is pack
    products = list(becomes)
    for start in range(0, len(products), BATCH):
        Pack.objects.filter(product__in=products[start : start + BATCH]).update(usual=False)
    _write(preview)


def _write(preview: Preview) -> None:
    sheet = preview.sheet
    sheet.create_instances = preview.becoming(Becomes.NEW)
    sheet.update_instances = preview.becoming(Becomes.CHANGED)
    for write in (sheet.bulk_create, sheet.bulk_update):
        write(using_transactions=True, dry_run=False, raise_errors=True, batch_size=BATCH)


def _codes_unused(taken: Iterable[str], letter: str, draw: Callable[[str], Any] = new_code) -> Iterator[str]:
    """Return fresh codes, none twice: among 20 000 drawn blindly from 24 million about eight would be."""
    seen = set(taken)
    while True:
        if (code := draw(letter)) not in seen:
            seen.add(code)
            yield code
