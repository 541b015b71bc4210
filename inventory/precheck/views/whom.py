"""Whose hand a finding waits for: whoever works here, an owner, or the very person that it is about.

Who may not act gets no button that refuses, but the name of who may.
"""

from collections.abc import Sequence
from typing import Literal

from django.urls import resolve

from inventory.codes import tidy
from inventory.models import Person
from inventory.precheck.questions import Finding
from inventory.precheck.views.ways import Action

Whose = Literal["reader", "worker", "owner", "face", "signer"]
# What an owner types or writes down, on pages that others only read.
AN_OWNERS = frozenset({
    "no_sheet", "people.eyewash", "people.training", "people.evaluation", "people.fit_test",
    "air.no_composition", "air.unknown", "air.local_exhaust", "rags.can",
})  # fmt: skip
OF_ONESELF: dict[str, Whose] = {"people.face": "face", "people.first_day": "signer"}
# Pages that are worth opening for who only reads.
READ = frozenset({"bays:step", "shelf:container", "people:protection", "people:list"})


def whose(finding: Finding, action: Action) -> Whose:
    """Return whose hand ends a finding where its button leads."""
    if finding.code in AN_OWNERS:
        return "owner"
    if own := OF_ONESELF.get(finding.code):
        return own
    return "reader" if resolve(action.to).view_name in READ else "worker"


def may_press(finding: Finding, action: Action, reader: Person, crew: Sequence[Person]) -> bool:
    """Say whether the button does something for this reader."""
    of = whose(finding, action)
    if of == "reader":
        return True
    if reader.role == Person.Role.VIEWER:
        return False
    about = _about(finding, crew)
    if of == "face":
        return reader.is_owner or reader == about
    if of == "signer":
        return reader == about or bool(reader.is_owner and about and not about.has_usable_password())
    return of == "worker" or reader.is_owner


def who_does(finding: Finding, action: Action, crew: Sequence[Person]) -> str:
    """Return the sentence that stands where the button does not."""
    of, about = whose(finding, action), _about(finding, crew)
    owners = ", ".join(person.name for person in crew if person.is_owner)
    if of == "signer" and about:
        return f"{about.name} signs it, {_on_what(about, owners)}."
    if of == "face" and about:
        return f"{about.name} says it, or an owner: {owners}."
    if finding.code == "no_sheet":
        return f"Only an owner can attach it: {owners}."
    return "Who works here does this." if of == "worker" else f"An owner does this: {owners}."


def _on_what(about: Person, owners: str) -> str:
    if about.has_usable_password():
        return "signed in under that name"
    return f"and an owner types it in: {owners}"


def _about(finding: Finding, crew: Sequence[Person]) -> Person | None:
    return next((person for person in crew if person.code == tidy(finding.about[0])), None)
