"""The month's report: each supplier's order ready to be placed, its charts, its files."""

from dataclasses import dataclass
from datetime import date

from django.contrib import messages
from django.forms import BoundField
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils.safestring import SafeString, mark_safe
from django.views.decorators.http import require_GET, require_POST

from inventory.access import member, person_of, shop_of, worker
from inventory.drawing import svg
from inventory.models import Pack, Shop, Supplier
from inventory.reorder import actions, queries
from inventory.reorder.charts import PENS, Week, stock_chart, weeks
from inventory.reorder.forms import PlaceForm, pack_ids
from inventory.reorder.rules import Line, MonthIsOver, Report, SupplierOrder, WrongFacts, words
from inventory.reorder.rules.months import NoMonth, later, month_called
from inventory.stock.requests import KeyReused
from inventory.units import Dimension

# Width of a chart in its own units, where there is room and on a phone: its letters keep their size.
WIDE, NARROW = 560.0, 230.0
MONTHS_OFFERED = 4


@dataclass(frozen=True)
class Figures:
    """A row of the table beside a chart, in words."""

    on: date
    level: str
    level_with_order: str
    comes: str
    expires: str
    short: str


@dataclass(frozen=True)
class OrderedLine:
    """A product to order: its pack and number field, its chart on two widths, the figures behind both."""

    line: Line
    pack: str
    field: BoundField | None
    wide: SafeString
    narrow: SafeString
    reckoned: list[tuple[str, str]]
    weeks: list[Figures]

    @property
    def comes(self) -> bool:
        """A delivery comes in one of the weeks: its column is shown."""
        return any(week.comes for week in self.weeks)

    @property
    def expires(self) -> bool:
        """Something dies unused in one of the weeks."""
        return any(week.expires for week in self.weeks)

    @property
    def short(self) -> bool:
        """Something is missing in one of the weeks."""
        return any(week.short for week in self.weeks)


@dataclass(frozen=True)
class Section:
    """What to order from one supplier; without a supplier of the shop there is no form."""

    order: SupplierOrder
    supplier: Supplier | None
    form: PlaceForm | None
    lines: list[OrderedLine]


@member
@require_GET
def report(request: HttpRequest) -> HttpResponse:
    """Show a month's report, each supplier's order ready to be placed."""
    return _report_page(request)


def _report_page(request: HttpRequest, posted: PlaceForm | None = None) -> HttpResponse:
    shop = shop_of(request)
    on = queries.today(shop)
    context: dict[str, object] = {"months": [later(on, ahead) for ahead in range(MONTHS_OFFERED)]}
    try:
        found = _report(request, shop, on)
    except (NoMonth, MonthIsOver, WrongFacts) as refusal:
        context |= {"refusal": str(refusal)}
        return render(request, "inventory/reorder/report.html", context, status=400)
    context |= {
        "report": found,
        "service": round(100 * found.service),
        "grade": "ask" if queries.soon_of(found) else "tell" if found.lines else "ready",
        "sections": _sections(shop, found, posted),
    }
    return render(request, "inventory/reorder/report.html", context, status=422 if posted else 200)


def _report(request: HttpRequest, shop: Shop, on: date) -> Report:
    asked = request.GET.get("month", "")
    return queries.report(shop, month_called(asked, on) if asked else queries.month_in_view(on), on)


def _sections(shop: Shop, report: Report, posted: PlaceForm | None) -> list[Section]:
    suppliers, packs = queries.supplier_rows(shop), queries.packs_of_report(shop, report)
    found = []
    for order in report.orders:
        supplier = suppliers.get(order.supplier.name)
        rows = {
            line.product.code: packs[line.product.code, line.choice.pack]
            for line in order.lines
            if line.choice
        }
        form = _form(supplier, order, rows, posted) if supplier and rows else None
        fields = {code: form[f"pack_{row.pk}"] for code, row in rows.items()} if form else {}
        lines = [_line(line, fields.get(line.product.code)) for line in order.lines]
        found.append(Section(order, supplier, form, lines))
    return found


