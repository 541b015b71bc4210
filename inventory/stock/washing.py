"""Washing pads and towels: kept beside the ledger, for it moves no amount and opens nothing."""

from datetime import datetime, tzinfo

from django.db import transaction
from django.db.models import QuerySet

from inventory.codes import pair
from inventory.models import Container, Movement, Person, Washed

from .rules.lines import Refused
from .rules.washing import is_washed, not_washed


@transaction.atomic
def wash(container: Container, *, by: Person, at: datetime) -> Washed:
    """Keep that a pad or towel was washed; raises Refused, also where nothing was done with it since."""
    locked = Container.objects.select_for_update(of=("self",)).select_related("product").get(pk=container.pk)
    product, name = locked.product, f"{locked.product or locked.noun} {pair(locked.code)}"
    if product is None or not washes_matter(locked):
        raise Refused(f"{name} {not_washed(product.kind if product else '')}", code="not_washed")
    if locked.state == Container.State.GONE:
        raise Refused(f"{name} was booked out of the shop. Take that entry back first.", code="gone")
    if locked.state == Container.State.SEALED:
        raise Refused(
            f"{name} was never used, so there is nothing to wash out. Open it first.", code="unused"
        )
    last = locked.washes.filter(washed_at__lte=at).order_by("-washed_at").first()
    if last and not _uses(locked).filter(happened_at__gt=last.washed_at, happened_at__lte=at).exists():
        raise Refused(f"{name} was washed already, and not used since. Nothing was added.", code="washed")
    return Washed.objects.create(container=locked, washed_at=at, by=by)


def washes_matter(container: Container) -> bool:
    """Say whether a container's washing is kept; its product must be loaded."""
    product = container.product
    return product is not None and is_washed(product.kind, bool(product.wear_uses or product.wear_minutes))


def washes(container: Container) -> list[Washed]:
    """Return when a container was washed, the newest first; nothing is asked for what is not washed."""
    if not washes_matter(container):
        return []
    return list(container.washes.select_related("by").order_by("-washed_at", "-pk"))


def may_take_back(row: Washed, newest: Washed, who: Person, at: datetime, zone: tzinfo) -> bool:
    """Say whether somebody may take a wash back: the newest, who recorded it, on the same day."""
    same_day = row.washed_at.astimezone(zone).date() == at.astimezone(zone).date()
    return row.pk == newest.pk and row.by_id == who.pk and who.role != Person.Role.VIEWER and same_day


@transaction.atomic
def take_back(container: Container, *, by: Person, at: datetime) -> None:
    """Take the newest wash back; raises Refused where it is another's, or of another day."""
    newest = next(iter(washes(container)), None)
    if newest is None:
        raise Refused("No washing of it is recorded. Nothing was changed.", code="no_wash")
    if not may_take_back(newest, newest, by, at, container.shop.zone):
        says = f"Only {newest.by} takes this washing back, on the same day. It counts until the next use."
        raise Refused(says, code="not_yours")
    newest.delete()


def _uses(container: Container) -> "QuerySet[Movement]":
    return Movement.objects.filter(source=container, kind=Movement.Kind.USE, reversed_by=None)
