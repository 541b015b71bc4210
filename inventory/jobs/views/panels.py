"""A car's paint and panels: what is left on each, what the gauge read, what the car arrives with."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.jobs.actions import panels as actions
from inventory.jobs.forms import used_up
from inventory.jobs.forms.arrivals import arrival_rows
from inventory.jobs.forms.panels import ReadingsForm, panel_rows
from inventory.jobs.queries import panels as queries
from inventory.jobs.views import found, found_open, refusals_told
from inventory.models import Job, Person, Reading
from inventory.stock.requests import KeyReused
from inventory.stock.rules.lines import Refused


@member
@require_GET
def panels(request: HttpRequest, code: str) -> HttpResponse:
    """Show what is left on each panel, all readings of the car, and what it arrives with."""
    job, who, at = found(request, code), person_of(request), timezone.now()
    readings = queries.readings(job, who, at)
    context = {
        "job": job,
        "rows": queries.rows(job),
        "now": [one for one in readings if one.reading.job_id == job.pk],
        "earlier": [one for one in readings if one.reading.job_id != job.pk],
        "arrivals": queries.arrivals(job),
        "residues": queries.residue_words(),
        "missing": queries.missing_usual(job),
        "may_work": who.role != Person.Role.VIEWER and job.state != Job.State.CANCELLED,
    }
    return render(request, "inventory/jobs/panels.html", context)


@worker
@require_POST
def add_usual(request: HttpRequest, code: str) -> HttpResponse:
    """Add the usual panels in one tap; those that are there stay as they are."""
    added = actions.add_usual(_found(request, code))
    messages.success(request, f"{added} panels added. Say of each what differs from painted metal.")
    return redirect("jobs:panels", code)


@worker
@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, code: str) -> HttpResponse:
    """Say what each panel is made of and covered with; add some, take some out."""
    job = _found(request, code)
    rows = panel_rows(job, request.POST if request.method == "POST" else None)
    if request.method == "POST" and rows.is_valid():
        try:
            actions.save_panels(job, rows.kept(), rows.removed())
        except Refused as refused:
            messages.error(request, refused.says)
        else:
            messages.success(request, "Kept.")
            return redirect("jobs:panels", code)
    return render(request, "inventory/jobs/edit_panels.html", {"job": job, "rows": rows})


@worker
@require_http_methods(["GET", "POST"])
def read(request: HttpRequest, code: str) -> HttpResponse:
    """Type what the gauge said, all panels on one page."""
    job, listed = _found(request, code), list(queries.panels(_found(request, code)))
    data = request.POST if request.method == "POST" else None
    form = ReadingsForm(data, shop=shop_of(request), panels=listed, initial={"when": _when(job)})
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        try:
            actions.record_readings(
                job, given["when"], given["film"], form.read,
                by=person_of(request), key=given["key"], at=timezone.now(),
            )  # fmt: skip
        except KeyReused:
            used_up(form, "From this page other readings were kept already. Press again to keep these too.")
        else:
            messages.success(request, _kept(len(form.read)))
            return redirect("jobs:panels", code)
    return render(request, "inventory/jobs/read_panels.html", {"job": job, "form": form})


def _when(job: Job) -> str:
    """Once something that cuts is signed, the gauge comes after the work."""
    cut = job.steps.exclude(cut="").filter(signed_at__isnull=False).exists()
    return Reading.When.AFTER if cut else Reading.When.BEFORE


def _kept(count: int) -> str:
    return "Kept one reading." if count == 1 else f"Kept {count} readings."


@worker
@require_POST
def undo(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    """Take a wrong reading back."""
    job = _found(request, code)
    row = get_object_or_404(Reading.objects.select_related("panel", "by"), pk=pk, panel__vehicle=job.vehicle)
    with refusals_told(request):
        actions.undo_reading(row, by=person_of(request), at=timezone.now(), zone=job.shop.zone)
        messages.success(request, f"The reading of the {row.panel.name} is taken back.")
    return redirect("jobs:panels", code)


@worker
@require_http_methods(["GET", "POST"])
def arrivals(request: HttpRequest, code: str) -> HttpResponse:
    """Say what is on the car when it comes: old wax, sealant, an old coating."""
    job = found_open(request, code)
    data = request.POST if request.method == "POST" else None
    rows = arrival_rows(job, timezone.localdate(), data)
    if request.method == "POST" and rows.is_valid():
        with refusals_told(request):
            actions.save_arrivals(job, rows.said(), job.shop.zone)
            messages.success(request, "Kept.")
        return redirect("jobs:panels", code)
    return render(request, "inventory/jobs/arrivals.html", {"job": job, "rows": rows})


def _found(request: HttpRequest, code: str) -> Job:
    """Return a job that was not cancelled: a car is also read when it is handed over."""
    job = found(request, code)
    if job.state == Job.State.CANCELLED:
        raise Http404("This job is cancelled.")
    return job
