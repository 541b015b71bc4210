"""Is what people breathe during the job's steps below its limits, and can nothing there catch fire?"""

from collections import defaultdict
from dataclasses import replace
from datetime import date
from functools import lru_cache

from inventory.precheck.questions.topics.air import AirStep, Makeup
from safety.air.answer import Air, air
from safety.air.evaporating import ONLY_BURNS
from safety.air.respirators import factors
from safety.air.saying import capital, row
from safety.air.values import EIGHT_HOURS, Task
from safety.findings import Finding as Found

from .air_fire import sparks
from .air_saying import SCREENING, Pairs, beginning, counted, told_once
from .air_ways import in_a_cabin, with_masks_here
from .asking import Finding, question
from .case import Case
from .evaporation import NOWHERE, StepAir, day_of, letting_go, steps_in_air
from .words import joined

# By the task they are judged in: what is breathed, what burns, what nobody can put into grams.
BREATHED = frozenset({
    "air.idlh", "air.exposure", "air.respirator", "air.no_limit", "air.no_molar_mass", "air.no_figure",
    "air.no_flow_is_enough", "air.skin", "air.indicative", "air.mixing",
})  # fmt: skip
BURNS = frozenset({"air.closed_space", "air.lel", "air.lel_unknown"})
UNWEIGHED = frozenset({"air.named_protection"})
NO_BAY = "air.no_bay"


# One cause, one finding: what follows from it is said in its reasons.
FOLDS = {
    "air.closed_space": frozenset(
        {"air.idlh", "air.lel", "air.exposure", "air.respirator", "air.ignition", "air.ignition_tool"}
    ),
    "air.idlh": frozenset({"air.exposure", "air.respirator"}),
    "air.exposure": frozenset({"air.no_flow_is_enough", "air.no_figure"}),
}
DANGEROUS = "What nobody can estimate is treated as immediately dangerous; no cartridge is advised."
LAW = "29 CFR 1910.134(d)(1)(iii)"


@question("steps", "needs", "shelf", "products", "air", "people")
def what_is_breathed(case: Case) -> list[Finding]:
    """Judge the air of each step to come: one finding a cause, its gravest step first, notes folded."""
    steps = steps_in_air(case, to_come(case))
    said = [(of, found) for of in steps for found in judged(case, of)]
    return [
        *told_once(case, said), *_over_the_shift(case, said), *_place_unknown(case, steps),
        *_no_bay(case, steps),
    ]  # fmt: skip


@question("steps", "needs", "shelf", "products", "air")
def what_a_product_is_made_of(case: Case) -> list[Finding]:
    """Ask once where a product lets something go and nobody typed in what."""
    found: dict[str, tuple[Makeup, AirStep]] = {}
    for step in to_come(case):
        for use in step.uses:
            makeup = case.facts.air.makeups.get(use.product or "")
            if makeup and makeup.volatile and not makeup.composed:
                found.setdefault(makeup.name, (makeup, step))
    if not found:
        return []
    makeup, step = next(iter(found.values()))
    names, codes = " and ".join(found), tuple(one.code for one, _ in found.values())
    return [
        Finding(
            "air.no_composition", "ask", f"Nobody typed in what {names} {'are' if len(found) > 1 else 'is'} "
            "made of, so what is breathed is not known.",
            f"Its sheet says that something of it evaporates. {DANGEROUS}",
            "Type section 3 of its data sheet in, on the sheet's page.",
            LAW, (makeup.code, step.code), codes,
        )
    ]  # fmt: skip


def to_come(case: Case) -> list[AirStep]:
    """Return the job's steps that nobody signed yet."""
    return [step for step in case.facts.air.steps if not step.signed]


def judged(case: Case, of: StepAir) -> list[Found]:
    """Return what is said about one step's air."""
    found = _weighed(case, of) if of.emissions else []
    bare = (*of.release.fumes, *of.release.mist)
    if bare:
        unweighed = once(of.task(bare), _today(case))
        found += [with_masks_here(case, of, one, bare) for one in unweighed.findings if one.code in UNWEIGHED]
    return folded([*found, *_fumes(of)])


def _weighed(case: Case, of: StepAir) -> list[Found]:
    found: list[Found] = []
    if of.place.known:
        found += [_uncovered(of, one) for one in breathed(case, of).findings if one.code in BREATHED]
    burning = once(of.task(of.emissions), _today(case))
    found += [
        in_a_cabin(of, one)
        for one in burning.findings
        if one.code in BURNS and (of.place.known or one.grade == "stop")
    ]
    return [*found, *sparks(case, of, burning)]


def _uncovered(of: StepAir, found: Found) -> Found:
    """Return an exposure with why a measurement does not count for it."""
    if found.code != "air.exposure" or not of.uncovered:
        return found
    return replace(found, because=f"{found.because} {' '.join(of.uncovered)}")


@lru_cache(maxsize=1024)
def once(task: Task, on: date) -> Air:
    """Return the air of a task, worked out once: a day's list of jobs asks for the same steps again."""
    return air(task, on)


def _today(case: Case) -> date:
    return case.at.astimezone(case.facts.zone).date()


def folded(found: list[Found]) -> list[Found]:
    """Return what is found with the consequences of a graver cause folded into it."""
    for cause, under in FOLDS.items():
        lead = next((one for one in found if one.code == cause), None)
        if lead is None:
            continue
        told = " ".join(one.says for one in found if one.code in under)
        whole = replace(lead, because=f"{lead.because} {told}".rstrip())
        found = [whole if one is lead else one for one in found if one.code not in under]
    return found


