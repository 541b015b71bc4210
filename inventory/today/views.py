"""The first page."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.access import member, shop_of
from inventory.today import queries


@member
@require_GET
def home(request: HttpRequest) -> HttpResponse:
    """Show today's cars, what dies soon, what to order and what needs a hand."""
    shop, at = shop_of(request), queries.now()
    context = {
        "on": at.astimezone(shop.zone).date(),
        "cars": queries.cars(shop, at),
        "dying": queries.dying(shop, at),
        "orders": queries.orders(shop, at),
        "hands": queries.hands(shop, at),
        "currency": shop.currency,
    }
    return render(request, "inventory/today/home.html", context)
