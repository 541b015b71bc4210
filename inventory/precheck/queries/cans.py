"""What is in a waste can: all that the ledger says was discarded into it since it was emptied and rinsed."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from django.db.models import F, Max, OuterRef, Q, Subquery

from inventory.models import Container, Movement, Place, PlaceCheck, Product, Shop
from inventory.precheck.rules.cans import Tipped, tip
from safety.findings import Finding

from .reactions import WETS
from .substances import substances


@dataclass(frozen=True)
class Can:
    """A can, when it was last emptied and rinsed, and what went in since, the last first."""

    place: Place
    emptied_at: datetime | None
    entries: tuple[Movement, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """What is in it, by name, each once."""
        return tuple(dict.fromkeys(row.product.name for row in reversed(self.entries) if row.product))


def cans(shop: Shop, codes: Iterable[str] | None = None) -> list[Can]:
    """Return the shop's cans, or those of some codes, in two queries."""
    emptied = (
        PlaceCheck.objects.filter(place=OuterRef("pk"), what=PlaceCheck.What.EMPTIED)
        .order_by()
        .values("place")
        .annotate(last=Max("done_at"))
    )
    rows = Place.objects.filter(shop=shop, kind=Place.Kind.CAN).annotate(
        emptied_at=Subquery(emptied.values("last"))
    )
    found = list((rows if codes is None else rows.filter(code__in=list(codes))).order_by("name"))
    lines = _tipped(found)
    return [Can(row, row.emptied_at, tuple(lines.get(row.pk, ()))) for row in found]


def _tipped(places: Sequence[Place]) -> dict[int, list[Movement]]:
    since = Q()
    for place in places:
        mine = Q(place=place)
        since |= mine & Q(happened_at__gt=place.emptied_at) if place.emptied_at else mine  # type: ignore[attr-defined]
    found: dict[int, list[Movement]] = {}
    if not places:
        return found
    rows = Movement.objects.filter(since, kind=Movement.Kind.DISCARD, reversed_by=None, product__isnull=False)
    for row in rows.select_related("product", "target", "person").order_by(F("happened_at").desc(), "-seq"):
        found.setdefault(row.place_id or 0, []).append(row)
    return found


def tipping(can: Can, product: Product, *, watered: bool) -> Finding | None:
    """Return what is said of tipping a product into a can; what never wets anything is not judged."""
    there = [row for row in can.entries if row.product and row.product.kind in WETS]
    if product.kind not in WETS or not there:
        return None
    of = substances([product, *(row.product for row in there if row.product)])
    return tip(
        Tipped(product.code, of[product.code], watered),
        [
            Tipped(row.product.code, of[row.product.code], bool(row.target and row.target.parts_water))
            for row in there
            if row.product
        ],
        can.place.name,
    )


def tipped_into(place: Place, container: Container) -> tuple[Finding, ...]:
    """Return what is said of tipping a bottle into a can; nothing found is not safe."""
    if container.product is None:
        return ()
    [can] = cans(place.shop, [place.code])
    found = tipping(can, container.product, watered=bool(container.parts_water))
    return (found,) if found else ()
