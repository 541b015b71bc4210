"""What the shop has, loaded once for a whole file, and what the file has named so far."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any, TypeVar

from inventory.models import (
    Container,
    Job,
    Pack,
    Person,
    Place,
    Product,
    Service,
    Shop,
    Supplier,
    Vehicle,
)
from inventory.spreadsheets.rules.values import Wrong

Thing = TypeVar("Thing")


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()


class Named(dict[str, Thing]):
    """Things by their exact name; a name typed in another case or spacing is found where only one fits."""

    def __init__(self, things: Iterable[tuple[str, Thing]] = ()) -> None:
        super().__init__(things)
        self._folded: dict[str, list[Thing]] = defaultdict(list)
        for name, thing in self.items():
            self._folded[_folded(name)].append(thing)

    def find(self, name: str) -> Thing | None:
        """Return the thing of that name, else the only one that is written nearly so."""
        if name in self:
            return self[name]
        alike = self._folded.get(_folded(name), [])
        return alike[0] if len(alike) == 1 else None

    def one(self, name: str, what: str, do: str) -> Thing:
        """Return the thing of that name; raises Wrong with what to do."""
        if (found := self.find(name)) is None:
            raise Wrong(f"There is no {what} “{name.strip()}” here. {do}")
        return found


@dataclass
class Known:
    """Rows of one shop by what a spreadsheet calls them; `row` is the row that is being read."""

    shop: Shop
    at: datetime
    suppliers: Named[Supplier] = field(default_factory=Named)
    products: Mapping[str, Product] = field(default_factory=dict)
    product_names: Named[Product] = field(default_factory=Named)
    stocked: frozenset[int] = frozenset()
    packs: Mapping[int, Pack] = field(default_factory=dict)
    packs_of: Mapping[int, list[Pack]] = field(default_factory=dict)
    places: Named[Place] = field(default_factory=Named)
    people: Named[Person] = field(default_factory=Named)
    containers: Mapping[str, Container] = field(default_factory=dict)
    taken: frozenset[str] = frozenset()
    lots: dict[tuple[int, str], dict[str, date | None]] = field(default_factory=dict)
    services: Named[Service] = field(default_factory=Named)
    vehicles: Mapping[tuple[str, str], Vehicle] = field(default_factory=dict)
    jobs: Mapping[str, Job] = field(default_factory=dict)
    row: int = 0
    bottles: int = 0
    _seen: dict[tuple[str, Any], int] = field(default_factory=dict)

    @property
    def today(self) -> date:
        """The shop's local day."""
        return self.at.astimezone(self.shop.zone).date()

    def claim(self, what: str, key: object) -> int | None:
        """Return the row that named this already, else note that this row does."""
        first = self._seen.setdefault((what, key), self.row)
        return None if first == self.row else first

    def product(self, said: str) -> Product:
        """Return a product by its code or its name; raises Wrong."""
        by_code = self.products.get(said.replace(" ", "").upper())
        do = "Bring it in under Products first, or write its name as it is there."
        return by_code or self.product_names.one(said, "product", do)
