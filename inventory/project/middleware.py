"""Dates are read and shown on the shop's own clock."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.utils import timezone

from inventory.access import shop_or_none

Answer = Callable[[HttpRequest], HttpResponse]


def shop_time_zone(answer: Answer) -> Answer:
    """Answer each request with the clock of the shop it is about."""

    def answered(request: HttpRequest) -> HttpResponse:
        shop = shop_or_none(request)
        if shop is None:
            return answer(request)
        with timezone.override(shop.zone):
            return answer(request)

    return answered
