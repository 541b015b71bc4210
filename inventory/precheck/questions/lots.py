"""Does a coating come from one lot within a step?"""

from inventory.stock.rules.one_lot import TWO_LOTS, says

from .asking import Finding, question
from .case import Case, Supply
from .words import amount, joined, order_by, wanted


@question("steps", "needs", "shelf", "products")
def one_coating_one_lot(case: Case) -> list[Finding]:
    """Stop, for the paint's sake, where there is more for a step, but only of another lot."""
    return [_finding(case, supply) for supply in case.supplies if supply.lots_apart]


def _finding(case: Case, supply: Supply) -> Finding:
    product = wanted(case, supply.need)
    assert product is not None
    most = supply.need.amount - supply.missing
    said = [amount(each, product, case.facts.system) for each in (supply.need.amount, most, supply.all_lots)]
    return Finding(
        TWO_LOTS,
        "stop",
        says(product.name, said[0], said[1], supply.need.had),
        f"{_numbers(supply, said)} "
        "Two lots may differ in shade and cure, and a fault could not be traced to one of them.",
        joined(order_by(case, supply), "Or an owner says why two lots are right on this car."),
        "common practice, no source",
        (supply.need.product or supply.need.kind, supply.step.code),
    )


def _numbers(supply: Supply, said: list[str]) -> str:
    if supply.need.had:
        return (
            f"{supply.step.name} has had some of it and takes {said[0]} more. All lots together hold "
            f"{said[2]}, the lot that it has {said[1]}."
        )
    return f"{supply.step.name} takes {said[0]}. All lots together hold {said[2]}, the fullest {said[1]}."
