"""The rag cans of the bays under check: where, emptied when, and what wets rags last used; one query."""

from datetime import datetime

from django.db.models import Max, OuterRef, Q, QuerySet, Subquery

from inventory.models import Kind, Movement, Place, PlaceCheck, Shop
from inventory.precheck.questions.topics.rags import RagCan, RagFacts

from .loading import Loading

# What is wiped on or off with a cloth and may burn or heat on it; what is washed off is not.
WIPED = (Kind.SOLVENT, Kind.TAR, Kind.COATING, Kind.TOPPER, Kind.DRESSING, Kind.OTHER)


def load(loading: Loading) -> dict[int, RagFacts]:
    """Return the facts of each job under check by its id: the bays are shared."""
    bays = {row.bay_id for row in loading.step_rows if row.bay_id and row.signed_at is None}
    if not bays or not loading.work_rows:
        return {}
    shared = RagFacts({row.code: _can(row) for row in _rows(Place.objects.filter(pk__in=bays))})
    return {job.pk: shared for job in loading.jobs}


def rag_cans(shop: Shop) -> list[RagCan]:
    """Return the places of a shop that say where their rag can is."""
    rows = Place.objects.filter(shop=shop).exclude(rag_can_at="").order_by("name")
    return [_can(row) for row in _rows(rows)]


def _rows(places: "QuerySet[Place]") -> "QuerySet[Place]":
    used = Movement.objects.filter(
        step__bay=OuterRef("pk"), kind=Movement.Kind.USE, reversed_by=None, product__kind__in=WIPED
    )
    last = used.order_by("-happened_at").values("happened_at")[:1]
    rags = Max("checks__done_at", filter=Q(checks__what=PlaceCheck.What.RAGS))
    return places.annotate(emptied_at=rags, used_at=Subquery(last))


def _can(row: Place) -> RagCan:
    emptied_at: datetime | None = row.emptied_at  # type: ignore[attr-defined]
    used_at: datetime | None = row.used_at  # type: ignore[attr-defined]
    return RagCan(row.code, row.name, row.rag_can_at, emptied_at, used_at)
