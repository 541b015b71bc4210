"""Section 3 is typed into a version that lacks it, once, by an owner; who did it is noted on the sheet."""

import pytest
from django.test import Client
from django.urls import reverse

from safety.models import DataSheet
from tests.safety.sheets.test_composition_rows import LYE, SOAP
from tests.safety.sheets.test_pages import owner
from tests.safety.sheets.test_versions import sheet as a_sheet
from tests.safety.sheets.test_versions import version
from tests.world import TODAY, World

pytestmark = pytest.mark.django_db


@pytest.fixture
def sheet() -> DataSheet:
    return a_sheet()


def address(of) -> str:
    return reverse("safety:section_3", args=[of.sheet_id, of.pk])


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ({}, "Type at least one ingredient, as section 3 of the sheet lists it."),
        (LYE | {"row-1-percent": "lots"}, "“lots” is not a percentage"),
        (LYE | SOAP | {"row-3-percent": "97"}, "the lower ends of its percentages sum to 102, above 100"),
    ],
)
def test_what_is_no_section_3_is_refused_and_nothing_is_kept(world: World, sheet, typed, says) -> None:
    one = version(sheet, TODAY)

    page = owner(world).post(address(one), typed)

    assert says in page.content.decode()
    one.refresh_from_db()
    assert one.composition == []


def test_it_is_kept_on_a_confirmed_version_with_who_typed_it(world: World, sheet) -> None:
    one = version(sheet, TODAY)

    owner(world).post(address(one), LYE | SOAP)

    one.refresh_from_db()
    assert [each["name"] for each in one.composition] == ["Sodium hydroxide", "A surfactant"]
    one.sheet.refresh_from_db()
    assert one.sheet.note.startswith(f"Section 3 of the version of {one.revision_on} was typed in by ")


def test_what_is_typed_already_is_changed_by_a_newer_version_alone(world: World, sheet) -> None:
    one = version(sheet, TODAY)
    owner(world).post(address(one), LYE)

    page = owner(world).post(address(one), SOAP)

    assert "A change of it is a newer version." in page.content.decode()
    one.refresh_from_db()
    assert [each["name"] for each in one.composition] == ["Sodium hydroxide"]


def test_the_sheet_s_page_leads_there_while_section_3_is_missing(world: World, sheet) -> None:
    one = version(sheet, TODAY)
    page = reverse("safety:sheet", args=[sheet.pk])
    assert address(one) in owner(world).get(page).content.decode()

    owner(world).post(address(one), LYE)

    assert address(one) not in owner(world).get(page).content.decode()


def test_it_is_the_owner_s_to_type(world: World, sheet) -> None:
    one = version(sheet, TODAY)
    client = Client()
    client.force_login(world.tomas)

    assert client.post(address(one), LYE).status_code == 403
    one.refresh_from_db()
    assert one.composition == []
