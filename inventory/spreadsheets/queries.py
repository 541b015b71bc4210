"""What a file would do to the shop: reads alone, outside any transaction, so that nobody waits for it."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.core.exceptions import ValidationError
from django.db.models import Prefetch

from inventory.codes import tidy
from inventory.models import (
    Container,
    Job,
    Lot,
    Pack,
    Person,
    Place,
    Product,
    Service,
    Shop,
    Step,
    Supplier,
    Vehicle,
)
from inventory.spreadsheets.resources import RESOURCES, Amiss, JobResource, Known, Sheet, StockResource
from inventory.spreadsheets.resources import jobs as job_rows
from inventory.spreadsheets.resources import stock as stock_rows
from inventory.spreadsheets.rules.outcome import Becomes, Change, Outcome, Problem, fingerprint
from inventory.spreadsheets.rules.table import Cell, Table, checked
from inventory.spreadsheets.rules.values import text_of
from inventory.stock import queries as stock

SLICE = 400
LOT_DATES = ("expires_on", "best_before_on", "made_on")


@dataclass(frozen=True)
class Judged:
    """A row's outcome, and the thing as it would be."""

    outcome: Outcome
    thing: Any


@dataclass(frozen=True)
class Preview:
    """What a file would do, row by row."""

    sheet: Sheet
    known: Known
    rows: list[Judged]

    @property
    def outcomes(self) -> list[Outcome]:
        """What becomes of each row."""
        return [row.outcome for row in self.rows]

    @property
    def wrong(self) -> bool:
        """Say whether a row cannot be taken."""
        return any(outcome.becomes is Becomes.WRONG for outcome in self.outcomes)

    @property
    def fingerprint(self) -> str:
        """Return the hash of all of it."""
        return fingerprint(self.outcomes)

    def becoming(self, becomes: Becomes) -> list[Any]:
        """Return the things of which this becomes."""
        return [row.thing for row in self.rows if row.outcome.becomes is becomes]


def preview(shop: Shop, slug: str, table: Table, at: datetime) -> Preview:
    """Return what a table would do to a shop at an instant; raises Unreadable for wrong columns."""
    sheet = RESOURCES[slug](shop)
    table = checked(table, sheet.heads, sheet.needed, sheet.what)
    known = known_of(shop, sheet, at, table)
    return Preview(sheet, known, list(_judged(sheet, table, known)))


def check_columns(shop: Shop, slug: str, table: Table) -> None:
    """Refuse a table whose heads are not those of its kind; raises Unreadable."""
    sheet = RESOURCES[slug](shop)
    checked(table, sheet.heads, sheet.needed, sheet.what)


def _judged(sheet: Sheet, table: Table, known: Known) -> Iterator[Judged]:
    for row in table.rows:
        known.row = row.number
        cells = dict(zip(table.heads, row.cells, strict=True))
        yield _judge(sheet, cells, known)


def _judge(sheet: Sheet, cells: dict[str, Cell], known: Known) -> Judged:
    about = text_of(cells.get(sheet.needed[0]))
    try:
        thing = sheet.find(cells, known)
        before = sheet.cells(thing, known) if thing is not None else None
        thing = sheet.fresh(cells, known) if thing is None else thing
        sheet.import_instance(thing, cells, known=known)
        sheet.check(thing, before, cells, known)
    except Amiss as amiss:
        return Judged(_wrong(sheet, known, about, amiss.sentences), None)
    except ValidationError as errors:
        sentences = {name: " ".join(says) for name, says in errors.message_dict.items()}
        return Judged(_wrong(sheet, known, about, sentences), None)
    after = sheet.cells(thing, known)
    changes = _changes(sheet, before, after)
    becomes = Becomes.NEW if before is None else Becomes.CHANGED if changes else Becomes.SAME
    return Judged(
        Outcome(known.row, becomes, sheet.about(thing), changes, (), sheet.note(thing, known)), thing
    )


def _wrong(sheet: Sheet, known: Known, about: str, sentences: dict[str, str]) -> Outcome:
    problems = [Problem(known.row, sheet.heading(name), says) for name, says in sentences.items()]
    return Outcome(known.row, Becomes.WRONG, about, (), tuple(problems))


def _changes(sheet: Sheet, before: list[Cell] | None, after: list[Cell]) -> tuple[Change, ...]:
    found = zip(sheet.heads, before or [None] * len(after), after, strict=True)
    told = [Change(head, text_of(was), text_of(now)) for head, was, now in found]
    return tuple(change for change in told if change.before != change.after)


