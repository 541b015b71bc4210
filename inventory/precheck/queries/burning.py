"""What burns in a product, how much of it there is, and whether its container is too large for it."""

from collections.abc import Iterable

from inventory.models import Container, Pack, Product, Shop
from safety.findings import Finding
from safety.flammables.containers import ASKS, container_size
from safety.flammables.values import Vessel
from safety.hazards.classes import read_hazard
from safety.models import SheetVersion

from .substances import sheets_of

LITRE = 1_000_000


def burns_as(hazards: Iterable[str] | None) -> tuple[int | None, bool]:
    """Return the category of what burns (0 where a sheet classes nothing so), and whether it is an aerosol.

    None where no sheet says.
    """
    if hazards is None:
        return None, False
    read = [read_hazard(str(text)).of for text in hazards]
    for name, aerosol in (("Aerosol", True), ("Flam. Liq.", False)):
        if found := next((one for one in read if one.name == name), None):
            return int(found.category), aerosol
    return 0, False


def litres(product: Product, amount: int) -> float:
    """Return base units of a product in litres; one that is counted holds none."""
    if product.dimension == Product.Dimension.VOLUME:
        return amount / LITRE
    if product.dimension != Product.Dimension.MASS:
        return 0.0
    return amount / (product.density_mg_per_l or LITRE)


def packs_too_large(shop: Shop, product: Product, packs: Iterable[Pack]) -> tuple[Finding, ...]:
    """Return what is told of packs whose container is too large, in a query; none where nothing is judged."""
    said = [pack for pack in packs if pack.vessel and shop.regime in ASKS]
    sheet = sheets_of([product]).get(product.sheet_id or 0) if said else None
    vessels = (vessel(product, pack, pack.amount, sheet) for pack in said)
    return tuple(one for each in vessels if each for one in container_size(each, shop.regime))


def vessel_of(product: Product, moving: Container, sheet: SheetVersion | None, regime: str) -> Vessel | None:
    """Return a bottle as its container is judged; None where that is not known, or it holds a mix with water.

    The class of such a mix is not its product's.
    """
    if regime not in ASKS or moving.parts_water or moving.pack is None:
        return None
    return vessel(product, moving.pack, moving.full, sheet)


def vessel(product: Product, pack: Pack, full: int, sheet: SheetVersion | None) -> Vessel | None:
    """Return what a pack's container holds when full; None where nobody said what it is made of."""
    category, aerosol = burns_as(sheet.hazards if sheet else None)
    if not pack.vessel or aerosol:
        return None
    return Vessel(product.name, category, Pack.Vessel(pack.vessel).label, litres(product, full))
