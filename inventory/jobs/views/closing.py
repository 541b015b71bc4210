"""The end of a stage and of a job: signing it, and saying what became of what nobody scanned."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_POST

from inventory.access import person_of, shop_of, worker
from inventory.jobs import actions, queries
from inventory.jobs.forms import CloseForm
from inventory.jobs.views import found_open
from inventory.models import Stage
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import mark_signed, sign_stage


@worker
@require_POST
def sign(request: HttpRequest, code: str, stage: str) -> HttpResponse:
    """Sign a stage: what it took and nobody scanned is booked as planned."""
    job = found_open(request, code)
    try:
        signed = sign_stage(job, stage, by=person_of(request), at=timezone.now())
    except Refused as refused:
        messages.error(request, refused.says)
        return redirect("jobs:job", code)
    if signed is None:
        messages.info(request, "That stage is signed already.")
        return redirect("jobs:job", code)
    messages.success(request, f"Signed: {dict(Stage.choices).get(stage, stage)}.")
    if signed.unscanned:
        messages.warning(request, f"Scan these, they are traced: {', '.join(signed.unscanned)}.")
    if signed.missing:
        messages.warning(request, f"Not in an open bottle in the bay: {', '.join(signed.missing)}.")
    return redirect("jobs:job", code)


@worker
@require_POST
def sign_rinse(request: HttpRequest, code: str, step: str) -> HttpResponse:
    """Sign one rinse of a job: car and floor are rinsed to a clear drain."""
    job = found_open(request, code)
    rinse = job.steps.filter(code=step, rinses=True).first()
    if rinse is None:
        messages.error(request, "This job has no such rinse. Plan it on the step's page.")
    elif rinse.signed_at:
        messages.info(request, f"{rinse.name} is signed already.")
    else:
        mark_signed(job, [rinse.code], [], by=person_of(request), at=timezone.now())
        messages.success(request, f"Signed {rinse.name}: rinsed to a clear drain.")
    return redirect("jobs:job", code)


@worker
@require_http_methods(["GET", "POST"])
def close(request: HttpRequest, code: str) -> HttpResponse:
    """Ask what became of each need that was neither scanned nor signed, then close the job."""
    job, shop = found_open(request, code), shop_of(request)
    unsaid = queries.unsaid(job)
    form = CloseForm(request.POST if request.method == "POST" else None, shop=shop, unsaid=unsaid)
    if request.method == "POST" and form.is_valid():
        try:
            actions.close(job, form.said, by=person_of(request), at=timezone.now())
        except Refused as refused:
            form.add_error(None, refused.says)
        else:
            messages.success(request, f"Closed: {job.vehicle}, {job.title}.")
            return redirect("jobs:job", code)
    return render(request, "inventory/jobs/close.html", {"job": job, "form": form, "unsaid": unsaid})
