"""What is worn, and what may not be breathed at all, said."""

from safety.air.facts import Facts
from safety.air.respirators import ONLY_SUPPLIED, cartridge_for, factors, in_words
from safety.air.saying import number, row
from safety.findings import Finding

SOURCE = "29 CFR 1910.134(d)(3)(i)(B); safety/tables/protection_factors.csv, cartridges.csv"


def dangerous(facts: Facts) -> list[Finding]:
    """Stop where the breathing zone reaches a value that is immediately dangerous to life or health."""
    if not facts.at_idlh:
        return []
    says = f"{row(facts.at_idlh)} reaches what is immediately dangerous to life or health."
    because = "At that value no filtering mask may be worn, whatever its factor."
    do = "Not this way: less product, more time, local exhaust."
    return [Finding("air.idlh", "stop", says, because, do, SOURCE, facts.at_idlh)]


def mask(facts: Facts) -> list[Finding]:
    """Tell which respirators would do, and whether the worn one does."""
    worn, needed = facts.task.respirator, any(each.grade == "stop" for each in facts.nose)
    if not facts.known or facts.at_idlh or (worn == "none" and not needed):
        return []
    if worn != "none" and not facts.mask_fails:
        says = f"{in_words(worn)[:1].upper()}{in_words(worn)[1:]} is enough here{_with(facts)}."
        return [Finding("air.respirator", "tell", says, _because(facts), _before(), SOURCE)]
    grade = "tell" if worn == "none" else "ask"  # the exposure itself is the stop
    if worn == "none":
        says = "A respirator would be needed here."
    else:
        says = f"{in_words(worn)[:1].upper()}{in_words(worn)[1:]} is not enough: {facts.mask_fails}."
    enough = row(in_words(kind) for kind in facts.enough) if facts.enough else ""
    do = (
        f"Enough would be {enough}{_with(facts)}. {_before()}"
        if enough
        else "No respirator listed is enough."
    )
    return [Finding("air.respirator", grade, says, _because(facts), do, SOURCE)]


def _because(facts: Facts) -> str:
    known = factors(facts.task.regime).get(facts.task.respirator)
    own = f"; its protection factor is {known.factor:g}" if known else ""
    memory = " (from memory: check it)" if known and known.mark == "M" else ""
    return f"The air must be divided by {number(facts.hazard_ratio)}{own}{memory}."


def _with(facts: Facts) -> str:
    regime = facts.task.regime
    kinds = {cartridge_for(one.of, one.emission.form, regime) for one in facts.contaminants}
    if ONLY_SUPPLIED in kinds or facts.enough == ("air_fed",):
        return ""
    return f", filtering with {row(sorted(kinds))}"


def _before() -> str:
    return "Before any tight mask: medical evaluation, fit test for that model, clean-shaven."
