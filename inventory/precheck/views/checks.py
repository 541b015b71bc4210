"""The check's page, answering one of its findings, and signing it."""

from dataclasses import dataclass

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.codes import pair, tidy
from inventory.models import Job, Person
from inventory.precheck import actions, queries
from inventory.precheck.forms import AnswerForm, OverrideForm
from inventory.precheck.questions import Finding
from inventory.precheck.rules import Check, may_answer

# What a finding about a bay's air is ended by, on the bay's own page.
BAY_ACTIONS = {"air.ignition": "Confirm them off", "air.unknown": "Type its air in"}


# Findings that somebody's own record ends.
OF_SOMEBODY = frozenset({"people.training", "people.evaluation", "people.fit_test", "people.face"})


@dataclass(frozen=True)
class Action:
    """The one button of a finding, named by what it does; `view` is an address by name."""

    label: str
    view: str
    code: str = ""


@dataclass(frozen=True)
class Row:
    """A finding as the page shows it."""

    finding: Finding
    answered: bool
    action: Action | None
    also_answer: bool
    override: bool

    @property
    def about(self) -> str:
        """What it is about, as the address says it."""
        return " ".join(self.finding.about)


@member
@require_GET
def job(request: HttpRequest, code: str) -> HttpResponse:
    """Show the check of a job, computed now."""
    found = _found(request, code)
    checked = queries.check(found, timezone.now())
    signatures = found.signatures.select_related("by").order_by("-signed_at")[:5]
    return render(
        request,
        "inventory/precheck/job.html",
        {
            "job": found,
            "checked": checked,
            "rows": [_row(finding, checked.check) for finding in checked.check.findings],
            "signatures": signatures,
            "may_work": person_of(request).role != Person.Role.VIEWER,
        },
    )


@worker
@require_http_methods(["GET", "POST"])
def answer(request: HttpRequest, code: str, finding: str) -> HttpResponse:
    """Ask what was seen or decided about a finding, and keep it."""
    found, about, at = _found(request, code), request.GET.get("about", ""), timezone.now()
    asked = actions.finding_of(found, finding, about, at)
    if asked is None:
        messages.info(request, "That question no longer stands.")
        return redirect("precheck:job", code)
    if not may_answer(asked, by_owner=True):
        messages.warning(request, actions.refusal(asked))
        return redirect("precheck:job", code)
    form = _form(request, asked)
    if request.method == "POST" and form.is_valid():
        by = form.cleaned_data.get("owner") or person_of(request)
        given = form.cleaned_data
        try:
            actions.answer(found, finding, about, given["says"], given["reason"], by=by, at=at)
        except actions.NotNow as refused:
            messages.warning(request, refused.says)
        else:
            messages.success(request, f"Kept, with {by.name}'s name.")
        return redirect("precheck:job", code)
    return render(request, "inventory/precheck/answer.html", {"job": found, "finding": asked, "form": form})


@worker
@require_POST
def sign(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that this person read the check."""
    try:
        actions.sign(_found(request, code), by=person_of(request), at=timezone.now())
    except actions.NotNow as refused:
        messages.warning(request, refused.says)
    else:
        messages.success(request, "Signed: you read this check and it was ready.")
    return redirect("precheck:job", code)


def _found(request: HttpRequest, code: str) -> Job:
    found = Job.objects.filter(shop=shop_of(request), code=code).select_related("vehicle", "shop").first()
    if found is None:
        raise Http404("This shop has no such job.")
    return found


def _form(request: HttpRequest, asked: Finding) -> AnswerForm:
    data = request.POST if request.method == "POST" else None
    start = {"says": asked.says}
    if asked.grade == "stop":
        person = person_of(request)
        given = start | {"owner": person.code if person.is_owner else None}
        return OverrideForm(data, shop=shop_of(request), by=person, initial=given)
    return AnswerForm(data, initial=start)


def _row(finding: Finding, check: Check) -> Row:
    answered = check.is_answered(finding)
    may = not answered and may_answer(finding, by_owner=True)
    action = None if answered or finding.grade == "tell" else _action(finding)
    return Row(finding, answered, action, may, finding.grade == "stop")


def _action(finding: Finding) -> Action | None:
    first, code = finding.about[0], finding.code
    if code == "out_of_date":
        other = finding.about[2:]
        if other:
            return Action(f"Use {pair(other[0])} instead", "shelf:container", other[0])
        return Action(f"Look at {pair(first)}", "shelf:container", first)
    if code in {"held", "recalled"}:
        return Action(f"Look at {pair(first)}", "shelf:container", first)
    if code == "no_sheet":
        return Action("Attach the sheet", "products:product", first)
    if code == "unlabelled":
        return Action("Print its label", "posters:label_pdf", first)
    return _people_action(finding) if code.startswith("people.") else _bay_action(finding)


def _people_action(finding: Finding) -> Action | None:
    """Return where it is put right: the sheet, somebody's record, the list of what is here."""
    first, code = finding.about[0], finding.code
    if code == "people.first_day":
        return Action("Read the sheet of the first day", "people:first_day")
    if code == "people.rescue":
        return Action(f"Look at {pair(first)}", "shelf:container", first)
    if code == "people.eyewash":
        return Action("Say where the eyewash is", "settings:place", first)
    if code in OF_SOMEBODY:
        of = (tidy(first) or "-")[0] == "H"
        return Action("Open the record", "people:person", first) if of else Action("People", "people:list")
    return Action("What protects people here", "people:protection")


def _bay_action(finding: Finding) -> Action | None:
    """Return what a bay's page does about weather and air; the curve where there is one."""
    first, code = finding.about[0], finding.code
    if code == "air.no_composition":
        return Action("Type what it is made of", "products:product", first)
    in_a_bay = len(finding.about) > 1
    if in_a_bay and code.startswith("weather."):
        return Action("Measure the bay", "bays:bay", first)
    if in_a_bay and code in BAY_ACTIONS:
        return Action(BAY_ACTIONS[code], "bays:bay", first)
    if code.startswith("air.") and code not in BAY_ACTIONS:
        return Action("See the curve", "bays:step", finding.about[-1])
    return None
