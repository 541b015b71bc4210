"""The page of what a product does on a car, and the owner's words on it."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, shop_of
from inventory.models import Product, Profile
from inventory.products import actions, queries, rules
from inventory.products.forms import GroupsForm, ProfileForm
from inventory.products.queries import OnTheCar
from inventory.trade.kinds import traits_of
from safety.reactions.groups import groups

from .products import the_product

GROUPS = "groups"


@member
@require_GET
def profile(request: HttpRequest, code: str) -> HttpResponse:
    """Show what a product does on a car, whose word each line is, and what it reacts with."""
    product = the_product(request, code)
    known = queries.on_the_car(product)
    return _page(request, product, known, _groups_form(known))


def _page(request: HttpRequest, product: Product, known: OnTheCar, form: GroupsForm) -> HttpResponse:
    context = {
        "product": product,
        "known": known,
        "lines": rules.lines(known.profile, traits_of(known.groups)),
        "unknown": rules.unknown(known.profile),
        "groups": [(key, one) for key, one in groups().items() if key in known.groups],
        "form": form,
    }
    return render(request, "inventory/products/profile.html", context)


def _groups_form(known: OnTheCar, data: object = None) -> GroupsForm:
    water = known.row.water_based if known.row else None
    return GroupsForm(data, ticked=known.groups, water_based=water)


@owner
def edit_profile(request: HttpRequest, code: str) -> HttpResponse:
    """Type what the technical sheet says; what is left as it is follows the kind."""
    product = the_product(request, code)
    known = queries.on_the_car(product)
    row = known.row or Profile(product=product)
    form = ProfileForm(request.POST or None, instance=row, kind=product.kind, groups=known.groups)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Kept. Checks count with it from now on.")
        return redirect("products:profile", product.code)
    context = {"form": form, "product": product}
    return render(request, "inventory/products/edit_profile.html", context)


@owner
@require_POST
def follow_kind(request: HttpRequest, code: str) -> HttpResponse:
    """Drop this shop's word on one line, or the confirmation of the groups."""
    product = the_product(request, code)
    line = request.POST.get("line", "")
    if line == GROUPS:
        actions.withdraw_groups(product)
        messages.success(request, "The groups are only proposed again.")
    elif line in rules.FIELDS:
        actions.follow_kind(product, rules.FIELDS[line])
        messages.success(request, f"{rules.LABELS[line]}: as its kind again.")
    else:
        raise Http404("This page has no such line.")
    return redirect("products:profile", product.code)


@owner
@require_POST
def confirm_groups(request: HttpRequest, code: str) -> HttpResponse:
    """Keep what the product reacts with, under the owner's name and today's date."""
    product = the_product(request, code)
    known = queries.on_the_car(product)
    form = _groups_form(known, request.POST)
    if not form.is_valid():
        return _page(request, product, known, form)
    today = timezone.now().astimezone(shop_of(request).zone).date()
    actions.confirm_groups(product, form.chosen, form.water_based, str(request.user), today)
    messages.success(request, "Confirmed. The check counts with these groups from now on.")
    return redirect("products:profile", product.code)
