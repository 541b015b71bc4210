"""Sheets of codes to cut out: badges, and the station's command cards with the places."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from inventory.access import shop_of, worker
from inventory.posters import queries
from inventory.posters.forms import desk_paper
from inventory.posters.pdf import code_sheet
from inventory.posters.views import sent


@worker
@require_GET
def badges_pdf(request: HttpRequest) -> HttpResponse:
    """Print the badge of everybody who works here."""
    shop = shop_of(request)
    return sent(code_sheet(queries.badges(shop), desk_paper(shop)), "badges")


@worker
@require_GET
def cards_pdf(request: HttpRequest) -> HttpResponse:
    """Print the station's command cards and the places' codes: a scanner is enough then."""
    shop = shop_of(request)
    return sent(code_sheet(queries.cards(shop), desk_paper(shop)), "station cards")
