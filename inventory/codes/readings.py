"""The answer to a scan: what it may be, what a person must be asked, what was wrong."""

from dataclasses import dataclass, fields
from datetime import date
from decimal import Decimal
from enum import StrEnum

from inventory.codes.symbols import restricted


class CodeKind(StrEnum):
    """What a code stands for: ours by its type letter, a maker's by what it carries."""

    CONTAINER = "container"
    PLACE = "place"
    PERSON = "person"
    JOB = "job"
    COMMAND = "command"
    PRODUCT = "product"
    LOT = "lot"
    STATION = "station"
    STEP = "step"
    VEHICLE = "vehicle"
    ORDER = "order"
    READING = "reading"


@dataclass(frozen=True)
class Reading:
    """One reading of a scan: `gtin` is 14 digits with a right check digit, `code` is ours; else None."""

    kind: CodeKind
    code: str | None = None
    gtin: str | None = None
    lot: str | None = None
    expires_on: date | None = None
    made_on: date | None = None
    best_before_on: date | None = None
    serial: str | None = None
    count: int | None = None
    net_weight_kg: Decimal | None = None
    net_volume_l: Decimal | None = None

    @property
    def restricted(self) -> bool:
        """Whether the number is the supplier's own and never matches across suppliers."""
        return self.gtin is not None and restricted(self.gtin)

    def as_json(self) -> dict[str, object]:
        """Return the reading in plain JSON values: ISO dates, numbers as numbers."""
        return {each.name: _plain(getattr(self, each.name)) for each in fields(self)}


@dataclass(frozen=True)
class Readings:
    """What a scan may be: readings, the likeliest first; what a person must be asked; what was wrong."""

    readings: tuple[Reading, ...] = ()
    asks: tuple[str, ...] = ()
    errors: tuple[str, ...] = ()

    def as_json(self) -> dict[str, object]:
        """Return the document of the `read_code` command."""
        return {
            "readings": [each.as_json() for each in self.readings],
            "asks": list(self.asks),
            "errors": list(self.errors),
        }


def _plain(value: object) -> object:
    """Return a value as JSON has it."""
    if isinstance(value, Decimal):
        return int(value) if value == value.to_integral_value() else float(value)
    if isinstance(value, date):
        return value.isoformat()
    return str(value) if isinstance(value, StrEnum) else value
