"""The rag cans, emptied daily, and the waste cans with what is in them."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.models import Person, Place, PlaceCheck
from inventory.people.actions import cans as actions
from inventory.precheck import queries as precheck


@member
@require_GET
def home(request: HttpRequest) -> HttpResponse:
    """Show each rag can with its last emptying, and what each waste can holds."""
    shop, at = shop_of(request), timezone.now()
    context = {
        "rags": [(can, can.full(at, shop.zone)) for can in precheck.rag_cans(shop)],
        "cans": precheck.cans(shop),
        "may_work": person_of(request).role != Person.Role.VIEWER,
    }
    return render(request, "inventory/people/cans.html", context)


@worker
@require_POST
def rags(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that the rag can of a place was emptied now."""
    place = get_object_or_404(Place, shop=shop_of(request), code=code.upper())
    actions.emptied(place, PlaceCheck.What.RAGS, by=person_of(request), at=timezone.now())
    messages.success(request, f"Kept: the rag can of {place.name} is emptied.")
    return redirect("people:cans")


@worker
@require_POST
def emptied(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that a waste can was emptied and rinsed now."""
    can = get_object_or_404(Place, shop=shop_of(request), kind=Place.Kind.CAN, code=code.upper())
    actions.emptied(can, PlaceCheck.What.EMPTIED, by=person_of(request), at=timezone.now())
    messages.success(request, f"Kept: {can.name} is emptied and rinsed. It may take anything now.")
    return redirect("people:cans")
