"""What printed labels said of hazards, held against what they would say now."""

import re
from collections.abc import Iterable

from inventory.models import Container, Shop
from safety import queries as sheets
from safety.hazards.changes import fingerprint
from safety.hazards.facts import SheetFacts, label_parts

# The last word of what a label said; labels of before it was kept have none, and are not judged.
MARK = re.compile(r".* (?P<mark>[0-9a-f]{8})")
Mix = tuple[int | None, tuple[int, int], float | None]


def facts_in(row: Container, regime: str, current: sheets.Current) -> SheetFacts | None:
    """Return what the sheet, or the classification of the mix, says of a container's content."""
    product = row.product
    if product is None:
        return None
    parts = (row.parts_product, row.parts_water)
    return sheets.facts_in(current.get(product.sheet_id or 0), regime, parts, product.density_in_mixes)


def marks(shop: Shop, rows: Iterable[Container]) -> dict[int, str]:
    """Return by container a mark of the hazards that its label says now; one query, a mix classified once."""
    filled = [row for row in rows if row.product]
    current = sheets.current_by_sheet({row.product.sheet_id for row in filled if row.product})
    known: dict[Mix, str] = {}
    found = {}
    for row in filled:
        assert row.product is not None
        key = (row.product.sheet_id, (row.parts_product, row.parts_water), row.product.density_in_mixes)
        if key not in known:
            known[key] = fingerprint(label_parts(facts_in(row, shop.regime, current), shop.regime))
        found[row.pk] = known[key]
    return found


def to_print_again(shop: Shop) -> list[Container]:
    """Return the bottles whose printed label says other hazards than it would now, by code; two queries."""
    labelled = Container.objects.filter(shop=shop, content__gt=0, labelled_at__isnull=False)
    rows = list(labelled.exclude(state=Container.State.GONE).select_related("product").order_by("code"))
    judged = [(row, found["mark"]) for row in rows if (found := MARK.fullmatch(row.label_says))]
    now = marks(shop, [row for row, _ in judged])
    return [row for row, said in judged if now.get(row.pk, said) != said]
