"""What is written down of somebody: trained, evaluated, fitted, first day; and who is due when."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from inventory.models import FirstDay, FitTest, MedicalEvaluation, Person, Shop, Training
from inventory.people.rules.dues import WORDS, Due, sooner_first, state


@dataclass(frozen=True)
class Row:
    """One line of a record and how it stands today."""

    what: str
    on: date
    until: date | None
    proof: str
    kept_by: str
    state: str

    @property
    def words(self) -> str:
        """How it stands, in words."""
        return WORDS[self.state]


@dataclass(frozen=True)
class Record:
    """All that is kept of somebody, the newest first."""

    trainings: Sequence[Row]
    evaluations: Sequence[Row]
    fit_tests: Sequence[Row]
    first_day: FirstDay | None

    @property
    def read_in(self) -> str:
        """The name of the language in which the sheet of the first day was read; "" where nobody kept it."""
        says = self.first_day.says if self.first_day else {}
        return dict(Shop.Language.choices).get(says.get("language", ""), "")


def record(person: Person, on: date) -> Record:
    """Return what is kept of a person as it stands on a day."""
    trainings = Training.objects.filter(person=person).select_related("kept_by")
    evaluations = MedicalEvaluation.objects.filter(person=person).select_related("kept_by")
    fits = FitTest.objects.filter(person=person).select_related("kept_by", "mask")
    return Record(
        trainings=[
            _row(one.get_topic_display(), one.trained_on, one.until_on, one, on)
            for one in trainings.order_by("-trained_on", "-id")
        ],
        evaluations=[
            _row("fit to wear a respirator", one.evaluated_on, one.until_on, one, on)
            for one in evaluations.order_by("-evaluated_on", "-id")
        ],
        fit_tests=[
            _row(f"{one.mask}{f', {one.size}' if one.size else ''}", one.tested_on, one.until_on, one, on)
            for one in fits.order_by("-tested_on", "-id")
        ],
        first_day=FirstDay.objects.filter(person=person).select_related("shown_by").first(),
    )


def _row(
    what: str, day: date, until: date | None, one: Training | MedicalEvaluation | FitTest, on: date
) -> Row:
    return Row(what, day, until, one.proof, one.kept_by.name, state(until, on))


def due(shop: Shop, on: date) -> list[Due]:
    """Return what of the people who work here ended, ends within 30 days, or was never done."""
    people = {
        row.pk: row
        for row in Person.objects.filter(shop=shop, is_active=True).exclude(role=Person.Role.VIEWER)
    }
    trainings = Training.objects.filter(person__in=people).order_by("trained_on", "id")
    evaluations = MedicalEvaluation.objects.filter(person__in=people).order_by("evaluated_on", "id")
    fits = FitTest.objects.filter(person__in=people).select_related("mask").order_by("tested_on", "id")
    lasting = [
        *((one.person_id, f"training: {one.get_topic_display()}", one.until_on) for one in trainings),
        *((one.person_id, "medical evaluation", one.until_on) for one in evaluations),
        *((one.person_id, f"fit test: {one.mask}", one.until_on) for one in fits),
    ]
    signed = set(FirstDay.objects.filter(person__in=people).values_list("person", flat=True))
    unsigned = [
        Due(row.name, row.code, "first-day sheet", None, "ended")
        for row in people.values()
        if row.pk not in signed and not row.is_owner
    ]
    return sooner_first([*unsigned, *_ending(people, lasting, on)])


def _ending(
    people: dict[int, Person], lasting: Iterable[tuple[int, str, date | None]], on: date
) -> list[Due]:
    """Of several about one thing the newest counts."""
    newest = {(person, what): until for person, what, until in lasting}
    return [
        Due(people[person].name, people[person].code, what, until, stands)
        for (person, what), until in newest.items()
        if (stands := state(until, on)) in {"ended", "soon"}
    ]
