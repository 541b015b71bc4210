"""The one button of a finding: where it is put right, or where its figures are drawn."""

from collections.abc import Callable
from dataclasses import dataclass

from django.urls import NoReverseMatch, reverse

from inventory.codes import pair, tidy
from inventory.precheck.questions import Finding
from inventory.precheck.questions.sheets import CONFIRM


@dataclass(frozen=True)
class Action:
    """A button, named by what it does, and its address; empty where the installation has no such page."""

    label: str
    to: str


# Findings that somebody's own record ends.
OF_SOMEBODY = frozenset({"people.training", "people.evaluation", "people.fit_test", "people.face"})
# What a finding about a bay's air is ended by, on the bay's own page.
ON_THE_BAY = {
    "air.ignition": "Confirm them off", "air.unknown": "Type its air in",
    "air.local_exhaust": "Write its examination down",
}  # fmt: skip
# What no curve can show: a mask that is named, no figure of anything.
WITHOUT_CURVE = frozenset({"air.ignition_tool", "air.named_protection", "air.no_limit", "air.no_molar_mass"})
OF_THE_CUT = frozenset({"paint.below_floor", "paint.planned_below_floor", "paint.thin", "paint.total_cut"})
ON_THE_STEP = ("surface.", "residue.", "wait.", "order.", "heat.", "pad.", "towel.")


def way_out(finding: Finding, job: str) -> Action | None:
    """Return the button of an open finding on a job, None where nothing is to be pressed."""
    family = finding.code.partition(".")[0] + "."
    way = FAMILIES.get(family, _shelf)(finding, job)
    return way if way and way.to else None


def _to(label: str, view: str, *args: str) -> Action:
    try:
        return Action(label, reverse(view, args=args))
    except NoReverseMatch:
        return Action(label, "")


def _shelf(finding: Finding, job: str) -> Action | None:
    first, code = finding.about[0], finding.code
    if code == "out_of_date":
        other = finding.about[2:]
        return _to(f"Look at {pair(other[0] if other else first)}", "shelf:container", *(other or (first,)))
    if code in {"held", "recalled"}:
        return _to(f"Look at {pair(first)}", "shelf:container", first)
    if code == "no_sheet":
        return _sheet(finding, job)
    return _to("Print its label", "posters:label_pdf", first) if code == "unlabelled" else None


def _sheet(finding: Finding, job: str) -> Action:
    """The page that attaches, confirms and links a sheet, and leads back to the check."""
    label = "Confirm its data sheet" if finding.do.startswith(CONFIRM) else "Attach a data sheet"
    way = _to(label, "products:sheet", finding.about[0])
    return Action(label, f"{way.to}?job={job}") if way.to else way


def _people(finding: Finding, job: str) -> Action | None:
    """The sheet, somebody's record, the list of what is here."""
    first, code = finding.about[0], finding.code
    if code == "people.first_day":
        return _to("Open the page where it is signed", "people:person", first)
    if code == "people.rescue":
        return _to(f"Look at {pair(first)}", "shelf:container", first)
    if code == "people.eyewash":
        return _to("Say where the eyewash is", "settings:place", first)
    if code in OF_SOMEBODY:
        of = (tidy(first) or "-")[0] == "H"
        return _to("Open the record", "people:person", first) if of else _to("People", "people:list")
    return _to("What protects people here", "people:protection")


def _air(finding: Finding, job: str) -> Action | None:
    """What a bay's page does about its air; the step where no curve can be drawn; else the curve."""
    first, code = finding.about[0], finding.code
    if code == "air.no_composition":
        return _to("Type what it is made of", "products:product", first)
    if code == "air.no_bay":
        return _to("Name its bay", "jobs:step", job, first)
    if code in ON_THE_BAY:
        return _to(ON_THE_BAY[code], "bays:bay", first) if len(finding.about) > 1 else None
    if code in WITHOUT_CURVE:
        return _to("Change the step", "jobs:step", job, finding.about[-1])
    return _to("See the curve", "bays:step", finding.about[-1])


def _tools(finding: Finding, job: str) -> Action | None:
    """What a bay lists is confirmed off on its page; the rest is put right in the step's plan."""
    first = finding.about[0]
    if (tidy(first) or "-")[0] == "P":
        return _to("Confirm them off", "bays:bay", first)
    return _to("Change the step", "jobs:step", job, finding.about[-1])


def _plan(finding: Finding, job: str) -> Action | None:
    return _to("Add a step", "jobs:new_step", job)


def _rags(finding: Finding, job: str) -> Action | None:
    if finding.code == "rags.can":
        return _to("Say where the can is", "settings:place", finding.about[0])
    return _to("Say that it is emptied", "people:cans")


def _weather(finding: Finding, job: str) -> Action | None:
    return _to("Measure the bay", "bays:bay", finding.about[0]) if len(finding.about) > 1 else None


def _paint(finding: Finding, job: str) -> Action | None:
    """A reading is typed beside the panels; what the cut is, and which panels it takes, on its step."""
    if finding.code in OF_THE_CUT:
        return _to("Change the cut", "jobs:step", job, finding.about[-1])
    return _to("Paint and panels", "jobs:panels", job)


def _step(finding: Finding, job: str) -> Action | None:
    """What stands in the way of a product at a step is put right in the step's plan."""
    if finding.code == "surface.hot":
        return _to("Measure the bay", "bays:bay", finding.about[0])
    if finding.code in {"surface.words", "surface.unlisted"}:
        return _to("Tick what the car is made of", "jobs:edit", job)
    if finding.code == "wait.no_day":
        return _to("Paint and panels", "jobs:panels", job)
    if finding.code == "pad.coarser":
        return _to(f"Look at {pair(finding.about[0])}", "shelf:container", finding.about[0])
    if finding.code == "residue.unknown":
        return _to("Say what it arrives with", "jobs:arrivals", job)
    return _to("Change the step", "jobs:step", job, finding.about[-1])


def _reaction(finding: Finding, job: str) -> Action | None:
    return _to("Sign or plan the rinse", "jobs:job", job) if finding.code == "reaction.car" else None


FAMILIES: dict[str, Callable[[Finding, str], Action | None]] = {
    "people.": _people, "air.": _air, "weather.": _weather, "paint.": _paint, "reaction.": _reaction,
    "tools.": _tools, "rags.": _rags, "plan.": _plan,
    **dict.fromkeys(ON_THE_STEP, _step),
}  # fmt: skip
