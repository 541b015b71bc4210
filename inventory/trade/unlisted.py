"""What a product meets on a car whose glass, lamps, wheels or seats nobody listed."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from .acts import Act, Clash, Surface
from .edits import THIS_SHOP
from .naming import row
from .reading import in_words
from .surface_rules import SurfaceRule, surface_rules
from .surfaces import ALWAYS, AREAS, MAYBE, TICKED, TICKED_MAYBE, Material, materials

NEVER, ASK, UNLISTED = "surface.never", "surface.ask", "surface.unlisted"
NOTE, WHEEL, METAL = "surface.note", "wheel", "metal"
# They run over the whole car; a question at every wash would be answered unread (our choice).
WASHES = frozenset({"shampoo", "foam", "alkaline"})
PLACES = {"interior": "in the interior", "top": "on the soft top"}
WORDS = {"top": "soft top"}
GUESSED = (
    "Or say on the product's page of which sort it is: that was never said, and the cautious one counts."
)


@dataclass(frozen=True)
class Met:
    """An area that a product reaches: the surfaces it would harm, and whether that is certain."""

    area: str
    harmed: tuple[Material, ...]
    certain: bool


def unlisted(surfaces: Iterable[Surface], acts: Iterable[Act]) -> tuple[Clash, ...]:
    """Return what acts would harm in areas of which the car lists nothing.

    What every car has, or what a step ticks, is a stop; what a car may have is one question a product. What
    washes a whole car goes over all of it on every car: where no step ticks an area, that is one note.
    """
    listed = frozenset(area for one in surfaces for area in one.areas)
    found: list[Clash] = []
    asked: set[str] = set()
    for act in acts:
        refused = [one for area in _areas(act, listed) if (one := _met(act, area))]
        if not refused:
            found += _asks(act, listed)
        elif act.anywhere:
            found.append(_anywhere(act, refused))
        elif act.touches is None and act.kind in WASHES:
            found += [] if act.product in asked else [_note(act, refused)]
            asked.add(act.product)
        else:
            found += [_stop(act, one) for one in refused if one.certain]
            maybe = [one for one in refused if not one.certain]
            found += [_question(act, maybe)] if maybe and act.product not in asked else []
            asked |= {act.product} if maybe else set()
    return tuple(found)


def _areas(act: Act, listed: frozenset[str]) -> list[str]:
    """Return the areas that an act reaches and of which nothing is listed; the metal of wheels is theirs."""
    if act.panels is not None:
        return []
    of_wheels = {METAL} if act.kind == WHEEL and act.touches is None else set()
    return [area for area in AREAS if area in act.areas - listed - of_wheels]


def _met(act: Act, area: str) -> Met | None:
    ticked = act.touches is not None
    here = [one for one in materials().values() if area in one.areas and _counts(one, ticked=ticked)]
    harmed = tuple(one for one in here if one.key in act.profile.never)
    if not harmed:
        return None
    sure = [one for one in harmed if one.stands in (ALWAYS, TICKED)]
    if sure:
        return Met(area, tuple(sure), certain=True)
    return Met(area, harmed, certain=ticked and len(harmed) == len(here))


def _counts(material: Material, *, ticked: bool) -> bool:
    return material.stands in (ALWAYS, MAYBE) or (ticked and material.stands in (TICKED, TICKED_MAYBE))


def _stop(act: Act, met: Met) -> Clash:
    """What surely is there stops; where only the product's sort is a guess, it is asked about."""
    rules = _rules(act, met.harmed, "stop")
    harmed = _harmed(met)
    guessed = bool(rules) and all(rule.trait in act.profile.guessed for rule in rules)
    every = f"Nobody listed the {_word(met.area)} of this car, so what cars have there counts."
    do = f"{_do(rules)} If it is something else there, list it among the panels."
    return Clash(
        ASK if guessed else NEVER, "ask" if guessed else "stop",
        f"{act.step_name}: {act.name}{_traits(rules)} would harm {harmed}.",
        f"{_because(act, rules)} {every}", f"{do} {GUESSED}" if guessed else do,
        _source(rules), act.step, act.product, (_word(met.area),),
    )  # fmt: skip


def _harmed(met: Met) -> str:
    """Return "polycarbonate lamp on the lamps", "the glass"."""
    names = row([one.name for one in met.harmed])
    return (
        f"the {names}"
        if names == met.area
        else f"{names} {PLACES.get(met.area, f'on the {_word(met.area)}')}"
    )


