"""The check's page, answering one of its findings, and signing it."""

from dataclasses import dataclass

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.models import Job, Person
from inventory.precheck import actions, queries
from inventory.precheck.forms import AnswerForm, OverrideForm
from inventory.precheck.queries.crew import crew
from inventory.precheck.questions import Finding
from inventory.precheck.rules import Check, may_answer
from inventory.precheck.views.ways import Action, way_out
from inventory.precheck.views.whom import may_press, who_does


@dataclass(frozen=True)
class Row:
    """A finding as the page shows it; `whom` says who ends it where this reader has no button for it."""

    finding: Finding
    answered: bool
    action: Action | None
    whom: str
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
    reader, here = person_of(request), crew(found.shop)
    rows = [_row(one, checked.check, found.code, reader, here) for one in checked.check.findings]
    signatures = found.signatures.select_related("by").order_by("-signed_at")[:5]
    return render(
        request,
        "inventory/precheck/job.html",
        {
            "job": found,
            "checked": checked,
            "rows": [row for row in rows if row.finding.grade != "tell" or row.answered],
            "notes": [row for row in rows if row.finding.grade == "tell" and not row.answered],
            "signatures": signatures,
            "may_work": reader.role != Person.Role.VIEWER,
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


def _row(finding: Finding, check: Check, job: str, reader: Person, here: list[Person]) -> Row:
    answered = check.is_answered(finding)
    may = not answered and may_answer(finding, by_owner=True)
    action = None if answered or finding.grade == "tell" else way_out(finding, job)
    whom = (
        "" if action is None or may_press(finding, action, reader, here) else who_does(finding, action, here)
    )
    return Row(finding, answered, None if whom else action, whom, may, finding.grade == "stop")
