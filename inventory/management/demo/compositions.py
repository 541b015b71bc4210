"""What the demo's products are made of, read from its tables as a person's typing is."""

from dataclasses import dataclass, field
from functools import cache

from inventory.management.demo.tables import table
from safety.hazards.composition import FIELDS, Document, read_mixes, read_row

NUMBERS = ("ph", "flash_point_c", "boiling_point_c", "viscosity_mm2_s_40c")


@dataclass
class MadeOf:
    """One product: what its sheet's version carries beside its classes, and its density in mg/l."""

    sheet: dict[str, object] = field(default_factory=dict)
    density_mg_per_l: int | None = None


@cache
def made_of() -> dict[str, MadeOf]:
    """Return by product key what the tables say. Raises ValueError for a row that cannot be read."""
    rows: dict[str, list[Document]] = {}
    for row in table("compositions"):
        document, wrong = read_row({name: row[name] for name in FIELDS})
        if wrong:
            raise ValueError(f"compositions.csv, {row['product']}, {row['name']}: {wrong}")
        rows.setdefault(row["product"], []).append(document)
    return {
        row["product"]: MadeOf(
            sheet={
                "composition": rows[row["product"]],
                "form": row["form"],
                "mixes": read_mixes(row["mixes"]),
                **{name: float(row[name]) if row[name] else None for name in NUMBERS},
            },
            density_mg_per_l=round(float(row["density_kg_l"]) * 1_000_000),
        )
        for row in table("measured")
    }