def _question(act: Act, met: list[Met]) -> Clash:
    """One question for all that may be there."""
    harmed = list({one.key: one for each in met for one in each.harmed}.values())
    areas = row([f"the {_word(one.area)}" for one in met])
    rules = _rules(act, harmed, "stop")
    many = len(met) > 1 or met[0].area != "metal"
    return Clash(
        UNLISTED, "ask",
        f"{act.step_name}: is anything of {areas} {_either(harmed)}? {act.name}{_traits(rules)} would harm "
        "it.",
        f"{_because(act, rules)} Nobody said what {areas} of this car {'are' if many else 'is'} made of.",
        f"Tick what it is on the car, list {areas} among the panels, or say what you saw. If it is so: "
        f"{_lower(_do(rules))}",
        _source(rules), act.step, act.product, tuple(_word(one.area) for one in met),
    )  # fmt: skip


def _lower(text: str) -> str:
    return f"{text[:1].lower()}{text[1:]}"


def _either(materials: Iterable[Material]) -> str:
    return row([one.name for one in materials]).replace(" and ", " or ")


def _anywhere(act: Act, met: list[Met]) -> Clash:
    """One question for a product of which neither kind nor step says what it touches."""
    harmed = list({one.key: one for each in met for one in each.harmed}.values())
    rules = _rules(act, harmed, "stop")
    return Clash(
        UNLISTED, "ask",
        f"{act.step_name}: nobody said what {act.name}{_traits(rules)} touches. It would harm "
        f"{_either(harmed)}.",
        _because(act, rules), "Tick on the step what it touches, or say it on the product's page.",
        _source(rules), act.step, act.product, tuple(_word(one.area) for one in met),
    )  # fmt: skip


def _note(act: Act, met: list[Met]) -> Clash:
    """What a wash reaches that some of it does not bear."""
    harmed = list({one.key: one for each in met for one in each.harmed}.values())
    rules = _rules(act, harmed, "stop")
    return Clash(
        NOTE, "tell",
        f"{act.step_name}: {act.name}{_traits(rules)} is not for {row([one.name for one in harmed])}.",
        f"{_because(act, rules)} It runs over the whole car, and nobody listed what of it that is.",
        "Keep it off there, or rinse it off at once. What is listed or ticked is judged.",
        _source(rules), act.step, act.product, tuple(_word(one.area) for one in met),
    )  # fmt: skip


def _asks(act: Act, listed: frozenset[str]) -> list[Clash]:
    """What is asked about on a surface, asked where a step ticks its area."""
    if act.touches is None or act.panels is not None:
        return []
    here = [one for one in materials().values() if one.area in act.areas - listed and one.stands]
    asked = [one for one in here if one.key in act.profile.asks]
    rules = _rules(act, asked, "ask")
    return [
        Clash(
            ASK, "ask", f"{act.step_name}: {act.name}{_traits(rules)} would touch {one.name}.",
            _because(act, rules), _do(rules), _source(rules), act.step, act.product, (_word(one.area),),
        )
        for one in asked
    ]  # fmt: skip


def _rules(act: Act, harmed: Iterable[Material], grade: str) -> list[SurfaceRule]:
    if act.profile.source("never" if grade == "stop" else "asks") == THIS_SHOP:
        return []
    keys = {one.key for one in harmed}
    return [
        one
        for one in surface_rules()
        if one.grade == grade and not one.dated and one.surfaces & keys and act.has(one.trait)
    ]


def _because(act: Act, rules: list[SurfaceRule]) -> str:
    said = list(dict.fromkeys(one.because for one in rules))
    return " ".join(said) or f"The page of {act.name} says so."


def _do(rules: list[SurfaceRule]) -> str:
    return " ".join(dict.fromkeys(one.do for one in rules)) or "Leave it out there, or mask the surface."


def _source(rules: list[SurfaceRule]) -> str:
    return in_words(rules[0].mark) if rules else THIS_SHOP


def _traits(rules: list[SurfaceRule]) -> str:
    return f" ({', '.join(dict.fromkeys(one.trait for one in rules))})" if rules else ""


def _word(area: str, words: Mapping[str, str] = WORDS) -> str:
    return words.get(area, area)
