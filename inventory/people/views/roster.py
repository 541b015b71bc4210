"""The people pages, and signing in and out."""

from django.contrib import messages
from django.contrib.auth.views import LoginView, LogoutView
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, person_of, shop_of
from inventory.models import Person
from inventory.people.actions import roster as actions
from inventory.people.forms import PersonForm, SignInForm
from inventory.people.queries import record
from inventory.people.queries import roster as queries

login = LoginView.as_view(template_name="inventory/people/login.html", authentication_form=SignInForm)
logout = LogoutView.as_view(next_page="people:login")


@member
@require_GET
def people(request: HttpRequest) -> HttpResponse:
    """List who works here; an owner sees what of theirs is due."""
    shop = shop_of(request)
    context: dict[str, object] = {"people": queries.people(shop)}
    if person_of(request).is_owner:
        context["dues"] = record.due(shop, timezone.localdate())
    return render(request, "inventory/people/list.html", context)


@owner
def new(request: HttpRequest) -> HttpResponse:
    """Add somebody."""
    return _kept(request, PersonForm(request.POST or None), "Somebody new", "Add this person")


@owner
def edit(request: HttpRequest, code: str) -> HttpResponse:
    """Change somebody's role or sign-in."""
    person = get_object_or_404(Person, shop=shop_of(request), code=code.upper())
    return _kept(
        request,
        PersonForm(request.POST or None, instance=person),
        f"Change {person.name}",
        "Keep the changes",
    )


def _kept(request: HttpRequest, form: PersonForm, title: str, button: str) -> HttpResponse:
    if request.method == "POST" and form.is_valid():
        person, data = form.instance, form.cleaned_data
        try:
            actions.keep(person, shop_of(request), password=data["password"], pin=data["pin"])
        except actions.LastOwner as refusal:
            form.add_error(None, refusal.says)
        else:
            messages.success(request, f"{person.name} is kept.")
            return redirect("people:list")
    context = {"form": form, "title": title, "button": button, "back": "people:list", "back_label": "People"}
    return render(request, "inventory/parts/form_page.html", context)


@owner
@require_POST
def remove_name(request: HttpRequest, code: str) -> HttpResponse:
    """Take the name of somebody who left out of the program."""
    person = get_object_or_404(Person, shop=shop_of(request), code=code.upper())
    try:
        actions.remove_name(person)
        messages.success(request, "The name is gone; the entries stay under the code.")
    except actions.LastOwner as refusal:
        messages.error(request, refusal.says)
    return redirect("people:list")
