"""The label page: what will be printed, on which stock; then the PDF. Only printing counts as labelled."""

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_http_methods

from inventory.access import shop_of, worker_or_station
from inventory.models import Container, Shop
from inventory.posters import actions, queries
from inventory.posters.forms import LabelForm
from inventory.posters.views import sent
from safety.print.label import SIZES, LabelTooSmall
from safety.print.label_sheets import ROLL, NoSuchPlace
from safety.print.values import LabelContent

# Which stock is in the printer stays the same for weeks: two taps print the next label.
REMEMBERED = "label_stock"


@worker_or_station
@require_http_methods(["GET", "POST"])
def label_pdf(request: HttpRequest, code: str) -> HttpResponse:
    """Print the label of one container: this page, then the printer."""
    return _labels(request, [code])


@worker_or_station
@require_http_methods(["GET", "POST"])
def labels_pdf(request: HttpRequest) -> HttpResponse:
    """Print the labels of several containers in one strip (`codes=`, separated by commas)."""
    codes = request.POST.get("codes") or request.GET.get("codes", "")
    return _labels(request, [code.strip() for code in codes.split(",") if code.strip()])


def _labels(request: HttpRequest, codes: list[str]) -> HttpResponse:
    shop = shop_of(request)
    containers = queries.in_order(shop, codes)
    if not containers:
        raise Http404("None of these codes is on a bottle here.")
    form = LabelForm(request.POST) if request.method == "POST" else None
    if form and form.is_valid() and (answer := _printed(request, shop, containers, form)):
        return answer
    contents = queries.labels(shop, containers)
    context = {
        "rows": [{"container": row, "says": says} for row, says in zip(containers, contents, strict=True)],
        "form": form or LabelForm(initial=_stock(request, contents)),
        "codes": ",".join(row.code for row in containers),
        "missing": queries.missing(codes, containers),
    }
    return render(request, "inventory/posters/labels.html", context, status=422 if form else 200)


def _printed(
    request: HttpRequest, shop: Shop, containers: list[Container], form: LabelForm
) -> HttpResponse | None:
    chosen: dict[str, Any] = form.cleaned_data
    try:
        pdf, _ = actions.print_strip(shop, containers, queries.now(), **chosen)
    except LabelTooSmall as refusal:
        form.add_error("size", str(refusal))
        return None
    except NoSuchPlace as refusal:
        form.add_error("first", str(refusal))
        return None
    request.session[REMEMBERED] = {"size": chosen["size"], "paper": chosen["paper"]}
    name = f"label {containers[0].code}" if len(containers) == 1 else f"{len(containers)} labels"
    return sent(pdf, name)


def _stock(request: HttpRequest, contents: list[LabelContent]) -> dict[str, object]:
    used = request.session.get(REMEMBERED, {})
    known = used.get("size") in SIZES
    try:
        # The stock in the printer is used as far as it carries a label; without one, all facts are to fit.
        size = queries.stock_for(contents, used["size"] if known else "medium", whole=not known)
    except LabelTooSmall:
        size = list(SIZES)[-1]
    return {"size": size, "paper": used.get("paper", ROLL), "first": 1}
