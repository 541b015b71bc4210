"""The bays' rag cans with their last emptying."""

from dataclasses import dataclass
from datetime import datetime

from django.db.models import Max, Q

from inventory.models import Place, PlaceCheck, Shop


@dataclass(frozen=True)
class RagCan:
    """A bay, where its rag can is, when that was last emptied, and whether that was today."""

    place: Place
    emptied_at: datetime | None
    today: bool


def rag_cans(shop: Shop, at: datetime) -> list[RagCan]:
    """Return the places that say where their rag can is, in one query."""
    rags = Max("checks__done_at", filter=Q(checks__what=PlaceCheck.What.RAGS))
    rows = Place.objects.filter(shop=shop).exclude(rag_can_at="").annotate(emptied_at=rags).order_by("name")
    on = at.astimezone(shop.zone).date()
    return [
        RagCan(
            row, row.emptied_at, bool(row.emptied_at and row.emptied_at.astimezone(shop.zone).date() == on)
        )
        for row in rows
    ]
