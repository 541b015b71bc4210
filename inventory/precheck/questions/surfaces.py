"""May each product touch what it touches, in this order, after these waits, over what is there?"""

from dataclasses import replace
from datetime import datetime, timedelta

from inventory.trade.acts import Act, Clash
from inventory.trade.naming import agreeing, row
from inventory.trade.play import in_order, play
from inventory.trade.reading import in_words
from inventory.trade.unlisted import unlisted
from inventory.trade.visits import COATS

from .asking import GRADES, Finding, question
from .case import Case

COATED = frozenset({"paint", "film"})
# Surfaces that wait from the day they were made, and the rule that counts it.
DATED = {"fresh_refinish": "wait.fresh_refinish", "film": "wait.film"}
PROTECTION = frozenset({"wax", "sealant"})
# Times of a late step move so far at once, so that an answer holds for longer than a minute.
GRID = timedelta(minutes=15)


@question("steps", "surfaces")
def in_the_way(case: Case) -> list[Finding]:
    """Play the job over each surface of the car; what is signed counts for what it left alone."""
    topic = case.facts.surfaces
    later = _later(case)
    acts = [_moved(act, later.get(act.step, timedelta())) for act in topic.acts]
    over = frozenset(act.step for act in acts if act.step not in case.open_steps)
    open_acts = [act for act in acts if act.step not in over]
    clashes = (
        *play(topic.surfaces, acts, case.facts.zone, done=over),
        *unlisted(topic.surfaces, open_acts),
    )
    undated = {one.name for one in topic.surfaces if one.key in DATED and one.since_on is None}
    found: dict[tuple[str, str, str], list[Clash]] = {}
    no_day: list[Clash] = []
    for clash in clashes:
        if clash.code in DATED.values() and set(clash.surfaces) <= undated:
            no_day.append(clash)
        else:
            found.setdefault((clash.code, clash.product, clash.step), []).append(clash)
    return [*(_finding(alike) for alike in found.values()), *_without_its_day(no_day)]


def _without_its_day(clashes: list[Clash]) -> list[Finding]:
    """A respray or a film whose day nobody typed is one cause, however many steps wait for it."""
    if not clashes:
        return []
    panels = sorted({name for clash in clashes for name in clash.surfaces})
    first = clashes[0]
    these = " and ".join(panels) if len(panels) < 3 else f"{', '.join(panels[:-1])} and {panels[-1]}"
    return [
        Finding(
            "wait.no_day",
            min((clash.grade for clash in clashes), key=GRADES.index),
            f"Nobody said when the {these} {'was' if len(panels) == 1 else 'were'} resprayed or covered.",
            "A day that is not known counts as today. "
            + " ".join(dict.fromkeys(clash.says for clash in clashes)),
            "Type the day on the page of its paint and panels; the waits are counted from it.",
            first.source,
            (first.product, first.step),
        )
    ]


def _later(case: Case) -> dict[str, timedelta]:
    """Return by how much each step comes later: a late one happens now, and the next waits for it."""
    free, later = _floor(case.at), {}
    for step in sorted(case.facts.steps, key=lambda one: one.starts_at):
        if step.code in case.open_steps and step.starts_at < free:
            later[step.code] = free - step.starts_at
            free += step.ends_at - step.starts_at
    return later


def _moved(act: Act, by: timedelta) -> Act:
    return replace(act, starts_at=act.starts_at + by, ends_at=act.ends_at + by)


def _floor(at: datetime) -> datetime:
    return at - timedelta(
        minutes=at.minute % (GRID.seconds // 60), seconds=at.second, microseconds=at.microsecond
    )


def _finding(alike: list[Clash]) -> Finding:
    """Several surfaces that refuse one product at one step, each for its own reason, are one finding."""
    first, *others = sorted(alike, key=lambda clash: GRADES.index(clash.grade))
    because = " ".join([first.because, *(f"{one.says} {one.because}" for one in others)])
    return Finding(
        first.code, first.grade, first.says, because, first.do, first.source, (first.product, first.step)
    )


@question("steps", "surfaces")
def words_nobody_ticked(case: Case) -> list[Finding]:
    """Ask once what words on a car mean that name no surface: nothing can be held against them."""
    topic = case.facts.surfaces
    touching = [act for act in in_order(topic.acts) if act.step in case.open_steps and act.profile.traits]
    if not topic.unread or not touching:
        return []
    words = row([f"“{text}”" for text in topic.unread])
    return [
        Finding(
            "surface.words",
            "ask",
            f"Nobody ticked what {words} {agreeing(len(topic.unread), 'is', 'are')}.",
            "These words stand on the car and name no surface, so no product is held against them.",
            "Tick it on the car, or list the panels; then take the words out.",
            in_words("C"),
            (topic.car, touching[0].step),
        )
    ]


@question("steps", "surfaces")
def arrives_unknown(case: Case) -> list[Finding]:
    """Tell once where nobody said what is on the paint and no step before the coat would take it off."""
    topic = case.facts.surfaces
    if topic.described:
        return []
    acts = in_order(topic.acts)
    for number, act in enumerate(acts):
        if act.step in case.open_steps and _needs_bare_paint(act):
            all_over = [one for one in acts[:number] if one.panels is None]
            stripped = any(one.profile.lifts & PROTECTION for one in all_over)
            return [] if stripped else [_unknown(act)]
    return []


def _needs_bare_paint(act: Act) -> bool:
    needs = PROTECTION & set(act.profile.needs_absent)
    return bool(act.has(COATS) and needs and COATED & act.areas)


def _unknown(act: Act) -> Finding:
    return Finding(
        "residue.unknown",
        "tell",
        "Nobody said what this car arrives with.",
        f"{act.step_name} puts {act.name} on, and no step before it takes old wax or sealant off.",
        "Say on the job what is on the paint, or put an alkaline wash or a polish before it.",
        in_words("C"),
        (act.product, act.step),
    )
