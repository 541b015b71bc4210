"""A spreadsheet as values: its heads, its rows with the numbers that the spreadsheet shows, its bounds."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

Cell = str | int | Decimal | date | datetime | bool | None


class Unreadable(Exception):
    """The file as a whole cannot be read; the text is a whole sentence with the way out."""

    def __init__(self, says: str) -> None:
        super().__init__(says)
        self.says = says


@dataclass(frozen=True)
class Bounds:
    """How much of a file is read. A shop's whole shelf fits many times; a trap does not."""

    bytes: int = 8 * 2**20
    rows: int = 20_000
    columns: int = 40
    cells: int = 600_000
    # One text: longer than any field here by far. Unpacked: 20 000 rows of 24 columns are 40 MB.
    characters: int = 4_000
    unpacked: int = 96 * 2**20
    members: int = 200


@dataclass(frozen=True)
class Row:
    """One row below the heads: its number as the spreadsheet shows it, its cells."""

    number: int
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class Table:
    """The heads in their order, and the rows that are not empty."""

    heads: tuple[str, ...]
    rows: tuple[Row, ...]


def too_many_rows(bounds: Bounds) -> Unreadable:
    """Return the refusal of a file with more rows than are read."""
    limit = f"{bounds.rows:,}".replace(",", " ")
    return Unreadable(
        f"The file has more than {limit} rows. Split it, and bring in one part after the other."
    )


def too_wide(bounds: Bounds) -> Unreadable:
    """Return the refusal of a file with more columns than are read."""
    return Unreadable(f"The file has something beyond column {bounds.columns}. Delete what stands there.")


def checked(table: Table, known: Sequence[str], needed: Sequence[str], what: str) -> Table:
    """Return the table with its heads as we write them; refuses unknown, double and missing columns."""
    ours = {_plain(head): head for head in known}
    heads = []
    for head in table.heads:
        if _plain(head) not in ours:
            listed = ", ".join(f"“{name}”" for name in known)
            raise Unreadable(f"Column “{head}” is not one of the columns for {what}. They are {listed}.")
        if ours[_plain(head)] in heads:
            raise Unreadable(f"Column “{head}” is there twice. Keep the one that counts.")
        heads.append(ours[_plain(head)])
    if missing := [name for name in needed if name not in heads]:
        raise Unreadable(
            f"Column “{missing[0]}” is missing. Download the {what} once to see how the first row is written."
        )
    return Table(tuple(heads), table.rows)


def _plain(head: str) -> str:
    return " ".join(head.casefold().split())
