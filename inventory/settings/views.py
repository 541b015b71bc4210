"""The settings pages: the shop, its places, its suppliers."""

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.core.exceptions import PermissionDenied
from django.db.models import Model
from django.forms import ModelForm
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET

from inventory.access import member, owner, person_of, shop_of
from inventory.models import Place, Supplier
from inventory.settings import actions, queries
from inventory.settings.forms import PlaceForm, ShopForm, SupplierForm
from inventory.stock import rooms

RULES = {"US": "the United States", "CA": "Canada", "EU": "the EU (CLP; that of Great Britain may differ)"}
SHOWN = 8


@member
@require_GET
def home(request: HttpRequest) -> HttpResponse:
    """Show everything that can be set, and where."""
    shop = shop_of(request)
    context = {
        "shop": shop,
        "places": queries.places(shop),
        "suppliers": queries.suppliers(shop),
        "stations": queries.stations(shop),
    }
    return render(request, "inventory/settings/home.html", context)


@login_required
def open_(request: HttpRequest) -> HttpResponse:
    """Open the first shop of a new installation; its owner is who is signed in."""
    person = person_of(request)
    if not person.is_superuser or person.shop is not None:
        raise PermissionDenied("A shop is opened once, by the first owner.")
    form = ShopForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        actions.open_shop(form.instance, person)
        messages.success(request, f"{form.instance} is open. Add its places first, then bring your shelf in.")
        return redirect("settings:home")
    context = {"form": form, "title": "Open your shop", "button": "Open it", "back": "people:login"}
    return render(request, "inventory/parts/form_page.html", context | {"back_label": "Sign in"})


@owner
def shop(request: HttpRequest) -> HttpResponse:
    """Change the shop's own facts; with another country's rules, say what changes on its labels."""
    changed = shop_of(request)
    before = changed.regime
    form = ShopForm(request.POST or None, instance=changed)
    answer = _kept(request, form, "The shop", "Keep the changes")
    if answer.status_code == 302 and changed.regime != before:
        messages.info(request, relabelled_says(queries.relabelled(changed, before), changed.regime))
    return answer


def relabelled_says(changes: list[str], regime: str) -> str:
    """Return what other labelling rules change, the first few one by one."""
    ruled = f"Labels follow the rules of {RULES[regime]} now."
    if not changes:
        return f"{ruled} Nothing changes on them."
    more = f" And {len(changes) - SHOWN} more." if len(changes) > SHOWN else ""
    return f"{ruled} {' '.join(changes[:SHOWN])}{more} Bottles to label again stand on Today."


@owner
def new_place(request: HttpRequest) -> HttpResponse:
    """Add a place."""
    return _kept(
        request, PlaceForm(request.POST or None, shop=shop_of(request)), "A new place", "Add this place"
    )


@owner
def place(request: HttpRequest, code: str) -> HttpResponse:
    """Change a place; a fact that stands on its poster puts the poster out of date."""
    found = get_object_or_404(Place, shop=shop_of(request), code=code.upper())
    form, title = PlaceForm(request.POST or None, instance=found, shop=found.shop), f"Change {found.name}"
    if request.method == "POST" and form.is_valid():
        ended = actions.keep_place(form, on=timezone.localdate())
        messages.success(request, f"{form.instance} is kept.")
        if ended:
            messages.warning(request, rooms.after(ended))
        return redirect("settings:home")
    return _kept(request, form, title, "Keep the changes")


@owner
def new_supplier(request: HttpRequest) -> HttpResponse:
    """Add a supplier."""
    return _kept(
        request,
        SupplierForm(request.POST or None, shop=shop_of(request)),
        "A new supplier",
        "Add this supplier",
    )


@owner
def supplier(request: HttpRequest, pk: int) -> HttpResponse:
    """Change a supplier."""
    found = get_object_or_404(Supplier, shop=shop_of(request), pk=pk)
    form = SupplierForm(request.POST or None, instance=found, shop=found.shop)
    return _kept(request, form, f"Change {found.name}", "Keep the changes")


def _kept(request: HttpRequest, form: "ModelForm[Model]", title: str, button: str) -> HttpResponse:
    if request.method == "POST" and form.is_valid():
        kept = actions.keep(form)
        messages.success(request, f"{kept} is kept.")
        return redirect("settings:home")
    context = {
        "form": form,
        "title": title,
        "button": button,
        "back": "settings:home",
        "back_label": "Settings",
    }
    return render(request, "inventory/parts/form_page.html", context)
