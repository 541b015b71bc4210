"""Suppliers: matched by name."""

from collections.abc import Sequence
from typing import Any

from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from import_export.resources import Resource

from inventory.models import Supplier
from inventory.spreadsheets.resources.columns import Amiss, Cells, Column, Given, Sheet, money, text, whole
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.rules.table import Cell
from inventory.spreadsheets.rules.values import Wrong, read_text


def _email(cell: Cell, given: Given) -> str:
    said = read_text(cell, 254).strip()
    try:
        validate_email(said)
    except ValidationError:
        raise Wrong(f"“{said}” is no e-mail address. Correct it, or leave the cell empty.") from None
    return said


class SupplierResource(Sheet, Resource):  # type: ignore[misc]
    """A row a supplier."""

    slug, what = "suppliers", "suppliers"
    lead = "Who you order from, how many days it takes, and the smallest order."

    name = Column("name", "name", text(80), needed=True)
    email = Column("email", "email", _email, blank="")
    phone = Column("phone", "phone", text(40), blank="")
    lead_days = Column("lead_days", "lead time (days)", whole(0, 365))
    minimum_order_minor = money("minimum_order_minor", "smallest order", blank=0)

    class Meta:
        model = Supplier
        import_id_fields = ("name",)

    def find(self, row: Cells, known: Known) -> Supplier | None:
        """Match by name."""
        return known.suppliers.find(str(row.get("name") or ""))

    def fresh(self, row: Cells, known: Known) -> Supplier:
        """Start a supplier of this shop."""
        return Supplier(shop=known.shop)

    def import_field(
        self, field: Column, instance: Supplier, row: Cells, is_m2m: bool = False, **kwargs: Any
    ) -> None:
        """Leave the name of a known supplier as it is: it found them, perhaps in another case."""
        if field.attribute != "name" or not instance.pk:
            super().import_field(field, instance, row, is_m2m, **kwargs)

    def check(self, thing: Supplier, before: Sequence[Cell] | None, row: Cells, known: Known) -> None:
        """Refuse a supplier that another row names."""
        if first := known.claim("supplier", thing.name.strip().casefold()):
            raise Amiss(name=f"This supplier is in row {first} already. Keep one of the two.")
