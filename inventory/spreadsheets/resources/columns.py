"""A column of a spreadsheet: how its cell becomes a value of the thing, and how the value becomes a cell.

django-import-export maps, cleans and writes in bulk. Its own dry run is not used: it writes inside a
transaction that it rolls back, and on SQLite that transaction keeps everybody else waiting.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Any, ClassVar

from import_export.fields import Field
from import_export.resources import Resource

from inventory.models import Shop
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules import values
from inventory.spreadsheets.rules.table import Cell
from inventory.spreadsheets.rules.values import Wrong

Cells = dict[str, Cell]


class Blank(Enum):
    """What an empty cell means; an enum, since a resource copies its fields and only an enum stays itself."""

    KEEP = "what is there stays"


KEEP = Blank.KEEP


@dataclass(frozen=True)
class Given:
    """What stands around a cell: its row, the thing that the row describes, and what the shop has."""

    row: Cells
    thing: Any
    known: Known


Read = Callable[[Cell, Given], object]
Write = Callable[[Any, Known], Cell]


class Amiss(Exception):
    """Cells of a row that cannot be taken: a sentence for each column's attribute, "" for the whole row."""

    def __init__(self, **sentences: str) -> None:
        super().__init__(str(sentences))
        self.sentences = sentences


class Column(Field):  # type: ignore[misc]
    """A field whose cell keeps its type; `blank` is what an empty cell means, KEEP leaves what is there."""

    def __init__(
        self,
        attribute: str,
        heading: str = "",
        read: Read | None = None,
        write: Write | None = None,
        *,
        blank: object = KEEP,
        needed: bool = False,
        put: Callable[[Any, Any], None] | None = None,
    ) -> None:
        super().__init__(attribute=attribute, column_name=heading or attribute.replace("_", " "))
        self.read, self.write, self.blank, self.needed, self.put = read, write, blank, needed, put

    def save(self, instance: Any, row: Cells, is_m2m: bool = False, **kwargs: Any) -> None:
        """Read the row's cell into the thing; raises Wrong."""
        cell = row[self.column_name]
        if self.read is None:
            return
        if values.blank(cell):
            if self.needed:
                raise Wrong("This cell is empty. Fill it in.")
            if self.blank is KEEP:
                return
            value = self.blank
        else:
            value = self.read(cell, Given(row, instance, kwargs["known"]))
        if self.put:
            self.put(instance, value)
        else:
            setattr(instance, self.attribute, value)

    def export(self, instance: Any, **kwargs: Any) -> Cell:
        """Return the cell that stands for the thing's value."""
        if self.write:
            return self.write(instance, kwargs["known"])
        value: Cell = getattr(instance, self.attribute)
        return value


class Sheet(Resource):  # type: ignore[misc]
    """One kind of spreadsheet."""

    slug: ClassVar[str]
    what: ClassVar[str]
    lead: ClassVar[str]

    def __init__(self, shop: Shop) -> None:
        super().__init__()
        self.shop = shop
        self.columns: list[Column] = list(self.fields.values())
        for column in self.columns:
            column.column_name = column.column_name.format(currency=shop.currency)
        self.heads = [column.column_name for column in self.columns]
        self._headings: dict[str, str] = {each.attribute: each.column_name for each in self.columns}

    def get_import_fields(self) -> list[Column]:
        """Return every column in its order; asked for once a row, so it is not worked out again."""
        return self.columns

    @property
    def needed(self) -> list[str]:
        """The columns without which no row can be read."""
        return [column.column_name for column in self.columns if column.needed]

    def cells(self, thing: Any, known: Known) -> list[Cell]:
        """Return a thing's row."""
        return [column.export(thing, known=known) for column in self.columns]

    def heading(self, attribute: str) -> str:
        """Return the head of an attribute's column; the empty one is the whole row."""
        return self._headings.get(attribute, "")

    def cell(self, row: Cells, attribute: str) -> str:
        """Return what a row says in an attribute's column, without space around it."""
        return values.text_of(row.get(self.heading(attribute))).strip()

    def find(self, row: Cells, known: Known) -> Any:
        """Return the thing that a row is about, None where it is new; raises Amiss."""
        raise NotImplementedError

    def fresh(self, row: Cells, known: Known) -> Any:
        """Return a new thing for a row."""
        raise NotImplementedError

    def check(self, thing: Any, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Look at the row as a whole, its cells read; raises Amiss."""

    def about(self, thing: Any) -> str:
        """Return what a row is about, in a few words."""
        return str(thing)

    def note(self, thing: Any, known: Known) -> str:
        """Return what was estimated or done beside what the row says."""
        return ""


def text(longest: int) -> Read:
    """Read a text of at most so many characters."""
    return lambda cell, given: values.read_text(cell, longest)


def whole(least: int = 0, most: int = values.SMALL) -> Read:
    """Read a whole number."""
    return lambda cell, given: values.read_whole(cell, least=least, most=most)


def yes_no(attribute: str, heading: str = "") -> Column:
    """Return a column of yes and no."""
    return Column(
        attribute, heading, lambda cell, given: values.read_yes(cell),
        lambda thing, known: "yes" if getattr(thing, attribute) else "no",
    )  # fmt: skip


def chosen(attribute: str, heading: str, choices: Any, *, needed: bool = False) -> Column:
    """Return a column that takes one of a few words."""
    words = {str(value): str(word) for value, word in choices}
    return Column(
        attribute, heading, lambda cell, given: values.read_choice(cell, words),
        lambda thing, known: words.get(getattr(thing, attribute), ""), needed=needed,
    )  # fmt: skip


def money(attribute: str, heading: str, blank: object) -> Column:
    """Return a column of prices; its head names the currency."""
    return Column(
        attribute, heading + " ({currency})",
        lambda cell, given: values.read_money(cell, given.known.shop.currency),
        lambda thing, known: values.show_price(getattr(thing, attribute), known.shop.currency), blank=blank,
    )  # fmt: skip
