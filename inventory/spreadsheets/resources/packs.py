"""Packs: matched by their number, else by GTIN, else by product, content and name."""

from collections.abc import Sequence
from typing import Any

from biip import ParseError
from biip.gtin import Gtin
from import_export.resources import Resource

from inventory.models import Pack
from inventory.spreadsheets.resources.columns import (
    Amiss,
    Cells,
    Column,
    Given,
    Sheet,
    chosen,
    money,
    text,
    whole,
    yes_no,
)
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules import values
from inventory.spreadsheets.rules.amounts import number_in, read_number_and_unit, unit_for
from inventory.spreadsheets.rules.table import Cell
from inventory.spreadsheets.rules.values import Wrong

HOLDS = "holds (in unit)"


def _gtin(cell: Cell, given: Given) -> str:
    said = values.text_of(cell).replace(" ", "")
    if said == given.thing.gtin:
        return said
    try:
        return Gtin.parse(said).as_gtin_14()
    except ParseError:
        raise Wrong(
            f"“{said}” is no GTIN: its last digit does not fit the others. Scan it instead."
        ) from None


def _holds(cell: Cell, given: Given) -> int:
    product, shop = given.thing.product, given.known.shop
    amount = read_number_and_unit(
        cell, given.row.get("unit"), product.dimension, shop.system, shop.decimal_mark
    )
    if not amount:
        raise Wrong("A pack holds something. Write what stands on it.")
    return amount


def _number(thing: Pack, known: Known) -> Cell:
    return number_in(thing.amount, thing.product.dimension, unit_for(thing.product.dimension, thing.amount))


class PackResource(Sheet, Resource):  # type: ignore[misc]
    """A row a size that is bought; the bottles inside a kit are listed on the product's page."""

    slug, what = "packs", "packs"
    lead = "The sizes you buy, with the number under the bar code and the price."

    pk = Column("pk", "pack number", None, lambda thing, known: thing.pk)
    product = Column("product", "product", text(80), lambda thing, known: thing.product.name, needed=True)
    name = Column("name", "called", text(40), blank="")
    amount = Column("amount", HOLDS, _holds, _number, needed=True)
    unit = Column("unit", "unit", None, lambda thing, known: unit_for(thing.product.dimension, thing.amount))
    vessel = chosen("vessel", "made of", Pack.Vessel.choices)
    gtin = Column("gtin", "GTIN", _gtin, blank="")
    price_minor = money("price_minor", "price of one", blank=None)
    multiple = Column("multiple", "ordered in cases of", whole(1))
    per_case = Column("per_case", "one scan brings", whole(1))
    usual = yes_no("usual", "usual size")

    class Meta:
        model = Pack
        import_id_fields = ("pk",)

    def get_bulk_update_fields(self) -> list[str]:
        """Every column that is the pack's own."""
        return [name for name in self.fields if name not in {"pk", "product", "unit"}]

    def find(self, row: Cells, known: Known) -> Pack | None:
        """Match by number, else by what is printed on it."""
        try:
            product = known.product(self.cell(row, "product"))
        except Wrong as wrong:
            raise Amiss(product=str(wrong)) from None
        number = self.cell(row, "pk")
        if number:
            pack = known.packs.get(int(number)) if number.isascii() and number.isdigit() else None
            if pack is None or pack.product_id != product.pk:
                raise Amiss(pk=f"{product} has no pack {number}. Leave the number empty for a new pack.")
            return pack
        return self._alike(row, known, known.packs_of.get(product.pk, []), product.dimension)

    def _alike(self, row: Cells, known: Known, packs: list[Pack], dimension: str) -> Pack | None:
        gtin = self.cell(row, "gtin").replace(" ", "").zfill(14)
        by_gtin = [pack for pack in packs if pack.gtin == gtin]
        if by_gtin:
            return by_gtin[0]
        shop = known.shop
        try:
            amount = read_number_and_unit(
                row.get(HOLDS), row.get("unit"), dimension, shop.system, shop.decimal_mark
            )
        except Wrong:
            return None
        name = self.cell(row, "name")
        return next((pack for pack in packs if (pack.amount, pack.name) == (amount, name)), None)

    def fresh(self, row: Cells, known: Known) -> Pack:
        """Start a pack of the row's product."""
        return Pack(product=known.product(self.cell(row, "product")))

    def import_field(
        self, field: Column, instance: Pack, row: Cells, is_m2m: bool = False, **kwargs: Any
    ) -> None:
        """Leave the product alone: it found the pack."""
        if field.attribute != "product":
            super().import_field(field, instance, row, is_m2m, **kwargs)

    def check(self, thing: Pack, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Refuse a pack that another row names, and a second usual size."""
        key = thing.pk or (thing.product_id, thing.amount, thing.name, thing.gtin)
        if first := known.claim("pack", key):
            raise Amiss(amount=f"This pack is in row {first} already. Keep one of the two.")
        if not before and not self.cell(row, "usual"):
            first_size = not known.packs_of.get(thing.product_id)
            thing.usual = first_size and not known.claim("usual", thing.product_id)
            return
        becomes_usual = thing.usual and (not before or before[self.heads.index("usual size")] == "no")
        if becomes_usual and (first := known.claim("usual", thing.product_id)):
            raise Amiss(usual=f"Row {first} makes another size the usual one. Only one is reordered.")

    def about(self, thing: Pack) -> str:
        """Return product and content."""
        dimension = thing.product.dimension
        unit = unit_for(dimension, thing.amount or 0)
        return f"{thing.product}, {number_in(thing.amount or 0, dimension, unit)} {unit}"
