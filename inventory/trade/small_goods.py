"""Pads and towels: what they carried before, and whether that may touch this paint."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from safety.findings import Finding, gravest_first

from .naming import agreeing, row, sentence

PAD, TOWEL = "pad", "towel"
COARSENESS = {"": 0, "polish": 1, "compound": 2}
# What a pad brings from one surface is foreign to every other; the keys are those of surfaces.csv.
FOREIGN = {
    "single-stage": frozenset({"single_stage"}),
    "bare metal": frozenset({"aluminium", "anodised", "chrome", "stainless"}),
}
COMMON = "Common practice, no source"


@dataclass(frozen=True)
class SmallGood:
    """A pad or towel and what it last carried or worked on: an abrasive, a coating, a foreign surface, "".

    What stays for good comes first; `abrasive` is what such a pad carried last besides.
    """

    code: str
    name: str
    kind: str
    last: str = ""
    washed: bool = False
    known: bool = True
    abrasive: str = ""

    @property
    def carried(self) -> str:
        """The abrasive that it carried last."""
        return self.abrasive or self.last


@dataclass(frozen=True)
class Use:
    """The step it is to be used in: its abrasive ("compound", "polish", ""), and the surface by its key."""

    abrasive: str = ""
    surface: str = "clear_coat"
    on_paint: bool = True


Rule = Callable[[Sequence[SmallGood], Use], list[Finding]]


def judge(goods: Iterable[SmallGood], use: Use) -> tuple[Finding, ...]:
    """Return what is wrong with the pads and towels of a step; the stop protects paint, not people."""
    all_goods = list(goods)
    return gravest_first(found for rule in RULES for found in rule(all_goods, use))


def coating_towel(goods: Sequence[SmallGood], use: Use) -> list[Finding]:
    """Stop a towel that levelled a coating from touching paint again, washed or not."""
    found = [one for one in goods if one.kind == TOWEL and one.last == "coating" and use.on_paint]
    says = (
        f"{_names(found)} levelled a coating, and {agreeing(len(found), 'is', 'are')} to touch paint again."
    )
    because = "A coating cures hard in the cloth and scratches; washing does not take it out."
    do = f"Take a fresh towel, and throw {agreeing(len(found), 'this one', 'these')} away."
    return _finding("towel.coating", "stop", says, because, do, found)


def coarser_pad(goods: Sequence[SmallGood], use: Use) -> list[Finding]:
    """Ask where an unwashed pad carried a coarser abrasive than this step's; a foreign one asks anyhow."""
    coarseness = COARSENESS[use.abrasive]
    unwashed = [one for one in goods if one.kind == PAD and one.known and not one.washed]
    coarser = [one for one in unwashed if COARSENESS.get(one.carried, 0) > coarseness]
    found = [one for one in coarser if not _foreign(one, use)]
    carried = row(sorted({one.carried for one in found})) if found else ""
    washed = agreeing(len(found), "was", "were")
    says = f"{_names(found)} carried {carried}, coarser than this step, and {washed} not washed."
    because = "What stays in the pad cuts deeper than the abrasive of this step, and leaves its marks."
    do = "Take a clean pad, or wash this one before the step and say so."
    return _finding("pad.coarser", "ask", says, because, do, found)


def foreign_pad(goods: Sequence[SmallGood], use: Use) -> list[Finding]:
    """Ask where a pad comes from single-stage paint or bare metal and this surface is another."""
    found = [one for one in goods if one.kind == PAD and one.known and _foreign(one, use)]
    before = row(sorted({_before(one.last) for one in found})) if found else ""
    says = f"{_names(found)} {agreeing(len(found), 'was', 'were')} used on {before} before."
    because = "Pigment and metal stay in the foam; they stain and scratch, and washing leaves some."
    do = "Take a pad that has only seen this kind of surface."
    return _finding("pad.foreign", "ask", says, because, do, found)


def unknown_history(goods: Sequence[SmallGood], use: Use) -> list[Finding]:
    """Tell once of every pad and towel of which nobody knows what it carried."""
    found = [one for one in goods if not one.known]
    says = f"Nobody has recorded what {_names(found, start=False)} carried before."
    because = "Keeping small goods by set or bin is allowed; then the eye must judge."
    do = "Look at the face, and wash it where in doubt."
    return _finding("pad.unknown", "tell", says, because, do, found)


RULES: tuple[Rule, ...] = (coating_towel, coarser_pad, foreign_pad, unknown_history)


def _foreign(one: SmallGood, use: Use) -> bool:
    return one.last in FOREIGN and use.surface not in FOREIGN[one.last]


def _before(last: str) -> str:
    return "single-stage paint" if last == "single-stage" else last


def _names(goods: Sequence[SmallGood], start: bool = True) -> str:
    names = row([one.name for one in goods]) if goods else ""
    return sentence(names) if start else names


def _finding(
    code: str, grade: str, says: str, because: str, do: str, goods: Sequence[SmallGood]
) -> list[Finding]:
    if not goods:
        return []
    return [Finding(code, grade, says, because, do, COMMON, tuple(one.code for one in goods))]
