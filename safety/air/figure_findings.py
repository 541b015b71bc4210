"""What a reader of the figures must know, said: where none is named, and what none of them covers."""

from safety.air.facts import Facts
from safety.air.saying import LIST_SOURCE, number, row
from safety.findings import Finding


def no_figure(facts: Facts) -> list[Finding]:
    """Tell why no air flow is named, and where none is enough for who works."""
    local = "Local exhaust, and a competent person's assessment."
    assessed = kept_by_measurement(facts)
    if facts.figures.forbidden:
        left = [pair for pair in facts.figures.forbidden if pair[0] not in assessed]
        if not left:
            return []
        names = tuple(name for name, _ in left)
        why = "; ".join(f"{name}: {reason}" for name, reason in left)
        says = f"No air flow is named for {row(names)}."
        source = "summary of the ACGIH manual: dilution from 100 ppm"
        return [Finding("air.no_figure", "tell", says, f"{why}.", local, source, names)]
    if assessed or not facts.figures.not_enough:
        return []
    says = "No air flow is enough for who works here; the figure for the room serves only the others."
    because = "What gathers round the work (G/β) reaches the limit by itself, however much air the room gets."
    do = "Local exhaust, less product, or a mask."
    return [Finding("air.no_flow_is_enough", "tell", says, because, do, "near field / far field, Nicas 1996")]


def kept_by_measurement(facts: Facts) -> frozenset[str]:
    """Return what a measurement shows to be below its limits where nothing is left to ask; else nothing."""
    if any(each.grade != "tell" for each in facts.nose):
        return frozenset()
    return frozenset(part.of.name for each in facts.nose for part in each.parts if part.shown)


def notes(facts: Facts) -> list[Finding]:
    """Tell what a reader of the numbers must know: skin, indicative values, the mixing factor, cure."""
    return [*_skin(facts), *_indicative(facts), *_mixing(facts), *_cure(facts)]


def _skin(facts: Facts) -> list[Finding]:
    names = tuple(
        one.name for one in facts.contaminants if any("skin" in each.notation for each in one.limits)
    )
    if not names:
        return []
    says = f"{row(names)} also passes through the skin."
    because = "Its limit carries a skin notation: air below the limit does not clear the task."
    return [
        Finding("air.skin", "tell", says, because, "Gloves that the maker rates for it.", LIST_SOURCE, names)
    ]


def _indicative(facts: Facts) -> list[Finding]:
    names = tuple(
        one.name for one in facts.contaminants if any(each.source == "EU IOELV" for each in one.limits)
    )
    if not names:
        return []
    says = f"The EU values for {row(names)} are only indicative."
    because = "The member state's own limit is the law, and may be lower."
    return [
        Finding("air.indicative", "tell", says, because, "Type in your country's limit.", LIST_SOURCE, names)
    ]


def _mixing(facts: Facts) -> list[Finding]:
    if facts.task.place.mixing_known:
        return []
    says = "How well the air mixes is not known: K counts as 6."
    because = "K runs from 1 (perfect) to about 10; it divides the air flow once, in the room's average."
    return [
        Finding(
            "air.mixing", "tell", says, because, "Say K where somebody has judged the room.", "our default"
        )
    ]


def _cure(facts: Facts) -> list[Finding]:
    told = [
        f"1 g of {one.name} gives off {number(gas.grams)} g of {gas.name}"
        for one in facts.contaminants
        for gas in facts.cure_of(one)
    ]
    if not told:
        return []
    because = f"Complete hydrolysis: {'; '.join(told)}."
    do = "Add it as an emission of the flash and the first hour of cure, unless the maker says less."
    return [
        Finding("air.cure", "tell", "Curing gives off more.", because, do, "safety/tables/cure_gases.csv")
    ]
