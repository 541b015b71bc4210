"""Does a coating stand the heat of what it goes on?"""

from inventory.trade.acts import Act
from inventory.trade.heat import Rated, heat_findings
from inventory.trade.visits import COATS

from .asking import Finding, question
from .case import Case

# What gets hot in an area of the car: a key of the table of working temperatures.
HOT = {"wheels": "wheel", "brakes": "caliper"}
EXHAUST, METAL, TIP = "exhaust", "metal", "exhaust_tip"


@question("steps", "surfaces")
def stands_the_heat(case: Case) -> list[Finding]:
    """Stop a coating on what gets hotter than it stands; ask where nobody knows what it stands."""
    coats = [act for act in case.facts.surfaces.acts if act.step in case.open_steps and act.has(COATS)]
    first = {act.product: act.step for act in reversed(coats)}
    rated = [
        Rated(act.product, act.name, surface, act.profile.heat_c)
        for act in coats
        for surface in _hot(case, act)
    ]
    return [
        Finding(
            one.code, one.grade, one.says, one.because, one.do, one.source, (*one.about, first[one.about[0]])
        )
        for one in heat_findings(rated)
    ]


def _hot(case: Case, act: Act) -> list[str]:
    exhausts = [one for one in case.facts.surfaces.surfaces if EXHAUST in one.name.lower()]
    tips = [TIP] if METAL in act.areas and exhausts else []
    return [HOT[area] for area in sorted(act.areas & set(HOT))] + tips
