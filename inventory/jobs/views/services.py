"""The services that the shop sells, written once by an owner."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, owner, shop_of
from inventory.jobs import actions, queries
from inventory.jobs.forms import ServiceForm, ServiceStepForm, need_rows, used_up
from inventory.models import Service, ServiceStep
from inventory.precheck.queries.services import clashes_of
from inventory.stock.requests import KeyReused


@member
@require_GET
def services(request: HttpRequest) -> HttpResponse:
    """List what the shop sells."""
    return render(request, "inventory/jobs/services.html", {"services": queries.services(shop_of(request))})


@owner
@require_http_methods(["GET", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """Name a new service; its steps come next."""
    form = ServiceForm(request.POST or None, shop=shop_of(request))
    if request.method == "POST" and form.is_valid():
        row = form.save()
        messages.success(request, f"{row.name} is there. Now add its steps.")
        return redirect("jobs:service", row.pk)
    return render(request, "inventory/jobs/service.html", {"form": form})


@owner
@require_http_methods(["GET", "POST"])
def service(request: HttpRequest, pk: int) -> HttpResponse:
    """Show a service with its steps; rename it."""
    row = _found(request, pk)
    form = ServiceForm(request.POST or None, instance=row, shop=shop_of(request))
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Kept.")
        return redirect("jobs:service", pk)
    steps = row.steps.prefetch_related("needs__product")
    context = {
        "form": form,
        "service": row,
        "steps": steps,
        "taking": queries.taking(shop_of(request)),
        "clashes": clashes_of(row),
    }
    return render(request, "inventory/jobs/service.html", context)


@owner
@require_http_methods(["GET", "POST"])
def step(request: HttpRequest, pk: int, step: int | None = None) -> HttpResponse:
    """Change a step of a service, or add one after the last."""
    shop, parent = shop_of(request), _found(request, pk)
    row = get_object_or_404(parent.steps, pk=step) if step else _after_the_last(parent)
    data = request.POST if request.method == "POST" else None
    form = ServiceStepForm(data, instance=row)
    needs = row.needs.select_related("product").order_by("id") if row.pk else []
    rows = need_rows(shop, needs, data)
    if request.method == "POST" and form.is_valid() and rows.is_valid():
        try:
            _keep(form, rows.wanted())
        except KeyReused:
            used_up(form, "From this page another step was added already. Press again to add this one too.")
        else:
            messages.success(request, f"Kept: {row.name}.")
            return redirect("jobs:service", pk)
    context = {"service": parent, "step": row, "form": form, "rows": rows}
    return render(request, "inventory/jobs/service_step.html", context)


def _keep(form: ServiceStepForm, wanted: list[actions.Wanted]) -> None:
    if key := form.cleaned_data.get("key"):
        actions.add_service_step(form.save(commit=False), wanted, key=key, at=timezone.now())
    else:
        actions.save_service_step(form.save(commit=False), wanted)


@owner
@require_POST
def remove_step(request: HttpRequest, pk: int, step: int) -> HttpResponse:
    """Take a step out of a service; booked jobs keep theirs."""
    row = get_object_or_404(_found(request, pk).steps, pk=step)
    row.delete()
    messages.success(request, f"{row.name} is out of this service. Booked jobs keep it.")
    return redirect("jobs:service", pk)


@owner
@require_POST
def archive(request: HttpRequest, pk: int) -> HttpResponse:
    """Sell a service no longer; its jobs stay."""
    row = _found(request, pk)
    row.archived = True
    row.save(update_fields=["archived"])
    messages.success(request, f"{row.name} is no longer offered. Its jobs stay.")
    return redirect("jobs:services")


def _found(request: HttpRequest, pk: int) -> Service:
    return get_object_or_404(queries.services(shop_of(request)), pk=pk)


def _after_the_last(service: Service) -> ServiceStep:
    last = service.steps.order_by("-starts_after").first()
    return ServiceStep(
        service=service, starts_after=last.starts_after + last.minutes if last else 0, minutes=60
    )