def export(shop: Shop, slug: str, at: datetime) -> tuple[Sheet, list[list[Cell]]]:
    """Return a sheet and every row of it that the shop has."""
    sheet = RESOURCES[slug](shop)
    known = known_of(shop, sheet, at, None)
    return sheet, [sheet.cells(thing, known) for thing in _things(sheet, known)]


def _things(sheet: Sheet, known: Known) -> Iterable[Any]:
    if isinstance(sheet, StockResource):
        return [stock_rows.row_of(container, known) for container in known.containers.values()]
    if isinstance(sheet, JobResource):
        return [job_rows.row_of(job) for job in known.jobs.values()]
    by_slug: dict[str, Mapping[Any, Any]] = {
        "suppliers": known.suppliers,
        "products": known.products,
        "packs": known.packs,
    }
    return by_slug[sheet.slug].values()


def known_of(shop: Shop, sheet: Sheet, at: datetime, table: Table | None) -> Known:
    """Return what the shop has that a kind of sheet asks about: a constant number of queries."""
    known = Known(shop, at)
    products = list(
        Product.objects.filter(shop=shop).select_related("supplier", "shop").order_by("name", "id")
    )
    known.products = {product.code: product for product in products}
    known.product_names = type(known.product_names)((product.name, product) for product in products)
    _LOADERS[sheet.slug](known, table)
    return known


def _for_suppliers(known: Known, table: Table | None) -> None:
    rows = Supplier.objects.filter(shop=known.shop).order_by("name")
    known.suppliers = type(known.suppliers)((row.name, row) for row in rows)


def _for_products(known: Known, table: Table | None) -> None:
    _for_suppliers(known, table)
    stocked = Container.objects.filter(shop=known.shop, product__isnull=False)
    known.stocked = frozenset(stocked.values_list("product_id", flat=True).distinct())


def _for_packs(known: Known, table: Table | None) -> None:
    packs = list(Pack.objects.filter(product__shop=known.shop).order_by("product__name", "amount", "id"))
    of: dict[int, list[Pack]] = defaultdict(list)
    by_id = {product.pk: product for product in known.products.values()}
    for pack in packs:
        pack.product = by_id[pack.product_id]
        of[pack.product_id].append(pack)
    known.packs, known.packs_of = {pack.pk: pack for pack in packs}, of


def _for_stock(known: Known, table: Table | None) -> None:
    _for_packs(known, table)
    _for_places(known)
    rows = stock.containers(known.shop.id).order_by("product__name", "code")
    known.containers = {row.code: row for row in rows}
    lots = Lot.objects.filter(product__shop=known.shop).exclude(number="")
    known.lots = {
        (product, number): dict(zip(LOT_DATES, dates, strict=True))
        for product, number, *dates in lots.values_list("product_id", "number", *LOT_DATES)
    }
    if table and "code" in table.heads:
        known.taken = frozenset(_taken(table))


def _taken(table: Table) -> Iterator[str]:
    """Return the codes of a table that are, or were, on bottles anywhere in the installation."""
    place = table.heads.index("code")
    codes = [code for row in table.rows if (code := tidy(text_of(row.cells[place])))]
    for start in range(0, len(codes), SLICE):
        found = Container.objects.filter(code__in=codes[start : start + SLICE])
        yield from found.values_list("code", flat=True)


def _for_places(known: Known) -> None:
    places = Place.objects.filter(shop=known.shop)
    known.places = type(known.places)((place.name, place) for place in places)


def _for_jobs(known: Known, table: Table | None) -> None:
    _for_places(known)
    shop = known.shop
    people = Person.objects.filter(shop=shop, is_active=True).order_by("-id")
    known.people = type(known.people)((person.name, person) for person in people)
    services = Service.objects.filter(shop=shop, archived=False).prefetch_related("steps__needs")
    known.services = type(known.services)((service.name, service) for service in services)
    cars = Vehicle.objects.filter(shop=shop).order_by("-id")
    known.vehicles = {(car.name.strip(), car.plate.strip()): car for car in cars}
    steps = Prefetch("steps", Step.objects.select_related("bay", "person"))
    jobs = Job.objects.filter(shop=shop, state=Job.State.OPEN).select_related("vehicle", "service")
    known.jobs = {job.code: job for job in jobs.prefetch_related(steps).order_by("starts_at", "id")}


_LOADERS = {
    "suppliers": _for_suppliers,
    "products": _for_products,
    "packs": _for_packs,
    "stock": _for_stock,
    "jobs": _for_jobs,
}
