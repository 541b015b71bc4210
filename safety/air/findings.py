"""What the air of a task means: every check is a function here, asked in the list's order.

A check takes the facts and returns its findings; the gravest stand first. Everything is screening arithmetic:
no finding replaces a competent person's assessment, and an air result never clears the skin.
"""

from collections.abc import Callable

from safety.air.contaminants import Contaminant
from safety.air.exposure import ASKS_AT, Judged
from safety.air.facts import Facts
from safety.air.figure_findings import no_figure, notes
from safety.air.fire_findings import burning, closed_space, ignition, uncounted
from safety.air.limits import LISTS, lowest, not_listed
from safety.air.protection import named_for, unprotected
from safety.air.protection_findings import dangerous, mask
from safety.air.respirators import in_words, worn
from safety.air.saying import LIST_SOURCE, against, listed, measure, number, row
from safety.air.values import IN_WORDS, KINDS
from safety.findings import Finding, gravest_first


def unknown(facts: Facts) -> list[Finding]:
    """Ask where volume, air flow or amount is not known: such an exposure is treated as dangerous."""
    place, missing = facts.task.place, []
    missing += ["the volume of the place"] if place.volume_m3 is None else []
    missing += ["its air flow"] if place.air_m3_h is None else []
    missing += [f"the grams of {one.name}" for one in facts.contaminants if one.emission.grams is None]
    if not missing:
        return []
    return [
        Finding(
            "air.unknown", "ask", f"The exposure is not known: {row(missing)} is missing.",
            "What nobody can estimate is treated as immediately dangerous; no cartridge is advised.",
            "Measure the room, read the fan's plate, weigh the bottle before and after; then ask again.",
            "29 CFR 1910.134(d)(1)(iii)",
        )
    ]  # fmt: skip


def no_limit(facts: Facts) -> list[Finding]:
    """Ask where no limit was found, and where none of the limits can be compared."""
    names = tuple(one.name for one in facts.contaminants if not_listed(one.limits))
    lists = " or ".join(LISTS[facts.task.regime])
    found = []
    if names:
        found.append(
            Finding(
                "air.no_limit", "ask", f"No limit was found for {row(names)} in {lists}.",
                "No limit found is not safe: nobody has said how much of it may be breathed.",
                "Look in section 8 of its data sheet and in your country's list, and type the limit in.",
                LIST_SOURCE, names,
            )
        )  # fmt: skip
    uneven = tuple(one.name for one in facts.contaminants if cannot_be_compared(one))
    if uneven:
        found.append(
            Finding(
                "air.no_molar_mass", "ask", f"{row(uneven)} cannot be compared with its limit.",
                "The limit is in ppm and the molar mass is not known.",
                "Type a limit in mg/m³, as section 8 of the data sheet gives it.", LIST_SOURCE, uneven,
            )
        )  # fmt: skip
    return found


def cannot_be_compared(one: Contaminant) -> bool:
    """Return whether a kind of limit is listed that no figure of this contaminant can stand against."""
    nose = one.nose
    return nose is not None and any(
        lowest(one.limits, kind) and one.strictest(nose.end, kind) is None for kind in KINDS
    )


def exposure(facts: Facts) -> list[Finding]:
    """Stop where a breathing-zone figure reaches its own limit, ask from a tenth, tell below."""
    judged = [each for each in facts.nose if each.parts]
    if not judged:
        return []
    worst = max(judged, key=lambda each: each.index)
    covered = worst.grade == "stop" and not facts.mask_fails
    grade = "ask" if covered else worst.grade
    return [
        Finding(
            "air.exposure", grade, _says(worst), _because(facts), _do(facts, worst, covered),
            f"{LIST_SOURCE}; near field and room average, the larger",
            tuple(part.of.name for part in worst.parts),
        )
    ]  # fmt: skip


def _says(worst: Judged) -> str:
    share = f"{number(100 * worst.index)} % of the {IN_WORDS[worst.kind]}"
    return f"Who works here breathes {share} ({row(part.of.name for part in worst.parts)})."


def _because(facts: Facts) -> str:
    told = [
        f"{measure(each.kind)[:1].upper()}{measure(each.kind)[1:]}: "
        + ", ".join(against(part, each.kind) for part in each.parts)
        + "."
        for each in facts.nose
        if each.parts
    ]
    told += [
        f"Not judged, no {IN_WORDS[each.kind]} is listed: {row(each.missing)}."
        for each in facts.nose
        if each.missing
    ]
    told += [listed(one) for one in facts.contaminants if any(each.kind in KINDS for each in one.limits)]
    return " ".join(told)


def _do(facts: Facts, worst: Judged, covered: bool) -> str:
    if covered:
        others = max((each.index for each in facts.room), default=0.0)
        alone = f"The room's average reaches {number(100 * others)} % of a limit: nobody else stays in it. "
        worn = in_words(facts.task.respirator)
        return (
            f"{alone if others >= 1 else ''}Wear {worn} from start to clear air: medical evaluation and fit "
            "test in date, clean-shaven where it seals."
        )
    if worst.grade != "stop":
        known = worst.index >= ASKS_AT
        return (
            "Have the air measured, or use less product and more air." if known else "Keep the air flowing."
        )
    ways = ["less product", "local exhaust", *(in_words(kind) for kind in facts.enough[:1])]
    return f"Change the plan: {', '.join(ways[:-1])} or {ways[-1]}; then ask again."


def named_protection(facts: Facts) -> list[Finding]:
    """Stop where fluoride, sprayed isocyanate, silica, dust or mist meets no protection named for it."""
    bare = unprotected(facts.contaminants, facts.task.respirator, facts.task.regime)
    return [
        Finding(
            "air.named_protection", "stop",
            f"{one.name} ({one.emission.form}) is not worked with {worn(facts.task.respirator)}.",
            "What it does does not follow the average of a room.",
            f"Wear one of: {row(in_words(kind) for kind in named_for(one.emission))}; or do without it.",
            "safety/tables/air_families.csv; isocyanates: HSE", (one.name,),
        )
        for one in bare
    ]  # fmt: skip


CHECKS: tuple[Callable[[Facts], list[Finding]], ...] = (
    dangerous, closed_space, burning, named_protection, exposure, mask, unknown, no_limit, uncounted,
    no_figure, ignition, notes,
)  # fmt: skip


def all_findings(facts: Facts) -> tuple[Finding, ...]:
    """Ask every check."""
    return gravest_first(found for check in CHECKS for found in check(facts))
