"""Does the bay's weather suit the coat that the step lays, and has anybody measured it?"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from inventory.precheck.questions.topics.weather import FRESH, Coat, Reading
from safety.findings import Finding as Found
from safety.weather import weather

from .asking import GRADES, Finding, question
from .case import Case
from .facts import StepFacts
from .words import joined, moment

COATING = "coating"
# What else a product of the trade leaves on the car is told about, never stopped.
NOTE = "weather.note"
CAUSE = {"weather.panel": "weather.air"}  # a cold panel in cold air is one cause


@dataclass(frozen=True)
class Judged:
    """One thing that the weather does to one coat."""

    step: StepFacts
    coat: Coat
    reading: Reading
    found: Found
    grade: str

    @property
    def cause(self) -> str:
        """The code under which it is told once, with everything of the same cause."""
        return NOTE if self.grade == "tell" else CAUSE.get(self.found.code, self.found.code)


@question("steps", "weather")
def panel_and_air_for_the_coat(case: Case) -> list[Finding]:
    """Judge each coat by its bay's newest reading; ask for one where the step is near and there is none."""
    coats = [(step, coat) for step, coat in _coats(case) if step.bay]
    judged = [each for step, coat in coats for each in _judged(case, step, coat)]
    return [*_told(case, judged), *_not_measured(case, coats)]


def _coats(case: Case) -> list[tuple[StepFacts, Coat]]:
    steps = {step.code: step for step in case.facts.steps if not step.signed_at}
    return [(steps[coat.step], coat) for coat in case.facts.weather.coats if coat.step in steps]


def fresh(case: Case, step: StepFacts) -> Reading | None:
    """Return the reading that speaks for a step, None where nobody measured its bay in time."""
    reading = case.facts.weather.readings.get(step.bay or "")
    return reading if reading and reading.counts(step.starts_at, case.at) else None


def _judged(case: Case, step: StepFacts, coat: Coat) -> list[Judged]:
    reading = fresh(case, step)
    if reading is None:
        return []
    found = weather(reading.air_c, reading.humidity, reading.panel_c, coat.window).findings
    return [
        Judged(step, coat, reading, each, each.grade if coat.kind == COATING else "tell") for each in found
    ]


def _told(case: Case, judged: list[Judged]) -> list[Finding]:
    causes: dict[tuple[str, str | None], list[Judged]] = {}
    for each in sorted(judged, key=lambda each: GRADES.index(each.grade)):
        causes.setdefault((each.cause, each.step.bay), []).append(each)
    return [_finding(case, cause, found) for (cause, _), found in causes.items()]


def _finding(case: Case, cause: str, found: list[Judged]) -> Finding:
    worst = found[0]
    step, reading = worst.step, worst.reading
    says = f"{step.bay_name}, {step.name}: {_lower(worst.found.says)}"
    also = _others(worst.found.says, (each.found.says for each in found[1:]))
    coats = ", ".join(dict.fromkeys(each.coat.name for each in found))
    source = worst.coat.own or worst.found.source
    return Finding(
        cause, worst.grade, says,
        joined(f"{measured(reading, case)} It matters to {coats}.", worst.found.because, *also),
        joined(*dict.fromkeys(each.found.do for each in found if each.grade == worst.grade)),
        source, (step.bay or "", step.code),
    )  # fmt: skip


def _others(first: str, says: Iterable[str]) -> list[str]:
    return [each for each in dict.fromkeys(says) if each != first]


def measured(reading: Reading, case: Case) -> str:
    """Return a reading in a sentence, with its dew point and the panel's margin above it."""
    found = weather(reading.air_c, reading.humidity, reading.panel_c)
    panel = "the panel not measured"
    if reading.panel_c is not None and found.margin_c is not None:
        side = "above" if found.margin_c >= 0 else "below"
        panel = f"the panel {reading.panel_c:g} °C, {abs(found.margin_c):.1f} K {side} it"
    when = moment(reading.taken_at, case.facts.zone, case.at)
    return (
        f"Measured {when}: air {reading.air_c:g} °C, humidity {reading.humidity:g} %, "
        f"dew point {found.dew_point_c:.1f} °C, {panel}."
    )


def _not_measured(case: Case, coats: list[tuple[StepFacts, Coat]]) -> list[Finding]:
    near = [
        step
        for step, coat in coats
        if coat.kind == COATING and fresh(case, step) is None and is_near(step, case.at)
    ]
    bays = {step.bay: step for step in reversed(near)}
    if not bays:
        return []
    first = near[0]
    names = " and ".join(dict.fromkeys(step.bay_name for step in near))
    old = case.facts.weather.readings.get(first.bay or "")
    last = f" The last reading is of {moment(old.taken_at, case.facts.zone, case.at)}." if old else ""
    return [
        Finding(
            "weather.not_measured", "ask", f"Nobody has measured {names} for {first.name}.",
            f"It starts {moment(first.starts_at, case.facts.zone, case.at)}; a reading counts for two hours."
            f"{last} On a panel less than 3 K above the dew point water settles before anybody sees it.",
            "Measure air, panel and humidity there, and type them in on the bay's page.",
            "house rule; ISO 8502-4 practice for coating work, by analogy", (first.bay or "", first.code),
        )
    ]  # fmt: skip


def is_near(step: StepFacts, at: datetime) -> bool:
    """Say whether a step starts within two hours, or should have started."""
    return step.starts_at - FRESH <= at


def _lower(sentence: str) -> str:
    return sentence[:1].lower() + sentence[1:] if sentence[1:2].islower() else sentence
