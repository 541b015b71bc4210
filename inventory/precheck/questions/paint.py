"""Is there enough paint left to cut, and does any pad or towel bring what scratches?"""

from collections.abc import Sequence
from dataclasses import replace

from inventory.trade.paint import Cut, budget
from inventory.trade.paint.pieces import COMMON
from inventory.trade.paint.values import FINISH
from inventory.trade.small_goods import SmallGood, judge
from inventory.trade.thickness import thickness
from safety.findings import Finding as Judged

from .asking import Finding, question
from .case import Case
from .topics import PaintFacts
from .words import joined

# What a finding is about has 120 characters: the sentence names every panel, the codes only the first.
MOST_CODES = 5


@question("steps", "paint")
def enough_paint_left(case: Case) -> list[Finding]:
    """Hold what the open steps cut against what each panel has above the shop's floor."""
    topic = case.facts.paint
    to_come = [cut for cut in topic.cuts if cut.step in case.open_steps]
    if not to_come:
        return []
    step = to_come[0].step
    raised = joined(*dict.fromkeys(cut.raised for cut in to_come if cut.raised))
    if not topic.panels:
        return [_no_panels(topic, step, raised)]
    cuts = [*to_come, *_not_measured_yet(case, to_come)]
    found = budget(topic.panels, topic.readings, cuts, topic.floor, topic.history, topic.unit).findings
    return [
        Finding(
            one.code, one.grade, one.says, joined(one.because, "" if number else raised), one.do, one.source,
            (*one.about[:MOST_CODES], step),
        )
        for number, one in enumerate(found)
    ]  # fmt: skip


def _not_measured_yet(case: Case, to_come: list[Cut]) -> list[Cut]:
    """Return what signed steps took where no gauge has seen it since, of panels that are still to be cut.

    Finishing alone was judged together with what came before it, so before it nothing is counted twice.
    """
    hard = [cut.panel for cut in to_come if cut.grade != FINISH]
    signed = {step.code: step.signed_at for step in case.facts.steps if step.signed_at}
    topic = case.facts.paint
    last = {one.panel: one.at for one in sorted(topic.readings, key=lambda one: one.at)}
    return [
        replace(cut, panel=panel.code)
        for cut in topic.cuts
        if cut.step in signed
        for panel in topic.panels
        if cut.panel in (None, panel.code) and (None in hard or panel.code in hard)
        if panel.code in last and last[panel.code] < signed[cut.step]
    ]


def _no_panels(topic: PaintFacts, step: str, raised: str) -> Finding:
    floor = thickness(topic.floor.whole_um, topic.unit)
    return Finding(
        "paint.no_reading",
        "ask",
        "Paint is to be cut, and no panel of this car is listed.",
        joined(
            f"Without a reading nobody knows what is left. Under {floor} of whole film this shop does not "
            "cut, and the eye cannot tell.",
            raised,
        ),
        "Add the panels on the page “Paint and panels” of this job, and read the gauge there.",
        COMMON,
        (step,),
    )


@question("steps", "needs", "shelf", "paint")
def what_pads_bring(case: Case) -> list[Finding]:
    """Judge the pads and towels that the open steps would take by what they carried before."""
    topic = case.facts.paint
    taken: dict[str, dict[str, SmallGood]] = {}
    for supply in case.supplies if topic.goods else ():
        if supply.step.code in case.open_steps:
            goods = [topic.goods[one.code] for one, _ in supply.taken if one.code in topic.goods]
            taken.setdefault(supply.step.code, {}).update({one.code: one for one in goods})
    found: dict[str, list[tuple[str, Judged]]] = {}
    for step, goods_of in taken.items():
        for judged in judge(goods_of.values(), topic.uses[step]):
            found.setdefault(judged.code, []).append((step, judged))
    return [_once(alike) for alike in found.values()]


def _once(alike: Sequence[tuple[str, Judged]]) -> Finding:
    """One cause is one finding: what other steps would take of it is said in its reason."""
    (step, first), *others = alike
    more = [one.says for _, one in others if one.says != first.says]
    return Finding(
        first.code, first.grade, first.says, joined(first.because, *more), first.do, first.source,
        (*first.about[:MOST_CODES], step),
    )  # fmt: skip
