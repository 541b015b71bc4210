"""The pages of the bays, and what they share: finding a place."""

from django.http import Http404, HttpRequest

from inventory.access import shop_of
from inventory.bays.queries import air as queries
from inventory.models import Place


def place_of(request: HttpRequest, code: str) -> Place:
    """Return a place of the shop by its code."""
    found = queries.place(shop_of(request), code)
    if found is None:
        raise Http404("This shop has no such place.")
    return found
