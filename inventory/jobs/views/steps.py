"""A step of a job: where, when, who, and what it takes."""

from datetime import timedelta

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_POST

from inventory.access import shop_of, worker
from inventory.jobs import actions, queries
from inventory.jobs.forms import StepForm, need_rows, used_up
from inventory.jobs.views import found_open, refusals_told
from inventory.models import Job, Step
from inventory.stock.requests import KeyReused


@worker
@require_http_methods(["GET", "POST"])
def step(request: HttpRequest, code: str, step: str = "") -> HttpResponse:
    """Change a step, or add one after the last."""
    job, shop = found_open(request, code), shop_of(request)
    row = _found(job, step) if step else _after_the_last(job)
    data = request.POST if request.method == "POST" else None
    form = StepForm(data, instance=row, shop=shop)
    needs = row.needs.filter(outcome="").select_related("product").order_by("id") if row.pk else []
    rows = need_rows(shop, needs, data)
    if request.method == "POST" and form.is_valid() and rows.is_valid():
        try:
            with refusals_told(request):
                _keep(form, rows.wanted())
                messages.success(request, f"Kept: {row.name}.")
            return redirect("jobs:job", code)
        except KeyReused:
            used_up(form, "From this page another step was added already. Press again to add this one too.")
    context = {
        "job": job,
        "step": row,
        "form": form,
        "rows": rows,
        "medians": queries.medians(job, needs, timezone.now()),
    }
    return render(request, "inventory/jobs/step.html", context)


def _keep(form: StepForm, wanted: list[actions.Wanted]) -> None:
    if key := form.cleaned_data.get("key"):
        actions.add_step(form.save(commit=False), wanted, form.chosen_panels(), key=key, at=timezone.now())
    else:
        actions.save_step(form.save(commit=False), wanted, form.chosen_panels())


@worker
@require_POST
def remove_step(request: HttpRequest, code: str, step: str) -> HttpResponse:
    """Take a step out of a job."""
    row = _found(found_open(request, code), step)
    with refusals_told(request):
        actions.remove_step(row)
        messages.success(request, f"{row.name} is out of this job.")
    return redirect("jobs:edit", code)


def _found(job: Job, code: str) -> Step:
    row = job.steps.filter(code=code, signed_at__isnull=True).first()
    if row is None:
        raise Http404("This job has no such step that is still to be done.")
    row.job = job
    return row


def _after_the_last(job: Job) -> Step:
    return Step(job=job, starts_at=job.ends_at, ends_at=job.ends_at + timedelta(hours=1))
