"""What products are made of, as their newest confirmed sheets say, and the limits that the shop typed."""

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from inventory.models import AirLimit, Product, Shop
from inventory.precheck.questions.topics.air import Makeup
from safety import queries as sheets
from safety.air.evaporating import Ingredient
from safety.air.values import Limit
from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_hazards
from safety.models import SheetVersion

SPRAYS = ("aerosol", "gas")
# Classes whose vapour or gas reaches whoever works: flammable liquids and gases, harmful when breathed.
VOLATILE = ("H220", "H221", "H222", "H223", "H224", "H225", "H226", "H330", "H331", "H332", "H335", "H336")


def makeups(products: Iterable[Product]) -> dict[str, Makeup]:
    """Return the products by their code, in one query for their sheets; without a sheet nothing is known."""
    rows = {row.pk: row for row in products}
    current = sheets.current_by_sheet(row.sheet_id for row in rows.values())
    return {row.code: makeup(row, current.get(row.sheet_id or 0)) for row in rows.values()}


def makeup(row: Product, version: SheetVersion | None) -> Makeup:
    """Return one product with the version of its sheet that counts."""
    density = row.density_mg_per_l / 1_000_000 if row.density_mg_per_l else None
    if version is None:
        return Makeup(row.code, row.name, row.kind, row.dimension, density_kg_l=density)
    aerosol = version.form in SPRAYS
    says = " ".join([*map(str, version.hazards), *map(str, version.statements)])
    return Makeup(
        row.code, row.name, row.kind, row.dimension,
        ingredients=tuple(ingredient(one) for one in version.composition),
        composed=bool(version.composition),
        volatile=aerosol or any(code in says for code in VOLATILE),
        aerosol=aerosol, density_kg_l=density, flash_point_c=version.flash_point_c,
    )  # fmt: skip


def ingredient(document: dict[str, Any]) -> Ingredient:
    """Return a row of section 3; of a range the upper end counts, what cannot be read is not known."""
    percent = document.get("percent", 100)
    share = float(percent[1] if isinstance(percent, list) else percent) / 100
    try:
        hazards = read_hazards(document.get("hazards"), "hazards")[0]
    except MixtureError:
        hazards = None
    return Ingredient(str(document.get("name", "")), str(document.get("cas") or ""), share, hazards)


def limits(shop: Shop) -> dict[str, tuple[Limit, ...]]:
    """Return the shop's own limits by CAS number, in one query."""
    found: dict[str, list[Limit]] = defaultdict(list)
    for row in AirLimit.objects.filter(shop=shop).order_by("id"):
        found[row.cas].append(Limit(row.source, row.kind, row.ppm, row.mg_m3, "typed"))
    return {cas: tuple(each) for cas, each in found.items()}
