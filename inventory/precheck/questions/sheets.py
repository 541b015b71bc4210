"""Is there a data sheet, read and confirmed, for everything that the job takes?"""

from .asking import Finding, question
from .case import Case, Supply
from .facts import ProductFacts, SheetFacts

ACID = "acid"
CONFIRM = "Read the sheet over and confirm it"
SOURCE = "the list of data sheets; the duty to keep them at hand: 29 CFR 1910.1200(g)(8), REACH article 35"


@question("steps", "needs", "shelf", "products", "sheets")
def data_sheet_here(case: Case) -> list[Finding]:
    """Ask where a sheet is missing; stop for acids, fluorides and isocyanates until it is attached."""
    found: dict[str, Finding] = {}
    for supply in case.supplies:
        for code in _products(supply):
            sheet, product = case.facts.sheets.get(code), case.facts.products.get(code)
            if product and sheet and sheet.needed and not sheet.confirmed and code not in found:
                found[code] = _finding(supply, product, sheet)
    return list(found.values())


def _products(supply: Supply) -> list[str]:
    named = [supply.need.product] if supply.need.product else []
    return list(dict.fromkeys(named + [bottle.product for bottle, _ in supply.taken]))


def _finding(supply: Supply, product: ProductFacts, sheet: SheetFacts) -> Finding:
    grave = _grave(product, sheet)
    so = "a data sheet that nobody has confirmed" if sheet.attached else "no data sheet"
    end = CONFIRM if sheet.attached else "Attach the maker's sheet and type its date"
    why = f"{product.name} {grave}: what it does to people must be known before it is opened." if grave else (
        f"Its label is all that anyone here can read about {product.name}."
    )  # fmt: skip
    return Finding(
        "no_sheet",
        "stop" if grave else "ask",
        f"{product.name} has {so}.",
        f"{supply.step.name} takes it. {why}",
        f"{end}; {'nothing else ends this stop' if grave else 'until then its own label comes first'}.",
        SOURCE,
        (product.code, supply.step.code),
    )


def _grave(product: ProductFacts, sheet: SheetFacts) -> str:
    if sheet.fluoride:
        return "holds a fluoride"
    if sheet.isocyanate:
        return "holds isocyanates"
    return "is an acid" if product.kind == ACID else ""