def breathed(case: Case, of: StepAir) -> Air:
    """Return the air of a step as it is breathed: without what only burns."""
    return once(of.task(one for one in of.emissions if one.cas not in ONLY_BURNS), _today(case))


def _fumes(of: StepAir) -> list[Found]:
    names = tuple(dict.fromkeys(one.name for one in of.release.fumes))
    if not names:
        return []
    says = f"How much {' and '.join(names)} fumes from it is not known."
    because = "From water an acid fumes less than its share, and no table says how much: no figure is made."
    do = "Keep the air moving, stay upwind, and wear what the sheet names."
    return [Found("air.fumes", "tell", says, because, do, "safety/tables/volatiles.csv", names)]


def _no_bay(case: Case, steps: list[StepAir]) -> list[Finding]:
    """Ask for the bay of each step that lets something go; a step without one would be judged by nobody.

    About the steps first, then what goes into the air there: at a station other bottles are left in peace.
    """
    nowhere = [of for of in steps if of.place == NOWHERE]
    if not nowhere:
        return []
    names = row(dict.fromkeys(of.step.name for of in nowhere))
    what = row(dict.fromkeys(each for of in nowhere for each in _goes_up(of)))
    return [
        Finding(
            NO_BAY, "ask", f"Nobody named the bay of {names}.",
            joined(f"{capital(what)} goes into the air there." if what else "", counted(case, nowhere[0]),
                   "How much is breathed hangs on the bay's size and its air flow."),
            f"Name the bay of {names}: change the step on the job's page. That ends this question.",
            "house rule: what is not planned is judged for nobody",
            (*(of.step.code for of in nowhere), *letting_go(nowhere)),
        )
    ]  # fmt: skip


def _goes_up(of: StepAir) -> list[str]:
    release = of.release
    return [one.name for one in (*release.vapours, *release.cure, *release.fumes, *release.mist)]


def _place_unknown(case: Case, steps: list[StepAir]) -> list[Finding]:
    unknown = [of for of in steps if of.release.vapours and not of.place.known and of.place != NOWHERE]
    if not unknown:
        return []
    first, named = unknown[0], list(dict.fromkeys(each for of in unknown for each in _missing(of)))
    says = f"What is breathed at {first.step.name} is not known: {row(named)}"
    return [
        Finding(
            "air.unknown", "ask", f"{says} {'are' if len(named) > 1 else 'is'} missing.",
            f"{counted(case, first)} {DANGEROUS}",
            "Measure the room, read the fan's plate, and type both in on the bay's page.",
            LAW, beginning(first), letting_go(unknown),
        )
    ]  # fmt: skip


def _missing(of: StepAir) -> list[str]:
    room = of.place.place
    missing = [f"the size of {of.place.name}"] if room.volume_m3 is None else []
    return [*missing, *([f"the air flow of {of.place.name}"] if room.air_m3_h is None else [])]


def eight_hours(case: Case, of: StepAir) -> float:
    """Return which part of the 8-hour limits a step takes from who does it, behind a mask if it is enough."""
    if not of.place.known or not of.emissions:
        return 0.0
    facts, worn = breathed(case, of).facts, of.step.respirator
    share = next((each.index for each in facts.nose if each.kind == EIGHT_HOURS), 0.0)
    return share if worn == "none" or facts.mask_fails else share / factors(of.regime)[worn].factor


def shifts(case: Case) -> list[list[tuple[StepAir, float]]]:
    """Return each day of each person of the job, with the steps of other jobs, and what each takes."""
    facts = case.facts.air
    days: dict[tuple[str, object], list[AirStep]] = defaultdict(list)
    for step in (*facts.steps, *facts.others):
        days[step.person or step.job, day_of(case, step.starts_at)].append(step)
    mine = {(step.person or step.job, day_of(case, step.starts_at)) for step in to_come(case)}
    return [
        [(each, eight_hours(case, each)) for each in steps_in_air(case, steps)]
        for day, steps in days.items()
        if day in mine and len(steps) > 1
    ]


def _over_the_shift(case: Case, said: Pairs) -> list[Finding]:
    """Stop a day whose steps together reach the 8-hour limits, though none of them does alone."""
    stopped = {of.step.code for of, found in said if found.code == "air.exposure" and found.grade == "stop"}
    open_ = {step.code for step in to_come(case)}
    for parts in shifts(case):
        total = sum(share for _, share in parts)
        mine = [of for of, _ in parts if of.step.code in open_]
        if mine and total >= 1 and len(parts) > 1 and not stopped & {of.step.code for of, _ in parts}:
            listed = ", ".join(f"{of.step.name} {100 * share:.0f} %" for of, share in parts)
            return [
                Finding(
                    "air.shift", "stop", f"Over the day, who does {mine[0].step.name} breathes "
                    f"{100 * total:.0f} % of the 8-hour limits.",
                    f"Each step's mean over its minutes, of 480: {listed}. {SCREENING}",
                    "Give one of these steps to somebody else or to another day, or take less product.",
                    "29 CFR 1910.1000(d)(1)(i)", beginning(mine[0]),
                )
            ]  # fmt: skip
    return []
