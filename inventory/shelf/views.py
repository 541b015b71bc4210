"""The shelf's pages: the list with its filters, one bottle with its life, and what may be done to it."""

from collections.abc import Callable

from django.contrib import messages
from django.forms import Form
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.html import format_html
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, owner, person_of, shop_of, worker
from inventory.codes import pair
from inventory.models import Container, Kind
from inventory.shelf import actions, queries
from inventory.shelf.forms import (
    CorrectForm,
    CountForm,
    DiscardForm,
    HoldForm,
    MoveForm,
    ReleaseForm,
    RetestForm,
)
from inventory.stock import washing
from inventory.stock.queries import dates_of_container, why_held
from inventory.stock.rules.acts import LotFacts
from inventory.stock.rules.lines import Refused
from inventory.stock.rules.lots import DATES
from inventory.stock.rules.use_by import terms
from inventory.stock.rules.washing import STAYS
from inventory.units import AmountError, in_words, parse_amount

FILTERS = (("", "All"), ("open", "Open now"), ("dying", "Dying in 30 days"), ("low", "Low"), ("held", "Held"))


@member
@require_GET
def shelf(request: HttpRequest) -> HttpResponse:
    """List what stands on the shelf."""
    shop, wanted = shop_of(request), _wanted(request)
    return render(
        request,
        "inventory/shelf/list.html",
        {
            "bottles": queries.bottles(shop, wanted, queries.now()),
            "wanted": wanted,
            "filters": FILTERS,
            "places": queries.places(shop),
            "kinds": Kind.choices,
            "most": queries.MOST_ROWS,
        },
    )


def _wanted(request: HttpRequest) -> queries.Wanted:
    asked = request.GET
    return queries.Wanted(
        asked.get("only", ""), asked.get("place", ""), asked.get("kind", ""), asked.get("q", "")
    )


@member
@require_GET
def bottle(request: HttpRequest, code: str) -> HttpResponse:
    """Show one bottle: its date and why, its content, its life."""
    shop, at = shop_of(request), queries.now()
    container = _found(request, code)
    lots = list(container.lots.all())
    return render(
        request,
        "inventory/shelf/container.html",
        {
            "container": container,
            "bottle": queries.bottle(shop, container, at),
            "terms": terms(dates_of_container(container), shop.zone),
            "lots": lots,
            "held": why_held(container, lots),
            "entries": queries.life(container, person_of(request), at),
            "washable": container.state == Container.State.OPEN and washing.washes_matter(container),
            "hazards": queries.hazards(shop, container),
        },
    )


def _found(request: HttpRequest, code: str) -> Container:
    found = queries.container(shop_of(request), code.upper())
    if found is None:
        raise Http404(f"No bottle here carries the code {code}.")
    return found


def _form_page(
    title: str,
    button: str,
    make: Callable[[HttpRequest, Container], Form],
    do: Callable[[HttpRequest, Container, Form], str],
) -> Callable[[HttpRequest, str], HttpResponse]:
    def page(request: HttpRequest, code: str) -> HttpResponse:
        container = _found(request, code)
        form = make(request, container)
        if request.method == "POST" and form.is_valid():
            try:
                messages.success(request, do(request, container, form))
                return redirect("shelf:container", container.code)
            except Refused as refusal:
                form.add_error(None, refusal.says)
        context = {"container": container, "form": form, "title": title, "button": button}
        return render(request, "inventory/shelf/act.html", context)

    return page


def _count(request: HttpRequest, container: Container, form: Form) -> str:
    actions.count(container, form.cleaned_data["amount"], by=person_of(request), at=queries.now())
    return f"Counted {pair(container.code)}."


def _move(request: HttpRequest, container: Container, form: Form) -> str:
    place = form.cleaned_data["place"]
    actions.move(container, place.code, by=person_of(request), at=queries.now())
    return f"{pair(container.code)} stands in {place.name} now. {form.cleaned_data['told']}".rstrip()


def _discard(request: HttpRequest, container: Container, form: Form) -> str:
    can, why = form.cleaned_data.get("can"), form.cleaned_data["reason"]
    actions.discard(container, why, can, by=person_of(request), at=queries.now())
    return f"{pair(container.code)} is off the shelf{f', tipped into {can.name}' if can else ''}."


