"""The list of jobs, one job, booking it, moving it, cancelling it."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.jobs import actions, queries
from inventory.jobs.forms import BookForm, JobForm, MoveForm, VehicleForm, next_morning, used_up
from inventory.jobs.views import found, found_open, refusals_told, tell
from inventory.models import Job, Person
from inventory.precheck import queries as precheck
from inventory.stock.requests import KeyReused
from inventory.trade import naming
from inventory.trade.surfaces import FROM_A_DAY, materials


@member
@require_GET
def listed(request: HttpRequest) -> HttpResponse:
    """List the booked jobs by day with their verdicts, and the last closed ones."""
    shop = shop_of(request)
    days, closed = queries.days(shop, timezone.now()), queries.closed(shop)
    return render(request, "inventory/jobs/list.html", {"days": days, "closed": closed})


@worker
@require_http_methods(["GET", "POST"])
def book(request: HttpRequest) -> HttpResponse:
    """Book a car: service + car + hour; edited afterwards."""
    shop = shop_of(request)
    form = BookForm(request.POST or None, shop=shop, initial={"starts_at": next_morning()})
    if request.method == "POST" and form.is_valid():
        given, car = form.cleaned_data, form.car()
        title = given["title"] or str(given["service"])
        try:
            code = actions.book(
                shop,
                given["service"],
                car,
                given["starts_at"],
                title=title,
                key=given["key"],
                at=timezone.now(),
            )
        except KeyReused:
            used_up(
                form, "From this page another booking was written already. Press again to book this one too."
            )
        else:
            messages.success(request, f"Booked: {car}, {title}. Give its steps a bay and a person.")
            _ask_its_day(request, given["surfaces"])
            return redirect("jobs:job", code)
    return render(request, "inventory/jobs/book.html", {"form": form, "services": queries.services(shop)})


def _ask_its_day(request: HttpRequest, surfaces: list[str]) -> None:
    """Say where the day of a respray or a film is typed."""
    names = [materials()[key].name for key in surfaces if key in FROM_A_DAY]
    if names:
        says = (
            f"Type the day of the {naming.row(names)} under Paint and panels: the waits are counted from it."
        )
        messages.info(request, says)


@member
@require_GET
def job(request: HttpRequest, code: str) -> HttpResponse:
    """Show a job: how it stands, its steps and what they take, its entries."""
    row = found(request, code)
    at, steps = timezone.now(), queries.steps(row)
    open_ = row.state == Job.State.OPEN
    return render(
        request,
        "inventory/jobs/job.html",
        {
            "job": row,
            "steps": steps,
            "taking": queries.taking(row.shop),
            "verdict": precheck.verdicts(row.shop, at, [row]).get(row.code),
            "stages": queries.stages_to_sign(steps) if open_ else [],
            "clashes": [clash.says(row.shop.zone) for clash in queries.bay_clashes(row)] if open_ else [],
            "entries": queries.entries(row),
            "may_work": person_of(request).role != Person.Role.VIEWER,
        },
    )


@worker
@require_http_methods(["GET", "POST"])
def edit(request: HttpRequest, code: str) -> HttpResponse:
    """Change what a job is called, its car, and its steps."""
    row = found_open(request, code)
    data = request.POST if request.method == "POST" else None
    form, car = JobForm(data, instance=row), VehicleForm(data, instance=row.vehicle, prefix="car")
    if data and form.is_valid() and car.is_valid():
        with refusals_told(request):
            actions.keep(form.save(commit=False), car.save(commit=False))
            messages.success(request, "Kept.")
        return redirect("jobs:job", code)
    context = {
        "job": row,
        "form": form,
        "car": car,
        "steps": queries.steps(row),
        "taking": queries.taking(row.shop),
    }
    return render(request, "inventory/jobs/edit.html", context)


@worker
@require_http_methods(["GET", "POST"])
def move(request: HttpRequest, code: str) -> HttpResponse:
    """Let a job start at another hour; say who gains and who gives way."""
    row = found_open(request, code)
    form = MoveForm(request.POST or None, initial={"starts_at": row.starts_at})
    if request.method == "POST" and form.is_valid():
        with refusals_told(request):
            said = actions.move(row, form.cleaned_data["starts_at"], at=timezone.now())
            messages.success(request, f"Moved to {timezone.localtime(row.starts_at):%A %-d %B, %H:%M}.")
            tell(request, said)
        return redirect("jobs:job", code)
    return render(request, "inventory/jobs/move.html", {"job": row, "form": form})


@worker
@require_POST
def cancel(request: HttpRequest, code: str) -> HttpResponse:
    """Cancel a job: its stock is free at once."""
    row = found_open(request, code)
    with refusals_told(request):
        said = actions.cancel(row, at=timezone.now())
        messages.success(request, "Cancelled. What it would have taken is free.")
        tell(request, said)
    return redirect("jobs:job", code)


@worker
@require_POST
def book_again(request: HttpRequest, code: str) -> HttpResponse:
    """Book a cancelled job again, as it was."""
    row = found(request, code)
    with refusals_told(request):
        said = actions.book_again(row, at=timezone.now())
        messages.success(request, "Booked again, as it was.")
        tell(request, said)
    return redirect("jobs:job", code)
