"""The orders as they stand, and one of them: what was asked for, what came of it, what to do about it."""

from collections.abc import Callable

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.models import Order
from inventory.reorder import actions, queries
from inventory.reorder.forms import DueForm
from inventory.reorder.rules import words


@member
@require_GET
def orders(request: HttpRequest) -> HttpResponse:
    """Show what is on its way, what is late, and what this month's report wants ordered."""
    shop = shop_of(request)
    on = queries.today(shop)
    still_open, ended = queries.order_rows(shop, on)
    month = queries.month_in_view(on)
    found = queries.report(shop, month, on)
    context = {
        "report": found,
        "soon": (soon := queries.soon_of(found)),
        "grade": "ask" if soon else "tell" if found.lines else "ready",
        "still_open": still_open,
        "ended": ended,
        "month": month,
        "on": on,
    }
    return render(request, "inventory/reorder/orders.html", context)


@member
@require_GET
def order(request: HttpRequest, code: str) -> HttpResponse:
    """Show one order: what was asked for, what came of it."""
    found = _found(request, code)
    lines = queries.lines_of(found)
    on = queries.today(found.shop)
    prices = [line.packs * line.price_minor for line, _ in lines if line.price_minor is not None]
    context = {
        "order": found,
        "lines": lines,
        "standing": queries.standing_of(found, [line for line, _ in lines], on),
        "total": sum(prices) if prices else None,
        "unpriced": len(lines) - len(prices),
        "may_cancel": not any(line.received for line, _ in lines),
        "due": DueForm(initial={"due_on": found.due_on}),
    }
    return render(request, "inventory/reorder/order.html", context)


def _found(request: HttpRequest, code: str) -> Order:
    found = queries.order_called(shop_of(request), code)
    if found is None:
        raise Http404(f"No order here carries the code {code}.")
    return found


def _act(do: Callable[[HttpRequest, Order], str]) -> Callable[..., HttpResponse]:
    """Return a page that changes one order and says what it did, or why it did not."""

    @worker
    @require_POST
    def page(request: HttpRequest, code: str) -> HttpResponse:
        found = _found(request, code)
        try:
            messages.success(request, do(request, found))
        except actions.NotNow as refusal:
            messages.error(request, refusal.says)
        return redirect("reorder:order", found.code)

    return page


def _place_draft(request: HttpRequest, order: Order) -> str:
    actions.place_draft(order, by=person_of(request), at=queries.now())
    return f"Marked as placed with {order.supplier}."


def _postpone(request: HttpRequest, order: Order) -> str:
    form = DueForm(request.POST)
    if not form.is_valid():
        raise actions.NotNow("That is no day. Give it as the field shows it.")
    actions.postpone(order, form.cleaned_data["due_on"])
    return f"Expected on {words.day_and_year(form.cleaned_data['due_on'])} now."


def _close_rest(request: HttpRequest, order: Order) -> str:
    number = actions.close_rest(order)
    return "Closed: 1 pack will not come." if number == 1 else f"Closed: {number} packs will not come."


def _cancel(request: HttpRequest, order: Order) -> str:
    actions.cancel(order)
    return "Cancelled. The next report orders what is lacking again."


place_draft, postpone, close_rest, cancel = map(_act, (_place_draft, _postpone, _close_rest, _cancel))
