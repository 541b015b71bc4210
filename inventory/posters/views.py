"""The poster and label pages; a place's poster is readable on the shop's own network without a login."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, shop_of, worker
from inventory.models import Person, Place, Product
from inventory.posters import actions, queries
from inventory.posters.forms import AdmitForm, LabelForm, PaperForm
from inventory.posters.pdf import COMMAND_WORDS, code_sheet
from inventory.posters.rules import in_one_sentence
from inventory.codes import COMMANDS
from safety.access import lan_or_login
from safety.print.label import LabelTooSmall, size_called
from safety.print.label_sheets import NoSuchPlace, print_labels
from safety.print.poster import print_poster


@member
@require_GET
def posters(request: HttpRequest) -> HttpResponse:
    """List the places with their posters: printed, out of date and why, never printed."""
    walls = queries.walls(shop_of(request))
    rows = [{"wall": wall, "says": in_one_sentence(wall.place.name, wall.reasons)} for wall in walls]
    return render(request, "inventory/posters/list.html", {"rows": rows, "paper": PaperForm()})


@lan_or_login
@require_GET
def place(request: HttpRequest, code: str) -> HttpResponse:
    """Show what the poster of a place says, for the phone that read its code."""
    wall = _wall(request, code)
    context = {
        "wall": wall,
        "content": queries.content(wall, _url(request, wall.place), _today(request)),
        "says": in_one_sentence(wall.place.name, wall.reasons),
        "admit": AdmitForm(shop=wall.place.shop),
        "paper": PaperForm(),
    }
    return render(request, "inventory/posters/place.html", context)


def _wall(request: HttpRequest, code: str) -> queries.Wall:
    shop = shop_of(request)
    found = Place.objects.filter(shop=shop, code=code.upper()).select_related("shop").first()
    if found is None:
        raise Http404(f"No place here carries the code {code}.")
    return queries.walls(shop, found)[0]


def _url(request: HttpRequest, place: Place) -> str:
    path = reverse("posters:place", args=[place.code])
    return f"{place.shop.site_url.rstrip('/')}{path}" if place.shop.site_url else request.build_absolute_uri(path)


def _today(request: HttpRequest):  # type: ignore[no-untyped-def]
    return queries.now().astimezone(shop_of(request).zone).date()


@worker
@require_POST
def print_(request: HttpRequest, code: str) -> HttpResponse:
    """Print a place's poster as its next version."""
    wall, form = _wall(request, code), PaperForm(request.POST)
    paper = form.cleaned_data["paper"] if form.is_valid() else "A3"
    try:
        pdf, _ = actions.issue_poster(wall, _url(request, wall.place), _today(request), paper)
    except actions.NothingToSay as refusal:
        messages.error(request, refusal.says)
        return redirect("posters:place", wall.place.code)
    return _pdf(pdf, f"poster-{wall.place.name}-version-{wall.next_version}")


@lan_or_login
@require_GET
def sheets_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Show the poster's sheets as they would print today, without counting as a new version."""
    wall, form = _wall(request, code), PaperForm(request.GET)
    paper = form.cleaned_data["paper"] if form.is_valid() else "A3"
    content = queries.content(wall, _url(request, wall.place), _today(request))
    return _pdf(print_poster(content, paper)[0], f"poster-{wall.place.name}")


def _pdf(data: bytes, name: str) -> HttpResponse:
    file = name.lower().replace(" ", "-")
    headers = {"Content-Disposition": f'inline; filename="{file}.pdf"', "X-Content-Type-Options": "nosniff"}
    return HttpResponse(data, content_type="application/pdf", headers=headers)


@owner
@require_POST
def admit(request: HttpRequest, code: str) -> HttpResponse:
    """Admit products to a place; its poster is out of date from then on."""
    wall, form = _wall(request, code), AdmitForm(request.POST, shop=shop_of(request))
    if form.is_valid():
        count = actions.admit(wall.place, form.cleaned_data["products"], _today(request))
        messages.success(request, f"{wall.place.name} admits {count} more. Print its poster again.")
    return redirect("posters:place", wall.place.code)


@owner
@require_POST
def withdraw(request: HttpRequest, code: str, product: str) -> HttpResponse:
    """Take a product off a place's list."""
    wall = _wall(request, code)
    found = Product.objects.filter(shop=shop_of(request), code=product.upper()).first()
    if found:
        actions.withdraw(wall.place, found)
        messages.success(request, f"{found.name} is off the list of {wall.place.name}. Print its poster again.")
    return redirect("posters:place", wall.place.code)


@worker
def label_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Print the label of one container: this page, then the printer."""
    return _labels(request, [code.upper()])


@worker
def labels_pdf(request: HttpRequest) -> HttpResponse:
    """Print the labels of several containers in one strip (`codes=`, separated by commas)."""
    codes = request.POST.get("codes") or request.GET.get("codes", "")
    return _labels(request, [code.strip().upper() for code in codes.split(",") if code.strip()])


def _labels(request: HttpRequest, codes: list[str]) -> HttpResponse:
    shop = shop_of(request)
    containers = list(queries.to_label(shop, codes))
    if not containers:
        raise Http404("None of these codes is on a bottle here.")
    form = LabelForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data
        try:
            contents = queries.labels(shop, containers)
            pdf, _ = print_labels(contents, size_called(data["size"]), data["paper"], data["first"])
        except (LabelTooSmall, NoSuchPlace) as refusal:
            form.add_error("size" if isinstance(refusal, LabelTooSmall) else "first", str(refusal))
        else:
            actions.labelled(containers, queries.now())
            return _pdf(pdf, "labels")
    context = {"containers": containers, "form": form, "codes": ",".join(row.code for row in containers)}
    return render(request, "inventory/posters/labels.html", context)


@member
@require_GET
def badges_pdf(request: HttpRequest) -> HttpResponse:
    """Print everybody's badge."""
    people = Person.objects.filter(shop=shop_of(request), is_active=True).order_by("name")
    return _pdf(code_sheet([(one.name, one.code) for one in people], "A4"), "badges")


@member
@require_GET
def cards_pdf(request: HttpRequest) -> HttpResponse:
    """Print the station's command cards and the places' codes: a scanner is enough then."""
    places = Place.objects.filter(shop=shop_of(request)).order_by("name")
    commands = [(COMMAND_WORDS.get(name, name.capitalize()), code) for name, code in COMMANDS.items()]
    return _pdf(code_sheet([*commands, *((one.name, one.code) for one in places)], "A4"), "station-cards")
