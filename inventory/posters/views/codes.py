"""Codes on paper: badges, the station's command cards with the places, the weather card."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from inventory.access import shop_of, worker
from inventory.posters import queries
from inventory.posters.forms import PaperForm, desk_paper
from inventory.posters.pdf import code_sheet
from inventory.posters.views import sent
from safety.print.code_card import print_code_card


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


@worker
@require_GET
def weather_pdf(request: HttpRequest) -> HttpResponse:
    """Print the card of a reading's values, one code each."""
    shop = shop_of(request)
    paper = PaperForm(request.GET).chosen(desk_paper(shop)).paper
    return sent(print_code_card(queries.weather_card(shop), paper), "weather card")
