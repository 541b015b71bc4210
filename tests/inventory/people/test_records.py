"""A person's record: who reads it, what an owner writes down, and what may not be kept."""

from datetime import date, timedelta
from typing import Any

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import Equipment, FirstDay, FitTest, MedicalEvaluation, Person, Product, Training
from inventory.people.rules.dues import evaluation_for, state, training_until, years_after
from tests.world import NOON, World, person, product

pytestmark = pytest.mark.django_db
DAY = date(2026, 6, 1)
FORMS = ("training", "evaluation", "fit_test")


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


@pytest.fixture
def mask(world: World) -> Product:
    made = product(world, "Ossen half mask", "protective", dimension="pieces")
    Equipment.objects.create(product=made, serves="half")
    return made


def evaluated(world: World, on: date = DAY, until: date | None = None) -> MedicalEvaluation:
    return MedicalEvaluation.objects.create(
        person=world.tomas, evaluated_on=on, until_on=until, kept_by=world.ines
    )


def post(client: Client, name: str, of: Person, **data: object) -> str:
    """Send a form of a record; return the page that answers, after the redirect where there is one."""
    return client.post(reverse(f"people:{name}", args=[of.code]), data, follow=True).content.decode()


def fitting(mask: Product, on: date = DAY + timedelta(days=1), **more: object) -> dict[str, object]:
    return {"mask": mask.code, "tested_on": on.isoformat(), **more}


def test_a_fit_test_is_not_kept_before_the_medical_evaluation(
    ines: Client, world: World, mask: Product
) -> None:
    page = post(ines, "fit_test", world.tomas, **fitting(mask))

    assert (
        "Tomas has no medical evaluation that held on 2 June 2026. The evaluation comes before the fit test: "
        "write it down first."
    ) in page
    assert not FitTest.objects.exists()


@pytest.mark.parametrize(
    ("on", "until", "kept", "because"),
    [
        (DAY, None, 1, "evaluated the day before"),
        (DAY + timedelta(days=1), None, 1, "evaluated on the day"),
        (DAY + timedelta(days=2), None, 0, "evaluated the day after"),
        (DAY - timedelta(days=400), DAY, 0, "the evaluation had ended"),
        (DAY - timedelta(days=400), DAY + timedelta(days=1), 1, "it held to the day"),
    ],
)
def test_a_fit_test_leans_on_an_evaluation_that_held_on_its_day(
    ines: Client, world: World, mask: Product, on: date, until: date | None, kept: int, because: str
) -> None:
    evaluated(world, on, until)
    post(ines, "fit_test", world.tomas, **fitting(mask))
    assert FitTest.objects.count() == kept, because


@pytest.mark.parametrize(
    ("until", "kept", "because"),
    [
        ("", date(2027, 6, 2), "empty is a year"),
        ("2026-12-31", date(2026, 12, 31), "shorter as it was typed"),
        ("2029-01-01", date(2027, 6, 2), "never longer than a year"),
    ],
)
def test_a_fit_test_holds_for_a_year_at_most(
    ines: Client, world: World, mask: Product, until: str, kept: date, because: str
) -> None:
    evaluated(world)
    post(ines, "fit_test", world.tomas, **fitting(mask, until_on=until))
    assert FitTest.objects.get().until_on == kept, because


def test_gloves_are_not_fitted_to_a_face(ines: Client, world: World) -> None:
    gloves = product(world, "Ossen gloves", "protective", dimension="pieces")
    Equipment.objects.create(product=gloves, serves="gloves")
    evaluated(world)

    page = post(ines, "fit_test", world.tomas, **fitting(gloves))

    assert "Select a valid choice" in page
    assert not FitTest.objects.exists()


def test_training_for_diisocyanates_ends_after_five_years_and_other_training_as_typed(
    ines: Client, world: World
) -> None:
    for topic in ("isocyanate", "corrosive"):
        post(ines, "training", world.tomas, topic=topic, trained_on="2026-06-01", proof="Ines")

    assert dict(Training.objects.values_list("topic", "until_on")) == {
        "isocyanate": date(2031, 6, 1), "corrosive": None,
    }  # fmt: skip
    assert set(Training.objects.values_list("kept_by__name", flat=True)) == {"Ines"}


@pytest.mark.parametrize(
    ("days", "error"),
    [
        ({"trained_on": "2999-01-01"}, "That day is still to come."),
        ({"trained_on": "2026-06-01", "until_on": "2026-06-01"}, "It would end before it began."),
    ],
)
def test_days_that_cannot_be_are_refused(
    ines: Client, world: World, days: dict[str, str], error: str
) -> None:
    page = post(ines, "training", world.tomas, topic="corrosive", proof="Ines", **days)
    assert error in page
    assert not Training.objects.exists()


