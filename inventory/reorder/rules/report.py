"""Deciding the orders of a month: facts of products in, the report out."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta

from inventory.reorder.rules import words
from inventory.reorder.rules.because import line_because, order_says, report_says
from inventory.reorder.rules.coming import Coming, Delivery, deliveries_of, dies_on, roll_forward
from inventory.reorder.rules.demand import last_day_of_month, use_by_day, want
from inventory.reorder.rules.facts import ProductFacts, Supplier
from inventory.reorder.rules.orders import Line, Report, SupplierOrder
from inventory.reorder.rules.packs import Choice, cheapest

# Sums of a float a day: less than half a base unit is no need.
NO_NEED = 0.5


class MonthIsOver(ValueError):
    """A report was asked for a month that lies before the day it is made on."""


def reorder_report(
    products: Iterable[ProductFacts], shop: str, month: date, made_on: date, currency: str, chain_head: str
) -> Report:
    """Decide the orders of a month (any day of it names it) as seen on `made_on`.

    The period of each product runs from `made_on` through the month's end and its lead time: what the next
    report orders cannot come before. Raises MonthIsOver where the month ended before `made_on`.
    """
    ends_on = last_day_of_month(month.year, month.month)
    if ends_on < made_on:
        over = f"{month:%B %Y} ended before {words.day_and_year(made_on)}."
        raise MonthIsOver(f"{over} Ask for {made_on:%Y-%m} or a later month.")
    by_supplier: dict[Supplier, list[Line]] = {}
    for product in products:
        line = order_line(product, ends_on, made_on, currency)
        by_supplier.setdefault(product.supplier, []).append(line)
    orders = tuple(
        supplier_order(supplier, by_supplier[supplier], currency)
        for supplier in sorted(by_supplier, key=lambda supplier: supplier.name)
    )
    report = Report(shop, month.replace(day=1), made_on, currency, orders, chain_head)
    return replace(report, says=report_says(report))


def supplier_order(supplier: Supplier, lines: Iterable[Line], currency: str) -> SupplierOrder:
    """Return the order of one supplier, the product that runs out first on top."""
    ranked = sorted(lines, key=lambda line: (line.empty_on or date.max, line.product.name))
    ordered = tuple(line for line in ranked if line.choice)
    order = SupplierOrder(supplier, ordered, tuple(line for line in ranked if not line.choice))
    return replace(order, says=order_says(order, currency))


def order_line(product: ProductFacts, month_ends_on: date, made_on: date, currency: str) -> Line:
    """Decide what to order of one product, for the days from `made_on` through month's end and lead time."""
    wanted = want(product, made_on, month_ends_on + timedelta(days=product.lead_days))
    deliveries = deliveries_of(product, made_on)
    use = use_by_day(product, made_on, wanted.until_on)
    coming = roll_forward(product.stock, deliveries, use, made_on)
    usable = coming.start - coming.lost(delivered=False)
    due = sum(delivery.amount for delivery in deliveries if delivery.on <= wanted.until_on)
    on_order = due - coming.lost(delivered=True)
    needed = _at_least_some(wanted.order_up_to - usable - on_order)
    for_bookings = _at_least_some(wanted.booked_in_full - usable - on_order)
    needed = max(needed, for_bookings)
    useful = useful_of_new(product, made_on) if needed else None
    choice = cheapest(product.packs, needed, for_bookings, useful)
    ordered = (*deliveries, *delivery_of(product, choice, made_on))
    with_order = roll_forward(product.stock, ordered, use, made_on)
    by_on = order_by(product, coming, made_on)
    line = Line(product, wanted, coming, with_order, usable, on_order, needed, choice, by_on)
    return replace(line, because=line_because(line, currency))


def delivery_of(product: ProductFacts, choice: Choice | None, made_on: date) -> tuple[Delivery, ...]:
    """Return the delivery that the order brings when it is placed on `made_on`."""
    if not choice:
        return ()
    on = made_on + timedelta(days=product.lead_days)
    return (Delivery(on, choice.amount, dies_on(product, on)),)


def _at_least_some(lacking: float) -> float:
    return lacking if lacking >= NO_NEED else 0.0


def useful_of_new(product: ProductFacts, made_on: date) -> float | None:
    """Return what of a pack ordered today gets used before it dies, after older stock; None: all of it."""
    death_on = dies_on(product, made_on + timedelta(days=product.lead_days))
    if death_on is None:
        return None
    use = use_by_day(product, made_on, death_on)
    return sum(roll_forward(product.stock, deliveries_of(product, made_on), use, made_on).short)


def order_by(product: ProductFacts, coming: Coming, made_on: date) -> date | None:
    """Return the last day to order and be in time for the day stock runs out, today where that has passed."""
    if coming.empty_on is None:
        return None
    return max(made_on, coming.empty_on - timedelta(days=product.lead_days))
