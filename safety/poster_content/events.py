"""What to do if it happens: first aid by route, fire, spill. Where things are stands beside their signs."""

from collections.abc import Sequence

from safety.hazards.facts import is_grave
from safety.poster_content.judged import Judged, grouped
from safety.print.values import FirstAid, Line
from safety.print.words import say

ROUTES = (
    ("Eyes", "aid_eyes", "Rinse, lids open", "Rinse at least 15 minutes. Lenses out, keep rinsing. Call."),
    ("Skin", "aid_skin", "Clothes off, rinse", "Wash with plenty of water. Call if it hurts or reddens."),
    (
        "Breath",
        "aid_breath",
        "Out to fresh air",
        "Sit up, rest. Call if breathing is hard, even if it passes.",
    ),
    ("Swallowed", "aid_swallowed", "Do not make sick", "Rinse the mouth. Call, bottle in hand."),
)
FLUORIDE = "Fluoride: rub in calcium gluconate gel after rinsing, then hospital, even without pain."
FIRE = "Doors shut. Fight it only if it is small and your way out is free."
SPILL = "Flames off, doors open, glasses and gloves on."


def own_words(judged: Sequence[Judged], field: str, language: str) -> tuple[Line, ...]:
    """Return the sheets' own words of one route, strong for what maims."""
    known = [(name, facts) for name, facts, _ in judged if facts]
    grave = [(name, getattr(facts, field)) for name, facts in known if is_grave(facts)]
    other = [(name, getattr(facts, field)) for name, facts in known if not is_grave(facts)]
    strong = grouped(grave, -1 if other else len(grave), language)
    return (
        *(Line(text, strong=True) for text in strong),
        *(Line(text) for text in grouped(other, -1 if grave else len(other), language)),
    )


def first_aid(judged: Sequence[Judged], language: str) -> tuple[FirstAid, ...]:
    """Return the four routes."""
    found = []
    for title, field, lead, default in ROUTES:
        lines = [Line(say(default, language)), *own_words(judged, field, language)]
        if title == "Skin" and any(facts and facts.holds_fluoride for _, facts, _ in judged):
            lines.append(Line(say(FLUORIDE, language), strong=True))
        found.append(FirstAid(say(title, language), say(lead, language), tuple(lines)))
    return tuple(found)


def mishaps(judged: Sequence[Judged], language: str) -> tuple[FirstAid, ...]:
    """Return fire and spill."""
    fire = [Line(say(FIRE, language)), *own_words(judged, "fire", language)]
    spill = [Line(say(SPILL, language)), *own_words(judged, "spill", language)]
    return (
        FirstAid(say("Fire", language), say("Out, call", language), tuple(fire)),
        FirstAid(say("Spill", language), say("Keep others out", language), tuple(spill)),
    )
