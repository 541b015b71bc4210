"""The sheets of the report: what to order from whom and why, what is not ordered, how it was reckoned."""

from collections.abc import Iterator
from datetime import date
from functools import partial
from io import BytesIO
from typing import Literal

from reportlab.lib.pagesizes import A4, LETTER
from reportlab.lib.units import mm
from reportlab.platypus import (
    BaseDocTemplate,
    CondPageBreak,
    Flowable,
    Frame,
    PageTemplate,
    Paragraph,
    Spacer,
    Table,
)

from inventory.money import show_money
from inventory.reorder.pdf.page import (
    FOOT,
    INK,
    SIDE,
    SOFT,
    THIN,
    TOP,
    Cell,
    Command,
    NumberedCanvas,
    cell,
    figure,
    heads,
    ruled,
    style,
    table,
    text,
)
from inventory.reorder.pdf.picture import picture
from inventory.reorder.rules import Line, Report, SupplierOrder, words, z_of
from safety.print.fonts import BOLD, printable, register

Paper = Literal["A4", "Letter"]
PAPERS: dict[Paper, tuple[float, float]] = {"A4": A4, "Letter": LETTER}

METHOD = (
    "How it is reckoned. Order up to = booked (what open jobs due before the month's end and the lead time "
    "still need) + expected beside (use that nobody booked yet, from the ledger of the last 12 months) + "
    "safety on that part. A booking counts once. Usable on hand leaves out what expires unused before then. "
    "A mixed bottle serves booked jobs at its own mix: these are left out of booked, what else it holds is "
    "not counted. What a job needs of a kind comes from any product of it on hand, first expired first; what "
    "lacks counts for the one used most. Cycle service {service:.0%} (z {z:.3f}): the chance that a product "
    "does not run out before the next order comes; it is not the share of demand met. Whole packs, then no "
    "more than gets used before it expires, never less than booked jobs need."
)


def report_pdf(report: Report, paper: Paper = "A4") -> bytes:
    """Return the report as a PDF, with the head of the ledger and "page x of y" on every sheet."""
    register()
    width, height = PAPERS[paper]
    into = BytesIO()
    pages = BaseDocTemplate(
        into,
        pagesize=(width, height),
        title=printable(f"Orders for {report.month:%B %Y}, {report.shop}"),
        author=printable(report.shop),
        subject=printable(report.says),
        lang="en",
        invariant=1,
    )
    frame = Frame(SIDE, FOOT, width - 2 * SIDE, height - TOP - FOOT, 0, 0, 0, 0)
    pages.addPageTemplates(PageTemplate(frames=[frame]))
    pages.build(list(_story(report, width - 2 * SIDE)), canvasmaker=partial(NumberedCanvas, report=report))
    return into.getvalue()


def _story(report: Report, width: float) -> Iterator[Flowable]:
    yield text(f"Orders for {report.month:%B %Y}", style(22, BOLD, spaceAfter=1))
    yield text(f"{report.shop} · made on {words.day_and_year(report.made_on)}", style(10, colour=SOFT))
    yield Spacer(0, 3 * mm)
    yield ruled(width)
    yield text(report.says, style(14, BOLD, spaceBefore=4 * mm, spaceAfter=4 * mm))
    ordering = [order for order in report.orders if order.lines]
    if ordering:
        yield _summary(report, ordering, width)
    for order in ordering:
        yield from _supplier(order, report.currency, width)
    yield from _not_ordered(report, width)
    yield Spacer(0, 6 * mm)
    yield text(METHOD.format(service=report.service, z=z_of(report.service)), style(8, colour=SOFT))


def _summary(report: Report, ordering: list[SupplierOrder], width: float) -> Table:
    """One row a supplier: how many products, by when, what may be lost of it, what it costs."""
    rows = [heads("Supplier", "Products", "Order by", "May expire", "Cost")]
    for order in ordering:
        by_on = min((line.order_by_on for line in order.lines if line.order_by_on), default=None)
        by = "this month" if by_on is None else words.day(by_on)
        figures = (str(len(order.lines)), by, _lost(order.expected_to_expire_minor, report.currency))
        cost = figure(show_money(order.total_minor, report.currency))
        rows.append([cell(order.supplier.name, BOLD), *map(figure, figures), cost])
    lost = _lost(sum(order.expected_to_expire_minor for order in ordering), report.currency)
    total = figure(show_money(report.total_minor, report.currency), BOLD)
    rows.append([cell("Together", BOLD), *map(figure, (str(len(report.lines)), "", lost)), total])
    return table(rows, [width * 0.36, *[width * 0.16] * 4], _LAST)