def _form(
    supplier: Supplier, order: SupplierOrder, rows: dict[str, Pack], posted: PlaceForm | None
) -> PlaceForm:
    """Return what the supplier's form holds: what was typed, where this is the form that was refused."""
    if posted and posted.supplier == supplier:
        return PlaceForm(posted.typed, supplier=supplier, packs=[*rows.values(), *posted.packs.values()])
    wanted = {rows[line.product.code].pk: line.packs for line in order.lines}
    return PlaceForm(supplier=supplier, packs=rows.values(), wanted=wanted)


def _line(line: Line, field: BoundField | None) -> OrderedLine:
    assert line.choice is not None
    code, product = line.product.code, line.product
    size = queries.pack_size(line)
    return OrderedLine(
        line=line,
        pack=size if product.dimension == Dimension.PIECES else f"{size} {line.choice.pack.noun}",
        field=field,
        wide=_drawn(line, WIDE, code),
        narrow=_drawn(line, NARROW, f"{code}-narrow"),
        reckoned=_reckoned(line),
        weeks=[_figures(week, line) for week in weeks(line)],
    )


def _reckoned(line: Line) -> list[tuple[str, str]]:
    """Return the sum behind the order, a row a term."""
    wanted = line.wanted
    terms = (
        ("Usable on hand", line.usable),
        ("On order", line.on_order),
        ("Booked", wanted.booked),
        ("Expected beside", wanted.unbooked),
        ("Safety", wanted.safety),
        ("Order up to", wanted.order_up_to),
    )
    return [(what, words.amount(base, line.product)) for what, base in terms]


def _drawn(line: Line, width: float, name: str) -> SafeString:
    # `svg` escapes every text that it draws.
    return mark_safe(svg(stock_chart(line, width), PENS, name))


def _figures(week: Week, line: Line) -> Figures:
    def said(base: float) -> str:
        return words.amount(base, line.product)

    some = (said(base) if base else "" for base in (week.comes, week.expires, week.short))
    return Figures(week.on, said(week.level), said(week.level_with_order), *some)


@member
@require_GET
def download(request: HttpRequest, extension: str) -> HttpResponse:
    """Hand out the report as a file: pdf, xlsx, csv or json."""
    if extension not in queries.CONTENT_TYPES:
        raise Http404(f"There is no report as .{extension}: pdf, xlsx, csv and json are made.")
    shop = shop_of(request)
    try:
        found = _report(request, shop, queries.today(shop))
    except (NoMonth, MonthIsOver, WrongFacts) as refusal:
        return HttpResponse(str(refusal), status=400, content_type="text/plain; charset=utf-8")
    data = queries.file_of(found, extension, queries.paper_of(shop))
    name = f"orders-{found.month:%Y-%m}.{extension}"
    headers = {"Content-Disposition": f'attachment; filename="{name}"', "X-Content-Type-Options": "nosniff"}
    return HttpResponse(data, content_type=queries.CONTENT_TYPES[extension], headers=headers)


@worker
@require_POST
def place(request: HttpRequest, supplier: int) -> HttpResponse:
    """Mark an order as placed with a supplier, with the packs that the form names."""
    shop = shop_of(request)
    whom = get_object_or_404(Supplier, shop=shop, pk=supplier)
    form = PlaceForm(
        request.POST, supplier=whom, packs=queries.packs_called(whom, pack_ids(request.POST, whom))
    )
    if not form.is_valid():
        return _report_page(request, form)
    key = form.cleaned_data["key"]
    try:
        code = actions.place(shop, whom, form.counts(), key=key, by=person_of(request), at=queries.now())
    except KeyReused:
        messages.warning(
            request, "This order was placed already, with other numbers. Nothing was added to it."
        )
        return redirect("reorder:orders")
    messages.success(request, f"Marked as placed with {whom}. Scan {code[:4]} {code[4:]} when it comes.")
    return redirect("reorder:order", code)