def _hold(request: HttpRequest, container: Container, form: Form) -> str:
    data = form.cleaned_data
    actions.hold(container, data["reason"], data["whole_lot"], by=person_of(request), at=queries.now())
    return f"{pair(container.code)} is held: {data['reason']}. An owner can release it."


def _release(request: HttpRequest, container: Container, form: Form) -> str:
    data = form.cleaned_data
    actions.release(container, data["reason"], data["whole_lot"], by=person_of(request), at=queries.now())
    return f"{pair(container.code)} may be used again."


def _correct(request: HttpRequest, container: Container, form: Form) -> str:
    actions.correct(container, LotFacts(**form.cleaned_data), by=person_of(request), at=queries.now())
    return f"Booked what is printed on {pair(container.code)}."


def _correct_form(request: HttpRequest, container: Container) -> Form:
    lot = container.lots.first()
    printed = {name: getattr(lot, name) for name in ("number", *DATES)} if lot else {}
    return CorrectForm(request.POST or None, initial=printed)


def _retest(request: HttpRequest, container: Container, form: Form) -> str:
    data = form.cleaned_data
    actions.retest(
        container, data["test"], data["evidence"], data["until"], by=person_of(request), at=queries.now()
    )
    return f"{pair(container.code)} is good until {data['until']:%d %B %Y} by your test."


count = worker(
    _form_page(
        "Count",
        "Book the count",
        lambda request, container: CountForm(
            request.POST or None, shop=shop_of(request), container=container
        ),
        _count,
    )
)
move = worker(
    _form_page(
        "Move",
        "Move it",
        lambda request, container: MoveForm(request.POST or None, shop=shop_of(request), container=container),
        _move,
    )
)
discard = worker(
    _form_page(
        "Discard",
        "Take it off the shelf",
        lambda request, row: DiscardForm(request.POST or None, shop=shop_of(request), container=row),
        _discard,
    )
)
hold = worker(_form_page("Hold", "Hold it", lambda request, _: HoldForm(request.POST or None), _hold))
release = owner(
    _form_page("Release", "Release it", lambda request, _: ReleaseForm(request.POST or None), _release)
)
correct = worker(_form_page("Correct the lot or the dates of", "Book it", _correct_form, _correct))
retest = owner(
    _form_page("Retest", "Record the test", lambda request, _: RetestForm(request.POST or None), _retest)
)


@worker
@require_POST
def take_back(request: HttpRequest, code: str, seq: int) -> HttpResponse:
    """Reverse one entry, or say what is in the way."""
    container = _found(request, code)
    try:
        taken = actions.take_back(container, seq, by=person_of(request), at=queries.now())[0].reverses
        messages.success(request, f"Taken back: “{taken.get_kind_display()}”." if taken else "Taken back.")
    except Refused as refusal:
        messages.error(request, refusal.says)
    return redirect("shelf:container", container.code)


@worker
@require_POST
def washed(request: HttpRequest, code: str) -> HttpResponse:
    """Keep that a pad or towel was washed."""
    container = _found(request, code)
    try:
        washing.wash(container, by=person_of(request), at=queries.now())
        messages.success(request, f"Washed {pair(container.code)}. {STAYS}")
    except Refused as refusal:
        messages.error(request, refusal.says)
    return redirect("shelf:container", container.code)


@worker
@require_POST
def undo_washed(request: HttpRequest, code: str) -> HttpResponse:
    """Take the newest washing back, or say what is in the way."""
    container = _found(request, code)
    try:
        washing.take_back(container, by=person_of(request), at=queries.now())
        messages.success(request, "Taken back: “washed”.")
    except Refused as refusal:
        messages.error(request, refusal.says)
    return redirect("shelf:container", container.code)


@member
@require_GET
def understood(request: HttpRequest) -> HttpResponse:
    """Say how an amount that is being typed is understood."""
    shop, text = shop_of(request), request.GET.get("amount", "")
    if not text.strip():
        return HttpResponse("")
    dimension = request.GET.get("dimension") or None
    try:
        read = parse_amount(text, dimension=dimension, system=shop.system, decimal=shop.decimal_mark or None)
    except AmountError as error:
        return HttpResponse(format_html("{}", str(error)))
    return HttpResponse(format_html("{}", in_words(text, read, shop.system)))
