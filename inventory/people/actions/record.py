"""Writing down that somebody was trained, evaluated, fitted, shown round. Nothing of it is ever deleted."""

from dataclasses import dataclass
from datetime import date, datetime

from django.db import transaction

from inventory.models import FirstDay, FitTest, MedicalEvaluation, Person, Product, Training
from inventory.people.rules.dues import FIT_YEARS, evaluation_for, fit_refusal, training_until, years_after
from inventory.people.rules.first_day import Section


class Refused(Exception):
    """Something that may not be kept; `says` is the sentence for the person."""

    def __init__(self, says: str) -> None:
        super().__init__(says)
        self.says = says


@dataclass(frozen=True)
class Fit:
    """What a fit test says: which mask, which size, when, until when, by whom."""

    mask: Product
    size: str
    tested_on: date
    until_on: date | None
    proof: str


def keep_training(person: Person, row: Training, *, by: Person) -> None:
    """Keep what somebody was trained for; a duty's own interval ends it at the latest."""
    row.person, row.kept_by = person, by
    row.until_on = training_until(row.topic, row.trained_on, row.until_on)
    row.save()


def keep_evaluation(person: Person, row: MedicalEvaluation, *, by: Person) -> None:
    """Keep that a physician found somebody fit to wear a respirator."""
    row.person, row.kept_by = person, by
    row.save()


def keep_fit_test(person: Person, fit: Fit, *, by: Person) -> FitTest:
    """Keep a fit test under the evaluation that held on its day. Raises Refused without one."""
    rows = MedicalEvaluation.objects.filter(person=person).values_list("pk", "evaluated_on", "until_on")
    if (evaluation := evaluation_for(rows, fit.tested_on)) is None:
        raise Refused(fit_refusal(person.name, fit.tested_on))
    last = years_after(fit.tested_on, FIT_YEARS)
    return FitTest.objects.create(
        person=person,
        mask=fit.mask,
        evaluation_id=evaluation,
        size=fit.size,
        tested_on=fit.tested_on,
        until_on=min(fit.until_on or last, last),
        proof=fit.proof,
        kept_by=by,
    )


def say_face(person: Person, face: str) -> None:
    """Keep whether somebody is clean-shaven where a mask seals."""
    person.face = face
    person.save(update_fields=["face"])


@transaction.atomic
def sign_first_day(
    person: Person, parts: tuple[Section, ...], *, language: str, shown_by: Person, at: datetime, by: Person
) -> FirstDay:
    """Keep that somebody signed the sheet, in which language they read it, and what stood on it.

    Raises Refused: it is signed once, by the person, or by an owner for somebody who cannot sign in and put
    their hand on the printed sheet; nobody shows themselves round.
    """
    on_paper = by.pk != person.pk
    if on_paper and not (by.is_owner and not person.has_usable_password()):
        raise Refused(f"{person.name} signs this sheet, signed in as {person.name}.")
    if shown_by.pk == person.pk:
        raise Refused("Somebody else shows a new person round: say who.")
    if FirstDay.objects.select_for_update().filter(person=person).exists():
        raise Refused(f"{person.name} has signed the sheet already.")
    kept = [{"title": one.title, "lines": list(one.lines)} for one in parts]
    says = {"on_paper": on_paper, "language": language, "parts": kept}
    return FirstDay.objects.create(person=person, signed_at=at, shown_by=shown_by, says=says)