_LAST: Command = ("LINEABOVE", (0, -1), (-1, -1), 0.8, INK)


def _lost(minor: int, currency: str) -> str:
    return show_money(minor, currency) if minor else "none"


def _supplier(order: SupplierOrder, currency: str, width: float) -> Iterator[Flowable]:
    yield CondPageBreak(60 * mm)
    yield Spacer(0, 7 * mm)
    yield text(order.supplier.name, style(15, BOLD))
    yield text(order.says, style(10, spaceBefore=1 * mm, spaceAfter=2 * mm))
    yield _order_table(order, currency, width)
    placed = "Placed on ____________________ by ____________________"
    yield text(placed, style(9, colour=SOFT, spaceBefore=6 * mm))
    yield Spacer(0, 4 * mm)
    for number, line in enumerate(order.lines):
        yield picture(line, width, "Stock to come" if number == 0 else "")


def _order_table(order: SupplierOrder, currency: str, width: float) -> Table:
    """Two rows a product: its figures, and its because across the whole width."""
    stock = ("Usable on hand", "On order")
    rows = [heads("Product", *stock, "Booked", "Expected beside", "Safety", "Order up to", "Order", "Cost")]
    more: list[Command] = []
    for line in order.lines:
        row = len(rows)
        rows += [_figures(line, currency), [text(line.because, style(8, colour=SOFT))]]
        more += [
            ("SPAN", (0, row + 1), (-1, row + 1)),
            ("LINEBELOW", (0, row + 1), (-1, row + 1), 0.4, THIN),
            ("BOTTOMPADDING", (0, row), (-1, row), 0),
            ("TOPPADDING", (0, row + 1), (-1, row + 1), 0.4 * mm),
            ("NOSPLIT", (0, row), (-1, row + 1)),
        ]
    total = figure(show_money(order.total_minor, currency), BOLD)
    rows.append([cell("Together", BOLD), *[figure("")] * 7, total])
    shares = (0.22, 0.085, 0.08, 0.085, 0.09, 0.08, 0.085, 0.15, 0.125)
    return table(rows, [width * share for share in shares], *more, _LAST, thin=False)


def _figures(line: Line, currency: str) -> list[Cell]:
    wanted = line.wanted
    levels = (line.usable, line.on_order, wanted.booked, wanted.unbooked, wanted.safety, wanted.order_up_to)
    cost = "not recorded" if line.cost_minor is None else show_money(line.cost_minor, currency)
    by = [] if line.order_by_on is None else [_by(line.order_by_on, wanted.from_on)]
    return [
        cell(line.product.name, BOLD),
        *(figure(words.amount(base, line.product)) for base in levels),
        [figure(words.packs(line.choice, line.product) if line.choice else "", BOLD), *by],
        figure(cost),
    ]


def _by(by_on: date, today: date) -> Paragraph:
    return figure("today" if by_on == today else f"by {words.day(by_on)}", size=8)


def _not_ordered(report: Report, width: float) -> Iterator[Flowable]:
    """One line each, so that nobody asks whether a product was forgotten."""
    enough = [line for order in report.orders for line in order.enough]
    if not enough:
        return
    yield CondPageBreak(40 * mm)
    yield Spacer(0, 7 * mm)
    yield text("Not ordered", style(15, BOLD, spaceAfter=2 * mm))
    why = text("Why", style(7.5, colour=SOFT))
    rows = [[*heads("Product", "Usable on hand", "On order", "Order up to"), why]]
    for line in sorted(enough, key=lambda line: line.product.name):
        levels = (line.usable, line.on_order, line.wanted.order_up_to)
        shown = [figure(words.amount(base, line.product)) for base in levels]
        rows.append([cell(line.product.name), *shown, text(line.because, style(8))])
    shares = (0.26, 0.12, 0.1, 0.11, 0.41)
    yield table(rows, [width * share for share in shares], ("LEFTPADDING", (4, 0), (4, -1), 6 * mm))
