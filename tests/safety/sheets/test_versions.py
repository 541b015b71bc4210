"""Data sheets in versions: which one counts, what the database refuses, what is old or missing."""

from datetime import date
from typing import Any

import pytest
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction
from django.db.models import ProtectedError

from safety import actions, queries
from safety.models import DataSheet, SheetVersion

pytestmark = pytest.mark.django_db
ON = date(2026, 11, 25)


def sheet(title: str = "Hollin panel wipe") -> DataSheet:
    return DataSheet.objects.create(supplier="Orlo Supply", title=title)


def version(of: DataSheet, revised: date, confirmed: bool = True, **facts: Any) -> SheetVersion:
    by = {"confirmed_by": "Ines", "confirmed_on": ON} if confirmed else {}
    return SheetVersion.objects.create(sheet=of, revision_on=revised, typed_on=ON, **by, **facts)


def test_a_sheet_stands_once_however_it_is_spelt() -> None:
    sheet()
    with pytest.raises(IntegrityError), transaction.atomic():
        DataSheet.objects.create(supplier="ORLO SUPPLY", title="hollin Panel Wipe")


def test_a_sheet_with_versions_cannot_be_deleted() -> None:
    one = sheet()
    version(one, date(2025, 3, 3))
    with pytest.raises(ProtectedError):
        one.delete()


@pytest.mark.parametrize(
    ("facts", "constraint"),
    [
        # somebody must stand for it by name, and a name without a day confirms nothing
        ({"confirmed_on": ON}, "safety_version_confirmed_by_and_on_together"),
        ({"confirmed_by": "Ines"}, "safety_version_confirmed_by_and_on_together"),
        ({"regime": "JP"}, "safety_version_regime_known"),
        ({"signal_word": "Caution"}, "safety_version_word_known"),
        ({"not_classified": True, "signal_word": "Danger"}, "safety_version_not_classified_has_no_word"),
        (
            {"revision_on": date(2027, 1, 1), "confirmed_by": "Ines", "confirmed_on": ON},
            "safety_version_confirmed_after_revision",
        ),
    ],
)
def test_the_database_refuses_what_cannot_be(facts: dict[str, Any], constraint: str) -> None:
    made = {"sheet": sheet(), "revision_on": date(2025, 3, 3), "typed_on": ON} | facts
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        SheetVersion.objects.create(**made)


def test_one_date_is_confirmed_once_and_typed_as_often_as_needed() -> None:
    one = sheet()
    version(one, date(2025, 3, 3))
    version(one, date(2025, 3, 3), confirmed=False)
    with pytest.raises(IntegrityError), transaction.atomic():
        version(one, date(2025, 3, 3))


def test_the_newest_confirmed_revision_counts() -> None:
    one = sheet()
    version(one, date(2021, 1, 1))
    counts = version(one, date(2025, 3, 3))
    version(one, date(2023, 1, 1))
    version(one, date(2026, 6, 1), confirmed=False)
    assert queries.current(one) == counts


def test_what_nobody_confirmed_has_no_facts() -> None:
    one = sheet()
    waiting = version(one, date(2025, 3, 3), confirmed=False, hazards=["Flam. Liq. 2 H225"])
    assert queries.current(one) is None
    assert queries.facts_or_none(waiting) is None


def test_current_versions_of_many_sheets_are_read_in_one_query(django_assert_num_queries: Any) -> None:
    sheets = [sheet(f"Wipe {number}") for number in range(5)]
    for one in sheets:
        version(one, date(2025, 3, 3))
    with django_assert_num_queries(1):
        found = queries.current_by_sheet([one.pk for one in sheets] + [None])
    assert len(found) == 5


@pytest.mark.parametrize(
    ("revised", "old", "because"),
    [
        (date(2023, 11, 24), True, "three years and a day"),
        (date(2023, 11, 25), False, "three years to the day"),
        (date(2026, 1, 1), False, "this year's"),
    ],
)
def test_a_sheet_is_old_after_three_years(revised: date, old: bool, because: str) -> None:
    one = version(sheet(), revised)
    assert queries.is_old(one, ON) is old, because
    assert (queries.older_than(ON) == [one]) is old


@pytest.mark.parametrize(
    ("facts", "grave", "because"),
    [
        ({"hazards": ["Skin Corr. 1B H314"]}, True, "it burns"),
        ({"hazards": ["Met. Corr. 1 H290"]}, True, "an acid, by its effect on metals"),
        ({"holds_fluoride": True}, True, "it goes through skin"),
        ({"holds_isocyanate": True}, True, "it sensitises lungs"),
        ({"hazards": ["Flam. Liq. 2 H225"]}, False, "it burns only as a flame"),
    ],
)
def test_acids_fluorides_and_isocyanates_are_grave(facts: dict[str, Any], grave: bool, because: str) -> None:
    assert queries.is_grave(version(sheet(), date(2025, 3, 3), **facts)) is grave, because


def test_missing_fields_are_named_in_words() -> None:
    bare = version(sheet(), date(2025, 3, 3), wear_eyes="glasses")
    missing = queries.missing_fields(bare)
    assert missing[0] == "the hazard classes"
    assert "what to wear for the eyes" not in missing
    assert "first aid for the skin" in missing


def test_a_sheet_that_is_not_classified_misses_only_its_file() -> None:
    bare = version(sheet(), date(2025, 3, 3), not_classified=True)
    assert queries.missing_fields(bare) == ["the sheet itself (PDF)"]


def test_a_version_is_confirmed_once_by_a_named_person() -> None:
    waiting = version(sheet(), date(2025, 3, 3), confirmed=False, not_classified=True)
    actions.confirm(waiting, by="Ines", on=ON)
    assert queries.current(waiting.sheet) == waiting
    with pytest.raises(actions.AlreadyConfirmed, match="Ines confirmed this version"):
        actions.confirm(waiting, by="Tomas", on=ON)


def test_confirming_the_same_date_twice_is_refused_in_words() -> None:
    one = sheet()
    version(one, date(2025, 3, 3))
    again = version(one, date(2025, 3, 3), confirmed=False, not_classified=True)
    with pytest.raises(ValidationError, match="A version of this date is confirmed already"):
        actions.confirm(again, by="Ines", on=ON)
