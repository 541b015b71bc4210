"""The rules of the check by their codes: what each asks, and whom it protects, which says who may end it.

A stop for people ends by changing the fact. A stop for the paint may be lifted by an owner, with a reason.
Dates, holds and stock are the shelf's: their stops end by changing the fact, too.
"""

from dataclasses import dataclass

from inventory.precheck.questions import Finding
from inventory.stock.rules.one_lot import TWO_LOTS

PEOPLE, PAINT, SHELF = "people", "paint", "shelf"


@dataclass(frozen=True)
class Rule:
    """A rule, or a family of rules whose codes begin alike (`air.`)."""

    code: str
    asks: str
    protects: str

    def covers(self, code: str) -> bool:
        """Say whether a finding's code is of this rule."""
        return code == self.code or (self.code.endswith(".") and code.startswith(self.code))


RULES = (
    Rule("plan.", "Is anything planned at all?", PEOPLE),
    Rule("out_of_date", "Does everything last through its step?", SHELF),
    Rule("past_estimate", "Is anything past an estimated life?", SHELF),
    Rule("held", "Is anything held?", SHELF),
    Rule("recalled", "Is anything recalled?", SHELF),
    Rule("too_little", "Is there enough for each step?", SHELF),
    Rule("no_sheet", "Is there a confirmed data sheet for everything?", PEOPLE),
    Rule("unlabelled", "Does every open bottle carry our label?", PEOPLE),
    Rule(TWO_LOTS, "Does a coating come from one lot within a step?", PAINT),
    Rule("surface.", "May this product touch this surface?", PAINT),
    Rule("residue.", "Is anything on the paint that must not be there?", PAINT),
    Rule("wait.", "Are the waits kept: re-coat, keep dry, wash hold, fresh respray and film?", PAINT),
    Rule("order.", "Are the steps in an order that works?", PAINT),
    Rule("paint.", "Is there enough paint left to cut?", PAINT),
    Rule("pad.", "Does a pad bring what scratches?", PAINT),
    Rule("towel.", "Does a towel bring what scratches?", PAINT),
    Rule("heat.", "Does the coating stand the heat of its surface?", PAINT),
    Rule("weather.", "Are air, panel and humidity right for the coat?", PAINT),
    Rule("air.", "What is breathed, and can it burn?", PEOPLE),
    Rule("tools.", "Do the tools suit what is used, and what they leave in the air?", PEOPLE),
    Rule("rags.", "Do rags that burn go into a can that is emptied daily?", PEOPLE),
    Rule("reaction.", "May these meet: on the car, in the bay?", PEOPLE),
    Rule("people.", "Are the people trained, fitted and protected?", PEOPLE),
)


def rule_of(code: str) -> Rule | None:
    """Return the rule that a finding's code belongs to."""
    return next((rule for rule in RULES if rule.covers(code)), None)


def protects_paint(code: str) -> bool:
    """Say whether an owner's word may lift a stop of this code."""
    rule = rule_of(code)
    return rule is not None and rule.protects == PAINT


def may_regrade(finding: Finding, grade: str) -> bool:
    """Say whether an owner's grade holds for a finding.

    A stop that is not the paint's keeps its grade, and nothing that protects people is made lighter.
    """
    rule = rule_of(finding.code)
    if rule is None or rule.protects == PAINT:
        return True
    heavier = ("tell", "ask", "stop").index(grade) > ("tell", "ask", "stop").index(finding.grade)
    if finding.grade == "stop":
        return False
    return heavier if rule.protects == PEOPLE else grade != "stop"


def why_not(code: str, grade: str) -> str:
    """Return why an owner may not give a rule a grade, "" where they may."""
    rule = rule_of(code)
    if rule is None:
        return f"The check has no rule “{code}”. Choose one of the list."
    if rule.protects == PEOPLE and grade == "tell":
        return "This rule protects people: it is never made a note. It ends by changing the fact."
    if rule.protects == SHELF and grade == "stop":
        return "The shelf's own rules stop where a date or a hold says so; others ask. Choose ask or note."
    return ""
