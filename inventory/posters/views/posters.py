"""The poster pages; a place's poster is readable on the shop's own network without a login."""

from typing import Any

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, shop_of, worker
from inventory.models import Person, Place
from inventory.posters import actions, queries
from inventory.posters.forms import AdmitForm, PaperForm, wall_paper
from inventory.posters.queries import Wall
from inventory.posters.rules import in_one_sentence, only_here
from inventory.posters.views import PAPER_REFUSALS, language_of, other_languages, sent, site_address
from safety.access import lan_or_login
from safety.print.values import PlaceFacts, PosterContent


@member
@require_GET
def posters(request: HttpRequest) -> HttpResponse:
    """List the places with their posters: printed, out of date and why, never printed."""
    shop = shop_of(request)
    walls = queries.walls(shop)
    rows = [{"wall": wall, "says": in_one_sentence(wall.place.name, wall.reasons)} for wall in walls]
    shown = {"rows": rows, "paper": wall_paper(shop), "shop": shop}
    return render(request, "inventory/posters/list.html", shown)


@lan_or_login
@require_GET
def place(request: HttpRequest, code: str) -> HttpResponse:
    """Show what the poster of a place says, for the phone that read its code."""
    wall = _wall(_place(request, code))
    return render(request, "inventory/posters/place.html", _shown(request, wall))


def _shown(request: HttpRequest, wall: Wall, admit: AdmitForm | None = None) -> dict[str, Any]:
    place, url = wall.place, _url(request, wall.place)
    language = language_of(request.GET, place.shop)
    content = queries.content(wall, url, queries.today(place.shop), language=language)
    inside = queries.cabinet(place, url, queries.today(place.shop), language)
    owner = _reader(request) is not None and bool(getattr(request.user, "is_owner", False))
    return {
        "wall": wall,
        "content": content,
        "products": _linked(wall, content),
        "inside": inside,
        "where": ", ".join(part for part in (place.shop.name, place.shop.address, place.name) if part),
        "equipment_at": _equipment_at(content.place),
        "languages": other_languages(language),
        "says": in_one_sentence(place.name, wall.reasons),
        "admit": (admit or AdmitForm(place=place)) if owner else None,
        "paper": PaperForm(initial=_usual(place)),
        "may_print": _may_print(request),
        "is_owner": owner,
        "unreachable": url if only_here(url) else "",
    }


def _equipment_at(place: PlaceFacts) -> list[tuple[str, str]]:
    return [
        ("Eyewash", place.eyewash),
        ("First-aid kit", place.first_aid),
        ("Extinguisher", place.extinguisher),
        ("Spill kit", place.spill_kit),
    ]


def _usual(place: Place) -> dict[str, object]:
    paper, language = wall_paper(place.shop), place.shop.language
    return {"paper": paper, "language": language, "read_at": float(place.read_at_m)}


def _linked(wall: Wall, content: PosterContent) -> list[dict[str, Any]]:
    by_name = {product.name: product for product in wall.products}
    return [{"says": one, "product": by_name[one.name]} for one in content.products]


def _reader(request: HttpRequest) -> Person | None:
    return request.user if request.user.is_authenticated else None


def _may_print(request: HttpRequest) -> bool:
    person = _reader(request)
    return person is not None and person.role != Person.Role.VIEWER


def _place(request: HttpRequest, code: str) -> Place:
    found = queries.place_coded(code, _reader(request))
    if found is None:
        raise Http404(f"No place here carries the code {code}.")
    return found


def _wall(place: Place) -> Wall:
    return queries.walls(place.shop, place)[0]


def _url(request: HttpRequest, place: Place) -> str:
    return site_address(request, place.shop, reverse("posters:place", args=[place.code]))


@worker
@require_POST
def print_(request: HttpRequest, code: str) -> HttpResponse:
    """Print a place's poster as its next version, then show its sheets."""
    place = _place(request, code)
    chosen = PaperForm(request.POST).chosen(wall_paper(place.shop))
    paper, language, read_at = chosen
    on = queries.today(place.shop)
    try:
        actions.issue_poster(place, _url(request, place), on, paper, read_at, language)
    except (actions.NothingToSay, *PAPER_REFUSALS) as refusal:
        messages.error(request, str(refusal))
        return redirect("posters:place", place.code)
    # The sheets are read by a second request: loading them again makes no further version.
    return redirect(f"{reverse('posters:sheets_pdf', args=[place.code])}?{chosen.query}")


@lan_or_login
@require_GET
def sheets_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Show the sheets as they hang, or as they would be printed today, marked as a preview."""
    wall = _wall(_place(request, code))
    place = wall.place
    paper, language, read_at = PaperForm(request.GET).chosen(wall_paper(place.shop))
    on = queries.today(place.shop)
    try:
        pdf = actions.sheets(wall, _url(request, place), on, paper, read_at, language)
    except (actions.NothingToSay, *PAPER_REFUSALS) as refusal:
        messages.error(request, str(refusal))
        return redirect("posters:place", place.code)
    version = f"version {wall.issue.version}" if wall.issue and wall.as_issued else "preview"
    return sent(pdf, f"poster {place.name} {version} {paper}")


@owner
@require_POST
def admit(request: HttpRequest, code: str) -> HttpResponse:
    """Admit products to a place; its poster is out of date from then on."""
    place = _place(request, code)
    form = AdmitForm(request.POST, place=place)
    if not form.is_valid():
        return render(
            request, "inventory/posters/place.html", _shown(request, _wall(place), form), status=422
        )
    count = actions.admit(place, form.cleaned_data["products"], queries.today(place.shop))
    products = "1 more product" if count == 1 else f"{count} more products"
    messages.success(request, f"{place.name} admits {products}. Print its poster again.")
    return redirect("posters:place", place.code)


@owner
@require_POST
def withdraw(request: HttpRequest, code: str, product: str) -> HttpResponse:
    """Take a product off a place's list."""
    place = _place(request, code)
    if (gone := actions.withdraw(place, product.upper())) is not None:
        messages.success(request, f"{gone.name} is off the list of {place.name}. Print its poster again.")
    return redirect("posters:place", place.code)
