"""What the air of a task means: every check is a function here, asked in the list's order.

A check takes the facts and returns its findings; the gravest stand first. Everything is screening arithmetic:
no finding replaces a competent person's assessment, and an air result never clears the skin.
"""

from collections.abc import Callable

from safety.air.contaminants import Contaminant
from safety.air.exposure import Judged, Results, by_kind
from safety.air.facts import Facts
from safety.air.figure_findings import no_figure, notes
from safety.air.fire_findings import burning, closed_space, ignition, uncounted
from safety.air.limits import LISTS, lowest, not_listed
from safety.air.measured import EN_689, told_of
from safety.air.protection import may_be_caught, named_for, unprotected
from safety.air.protection_findings import dangerous, mask
from safety.air.respirators import factors, in_words, no_factor, worn
from safety.air.saying import LIST_SOURCE, against, capital, listed, measure, number, row
from safety.air.values import IN_WORDS, KINDS
from safety.findings import GRADES, Finding, gravest_first

MEASURE = "Have the air measured and write it down on the bay's page, or use less product and more air."
UNDER_IT = "local exhaust with the air measured under it"
CATCH = "or catch it where it arises with examined local exhaust; or "


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
    measured = by_kind(facts.task.measured)
    uneven = tuple(one.name for one in facts.contaminants if cannot_be_compared(one, measured))
    if uneven:
        found.append(
            Finding(
                "air.no_molar_mass", "ask", f"{row(uneven)} cannot be compared with its limit.",
                "The limit is in ppm and the molar mass is not known.",
                "Type a limit in mg/m³, as section 8 of the data sheet gives it.", LIST_SOURCE, uneven,
            )
        )  # fmt: skip
    return found


def cannot_be_compared(one: Contaminant, measured: Results) -> bool:
    """Return whether a kind of limit is listed that no figure of this contaminant can stand against."""
    nose = one.nose
    return nose is not None and any(
        lowest(one.limits, kind)
        and one.strictest(nose.end, kind) is None
        and (one.emission.cas, kind) not in measured
        for kind in KINDS
    )


def exposure(facts: Facts) -> list[Finding]:
    """Stop where a breathing-zone figure reaches its own limit, ask from a tenth, tell below."""
    judged = [each for each in facts.nose if each.parts]
    if not judged:
        return []
    worst = max(judged, key=lambda each: (-GRADES.index(each.grade), each.index))
    covered = worst.grade == "stop" and not facts.mask_fails
    grade = "ask" if covered else worst.grade
    return [
        Finding(
            "air.exposure", grade, _says(worst), _because(facts), _do(facts, worst, covered),
            f"{LIST_SOURCE}; near field and room average, the larger{_test(facts)}",
            tuple(part.of.name for part in worst.parts),
        )
    ]  # fmt: skip


def _says(worst: Judged) -> str:
    share = f"{number(100 * worst.index)} % of the {IN_WORDS[worst.kind]}"
    names = row(part.of.name for part in worst.parts)
    return f"Who works here breathes {share} ({names}){_as_measured(worst)}."


def _as_measured(worst: Judged) -> str:
    measured = [part for part in worst.parts if part.measured]
    if not measured:
        return ""
    return ", as measured" if len(measured) == len(worst.parts) else ", in part as measured"


def _test(facts: Facts) -> str:
    return f"; {EN_689}" if facts.task.measured else ""


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
    told += told_of(facts.task.measured)
    told += _only_reckoned(facts)
    told += [listed(one) for one in facts.contaminants if any(each.kind in KINDS for each in one.limits)]
    return " ".join(told)


def _only_reckoned(facts: Facts) -> list[str]:
    """Name the limits of what was measured against which nothing was: the model judges them."""
    substances = {one.cas for one in facts.task.measured}
    done = by_kind(facts.task.measured)
    left = [
        f"{part.of.name} against the {IN_WORDS[each.kind]}"
        for each in facts.nose
        for part in each.parts
        if part.of.emission.cas in substances and (part.of.emission.cas, each.kind) not in done
    ]
    return [f"Not measured, so reckoned: {row(left)}."] if left else []


def _do(facts: Facts, worst: Judged, covered: bool) -> str:
    if covered:
        others = max((each.index for each in facts.room), default=0.0)
        alone = f"The room's average reaches {number(100 * others)} % of a limit: nobody else stays in it. "
        worn = in_words(facts.task.respirator)
        return (
            f"{alone if others >= 1 else ''}Wear {worn} from start to clear air: medical evaluation and fit "
            "test in date, clean-shaven where it seals."
        )
    if worst.grade == "ask":
        return MEASURE
    if worst.grade == "tell":
        kept = dict.fromkeys(part.measured.within for part in worst.parts if part.measured)
        return f"Keep to what was measured: {row(kept)}." if kept else "Keep the air flowing."
    less = (
        "less product with a new measurement"
        if any(part.measured for part in worst.parts)
        else "less product"
    )
    ways = [less, UNDER_IT, *(in_words(kind) for kind in facts.enough[:1])]
    return f"Change the plan: {', '.join(ways[:-1])} or {ways[-1]}; then ask again."


def named_protection(facts: Facts) -> list[Finding]:
    """Stop where fluoride, sprayed isocyanate, silica, dust or mist meets no protection named for it."""
    task = facts.task
    bare = unprotected(facts.contaminants, task.respirator, task.regime, dust_caught=task.dust_caught)
    return [
        Finding(
            "air.named_protection", "stop",
            f"{one.name} ({one.emission.form}) is not worked with {worn(facts.task.respirator)}.",
            f"What it does does not follow the average of a room.{_without_factor(facts, one)}",
            f"Wear one of: {_named(facts, one)}; {_or(one)}do without it.",
            "safety/tables/air_families.csv; isocyanates: HSE", (one.name,),
        )
        for one in bare
    ]  # fmt: skip


def _named(facts: Facts, one: Contaminant) -> str:
    known = factors(facts.task.regime)
    return row(in_words(kind) for kind in named_for(one.emission) if kind in known)


def _without_factor(facts: Facts, one: Contaminant) -> str:
    """Return that the mask which is worn and named protects by no table of this regime, "" where one does."""
    task = facts.task
    if task.respirator not in named_for(one.emission):
        return ""
    return f" {capital(in_words(task.respirator))} {no_factor(task.regime)}, so it counts as none."


def _or(one: Contaminant) -> str:
    return CATCH if may_be_caught(one.emission) else "or "


CHECKS: tuple[Callable[[Facts], list[Finding]], ...] = (
    dangerous, closed_space, burning, named_protection, exposure, mask, unknown, no_limit, uncounted,
    no_figure, ignition, notes,
)  # fmt: skip


def all_findings(facts: Facts) -> tuple[Finding, ...]:
    """Ask every check."""
    return gravest_first(found for check in CHECKS for found in check(facts))
