"""A person's page, and what an owner writes down on it."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods

from inventory.access import member, owner, person_of, shop_of
from inventory.models import Person
from inventory.people import views
from inventory.people.actions import record as actions
from inventory.people.forms import EvaluationForm, FaceForm, FitTestForm, SignForm, TrainingForm
from inventory.people.queries import record as queries


@member
@require_GET
def person(request: HttpRequest, code: str) -> HttpResponse:
    """Show what is written down of somebody."""
    shown, reader = views.own_or_owner(request, code), person_of(request)
    on = timezone.localdate()
    own = reader.pk == shown.pk and reader.role != Person.Role.VIEWER
    may_sign = own or (reader.is_owner and not shown.has_usable_password())
    context = {
        "person": shown,
        "record": queries.record(shown, on),
        "dues": [due for due in queries.due(shop_of(request), on) if due.code == shown.code],
        "may_sign": may_sign and shown.is_active,
        "sign": SignForm(person=shown),
    }
    return render(request, "inventory/people/person.html", context)


@owner
@require_http_methods(["GET", "POST"])
def training(request: HttpRequest, code: str) -> HttpResponse:
    """Write down what somebody was trained for."""
    shown, form = views.found(request, code), TrainingForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        actions.keep_training(shown, form.instance, by=person_of(request))
        return _kept(request, shown, "The training is kept.")
    return _page(request, shown, form, f"Train {shown.name}", "Keep this training")


@owner
@require_http_methods(["GET", "POST"])
def evaluation(request: HttpRequest, code: str) -> HttpResponse:
    """Write down that somebody was found fit to wear a respirator."""
    shown, form = views.found(request, code), EvaluationForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        actions.keep_evaluation(shown, form.instance, by=person_of(request))
        return _kept(request, shown, "The evaluation is kept. Now a mask can be fitted.")
    title = f"Medical evaluation of {shown.name}"
    return _page(request, shown, form, title, "Keep this evaluation")


@owner
@require_http_methods(["GET", "POST"])
def fit_test(request: HttpRequest, code: str) -> HttpResponse:
    """Write down a fit test, unless no evaluation held before it."""
    shown, form = views.found(request, code), FitTestForm(request.POST or None, shop=shop_of(request))
    if request.method == "POST" and form.is_valid():
        try:
            kept = actions.keep_fit_test(shown, form.fit(), by=person_of(request))
        except actions.Refused as refusal:
            form.add_error(None, refusal.says)
        else:
            return _kept(request, shown, f"The fit test of the {kept.mask} is kept.")
    lead = "The medical evaluation comes first; a fit test holds for this model and size, for a year."
    return _page(request, shown, form, f"Fit a mask to {shown.name}", "Keep this fit test", lead)


@member
@require_http_methods(["GET", "POST"])
def face(request: HttpRequest, code: str) -> HttpResponse:
    """Say whether a mask would seal; everybody says it of themselves, an owner of anybody."""
    shown = views.own_or_owner(request, code)
    form = FaceForm(request.POST or None, instance=shown)
    if request.method == "POST" and form.is_valid():
        actions.say_face(shown, form.cleaned_data["face"])
        return _kept(request, shown, "Kept.")
    return _page(request, shown, form, f"The face of {shown.name}", "Keep it")


def _kept(request: HttpRequest, shown: Person, says: str) -> HttpResponse:
    messages.success(request, says)
    return redirect("people:person", shown.code)


def _page(
    request: HttpRequest, shown: Person, form: forms.BaseForm, title: str, button: str, lead: str = ""
) -> HttpResponse:
    back = reverse("people:person", args=[shown.code])
    return views.form_page(request, form, title, button, back=back, back_label=shown.name, lead=lead)
