"""The label page: what will be printed, on which stock; then the PDF. Only printing counts as labelled."""

from typing import Any, cast

from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.shortcuts import render
from django.views.decorators.http import require_http_methods

from inventory.access import shop_of, worker_or_station
from inventory.models import Container, Shop
from inventory.posters import actions, queries
from inventory.posters.forms import LabelForm
from inventory.posters.views import sent
from safety.label_content import NotSmall, UnknownForm, immediate_use, label_stock
from safety.print.label import SIZES, LabelTooSmall
from safety.print.label_sheets import ROLL, NoSuchPlace
from safety.print.values import LabelContent
from safety.print.words import UnknownLanguage

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
    form = LabelForm(request.POST, shop=shop) if request.method == "POST" else None
    if form and form.is_valid() and (answer := _printed(request, shop, containers, form)):
        return answer
    contents = _shown(request, shop, containers)
    chosen = _stock(request, contents)
    context = {
        "rows": [{"container": row, "says": says} for row, says in zip(containers, contents, strict=True)],
        "form": form or LabelForm(initial=chosen, shop=shop),
        "codes": ",".join(row.code for row in containers),
        "missing": queries.missing(codes, containers),
        "why": chosen["why"],
        "immediate": immediate_use(shop.regime) if any(row.refillable for row in containers) else None,
        "stock": label_stock(),
        "british": shop.country == "GB",
    }
    return render(request, "inventory/posters/labels.html", context, status=422 if form else 200)


def _printed(
    request: HttpRequest, shop: Shop, containers: list[Container], form: LabelForm
) -> HttpResponse | None:
    chosen: dict[str, Any] = form.cleaned_data
    try:
        pdf, _ = actions.print_strip(shop, containers, queries.now(), **chosen)
    except LabelTooSmall as refusal:
        _offer_next(form, _shown(request, shop, containers), refusal)
        return None
    except (NotSmall, UnknownForm) as refusal:
        form.add_error("form", str(refusal))
        return None
    except NoSuchPlace as refusal:
        form.add_error("first", str(refusal))
        return None
    request.session[REMEMBERED] = {"size": chosen["size"], "paper": chosen["paper"]}
    name = f"label {containers[0].code}" if len(containers) == 1 else f"{len(containers)} labels"
    return sent(pdf, name)


def _shown(request: HttpRequest, shop: Shop, containers: list[Container]) -> list[LabelContent]:
    """Return what the labels would say in the form asked for, else each in its own."""
    asked = request.POST if request.method == "POST" else request.GET
    try:
        return queries.labels(shop, containers, asked.get("form", ""), asked.get("language", ""))
    except (NotSmall, UnknownForm, UnknownLanguage):
        return queries.labels(shop, containers)


def _stock(request: HttpRequest, contents: list[LabelContent]) -> dict[str, Any]:
    used = request.session.get(REMEMBERED, {})
    known = used.get("size") in SIZES
    paper = used.get("paper", ROLL)
    asked = {"form": request.GET.get("form", ""), "paper": paper, "first": 1}
    try:
        # The stock in the printer is used as far as it carries a label.
        choice = queries.stock_for(contents, used["size"] if known else "", paper)
    except (LabelTooSmall, NoSuchPlace) as refusal:
        return asked | {"size": list(SIZES)[-1], "why": str(refusal)}
    return asked | {"size": choice.size.name, "why": choice.says}


def _offer_next(form: LabelForm, contents: list[LabelContent], refusal: LabelTooSmall) -> None:
    """Say that the label is too small, and have the size that does stand in the form for the next tap."""
    size, paper = form.cleaned_data["size"], form.cleaned_data["paper"]
    try:
        does = queries.stock_for(contents, size, paper)
    except (LabelTooSmall, NoSuchPlace):
        form.add_error("size", str(refusal))
        return
    form.add_error("size", refusal.instead(does.size))
    typed = cast(QueryDict, form.data).copy()
    typed["size"] = does.size.name
    form.data = typed
