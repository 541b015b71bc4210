"""The pages of the bays: the list, one bay, its air, and the curve of a step."""

from datetime import datetime

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.safestring import SafeString, mark_safe
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, person_of, shop_of, worker
from inventory.bays.actions import air as actions
from inventory.bays.charts import PENS, air_picture
from inventory.bays.forms import AirForm, ReadingForm, SparkForm
from inventory.bays.queries import air as queries
from inventory.bays.queries import measured
from inventory.bays.rules import Curve, limits_in_words
from inventory.bays.views import place_of
from inventory.drawing import svg
from inventory.models import Person, Place
from inventory.stock import rooms

WIDE, NARROW = 640.0, 330.0


@member
@require_GET
def listed(request: HttpRequest) -> HttpResponse:
    """Show every bay with its newest reading."""
    at = timezone.now()
    rows = [(bay, next(iter(queries.readings(bay, at)), None)) for bay in queries.bays(shop_of(request))]
    return render(request, "inventory/bays/list.html", {"rows": rows})


@member
@require_GET
def bay(request: HttpRequest, code: str) -> HttpResponse:
    """Show what a bay's air is now, what may spark there, and what is breathed there today."""
    return _page(request, place_of(request, code), ReadingForm(), timezone.now())


def _page(request: HttpRequest, found: Place, form: ReadingForm, at: datetime) -> HttpResponse:
    readings = queries.readings(found, at)
    steps = queries.breathed_at(queries.steps_of_day(found, at), at)
    context = {
        "place": found,
        "form": form,
        "newest": readings[0] if readings else None,
        "readings": readings,
        "sparks": found.ignition_sources.select_related("said_by").order_by("name"),
        "rags": queries.rags_emptied(found),
        "steps": [(one, *_drawn(one.curve, one.step.code)) for one in steps],
        "may_work": person_of(request).role != Person.Role.VIEWER,
        "exhausts": measured.exhausts(found, timezone.localdate(at)),
        "measurements": measured.measurements(found, timezone.localdate(at)),
        "today": timezone.localtime(at).date(),
    }
    return render(request, "inventory/bays/bay.html", context)


def _drawn(curve: Curve | None, code: str) -> tuple[SafeString, SafeString, str]:
    if curve is None:
        return mark_safe(""), mark_safe(""), ""
    # Every text in it went through html.escape; the rest is numbers.
    wide, narrow = (
        mark_safe(svg(air_picture(curve, width), PENS, f"{code}-{name}"))
        for width, name in ((WIDE, "wide"), (NARROW, "narrow"))
    )
    return wide, narrow, limits_in_words(curve)


@worker
@require_POST
def read(request: HttpRequest, code: str) -> HttpResponse:
    """Keep what the instruments read now."""
    found, at = place_of(request, code), timezone.now()
    form = ReadingForm(request.POST)
    if not form.is_valid():
        return _page(request, found, form, at)
    given = form.cleaned_data
    actions.read(found, given["air_c"], given["panel_c"], given["humidity"], by=person_of(request), at=at)
    messages.success(request, f"Kept: {found.name} is measured. It counts for two hours.")
    return redirect("bays:bay", found.code)


@worker
@require_POST
def spark(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    """Keep that an ignition source is on or off."""
    found = place_of(request, code)
    source = get_object_or_404(found.ignition_sources, pk=pk)
    form = SparkForm(request.POST)
    if form.is_valid():
        state = form.cleaned_data["state"]
        actions.say(source, state, by=person_of(request), at=timezone.now())
        messages.success(request, f"Kept: {source.name} is {state}.")
    else:
        messages.warning(request, f"Say whether {source.name} is on or off.")
    return redirect("bays:bay", found.code)


@owner
def air(request: HttpRequest, code: str) -> HttpResponse:
    """Change what a place's air does, and what may spark there."""
    found = place_of(request, code)
    form = AirForm(request.POST or None, instance=found)
    if request.method == "POST" and form.is_valid():
        before = set(found.ignition_sources.values_list("name", flat=True))
        sources = form.cleaned_data["sources"]
        ended = actions.keep_air(form.instance, sources, form.sorts(), on=timezone.localdate())
        messages.success(request, f"The air of {found.name} is kept.")
        if ended:
            messages.warning(request, rooms.after(ended))
        if set(sources) - before:
            messages.info(request, "Say of each new source what it is, and keep it once more.")
            return redirect("bays:air", found.code)
        return redirect("bays:bay", found.code)
    measured_here = rooms.before(rooms.counting(found, on=timezone.localdate()).count())
    context = {"place": found, "form": form, "measured_here": measured_here}
    return render(request, "inventory/bays/air.html", context)


@member
@require_GET
def step(request: HttpRequest, code: str) -> HttpResponse:
    """Show the curve of one step, and what the check says about its air."""
    found = queries.step(shop_of(request), code)
    if found is None:
        raise Http404("This shop has no such step in an open job.")
    shown = next(iter(queries.breathed_at([found], timezone.now())), None)
    wide, narrow, limits = _drawn(shown.curve if shown else None, found.code)
    context = {
        "step": found, "shown": shown, "wide": wide, "narrow": narrow, "limits": limits,
        "may_work": person_of(request).role != Person.Role.VIEWER,
    }  # fmt: skip
    return render(request, "inventory/bays/step.html", context)
