"""A product's card, what stands in a place, the shop's hazardous chemicals: on paper and on screen.

Like posters they are read without a login on the shop's own network, and nowhere else.
"""

from collections.abc import Callable

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET

from inventory.models import Person, Place, Product, Shop
from inventory.posters import queries
from inventory.posters.forms import PaperForm, desk_paper
from inventory.posters.views import PAPER_REFUSALS, language_of, other_languages, sent, site_address
from safety.access import lan_or_login
from safety.print.poster_card import print_card
from safety.print.poster_lists import print_cabinet, print_chemicals

Printed = tuple[bytes, dict[str, object]]


def _reader(request: HttpRequest) -> Person | None:
    return request.user if request.user.is_authenticated else None


def _product(request: HttpRequest, code: str) -> Product:
    if (found := queries.product_coded(code, _reader(request))) is None:
        raise Http404(f"No product here carries the code {code}.")
    return found


def _place(request: HttpRequest, code: str) -> Place:
    if (found := queries.place_coded(code, _reader(request))) is None:
        raise Http404(f"No place here carries the code {code}.")
    return found


def _shop(request: HttpRequest, slug: str) -> Shop:
    if (found := queries.shop_called(slug, _reader(request))) is None:
        raise Http404(f"No shop here is called {slug}.")
    return found


@lan_or_login
@require_GET
def card(request: HttpRequest, code: str) -> HttpResponse:
    """Show what the card of a product says, for the phone that read its code."""
    product = _product(request, code)
    path = reverse("posters:card", args=[product.code])
    language = language_of(request.GET, product.shop)
    url, on = site_address(request, product.shop, path), queries.today(product.shop)
    content = queries.card(product, url, on, language)
    shown = {"product": product, "content": content, "languages": other_languages(language)}
    return render(request, "inventory/posters/card.html", shown)


@lan_or_login
@require_GET
def card_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Print the card of a product."""
    product = _product(request, code)
    path = reverse("posters:card", args=[product.code])
    url, on = site_address(request, product.shop, path), queries.today(product.shop)
    paper, language, _ = PaperForm(request.GET).chosen(desk_paper(product.shop))

    def printed() -> Printed:
        return print_card(queries.card(product, url, on, language), paper)

    return _sent(request, printed, f"card {product.name}", path)


@lan_or_login
@require_GET
def cabinet_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Print what stands in a place; its code opens the page of the place."""
    place = _place(request, code)
    path = reverse("posters:place", args=[place.code])
    url, on = site_address(request, place.shop, path), queries.today(place.shop)
    paper, language, _ = PaperForm(request.GET).chosen(desk_paper(place.shop))

    def printed() -> Printed:
        return print_cabinet(queries.cabinet(place, url, on, language), paper)

    return _sent(request, printed, f"{place.name} contents", path)


@lan_or_login
@require_GET
def chemicals(request: HttpRequest, shop: str) -> HttpResponse:
    """Show the shop's list of hazardous chemicals."""
    found = _shop(request, shop)
    path = reverse("posters:chemicals", args=[found.slug])
    language = language_of(request.GET, found)
    url, on = site_address(request, found, path), queries.today(found)
    content = queries.chemicals(found, url, on, language)
    shown = {"shop": found, "content": content, "languages": other_languages(language)}
    return render(request, "inventory/posters/chemicals.html", shown)


@lan_or_login
@require_GET
def chemicals_pdf(request: HttpRequest, shop: str) -> HttpResponse:
    """Print the shop's list of hazardous chemicals."""
    found = _shop(request, shop)
    path = reverse("posters:chemicals", args=[found.slug])
    url, on = site_address(request, found, path), queries.today(found)
    paper, language, _ = PaperForm(request.GET).chosen(desk_paper(found))

    def printed() -> Printed:
        return print_chemicals(queries.chemicals(found, url, on, language), paper)

    return _sent(request, printed, f"hazardous chemicals {found.name}", path)


def _sent(request: HttpRequest, printed: Callable[[], Printed], name: str, back: str) -> HttpResponse:
    try:
        return sent(printed()[0], name)
    except PAPER_REFUSALS as refusal:
        messages.error(request, str(refusal))
        return redirect(back)
