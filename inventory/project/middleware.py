"""Days are shown on the shop's own clock, amounts in its own units."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from inventory.access import shop_or_none
from inventory.templatetags.look import shop_system

Answer = Callable[[HttpRequest], HttpResponse]


def shop_customs(answer: Answer) -> Answer:
    """Answer each request with the clock and the units of the shop it is about."""

    def answered(request: HttpRequest) -> HttpResponse:
        shop = shop_or_none(request)
        if shop is None:
            return answer(request)
        token = shop_system.set(shop.system)
        try:
            with timezone.override(shop.zone):
                return answer(request)
        finally:
            shop_system.reset(token)

    return answered
