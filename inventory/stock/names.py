"""Rows by their codes, asked for once in a transaction; an unknown code is refused by name."""

from typing import Any, TypeVar, cast

from django.db.models import Model

from inventory.codes import pair
from inventory.models import Job, Place, Product, Shop, Step
from inventory.stock.rules.lines import Refused

Row = TypeVar("Row", bound=Model)


class Names:
    """What the codes in one request mean, within one shop."""

    def __init__(self, shop: Shop) -> None:
        self.shop = shop
        self._rows: dict[tuple[type[Model], str], Model] = {}

    def know(self, *rows: Model | None) -> None:
        """Keep rows that were loaded anyhow, so that they are not asked for again."""
        for row in rows:
            if row is not None:
                self._rows[type(row), cast(Any, row).code] = row

    def product(self, code: str | None) -> Product | None:
        """Return a product of this shop."""
        return self._find(Product, code, "product", shop=self.shop)

    def place(self, code: str | None) -> Place | None:
        """Return a place of this shop."""
        return self._find(Place, code, "place", shop=self.shop)

    def job(self, code: str | None) -> Job | None:
        """Return a job of this shop."""
        return self._find(Job, code, "job", shop=self.shop)

    def step(self, code: str | None) -> Step | None:
        """Return a step of a job of this shop."""
        return self._find(Step, code, "step", job__shop=self.shop)

    def _find(self, model: type[Row], code: str | None, what: str, **within: Any) -> Row | None:
        if code is None:
            return None
        if (model, code) not in self._rows:
            row = cast(Any, model).objects.filter(code=code, **within).first()
            if row is None:
                says = f"{pair(code)} is no {what} of this shop. Scan it again, or type it."
                raise Refused(says, code="unknown")
            self.know(row)
        return cast(Row, self._rows[model, code])
