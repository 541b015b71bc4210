"""The pages of local exhaust and of measured air: an owner writes them down, ends them, withdraws them."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, owner, person_of
from inventory.bays.actions import measured as actions
from inventory.bays.forms import ExhaustForm, MeasurementForm, ProductForm, result_rows
from inventory.bays.queries import measured as queries
from inventory.bays.views import place_of
from inventory.models import AirMeasurement, LocalExhaust, Place
from safety.air.measured import EN_689


@owner
@require_http_methods(["GET", "POST"])
def exhaust(request: HttpRequest, code: str) -> HttpResponse:
    """Write down that local exhaust was examined."""
    found = place_of(request, code)
    form = ExhaustForm(request.POST or None, initial={"name": request.GET.get("name", "")})
    if request.method == "POST" and form.is_valid():
        kept = actions.keep_exhaust(found, form.instance, by=person_of(request))
        messages.success(request, f"Kept: {kept.name} is examined. Steps of {found.name} may count on it.")
        return redirect("bays:bay", found.code)
    return render(request, "inventory/bays/exhaust.html", {"place": found, "form": form})


@owner
@require_POST
def end_exhaust(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    """Write down that local exhaust is here no more."""
    found = place_of(request, code)
    row = _exhaust(found, pk)
    actions.end_exhaust(row, on=timezone.localdate())
    messages.success(request, f"Kept: {row.name} is here no more. What was measured under it counts no more.")
    return redirect("bays:bay", found.code)


def _exhaust(place: Place, pk: int) -> LocalExhaust:
    found = queries.exhaust(place, pk)
    if found is None:
        raise Http404("This place has no such exhaust.")
    return found


@owner
@require_http_methods(["GET", "POST"])
def measure(request: HttpRequest, code: str) -> HttpResponse:
    """Write a measurement down: first the product, then its report."""
    found = place_of(request, code)
    named = request.GET if "product" in request.GET else None
    chosen = ProductForm(named, shop=found.shop)
    if named is None or not chosen.is_valid():
        return render(request, "inventory/bays/measure_what.html", {"place": found, "form": chosen})
    product, data = chosen.cleaned_data["product"], request.POST or None
    form, rows = MeasurementForm(data, place=found, product=product), result_rows(product, data)
    if request.method == "POST" and all([form.is_valid(), rows.is_valid()]):
        kept = actions.keep_measurement(found, product, form.instance, rows.said(), by=person_of(request))
        messages.success(request, "The measurement is kept.")
        return redirect("bays:measurement", found.code, kept.pk)
    context = {"place": found, "product": product, "form": form, "rows": rows}
    return render(request, "inventory/bays/measure.html", context)


@member
@require_GET
def measurement(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    """Show one measurement and what its results show."""
    found = place_of(request, code)
    shown = queries.measurement(found, pk, timezone.localdate())
    if shown is None:
        raise Http404("This place has no such measurement.")
    context = {"place": found, "shown": shown, "test": EN_689}
    return render(request, "inventory/bays/measurement.html", context)


@owner
@require_POST
def withdraw(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    """Write down that a measurement counts no more."""
    found = place_of(request, code)
    row = AirMeasurement.objects.filter(place=found, pk=pk).first()
    if row is None:
        raise Http404("This place has no such measurement.")
    actions.withdraw(row, on=timezone.localdate())
    messages.success(request, "Withdrawn: the measurement counts no more.")
    return redirect("bays:measurement", found.code, row.pk)