@pytest.mark.parametrize("name", FORMS)
def test_a_technician_writes_nothing_down_even_of_himself(tomas: Client, world: World, name: str) -> None:
    address = reverse(f"people:{name}", args=[world.tomas.code])
    assert tomas.get(address).status_code == 403
    assert tomas.post(address, {}).status_code == 403


def test_a_record_is_read_by_its_person_and_an_owner_alone(ines: Client, tomas: Client, world: World) -> None:
    evaluated(world)
    mine, hers = (reverse("people:person", args=[one.code]) for one in (world.tomas, world.ines))
    wren = Client()
    wren.force_login(world.wren)

    assert "fit to wear a respirator" in tomas.get(mine).content.decode()
    assert ines.get(mine).status_code == 200
    assert tomas.get(hers).status_code == 403
    assert wren.get(mine).status_code == 403


def test_nobody_of_another_shop_is_found(ines: Client, world: World) -> None:
    from tests.world import larkmoor

    other = larkmoor("elsewhere")
    assert ines.get(reverse("people:person", args=[other.tomas.code])).status_code == 404
    assert ines.post(reverse("people:training", args=[other.tomas.code]), {}).status_code == 404


def test_everybody_says_of_their_own_face_and_not_of_anothers(tomas: Client, world: World) -> None:
    post(tomas, "face", world.tomas, face="shaven")
    answer = tomas.post(reverse("people:face", args=[world.wren.code]), {"face": "beard"})

    assert Person.objects.get(pk=world.tomas.pk).face == "shaven"
    assert answer.status_code == 403
    assert Person.objects.get(pk=world.wren.pk).face == ""


def test_an_owner_sees_who_is_due_when(ines: Client, world: World) -> None:
    today = timezone.localdate()
    for topic, days in (("corrosive", -1), ("fluoride", 30), ("flammable", 31)):
        Training.objects.create(
            person=world.tomas, topic=topic, trained_on=today - timedelta(days=300),
            until_on=today + timedelta(days=days), proof="Ines", kept_by=world.ines,
        )  # fmt: skip

    page = ines.get(reverse("people:list")).content.decode()

    assert page.index("first-day sheet") < page.index("training: acids and alkalis") < page.index("fluorides")
    assert "training: flammable" not in page
    assert page.count("Ended on") == 1


def test_what_was_done_anew_is_no_longer_due(ines: Client, world: World) -> None:
    today = timezone.localdate()
    for began, until in ((400, -30), (10, 400)):
        Training.objects.create(
            person=world.tomas, topic="corrosive", trained_on=today - timedelta(days=began),
            until_on=today + timedelta(days=until), proof="Ines", kept_by=world.ines,
        )  # fmt: skip
    assert "training: acids" not in ines.get(reverse("people:list")).content.decode()


def test_a_technician_does_not_see_what_others_lack(tomas: Client, world: World) -> None:
    person(world.shop, "Pia", Person.Role.TECHNICIAN)
    page = tomas.get(reverse("people:list")).content.decode()
    assert "first-day sheet" not in page
    assert "My record" in page


@pytest.mark.parametrize(
    ("until", "stands"),
    [
        (None, "open"),
        (date(2026, 11, 24), "ended"),
        (date(2026, 11, 25), "soon"),
        (date(2026, 12, 25), "soon"),
        (date(2026, 12, 26), "good"),
    ],
)
def test_how_something_stands_on_a_day(until: date | None, stands: str) -> None:
    assert state(until, NOON.date()) == stands


def test_years_keep_the_day_and_leap_days_end_in_february() -> None:
    assert years_after(date(2024, 2, 29), 5) == date(2029, 2, 28)
    assert years_after(date(2026, 6, 1), 1) == date(2027, 6, 1)
    assert training_until("isocyanate", date(2026, 6, 1), date(2040, 1, 1)) == date(2031, 6, 1)
    assert evaluation_for([(1, DAY, None), (2, DAY + timedelta(days=9), None)], DAY + timedelta(days=9)) == 2


def test_a_name_that_is_removed_keeps_its_record(ines: Client, world: World) -> None:
    evaluated(world)
    FirstDay.objects.create(person=world.tomas, signed_at=NOON, shown_by=world.ines)
    ines.post(reverse("people:remove_name", args=[world.tomas.code]))

    page: Any = ines.get(reverse("people:person", args=[world.tomas.code])).content.decode()
    assert "someone who left" in page
    assert MedicalEvaluation.objects.filter(person=world.tomas).exists()
