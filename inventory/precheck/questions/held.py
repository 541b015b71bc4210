"""Is anything that the step would take held or recalled?"""

from inventory.codes import pair
from inventory.stock.rules.reserve import OnShelf

from .asking import Finding, question
from .case import Case, Supply
from .words import instead, joined, moment, named, offered, order_by, plural


@question("steps", "needs", "shelf", "products")
def held_or_recalled(case: Case) -> list[Finding]:
    """Stop where a held bottle stands in the bay, is the open one, or is what the step lacks."""
    found: dict[tuple[str, str], Finding] = {}
    for supply in case.supplies:
        for reason, bottles in _by_reason(supply).items():
            cause = (bottles[0].product, reason)
            found.setdefault(cause, _finding(case, supply, reason, bottles))
    return list(found.values())


def _by_reason(supply: Supply) -> dict[str, list[OnShelf]]:
    reasons: dict[str, list[OnShelf]] = {}
    for bottle in sorted(supply.held, key=lambda bottle: (not supply.at_hand(bottle), bottle.code)):
        open_and_alone = not bottle.sealed and not supply.good_at_hand
        if supply.lacks or supply.in_bay(bottle) or open_and_alone:
            reasons.setdefault(bottle.held, []).append(bottle)
    return reasons


def _finding(case: Case, supply: Supply, reason: str, bottles: list[OnShelf]) -> Finding:
    product = case.facts.products[bottles[0].product]
    recalled = any(bottle.code in case.facts.recalled for bottle in bottles)
    word, one = ("recalled" if recalled else "held"), len(bottles) == 1
    many = f"{plural(len(bottles), product.noun)} of {product.name}"
    starts = moment(supply.need.starts_at, case.facts.zone, case.at)
    codes = ", ".join(pair(bottle.code) for bottle in bottles[:5])
    return Finding(
        "recalled" if recalled else "held",
        "stop",
        f"{named(case, bottles[0]) if one else many} {'is' if one else 'are'} {word}: {reason}.",
        f"{codes}: {word} with the reason “{reason}”. {supply.step.name} takes {product.name} from {starts}.",
        _way_out(case, supply, recalled),
        "the entry that holds it",
        (bottles[0].code, supply.step.code),
    )


def _way_out(case: Case, supply: Supply, recalled: bool) -> str:
    end = "Send it back" if recalled else "An owner releases it once it is right"
    if (other := instead(case, supply)) is None:
        return joined(f"{end}; nothing else is free for this step.", order_by(case, supply))
    return f"Take {offered(case, supply, other)}, and move this out of reach. {end}."
