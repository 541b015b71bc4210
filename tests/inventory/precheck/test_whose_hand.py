"""Whose hand ends a finding: who may act has its button, everybody else the name of who may."""

import pytest

from inventory.models import Person
from inventory.precheck.questions import Finding
from inventory.precheck.views.ways import Action, way_out
from inventory.precheck.views.whom import may_press, who_does
from tests import world as w

pytestmark = pytest.mark.django_db
STEP, JOB, BAY, BOTTLE, PRODUCT = "SWPXKLNB", "JTVSGDSE", "PBAYTWOX", "BPADKLNB", "XHLNKLNB"
INES, TOMAS, WREN = "ines", "tomas", "wren"


def asked(shop: w.World, code: str, *about: str) -> tuple[Finding, Action, list[Person]]:
    named = tuple(getattr(shop, one).code if one in (INES, TOMAS, WREN) else one for one in about)
    finding = Finding(code, "ask", "says", "because", "do", "source", named)
    action = way_out(finding, JOB)
    assert action is not None
    return finding, action, list(Person.objects.filter(shop=shop.shop).order_by("name"))


OWNERS = "An owner does this: Ines."
WORKERS = "Who works here does this."


@pytest.mark.parametrize(
    ("code", "about", "pressed_by", "whom", "because"),
    [
        ("no_sheet", (PRODUCT, STEP), {INES}, "Only an owner can attach it: Ines.", "sheets are an owner's"),
        ("people.training", (TOMAS, STEP), {INES}, OWNERS, "his own page opens, but trains nobody"),
        ("people.fit_test", (INES, STEP), {INES}, OWNERS, "the record of another person refuses"),
        ("people.evaluation", (TOMAS, STEP), {INES}, OWNERS, "written down by an owner"),
        ("people.face", (TOMAS, STEP), {INES, TOMAS}, "Tomas says it, or an owner: Ines.", "one's own face"),
        ("people.face", (INES, STEP), {INES}, "Ines says it, or an owner: Ines.", "of another only an owner"),
        ("people.eyewash", (BAY, STEP), {INES}, OWNERS, "a place is changed by an owner"),
        ("air.unknown", (BAY, STEP), {INES}, OWNERS, "the air of a bay is typed by an owner"),
        ("air.local_exhaust", (BAY, STEP), {INES}, OWNERS, "and so is an examination"),
        ("air.ignition", (BAY, STEP), {INES, TOMAS}, WORKERS, "switched off by whoever works there"),
        ("air.exposure", (BAY, STEP), {INES, TOMAS, WREN}, "", "the curve is for who only reads, too"),
        ("held", (BOTTLE, STEP), {INES, TOMAS, WREN}, "", "a bottle's page opens for everybody"),
        ("unlabelled", (BOTTLE, STEP), {INES, TOMAS}, WORKERS, "labels are printed by who works here"),
        ("residue.wax", (PRODUCT, STEP), {INES, TOMAS}, WORKERS, "a step is planned by who works here"),
        ("rags.can", (BAY, STEP), {INES}, OWNERS, "where the can is, is a fact of the place"),
    ],
)
def test_whose_hand_a_finding_waits_for(
    shop: w.World, code: str, about: tuple[str, ...], pressed_by: set[str], whom: str, because: str
) -> None:
    finding, action, crew = asked(shop, code, *about)

    may = {one for one in (INES, TOMAS, WREN) if may_press(finding, action, getattr(shop, one), crew)}

    assert may == pressed_by, because
    if pressed_by != {INES, TOMAS, WREN}:
        assert who_does(finding, action, crew) == whom, because


def test_the_first_days_sheet_leads_to_the_page_where_it_is_signed(shop: w.World) -> None:
    finding, action, crew = asked(shop, "people.first_day", TOMAS, STEP)

    assert (action.label, action.to) == (
        "Open the page where it is signed", f"/people/{shop.tomas.code}/",
    )  # fmt: skip
    assert may_press(finding, action, shop.tomas, crew)
    assert not may_press(finding, action, shop.ines, crew), "nobody signs for who signs in"
    assert who_does(finding, action, crew) == "Tomas signs it, signed in under that name."


def test_for_who_only_badges_an_owner_types_the_signature_in(shop: w.World) -> None:
    shop.tomas.set_unusable_password()
    shop.tomas.save()
    finding, action, crew = asked(shop, "people.first_day", TOMAS, STEP)

    assert may_press(finding, action, shop.ines, crew)
    assert who_does(finding, action, crew) == "Tomas signs it, and an owner types it in: Ines."
