"""Placing, postponing, closing and cancelling orders; what was ordered once is not ordered twice."""

from collections.abc import Mapping
from datetime import date, datetime, timedelta

from django.db import transaction

from inventory.models import Order, OrderLine, Pack, Person, Request, Shop, Supplier
from inventory.reorder.queries import lead_days, to_come
from inventory.stock.receiving import count_on_line
from inventory.stock.requests import Answer, answer_once


class NotNow(Exception):
    """An order cannot be changed so; `says` tells why and what to do instead."""

    def __init__(self, says: str) -> None:
        self.says = says
        super().__init__(says)


def place(
    shop: Shop, supplier: Supplier, packs: Mapping[Pack, int], *, key: str, by: Person, at: datetime
) -> str:
    """Write an order as placed at an instant and return its code; the same key gives the same order.

    Packs of which none is wanted are left out. Raises KeyReused where the key came with other packs, NotNow
    where nothing is wanted.
    """
    wanted = {pack: number for pack, number in packs.items() if number}
    if not wanted:
        raise NotNow("Nothing is ordered: give at least one pack.")
    body = {"supplier": supplier.pk, "packs": sorted((pack.pk, number) for pack, number in wanted.items())}

    def write(request: Request) -> Answer:
        order = Order.objects.create(shop=shop, supplier=supplier)
        OrderLine.objects.bulk_create(
            OrderLine(order=order, pack=pack, packs=number, price_minor=pack.price_minor)
            for pack, number in wanted.items()
        )
        _placed(order, wanted, by, at)
        return {"order": order.code}

    return str(answer_once(shop, key, body, at, write)["order"])


def place_draft(order: Order, *, by: Person, at: datetime) -> None:
    """Mark a draft as placed."""
    with transaction.atomic():
        order = _locked(order, Order.State.DRAFT)
        packs = [line.pack for line in order.lines.select_related("pack__product__supplier")]
        if not packs:
            raise NotNow("Nothing is on this order. Add a pack first, or cancel it.")
        _placed(order, packs, by, at)


def _placed(order: Order, packs: "Mapping[Pack, int] | list[Pack]", by: Person, at: datetime) -> None:
    """The slowest product names the day: the supplier sends one parcel."""
    on = at.astimezone(order.shop.zone).date()
    order.state, order.placed_on, order.placed_by = Order.State.PLACED, on, by
    order.due_on = on + timedelta(days=max(lead_days(pack.product) for pack in packs))
    order.save(update_fields=["state", "placed_on", "placed_by", "due_on"])


@transaction.atomic
def postpone(order: Order, due_on: date) -> None:
    """Change the day on which an order is due: the supplier said so."""
    order = _locked(order, Order.State.PLACED)
    if order.placed_on and due_on < order.placed_on:
        raise NotNow(f"It was placed on {order.placed_on:%d %B %Y} and cannot come before. Give a later day.")
    order.due_on = due_on
    order.save(update_fields=["due_on"])


@transaction.atomic
def close_rest(order: Order) -> int:
    """Expect no more of an order; return how many packs will not come."""
    order = _locked(order, Order.State.PLACED)
    missing = [(line, number) for line in order.lines.all() if (number := to_come(line))]
    for line, _ in missing:
        count_on_line(order.shop, line.pk, closed_short=True)
    return sum(number for _, number in missing)


@transaction.atomic
def cancel(order: Order) -> None:
    """Cancel an order of which nothing has come."""
    order = _locked(order, Order.State.PLACED, Order.State.DRAFT)
    if any(line.received for line in order.lines.all()):
        raise NotNow("Some of it came already, so it cannot be cancelled. Close the rest instead.")
    order.state = Order.State.CANCELLED
    order.save(update_fields=["state"])


def _locked(order: Order, *states: str) -> Order:
    row = Order.objects.select_for_update(of=("self",)).select_related("shop").get(pk=order.pk)
    if row.state not in states:
        raise NotNow(f"This order is {row.get_state_display()} already. Nothing was changed.")
    return row
