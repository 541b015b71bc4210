"""What may burn, said."""

from safety.air.explosive import burning_grade
from safety.air.facts import Facts
from safety.air.fire import closed_in, lightable, warmest
from safety.air.saying import number, row
from safety.findings import Finding


def closed_space(facts: Facts) -> list[Finding]:
    """Stop a flammable aerosol or solvent in a cabin, boot, pit or engine bay without air flow."""
    if not closed_in(facts.task, facts.contaminants):
        return []
    says = f"Something flammable is used in {number(facts.task.place.volume_m3 or 0)} m³ without air flow."
    because = "In a car's cabin of 3 m³, 19 ml of isopropanol reach a tenth of the explosive limit."
    do = "Doors open, ignition off, and say the air flow that was measured."
    return [Finding("air.closed_space", "stop", says, because, do, "29 CFR 1910.146; computed")]


def burning(facts: Facts) -> list[Finding]:
    """Stop from a tenth of the lower explosive limit, ask from a twentieth."""
    percent = facts.fire.percent
    grade = None if percent is None else burning_grade(percent)
    if percent is None or grade is None:
        return []
    says = f"The room's average reaches {number(percent)} % of the lower explosive limit."
    because = "10 % is a hazardous atmosphere; nearer the liquid there is more. All vapours count together."
    do = "Everybody out, air first." if grade == "stop" else "More air or less product; nothing that sparks."
    return [Finding("air.lel", grade, says, because, do, "29 CFR 1910.146; Le Chatelier")]


def uncounted(facts: Facts) -> list[Finding]:
    """Ask where a flammable part could not be counted."""
    told = []
    if names := facts.fire.without_limit:
        told.append(f"{row(names)} burns, and its share of the explosive limit is not known")
    if unsure := facts.fire.nobody_knows:
        told.append(f"nobody knows whether {row(unsure)} burns")
    if not told:
        return []
    says = f"{'; '.join(told)}."
    return [
        Finding(
            "air.lel_unknown", "ask", f"{says[:1].upper()}{says[1:]}",
            "A lower explosive limit or a molar mass is missing, so the sum is at least what it says.",
            "Read section 9 of the data sheet and type the lower explosive limit in.",
            "safety/tables/exposure_limits.csv", (*names, *unsure),
        )
    ]  # fmt: skip


def ignition(facts: Facts) -> list[Finding]:
    """Tell that nothing may spark, by the flash point against the warmer of air and panel."""
    warm = warmest(facts.task)
    names = lightable(facts.contaminants, warm)
    if not names:
        return []
    guessed = facts.task.air_c is None and facts.task.panel_c is None
    says = f"No ignition source while {row(names)} is in the air."
    because = (
        f"Its flash point lies at or below the warmer of air and panel ({number(warm)} °C"
        f"{', not measured' if guessed else ''}) with 5 K to spare, 15 K for a mixture; or it is a gas."
    )
    do = "Heater, infrared lamp, grinder, switched vacuum, charger: off, and confirmed off."
    return [Finding("air.ignition", "tell", says, because, do, "EN 1127-1, from memory", names)]
