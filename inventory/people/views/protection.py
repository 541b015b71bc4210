"""What protects people here: every item, the gloves' minutes, the eyewash runs."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, owner, person_of, shop_of, worker
from inventory.models import Equipment, Person, Place, Product, Serves
from inventory.people import views
from inventory.people.actions import protection as actions
from inventory.people.forms import EquipmentForm, MinutesForm
from inventory.people.queries import protection as queries

LABEL = "What protects people here"


@member
@require_GET
def home(request: HttpRequest) -> HttpResponse:
    """Show every item that protects people, what has died, and which eyewash was run."""
    shop, at = shop_of(request), timezone.now()
    groups = queries.groups(shop, timezone.localdate())
    dead = [item for group in groups for item in group.items if item.state in {"ended", "worn"}]
    context = {
        "groups": groups,
        "dead": dead,
        "runs": queries.runs(shop, at),
        "unsaid": queries.unsaid(shop),
        "minutes": queries.minutes(shop),
        "may_work": person_of(request).role != Person.Role.VIEWER,
    }
    return render(request, "inventory/people/protection.html", context)


@worker
@require_POST
def ran(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that the eyewash of a place was run now."""
    place = get_object_or_404(Place, shop=shop_of(request), code=code.upper())
    actions.ran(place, by=person_of(request), at=timezone.now())
    messages.success(request, f"The eyewash of {place.name} was run today.")
    return redirect("people:protection")


@owner
@require_http_methods(["GET", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """Say what a product serves."""
    start = {"product": request.GET.get("product", "")}
    form = EquipmentForm(request.POST or None, shop=shop_of(request), initial=start)
    return _equipment(request, form, "What a product protects from")


@owner
@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, code: str) -> HttpResponse:
    """Change what a product serves."""
    row = get_object_or_404(Equipment, product__shop=shop_of(request), product__code=code.upper())
    form = EquipmentForm(request.POST or None, shop=shop_of(request), instance=row)
    return _equipment(request, form, f"What {row.product} protects from")


def _equipment(request: HttpRequest, form: EquipmentForm, title: str) -> HttpResponse:
    if request.method == "POST" and form.is_valid():
        actions.keep_equipment(form.instance, form.cleaned_data["wear_minutes"])
        messages.success(request, f"{form.instance.product}: {form.instance.get_serves_display()}.")
        return redirect("people:protection")
    back = reverse("people:protection")
    return views.form_page(request, form, title, "Keep it", back=back, back_label=LABEL)


@owner
@require_POST
def forget(request: HttpRequest, code: str) -> HttpResponse:
    """Take back that a product protects anybody."""
    product = _product(request, code)
    actions.forget(product)
    messages.success(request, f"{product} counts as nobody's protection any more.")
    return redirect("people:protection")


@owner
@require_http_methods(["GET", "POST"])
def minutes(request: HttpRequest, code: str) -> HttpResponse:
    """Write down how long a glove stands a product."""
    glove = _product(request, code)
    if getattr(glove, "equipment", None) is None or glove.equipment.serves != Serves.GLOVES:
        raise Http404("These are no gloves.")
    form = MinutesForm(request.POST or None, glove=glove)
    if request.method == "POST" and form.is_valid():
        said = form.cleaned_data
        actions.keep_minutes(glove, said["against"], said["minutes"], said["source"])
        messages.success(request, f"{glove} stand {said['against']} for {said['minutes']} minutes.")
        return redirect("people:protection")
    back = reverse("people:protection")
    lead = "No open table of these times exists: type what the glove's maker gives."
    return views.form_page(
        request, form, f"How long {glove} stand", "Keep these minutes", back=back, back_label=LABEL, lead=lead
    )


def _product(request: HttpRequest, code: str) -> Product:
    if (found := queries.product_coded(shop_of(request), code)) is None:
        raise Http404("This shop has no such product.")
    return found
