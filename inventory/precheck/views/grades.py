"""The owner's page about the check's rules: how often each was shown and overridden, and its grade."""

from datetime import timedelta

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods

from inventory.access import owner, person_of, shop_of
from inventory.precheck import actions, queries
from inventory.precheck.forms import RegradeForm
from inventory.precheck.rules.catalogue import PAINT, PEOPLE, SHELF, rule_of

YEAR = timedelta(days=365)
LEADS = {
    PEOPLE: "It protects people: it is never made a note.",
    PAINT: "It protects the paint: an owner may pass its stop on one job, with a reason.",
    SHELF: "It keeps the word of the shelf: its dates, holds and amounts.",
}


@owner
@require_GET
def rules(request: HttpRequest) -> HttpResponse:
    """List every rule with what became of it in the last year, those overridden too often first."""
    shop = shop_of(request)
    context = {
        "rates": queries.rates(shop, timezone.now() - YEAR),
        "regrades": queries.regrades(shop),
        "unseen": queries.never_shown(shop),
    }
    return render(request, "inventory/precheck/rules.html", context)


@owner
@require_http_methods(["GET", "POST"])
def regrade(request: HttpRequest, rule: str) -> HttpResponse:
    """Give a rule another grade, with a reason; it is kept with the owner's name."""
    found = rule_of(rule)
    if found is None:
        raise Http404("The check has no such rule.")
    shop = shop_of(request)
    form = RegradeForm(request.POST or None, code=rule, initial={"grade": queries.grade_of(shop, rule)})
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        actions.regrade(shop, rule, given["grade"], given["reason"], by=person_of(request), at=timezone.now())
        messages.success(request, f"Kept: “{found.asks}” {form.in_words()}. Open checks say so from now on.")
        return redirect("precheck:rules")
    context = {
        "form": form, "title": found.asks, "button": "Give it this grade", "back": "precheck:rules",
        "back_label": "Rules of the check", "lead": LEADS[found.protects],
    }  # fmt: skip
    return render(request, "inventory/parts/form_page.html", context)
