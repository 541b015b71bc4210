"""The air of several steps said once: one finding a cause, the gravest step first, notes folded into one."""

from collections import defaultdict

from inventory.units import show
from safety.air.answer import CAUTION
from safety.air.saying import number, row
from safety.findings import GRADES
from safety.findings import Finding as Found

from .asking import Finding
from .case import Case
from .evaporation import StepAir, Taken, letting_go
from .words import joined

NOTE = "air.note"
SCREENING = CAUTION.split(".")[0] + "."
# What leads a note, where several things are told.
FIRST = ("air.ignition", "air.exposure", "air.fumes", "air.respirator")
EXPOSURE = "air.exposure"
Pairs = list[tuple[StepAir, Found]]


def told_once(case: Case, said: Pairs) -> list[Finding]:
    """Return one finding a cause and job, and one note a place."""
    causes: dict[tuple[str, str], Pairs] = defaultdict(list)
    for of, found in said:
        causes[(NOTE, of.place.name) if found.grade == "tell" else (found.code, "")].append((of, found))
    told = [_note(case, found) for (code, _), found in causes.items() if code == NOTE]
    return [*(_one(case, found) for (code, _), found in causes.items() if code != NOTE), *told]


def _one(case: Case, said: Pairs) -> Finding:
    # The largest share leads: a word on the sentence of a smaller one does not cover it.
    said = sorted(said, key=lambda each: (GRADES.index(each[1].grade), -_share(each[1])))
    of, worst = said[0]
    also = [f"{each.step.name}: {found.says}" for each, found in said[1:]]
    out = joined(way_out(case, of, worst), *_too(case, said))
    return Finding(
        worst.code, worst.grade, _says(of, worst), joined(counted(case, of), worst.because, *also, SCREENING),
        joined(*_dos(said), out), worst.source, beginning(of), letting_go(each for each, _ in said),
    )  # fmt: skip


def _dos(said: Pairs) -> list[str]:
    """Return what to do about the leading cause; what differs for another step or substance names it.

    A mask that is enough against another step's mist must never be read as one against the first's vapour.
    """
    _, worst = said[0]
    first: dict[str, str] = {worst.do: worst.do}
    for of, found in said[1:]:
        if found.grade == worst.grade and found.do not in first:
            about = f"{of.step.name}, {row(found.about)}" if found.about else of.step.name
            first[found.do] = f"{about}: {found.do[:1].lower()}{found.do[1:]}"
    return list(first.values())


def _too(case: Case, said: Pairs) -> list[str]:
    """Return each further step that the same cause stops, with its own way out."""
    told, (_, lead) = [], said[0]
    for of, found in said[1:]:
        out = way_out(case, of, found)
        if found.grade == "stop" and (out or found.do == lead.do):
            told.append(f"{of.step.name} stops too{': ' + out[:1].lower() + out[1:] if out else '.'}")
    return told


def _note(case: Case, said: Pairs) -> Finding:
    rank = {code: at for at, code in enumerate(FIRST)}
    said = sorted(said, key=lambda each: rank.get(each[1].code, len(FIRST)))
    of, first = said[0]
    rest = [
        f"{each.step.name}: {found.says} {found.because} {found.do}"
        for each, found in said[1:]
        if found.says != first.says
    ]
    return Finding(
        NOTE, "tell", _says(of, first),
        joined(counted(case, of), first.because, *dict.fromkeys(rest), SCREENING),
        first.do, first.source, beginning(of),
    )  # fmt: skip


def beginning(of: StepAir) -> tuple[str, ...]:
    """Return what a finding is about: the bay if there is one, then the step."""
    return tuple(code for code in (of.place.code, of.step.code) if code)


def _says(of: StepAir, found: Found) -> str:
    says = found.says
    if says.split()[0] in {"Who", "Something", "No", "How", "A", "An", "The"}:
        says = says[:1].lower() + says[1:]
    return f"{of.step.name}, {of.place.name}: {says}"


def counted(case: Case, of: StepAir) -> str:
    """Return what was counted: grams, minutes, the place, what others add, and what had to be assumed."""
    told = _masses(of)
    others = sum(one.elsewhere for one in of.emissions)
    room = of.place.place
    parts = [
        f"Counted: {told}, from {row(_amount(case, one) for one in of.taken)}." if told else "",
        f"Others let go {number(others)} g more there." if others else "",
        f"{of.place.name[:1].upper()}{of.place.name[1:]} has {number(room.volume_m3)} m³ and "
        f"{number(room.air_m3_h)} m³/h, K {room.mixing_k:g}."
        if room.volume_m3 is not None and room.air_m3_h is not None
        else "",
        "Not measured: the air counts as 25 °C." if of.reading is None else "",
        *(f"The density of {name} is not known and counts as water's or more." for name in _guessed(of)),
    ]
    return joined(*parts)


def _masses(of: StepAir) -> str:
    """Return the grams of each substance with the minutes over which it goes into the air."""
    masses: dict[tuple[float, str], float] = {}
    for one in of.release.weighed:
        key = one.minutes(of.minutes), one.name
        masses[key] = masses.get(key, 0.0) + (one.grams or 0.0)
    spans = {minutes: [f"{number(grams)} g of {name}" for (lasts, name), grams in masses.items()
                       if lasts == minutes] for minutes, _ in masses}  # fmt: skip
    return ", ".join(f"{row(each)} in {minutes:.0f} minutes" for minutes, each in spans.items())


def _amount(case: Case, one: Taken) -> str:
    return f"{show(one.amount, one.makeup.dimension, case.facts.system)} of {one.makeup.name}"


def _guessed(of: StepAir) -> list[str]:
    taken = [one.makeup for one in of.taken if one.makeup.ingredients and one.makeup.dimension == "volume"]
    return [one.name for one in taken if one.density_kg_l is None]


def way_out(case: Case, of: StepAir, found: Found) -> str:
    """Return how much of its one product a stopped step may take in a quarter of an hour; "" if not that."""
    volatile = [one for one in of.taken if one.makeup.ingredients and one.grams]
    share = _share(found)
    if found.code != EXPOSURE or found.grade != "stop" or len(volatile) != 1 or share <= 1:
        return ""
    if of.beside or of.measured:
        return ""
    one = volatile[0]
    most = int(one.amount / share * 0.95) // 1000 * 1000
    amount = show(most, one.makeup.dimension, case.facts.system)
    # The second part starts in what the first one left: hence the pause.
    return (
        f"As planned here, {amount} in fifteen minutes stays below: take less, or split the step and let "
        "the air clear between."
    )


def _share(found: Found) -> float:
    """Return the part of the limit that an exposure's sentence names."""
    words = found.says.split()
    return float(words[words.index("%") - 1]) / 100 if "%" in words else 0.0
