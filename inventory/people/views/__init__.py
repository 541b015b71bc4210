"""The people pages, and what they share: finding somebody, the form pages of a record."""

from django import forms
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, render

from inventory.access import person_of, shop_of
from inventory.models import Person


def found(request: HttpRequest, code: str) -> Person:
    """Return somebody of the shop by the code of their badge."""
    return get_object_or_404(Person, shop=shop_of(request), code=code.upper())


def own_or_owner(request: HttpRequest, code: str) -> Person:
    """Return somebody whose record may be seen: one's own, anybody's for an owner."""
    person, reader = found(request, code), person_of(request)
    if not (reader.is_owner or reader.pk == person.pk):
        raise PermissionDenied("A record is read by the person it is about and by an owner.")
    return person


def form_page(
    request: HttpRequest,
    form: forms.BaseForm,
    title: str,
    button: str,
    *,
    back: str,
    back_label: str,
    lead: str = "",
) -> HttpResponse:
    """Show a form that leads back to an address."""
    context = {
        "form": form, "title": title, "button": button, "back": back, "back_label": back_label, "lead": lead,
    }  # fmt: skip
    return render(request, "inventory/people/form.html", context)
