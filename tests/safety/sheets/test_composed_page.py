"""What a sheet's page says of its composition: classes and why, what differs from section 2, what changed."""

import pytest
from django.urls import reverse

from safety.models import DataSheet, SheetVersion
from tests.safety.sheets.test_pages import attach, owner, pdf, typed
from tests.world import World

pytestmark = pytest.mark.django_db

LYE = {
    "row-1-name": "Sodium hydroxide",
    "row-1-percent": "6",
    "row-1-hazards": "Skin Corr. 1A H314",
    "row-1-limits": "5: Skin Corr. 1A H314; 2-5: Skin Corr. 1B H314; 0.5-2: Skin Irrit. 2 H315",
}
ALKALINE = LYE | {"hazard_lines": "Skin Corr. 1A H314", "statement_lines": "H314", "ph": "13.5"}


def page(world: World, sheet: DataSheet) -> str:
    answer = owner(world).get(reverse("safety:sheet", args=[sheet.pk]))
    return " ".join(answer.content.decode().split())


def test_a_sheet_without_composition_says_nothing_of_one(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf())
    assert "What it is made of" not in page(world, sheet)


def test_a_composition_is_shown_with_what_it_gives_and_why(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf(), **ALKALINE)
    shown = page(world, sheet)
    assert "Sodium hydroxide" in shown
    assert "pH 13.5" in shown
    given = shown[shown.index("What its composition gives") :]
    assert "Skin Corr. 1A H314, Eye Dam. 1 H318 (EU or UK (CLP))" in given
    assert "H314 Causes severe skin burns and eye damage." in given
    assert "Why, and where it comes from" in given
    assert "differ" not in given


def test_a_difference_to_section_2_is_a_note_and_the_sheet_leads(world: World, sheet: DataSheet) -> None:
    wrong = ALKALINE | {
        "hazard_lines": "Eye Irrit. 2 H319\nSkin Sens. 1 H317",
        "statement_lines": "H319, H317",
    }
    attach(owner(world), sheet, pdf(), **wrong)
    shown = page(world, sheet)
    label, given = shown.split("What its composition gives")
    assert "H319 Causes serious eye irritation." in label
    assert "H314" not in label[label.index("<h2>Hazards") : label.index("Classes:")]
    assert "Section 2 and the composition differ." in given
    assert "The sheet’s own classes lead: its label prints them." in given
    assert "Skin Sens. 1 H317: only section 2 says so." in given
    assert "Skin Corr. 1A H314: only the composition gives it." in given


def test_what_is_not_settled_stands_on_the_page(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf(), **ALKALINE, **{"row-2-name": "Secret", "row-2-percent": "10"})
    given = page(world, sheet).split("What its composition gives")[1]
    assert "Not settled:" in given
    assert "The classes of Secret (10 %) are not known" in given


def test_a_first_version_changes_nothing(world: World, sheet: DataSheet) -> None:
    answer = owner(world).post(
        reverse("safety:new_version", args=[sheet.pk]), typed(pdf(), **ALKALINE), follow=True
    )
    assert "The version is kept." in answer.content.decode()
    assert "Against the version before" not in answer.content.decode()


def test_a_newer_version_says_what_it_changes_on_labels(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), **ALKALINE, mix_lines="1:10 pH 11")
    milder = {
        "row-1-percent": "1",
        "hazard_lines": "Skin Irrit. 2 H315",
        "statement_lines": "H315",
        "ph": "11",
    }
    fields = typed(pdf(), **ALKALINE | milder | {"revision_on": "2026-03-03", "mix_lines": "1:10 pH 10"})
    answer = client.post(reverse("safety:new_version", args=[sheet.pk]), fields, follow=True)
    told = "Undiluted: now Warning, GHS07, H315; no longer Danger, GHS05, H314."
    assert f"The version is kept. Against the version before: {told}" in answer.content.decode()
    assert f"Against the version before: {told}" in page(world, sheet)


def test_an_unconfirmed_version_says_on_confirming_what_it_changes(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), **ALKALINE)
    attach(
        client,
        sheet,
        pdf(),
        revision_on="2026-03-03",
        confirm="",
        hazard_lines="",
        not_classified="on",
        statement_lines="",
    )
    waiting = SheetVersion.objects.get(confirmed_on=None)
    answer = client.post(reverse("safety:confirm", args=[sheet.pk, waiting.pk]), follow=True)
    assert (
        "Undiluted: now Not classified as hazardous; see its sheet; no longer Danger, GHS05, H314."
        in answer.content.decode()
    )


def test_a_version_that_says_the_same_changes_nothing_on_a_label(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), **ALKALINE)
    attach(client, sheet, pdf(), revision_on="2026-03-03", **ALKALINE)
    assert "Against the version before: Nothing on the label changes." in page(world, sheet)
