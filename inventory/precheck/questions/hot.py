"""Is anything wet put on a hot panel or wheel? It dries before it can be rinsed or levelled, and stains."""

from dataclasses import dataclass

from inventory.trade.acts import Act
from inventory.trade.naming import row
from inventory.trade.play import in_order
from inventory.trade.reading import in_words

from .asking import Finding, question
from .case import Case
from .facts import StepFacts
from .topics.weather import Reading
from .weather import fresh, is_near, measured

# Above this a coat is stopped; of what else is wet the reference says only "hot", so it is asked about there.
HOT_C = 35
# The weather's own question speaks of what is laid on the car to stay.
LAID = frozenset({"coating", "topper", "wax"})
INSIDE, WHEELS = frozenset({"interior"}), "wheels"
FOR_WHEELS = frozenset({"wheel", "acid"})
# What a finding is about has 120 characters.
MOST = 6
BECAUSE = "On a hot wheel or panel it dries before it can be rinsed or levelled, and stains."
SOURCE = f"{in_words('T')}; {HOT_C} °C for what is no coat: {in_words('C')}"


@dataclass(frozen=True)
class Hot:
    """A product that would go on a panel above its bound; `own`: the bound is the product's own."""

    step: StepFacts
    reading: Reading
    act: Act
    bound_c: int
    own: bool


@question("steps", "surfaces", "weather")
def not_on_a_hot_panel(case: Case) -> list[Finding]:
    """Ask once a bay where its panel was read hotter than what is wet may go on."""
    bays: dict[str, list[Hot]] = {}
    for step in case.facts.steps:
        reading = fresh(case, step)
        if reading and step.bay and step.code in case.open_steps:
            bays.setdefault(step.bay, []).extend(_hot(case, step, reading))
    return [_finding(case, hot) for hot in bays.values() if hot]


def _hot(case: Case, step: StepFacts, reading: Reading) -> list[Hot]:
    wet = [act for act in case.facts.surfaces.acts if act.step == step.code and _is_wet(act)]
    bounds = [
        Hot(step, reading, act, HOT_C if (own := act.profile.air_to_c) is None else own, own is not None)
        for act in wet
    ]
    return [one for one in bounds if reading.panel_c is not None and reading.panel_c > one.bound_c]


def _is_wet(act: Act) -> bool:
    return bool(act.profile.traits and act.areas - INSIDE) and act.kind not in LAID


def _finding(case: Case, hot: list[Hot]) -> Finding:
    """One question a bay, about every product that it holds up: a station asks it with each bottle."""
    step, reading = hot[0].step, hot[0].reading
    names = row(list(dict.fromkeys(one.act.name for one in hot)))
    products = list(dict.fromkeys(one.act.product for one in hot))
    steps = list(dict.fromkeys(one.step.code for one in hot))
    bound = min(one.bound_c for one in hot)
    own = [one.act.name for one in hot if one.own and one.bound_c == bound]
    return Finding(
        "surface.hot", "ask",
        f"{step.bay_name}, {step.name}: the panel is at {reading.panel_c:g} °C, too hot for {names}.",
        f"{measured(reading, case)} {BECAUSE}",
        f"Wait until the panel is at {bound} °C or less, or cool it with water, and measure it again.",
        f"{own[0]}'s own window" if own else SOURCE, (step.bay or "", *products[:MOST], *steps[:MOST]),
    )  # fmt: skip


@question("steps", "surfaces", "weather")
def wheels_cool_to_the_touch(case: Case) -> list[Finding]:
    """Tell once, when it is at hand, that wheels are touched first: nobody can type how hot they are."""
    near = {step.code: step for step in case.facts.steps if not step.signed_at and is_near(step, case.at)}
    for act in in_order(case.facts.surfaces.acts):
        if act.step in near and act.kind in FOR_WHEELS and WHEELS in act.areas:
            reading = fresh(case, near[act.step])
            if reading and _hot(case, near[act.step], reading):
                return []
            return [_cool_first(act)]
    return []


def _cool_first(act: Act) -> Finding:
    return Finding(
        "surface.cool_first", "tell",
        f"{act.step_name}: the wheels are cool to the touch before {act.name} goes on.",
        BECAUSE,
        "Hold the back of a hand to each wheel. Where it is hot, wait, or rinse it cool with water.",
        in_words("T"), (act.product, act.step),
    )  # fmt: skip
