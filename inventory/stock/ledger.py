"""The only writer of Movement, and of the state that stands beside a container.

One transaction: the chain's head is locked first, containers next by id; every line gets its seq and hash
under that lock; the folded states, the lots' dates and the use-by copies follow; all or nothing.
"""

from collections.abc import Iterable, Sequence
from datetime import datetime

from django.db import transaction
from django.db.models import Model

from inventory.models import Container, Head, Movement, Person, Request, Shop
from inventory.stock.bodies import body_of
from inventory.stock.rules.acts import Act
from inventory.stock.use_by_copy import keep_use_by
from inventory.stock.writing import Writing

__all__ = ["body_of", "record", "refresh_use_by", "start"]


@transaction.atomic
def record(
    shop: Shop,
    acts: Sequence[Act],
    *,
    by: Person | None,
    recorded_at: datetime,
    request: Request | None = None,
    known: Iterable[Model] = (),
) -> list[Movement]:
    """Write acts as lines and return them in order; a sealed source gets its open line first.

    `known` are rows that the caller read anyhow (a job, its steps; bottles by `queries.locked`, in this
    transaction and under the head's lock), so that they are not asked for again.
    Raises Refused (with a whole sentence) where one does not fit, and then writes none of them.
    """
    head = Head.objects.select_for_update().get(shop=shop)
    writing = Writing(shop, head, by, recorded_at, request, acts, known)
    for act in acts:
        writing.write(act)
    return writing.finish()


def start(shop: Shop) -> Head:
    """Give a new shop the head of its chain; call once, when the shop is made."""
    head, _ = Head.objects.get_or_create(shop=shop)
    return head


@transaction.atomic
def refresh_use_by(containers: Iterable[Container]) -> int:
    """Recompute the use-by copies in the transaction that edits a life; return how many changed.

    Hand in a queryset that was not read yet: it is read after every chain's head is locked, so that no entry
    being written meanwhile keeps the old life.
    """
    list(Head.objects.select_for_update().order_by("id").values_list("id"))
    return sum(keep_use_by(container) for container in containers)
