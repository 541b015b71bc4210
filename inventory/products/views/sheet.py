"""Attaching a data sheet to a product: its file, somebody's word on it, and the link, in one path."""

from urllib.parse import urlencode

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone

from inventory.access import owner, person_of
from inventory.codes import tidy
from inventory.models import Product
from inventory.products import actions
from inventory.products.forms import AttachForm
from safety.actions import NothingRead

from .products import the_product


@owner
def sheet(request: HttpRequest, code: str) -> HttpResponse:
    """Choose a sheet that is here, or take a new one in; `sheet` comes back from there, `job` leads on."""
    product, job = the_product(request, code), tidy(request.GET.get("job", "")) or ""
    chosen = request.GET.get("sheet", "")
    form = AttachForm(request.POST or None, product=product, chosen=chosen if chosen.isdecimal() else "")
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        by = str(person_of(request)) if given["confirm"] else ""
        try:
            actions.attach_sheet(product, given["sheet"], confirmed_by=by, on=timezone.localdate())
        except NothingRead as wrong:
            form.add_error("sheet", str(wrong))
        else:
            messages.success(request, f"{product.name} has its data sheet now.")
            return redirect("precheck:job", job) if job else redirect("products:product", product.code)
    context = {
        "product": product,
        "form": form,
        "new": f"{reverse('safety:new_sheet')}?{urlencode(_new(product, job))}",
        "back": reverse("precheck:job", args=[job]) if job else reverse("products:product", args=[code]),
        "job": job,
        "shown": form["sheet"].value(),
        "returned": chosen,
    }
    return render(request, "inventory/products/sheet.html", context)


def _new(product: Product, job: str) -> dict[str, str]:
    """Return what the page of a new sheet starts from, and where it leads back to."""
    here = reverse("products:sheet", args=[product.code])
    back = f"{here}?job={job}" if job else here
    return {"title": product.name, "supplier": product.maker, "back": back}
