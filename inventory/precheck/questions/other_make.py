"""Which bottle of another make may stand in for the one that a step lacks, and how it is said."""

from inventory.codes import pair
from inventory.stock.rules.reserve import OnShelf, ends_before
from inventory.trade.standing_in import stands_in

from .case import Case, Supply
from .facts import ProductFacts
from .words import amount, good_to


def other_make(case: Case, supply: Supply) -> str:
    """Name the first bottle of another make that does the same and that nobody is waiting for, or ""."""
    wants = case.facts.products.get(supply.need.product or "")
    free = [bottle for bottle in case.plan.left() if wants and _may_serve(case, supply, wants, bottle)]
    if not free:
        return ""
    other = min(free, key=lambda bottle: (bottle.sealed, bottle.code))
    make = case.facts.products[other.product]
    place = case.facts.places.get(other.place or "")
    where = f" in {place}" if place else ""
    held = amount(other.concentrate, make, case.facts.system)
    return f"{make.name} {pair(other.code)} is free{where}: {held}, {good_to(case, other)}."


def _may_serve(case: Case, supply: Supply, wants: ProductFacts, bottle: OnShelf) -> bool:
    """It does what is wanted, holds what is missing, and is past no date of any kind when the step ends."""
    make, need = case.facts.products.get(bottle.product), supply.need
    if make is None or make.code == wants.code or make.dimension != wants.dimension:
        return False
    enough = not bottle.held and bottle.concentrate >= supply.missing
    dies = ends_before(bottle, need.starts_at, need.ends_at, case.facts.zone)
    return enough and dies is None and stands_in(make.does, wants.does)
