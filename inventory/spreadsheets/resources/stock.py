"""What is on the shelf: matched by the code on the bottle; new bottles come through the ledger."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, cast

from import_export.resources import Resource

from inventory.codes import Meaning, letter_of, pair, tidy
from inventory.models import Container, Pack, Place, Product
from inventory.spreadsheets.resources.columns import Amiss, Cells, Column, Given, Sheet, text, whole, yes_no
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.resources.stock_checks import check_new
from inventory.spreadsheets.rules import values
from inventory.spreadsheets.rules.amounts import number_in, read_number_and_unit, unit_for
from inventory.spreadsheets.rules.opened import estimated_on, says
from inventory.spreadsheets.rules.table import Cell

UNKNOWN = "unknown"
CONTENT, FULL = "content (in unit)", "holds when full (in unit)"
# What a spreadsheet may change of a bottle that is here: a count, and a move. The rest has pages of its own.
CHANGEABLE = {"content", "place"}
FIXED = "This is not changed by a spreadsheet. Put {} back, or correct it on the bottle's page."


@dataclass
class StockRow:
    """One row: a bottle that is here, or `count` bottles alike that come; base units."""

    container: Container | None = None
    code: str = ""
    product: Product | None = None
    noun: str = ""
    full: int | None = None
    content: int | None = None
    place: Place | None = None
    lot: str = ""
    expires_on: date | None = None
    best_before_on: date | None = None
    made_on: date | None = None
    sealed: bool | None = None
    opened_on: date | str | None = None
    count: int = 1
    box: bool = False
    pack: Pack | None = None

    @property
    def dimension(self) -> str:
        """How it is measured; an empty refillable bottle is measured by volume."""
        return self.product.dimension if self.product else Product.Dimension.VOLUME

    @property
    def unit(self) -> str:
        """The unit in which both amounts are whole."""
        return unit_for(self.dimension, self.full or 0, self.content or 0)


def row_of(container: Container, known: Known) -> StockRow:
    """Return the row of a bottle whose product, place and lots are loaded."""
    lots = list(container.lots.all())
    opened = container.opened_at and container.opened_at.astimezone(known.shop.zone).date()

    def first(name: str) -> date | None:
        return min((day for lot in lots if (day := getattr(lot, name))), default=None)

    return StockRow(
        container, container.code, container.product, container.noun, container.full, container.content,
        container.place, " + ".join(sorted(lot.number for lot in lots if lot.number)), first("expires_on"),
        first("best_before_on"), first("made_on"), container.state == Container.State.SEALED,
        UNKNOWN if container.estimated and opened else opened,
    )  # fmt: skip


def _product(cell: Cell, given: Given) -> Product:
    return given.known.product(values.text_of(cell))


def _amount(cell: Cell, given: Given) -> int:
    shop = given.known.shop
    return read_number_and_unit(
        cell, given.row.get("unit"), given.thing.dimension, shop.system, shop.decimal_mark
    )


def _place(cell: Cell, given: Given) -> Place:
    do = "Add it on the Settings page first, or write its name as it is there."
    return given.known.places.one(values.text_of(cell), "place", do)


def _opened(cell: Cell, given: Given) -> date | str | None:
    if values.text_of(cell).strip().casefold() == UNKNOWN:
        return UNKNOWN
    return values.read_day(cell, given.known.shop.date_order)


def _printed(attribute: str, heading: str, meaning: Meaning) -> Column:
    return Column(
        attribute,
        heading,
        lambda cell, given: values.read_printed(cell, meaning, given.known.shop.date_order),
    )


def _in_unit(attribute: str, heading: str) -> Column:
    def write(thing: StockRow, known: Known) -> Cell:
        amount = getattr(thing, attribute)
        return None if amount is None else number_in(amount, thing.dimension, thing.unit)

    return Column(attribute, heading, _amount, write)


class StockResource(Sheet, Resource):  # type: ignore[misc]
    """A row a bottle, or so many bottles alike."""

    slug, what = "stock", "stock on the shelf"
    lead = "What stands on the shelf, bottle by bottle. New bottles come in, known ones are counted or moved."

    code = Column("code", "code", None)
    product = Column(
        "product", "product", _product, lambda thing, known: thing.product.name if thing.product else ""
    )
    noun = Column("noun", "container", text(20))
    full = _in_unit("full", FULL)
    content = _in_unit("content", CONTENT)
    unit = Column("unit", "unit", None)
    place = Column("place", "place", _place, lambda thing, known: thing.place.name if thing.place else "")
    lot = Column("lot", "lot", text(400))
    expires_on = _printed("expires_on", "use by (printed)", Meaning.USE_BY)
    best_before_on = _printed("best_before_on", "best before (printed)", Meaning.BEST_BEFORE)
    made_on = _printed("made_on", "made (printed)", Meaning.MADE)
    sealed = yes_no("sealed", "sealed")
    opened_on = Column("opened_on", "opened on", _opened)
    count = Column("count", "how many alike", whole(1, 500))
    box = yes_no("box", "one code for the whole box")

    @property
    def needed(self) -> list[str]:
        """An empty refillable bottle has no product, so its cell may be empty while the column is there."""
        return ["product", CONTENT]

    def find(self, row: Cells, known: Known) -> StockRow | None:
        """Match by the code on the bottle."""
        said = self.cell(row, "code")
        code = tidy(said)
        if said and (code is None or letter_of(code) != "B"):
            raise Amiss(code=f"“{said}” is no code of a bottle. Type it as on the label, or leave it empty.")
        if code and (first := known.claim("bottle", code)):
            raise Amiss(code=f"{pair(code)} is in row {first} already. Every bottle has a code of its own.")
        found = known.containers.get(code or "")
        return row_of(found, known) if found else None

    def fresh(self, row: Cells, known: Known) -> StockRow:
        """Start a row of new bottles; the code of a label printed before is kept."""
        return StockRow(code=tidy(self.cell(row, "code")) or "")

    def check(self, thing: StockRow, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Refuse what cannot be on a shelf, and changes that a count or a move cannot make."""
        if before is None:
            check_new(thing, known)
            return
        for column, was, now in zip(self.columns, before, self.cells(thing, known), strict=True):
            if was != now and column.attribute not in CHANGEABLE | {"unit", "full"}:
                raise Amiss(**{column.attribute: FIXED.format(f"“{values.text_of(was)}”")})
        full = cast(Container, thing.container).full
        if thing.full != full:
            raise Amiss(full="How much a bottle holds stays as it came in. Put the figure back.")
        if thing.product is None and thing.content:
            raise Amiss(content="This bottle was never filled. Fill it at the scan station first.")
        if thing.place is None and cast(Container, thing.container).place is not None:
            raise Amiss(place="A bottle stands somewhere. Name the place.")

    def about(self, thing: StockRow) -> str:
        """Return the product, with the code or the number of bottles."""
        name = str(thing.product or "an empty bottle")
        if thing.code:
            return f"{name}, {pair(thing.code)}"
        return name if thing.count == 1 else f"{thing.count} × {name}"

    def note(self, thing: StockRow, known: Known) -> str:
        """Say which opened day is estimated."""
        if thing.container or thing.opened_on != UNKNOWN or thing.product is None:
            return ""
        life, unit = thing.product.open_life, thing.product.open_life_unit
        return says(opened_day(thing, known), known.today, life, unit)


def opened_day(thing: StockRow, known: Known) -> date:
    """Return the day a new bottle was opened: as typed, else estimated."""
    if isinstance(thing.opened_on, date):
        return thing.opened_on
    product: Any = thing.product
    return estimated_on(known.today, product.open_life, product.open_life_unit, thing.made_on)
