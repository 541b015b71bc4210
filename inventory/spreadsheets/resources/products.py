"""Products: matched by code, else by name."""

from collections.abc import Sequence
from typing import Any

from import_export.resources import Resource

from inventory.models import TRACED_KINDS, GivenBy, Kind, Product
from inventory.spreadsheets.resources.columns import (
    Amiss,
    Cells,
    Column,
    Given,
    Sheet,
    chosen,
    text,
    whole,
    yes_no,
)
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules import values
from inventory.spreadsheets.rules.table import Cell


def _life(name: str, heading: str) -> Column:
    def put(thing: Any, life: tuple[int, str] | None) -> None:
        count, unit = life or (None, getattr(thing, f"{name}_unit"))
        setattr(thing, name, count)
        setattr(thing, f"{name}_unit", unit)

    return Column(
        name, heading, lambda cell, given: values.read_life(cell),
        lambda thing, known: values.show_life(getattr(thing, name), getattr(thing, f"{name}_unit")),
        blank=None, put=put,
    )  # fmt: skip


def _supplier(cell: Cell, given: Given) -> object:
    do = "Bring it in under Suppliers first, or write its name as it is there."
    return given.known.suppliers.one(values.text_of(cell), "supplier", do)


class ProductResource(Sheet, Resource):  # type: ignore[misc]
    """A row a product; its data sheet is attached on its page, not here."""

    slug, what = "products", "products"
    lead = "What you keep: its kind, how it is measured, how long it lasts, who brings it."

    code = Column("code", "code", text(20), lambda thing, known: thing.code if thing.pk else "", blank="")
    name = Column("name", "name", text(80), needed=True)
    maker = Column("maker", "maker", text(80), blank="")
    kind = chosen("kind", "kind", Kind.choices, needed=True)
    dimension = chosen("dimension", "measured", Product.Dimension.choices, needed=True)
    noun = Column("noun", "one is called", text(20))
    keeping = chosen("keeping", "kept", Product.Keeping.choices)
    traced = yes_no("traced", "scanned every time")
    mixes_lots = yes_no("mixes_lots", "may mix lots")
    dated = yes_no("dated", "carries a date")
    sealed_life = _life("sealed_life", "sealed life")
    sealed_life_by = chosen("sealed_life_by", "sealed life given by", GivenBy.choices)
    open_life = _life("open_life", "open life")
    open_life_by = chosen("open_life_by", "open life given by", GivenBy.choices)
    mix_life = _life("mix_life", "mixed life")
    mix_life_by = chosen("mix_life_by", "mixed life given by", GivenBy.choices)
    wear_uses = Column("wear_uses", "lasts (cars)", whole(1), blank=None)
    wear_minutes = Column("wear_minutes", "lasts (minutes)", whole(1, 2**31 - 1), blank=None)
    store_from_c = Column("store_from_c", "store from (°C)", whole(-60, 100), blank=None)
    store_to_c = Column("store_to_c", "store to (°C)", whole(-60, 100), blank=None)
    density_mg_per_l = Column("density_mg_per_l", "density (mg/l)", whole(1, 30_000_000), blank=None)
    density_source = Column("density_source", "density from", text(120), blank="")
    supplier = Column(
        "supplier", "supplier", _supplier, lambda thing, known: thing.supplier.name if thing.supplier else "",
        blank=None,
    )  # fmt: skip
    lead_days = Column("lead_days", "lead time (days)", whole(0, 365), blank=None)
    needs_sheet = yes_no("needs_sheet", "needs a data sheet")
    archived = yes_no("archived", "no longer used")

    class Meta:
        model = Product
        import_id_fields = ("code",)

    def get_bulk_update_fields(self) -> list[str]:
        """Every column but the code, and the units that stand inside the lives' cells."""
        lives = [f"{name}_life_unit" for name in ("sealed", "open", "mix")]
        return [name for name in self.fields if name != "code"] + lives

    def find(self, row: Cells, known: Known) -> Product | None:
        """Match by code where one is given, else by name."""
        code = self.cell(row, "code").replace(" ", "").upper()
        if code and code not in known.products:
            raise Amiss(code=f"“{code}” is no product here. Leave the code empty for a new product.")
        if code:
            return known.products[code]
        return known.product_names.find(values.text_of(row.get("name")))

    def fresh(self, row: Cells, known: Known) -> Product:
        """Start a product; its kind says whether it is traced, unless the file does."""
        kind = self.cell(row, "kind").casefold()
        traced = any(kind in {each.value, each.label} for each in TRACED_KINDS)
        return Product(shop=known.shop, traced=traced)

    def import_field(
        self, field: Column, instance: Product, row: Cells, is_m2m: bool = False, **kwargs: Any
    ) -> None:
        """Leave alone what found the product: its code, or its name, perhaps in another case."""
        found_by = "code" if self.cell(row, "code") or not instance.pk else "name"
        if field.attribute not in {"code", found_by}:
            super().import_field(field, instance, row, is_m2m, **kwargs)

    def check(self, thing: Product, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Refuse what two rows, or the rest of the row, contradict."""
        for key in (thing.name.strip().casefold(), thing.pk or thing.name):
            if first := known.claim("product", key):
                raise Amiss(name=f"This product is in row {first} already. Keep one of the two.")
        holder = known.product_names.get(thing.name)
        if holder is not None and holder is not thing:
            raise Amiss(name="Another product has this name. Give this one a name of its own.")
        if (
            before
            and thing.pk in known.stocked
            and before[self.heads.index("measured")] != thing.get_dimension_display()
        ):
            raise Amiss(dimension="There is stock of it measured otherwise, so this stays as it is.")
        if thing.density_mg_per_l and not thing.density_source.strip():
            raise Amiss(
                density_source="Say where the density comes from, the data sheet's section 9 for one."
            )
        low, high = thing.store_from_c, thing.store_to_c
        if low is not None and high is not None and low >= high:
            raise Amiss(store_to_c=f"{high} °C is not above {low} °C. Check the two figures.")
