"""Typing in section 3 on the page: errors by row, what was typed stays, and the version keeps it."""

from typing import Any

import pytest
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction
from django.urls import reverse

from safety.models import DataSheet, SheetVersion
from tests.safety.sheets.test_pages import attach, owner, pdf
from tests.safety.sheets.test_versions import sheet as a_sheet
from tests.safety.sheets.test_versions import version
from tests.world import TODAY, World

pytestmark = pytest.mark.django_db

LYE = {
    "row-1-name": "Sodium hydroxide",
    "row-1-cas": "1310-73-2",
    "row-1-percent": "5-6",
    "row-1-hazards": "Skin Corr. 1A H314",
    "row-1-limits": "5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B H314",
}
SOAP = {"row-3-name": "A surfactant", "row-3-percent": "5", "row-3-hazards": "none"}


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (
            {"row-3-percent": "lots"},
            "Ingredient 3 (A surfactant), percent by weight: “lots” is not a percentage",
        ),
        ({"row-3-name": ""}, "Ingredient 3, name: Give the ingredient a name"),
        (
            {"row-3-percent": "120"},
            "Ingredient 3 (A surfactant), percent: a number from 0 to 100 was expected",
        ),
        ({"row-1-cas": "1310-73-3"}, "the check digit of 1310-73-3 would be 2"),
        ({"row-1-limits": "2: Skin Corr. 1B H314; 5: Skin Corr. 1A H314"}, "contradict each other"),
        ({"row-3-percent": "97"}, "the lower ends of its percentages sum to 102, above 100"),
        ({"mix_lines": "1:10"}, "is not a mix and what was measured"),
        ({"mix_lines": "1:10 pH 40"}, "pH 40 is not between -2 and 16"),
        ({"ph": "40"}, "A pH lies between -2 and 16"),
        ({"viscosity_mm2_s_40c": "-1"}, "A viscosity is more than 0 mm²/s"),
    ],
)
def test_what_cannot_be_is_refused_by_row_and_stays_typed(
    world: World,
    sheet: DataSheet,
    typed: dict[str, str],
    says: str,
) -> None:
    answer = attach(owner(world), sheet, pdf(), **(LYE | SOAP | typed))
    page = answer.content.decode()
    assert says in page
    assert 'value="Sodium hydroxide"' in page
    assert SheetVersion.objects.count() == 0


def test_every_fault_of_a_row_is_said_in_one_answer(world: World, sheet: DataSheet) -> None:
    wrong = {"row-1-cas": "1310-73-3", "row-1-percent": "120", "row-1-hazards": "Skin Corr. 9 H999"}
    page = attach(owner(world), sheet, pdf(), **(LYE | wrong)).content.decode()
    for says in ("the check digit of 1310-73-3 would be 2", "120", "Skin Corr. 9"):
        assert says in page
    assert page.count('id="error_row-1') + page.count("id_row-1-") >= 3


def test_rows_are_kept_as_the_ingredients_of_a_mixture(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf(), ph="13.5", form="spray", mix_lines="1:10 pH 10.9", **LYE, **SOAP)
    kept = SheetVersion.objects.get()
    assert kept.composition == [
        {
            "name": "Sodium hydroxide",
            "cas": "1310-73-2",
            "percent": [5, 6],
            "hazards": ["Skin Corr. 1A H314"],
            "limits": [
                {"from": 5, "to": None, "hazard": "Skin Corr. 1A H314"},
                {"from": 2, "to": 5, "hazard": "Skin Corr. 1B H314"},
            ],
        },
        {"name": "A surfactant", "percent": 5, "hazards": []},
    ]
    assert (kept.form, kept.ph, kept.flash_point_c) == ("spray", 13.5, None)
    assert kept.mixes == [{"parts": [1, 10], "ph": 10.9, "flash_point_c": None}]


def test_a_version_without_rows_is_a_liquid_of_unknown_composition(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf())
    kept = SheetVersion.objects.get()
    assert (kept.composition, kept.form, kept.mixes) == ([], "liquid", [])


def test_a_newer_version_starts_from_the_rows_of_the_last(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), mix_lines="1:10 pH 10.9", **LYE)
    page = client.get(reverse("safety:new_version", args=[sheet.pk])).content.decode()
    assert 'value="5-6"' in page
    assert "5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B H314" in page
    assert "1:10 pH 10.9" in page


def test_more_rows_than_stand_open_are_folded_away_and_read(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf(), **LYE, **{"row-8-name": "Water", "row-8-percent": "80"})
    assert [one["name"] for one in SheetVersion.objects.get().composition] == ["Sodium hydroxide", "Water"]


@pytest.mark.parametrize(
    ("facts", "constraint"),
    [
        ({"form": "foam"}, "safety_version_form_known"),
        ({"ph": 17}, "safety_version_ph_possible"),
        ({"flash_point_c": -300}, "safety_version_temperatures_possible"),
        ({"boiling_point_c": -300}, "safety_version_temperatures_possible"),
        ({"viscosity_mm2_s_40c": 0}, "safety_version_viscosity_positive"),
    ],
)
def test_the_database_refuses_measured_values_that_cannot_be(facts: dict[str, Any], constraint: str) -> None:
    with pytest.raises(IntegrityError, match=constraint), transaction.atomic():
        version(a_sheet(), TODAY, **facts)


def test_a_composition_that_cannot_be_classified_is_refused_by_the_model_too() -> None:
    kept = SheetVersion(sheet=a_sheet(), revision_on=TODAY, typed_on=TODAY, composition=[{"name": "Lye"}])
    with pytest.raises(ValidationError, match="Ingredient 1"):
        kept.full_clean()
