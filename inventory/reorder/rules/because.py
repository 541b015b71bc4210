"""Why: the sentences of a line, of a supplier's order and of the whole report."""

from datetime import timedelta

from inventory.money import show_money
from inventory.reorder.rules import words
from inventory.reorder.rules.coming import dies_on
from inventory.reorder.rules.orders import Line, Report, SupplierOrder

# The name of the printed term that asks; every other one that does is an estimate of the shop.
BEST_BEFORE = "best before"


def line_because(line: Line, currency: str) -> str:
    """Return when the product is empty, why it is or is not ordered, and what of it will die unused."""
    says = [_when_empty(line), *_why_ordered(line), *_why_not(line), *_capped(line), *_stock_lost(line)]
    return " ".join([*says, *_elsewhere(line), *_mixed(line), *_waste(line, currency)])


def _when_empty(line: Line) -> str:
    product, empty_on, made_on = line.product, line.empty_on, line.coming.from_on
    if not line.wanted.expected:
        return "Not used in the last 12 months and not booked."
    if empty_on is None:
        return f"Lasts through {words.day(line.wanted.until_on)} at the expected use."
    lead = f"lead time {words.days(product.lead_days)}"
    comes_on = made_on + timedelta(days=product.lead_days)
    when = "Empty today" if empty_on == made_on else f"Empty on {words.day(empty_on)}"
    if comes_on <= empty_on:
        return f"{when} otherwise; {lead}."
    late = words.days((comes_on - empty_on).days)
    return f"{when}; {lead}: ordered today it comes {late} late, on {words.day(comes_on)}."


def _why_ordered(line: Line) -> list[str]:
    """Where nothing runs out, the order is for the spread of use alone."""
    if line.empty_on is not None or not line.choice:
        return []
    product = line.product
    lacks, level = words.amount(line.needed, product), words.amount(line.wanted.order_up_to, product)
    what = "With what is on order that is" if line.on_order else "That is"
    return [f"{what} {lacks} below the {level} to order up to."]


def _why_not(line: Line) -> list[str]:
    if not line.needed or line.choice:
        return []
    if not line.product.packs:
        return ["No pack of it is recorded: add one to the product, then it can be ordered."]
    return ["Not ordered: a new pack would expire before any of it is used."]


def _capped(line: Line) -> list[str]:
    """Less than the order-up-to level is ordered: say that this is meant, and until when it lasts."""
    comes_on = line.coming.from_on + timedelta(days=line.product.lead_days)
    death_on = dies_on(line.product, comes_on)
    if not line.choice or not line.choice.capped or death_on is None:
        return []
    return [f"No more than gets used: a pack ordered today expires on {words.day(death_on)}."]


def _stock_lost(line: Line) -> list[str]:
    product, says = line.product, _past(line)
    for delivered, where in ((False, "on hand"), (True, "on order")):
        if lost := line.coming.lost(delivered=delivered):
            last = max(loss.on for loss in line.coming.losses if loss.delivered == delivered)
            amount = words.amount(lost, product)
            says.append(f"{amount} {where} expires unused by {words.day(last)} and is not counted.")
    return says


def _past(line: Line) -> list[str]:
    """Stock past its use by is not counted; where the passed term only asks, say what ends the doubt."""
    dead = [held for held in line.product.stock if held.use_by_on and held.use_by_on < line.coming.from_on]
    stopped = sum(held.content for held in dead if not held.asks)
    printed = sum(held.content for held in dead if held.asks == BEST_BEFORE)
    estimated = sum(held.content for held in dead) - stopped - printed
    doubts = ((estimated, "this shop's own estimate"), (printed, "the best before printed on it"))
    says = []
    if stopped:
        says.append(f"{words.amount(stopped, line.product)} on hand is out of date and not counted.")
    for base, what in doubts:
        if base:
            amount = words.amount(base, line.product)
            says.append(f"{amount} is past {what} and is not counted; test it or empty it.")
    return says


def _elsewhere(line: Line) -> list[str]:
    if not line.product.elsewhere:
        return []
    amount = words.amount(sum(job.amount for job in line.product.elsewhere), line.product)
    return [
        f"{amount} that booked jobs want of its kind comes from other products on hand, first expired first."
    ]


def _mixed(line: Line) -> list[str]:
    """Mixed bottles serve booked jobs at their mix; say how much, and that the rest is not counted."""
    product = line.product
    serves = sum(job.mixed for job in product.booked)
    if not product.mixed:
        return []
    holds = f"Mixed bottles hold {words.amount(product.mixed, product)} of concentrate"
    if not serves:
        return [f"{holds}: no booked job wants that mix in time, so it is not counted."]
    if serves >= product.mixed:
        return [f"{holds}: all of it serves booked jobs at that mix."]
    return [
        f"{holds}: {words.amount(serves, product)} serves booked jobs at that mix, the rest is not counted."
    ]


def _waste(line: Line, currency: str) -> list[str]:
    choice = line.choice
    if not choice or not choice.unused:
        return []
    unused, value = words.amount(choice.unused, line.product), choice.unused_minor
    worth = "price not recorded" if value is None else f"worth {show_money(value, currency)}"
    if choice.above_cap:
        least = f"{choice.packs} is the least that {line.product.supplier.name} sells"
        return [f"{least}: {unused} of it, {worth}, is expected to expire unused."]
    return [f"{unused} of the order, {worth}, is expected to expire unused."]


def order_says(order: SupplierOrder, currency: str) -> str:
    """Return what a supplier's order costs, and what it lacks to their minimum."""
    if not order.lines:
        return f"Nothing to order from {order.supplier.name}."
    says = [f"{_products(len(order.lines))}, {show_money(order.total_minor, currency)}."]
    if order.unpriced:
        says.append(f"{_products(order.unpriced)} without a recorded price, not in the sum.")
    least = order.supplier.minimum_order_minor
    if order.total_minor < least:
        lacks = show_money(least - order.total_minor, currency)
        says.append(
            f"That is {lacks} below their minimum order of {show_money(least, currency)}.{_next(order)}"
        )
    return " ".join(says)


def _next(order: SupplierOrder) -> str:
    """Name the product that will be wanted next, as the one to fill the order up with."""
    used = [line for line in order.enough if line.wanted.order_up_to > 0 and line.product.packs]
    if not used:
        return ""
    least = min(used, key=lambda line: (line.usable + line.on_order) / line.wanted.order_up_to)
    return f" The next they would be asked for is {least.product.name}."


def report_says(report: Report) -> str:
    """Return the report's one leading sentence."""
    if not report.lines:
        return "Nothing to order: what is on hand and on order is enough."
    suppliers = sum(bool(order.lines) for order in report.orders)
    whom = "1 supplier" if suppliers == 1 else f"{suppliers} suppliers"
    first = min((line.order_by_on for line in report.lines if line.order_by_on), default=None)
    total = show_money(report.total_minor, report.currency)
    order = f"Order {_products(len(report.lines))} from {whom} for {total}"
    if first is None:
        return f"{order}."
    return f"{order}, the first {'today' if first == report.made_on else f'by {words.day(first)}'}."


def _products(number: int) -> str:
    return "1 product" if number == 1 else f"{number} products"
