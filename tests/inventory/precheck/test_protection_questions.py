"""Is what is to be worn on hand in date, and do the gloves stand the step?"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions.gloves import glove_minutes
from inventory.precheck.questions.protection import equipment_on_hand
from inventory.precheck.questions.topics.air import AirFacts, Makeup
from safety.hazards.equipment import ITEMS, worn_against
from safety.hazards.tables import rows
from tests.inventory.precheck.cases import NOON
from tests.inventory.precheck.crew import (
    ACID,
    APRON,
    BRACK,
    CORRIN,
    GLOVES,
    GOGGLES,
    HALF,
    SHIELD,
    SOAP,
    STAND,
    WIPE,
    asked,
    crew,
    good_to,
    item,
    only,
    spoilt,
    without,
)

FULL = item("BFLLKLNB", "full", "Ossen full-face mask")
LONG = replace(ACID, ends_at=ACID.starts_at + timedelta(minutes=150))
DEAD = good_to(date(2026, 11, 26))
AIR = item("BAIRKLNB", "air_fed", "Ossen air-fed mask")


def test_what_burns_stops_without_what_is_worn_against_it() -> None:
    worn = {"hands": "nitrile 0.4 mm", "eyes": "face shield over sealed glasses", "body": ""}
    one = only(equipment_on_hand, crew(replace(BRACK, worn=worn), items=without(GOGGLES, APRON)))

    assert (one.code, one.grade) == ("people.equipment", "stop")
    assert one.says == "Goggles and an apron are not on hand in date."
    assert one.because == (
        "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). The sheet of Brack wheel "
        "acid wants hands: nitrile 0.4 mm, eyes: face shield over sealed glasses."
    )
    assert one.do == (
        "Get what is missing before Friday 08:30 and scan it in; under People, “What protects people here” "
        "says what each serves; nothing else ends this stop."
    )
    assert one.about == ("goggles", "apron", "SACDKLNB")


def test_a_dead_item_is_named_with_its_date() -> None:
    one = only(equipment_on_hand, crew(BRACK, items=spoilt(SHIELD, **DEAD)))
    assert one.says == "A face shield is not on hand in date."
    assert one.because.endswith("Ossen face shield BSHD KLNB in Bay 1 is good to Thursday 26 November 2026.")


@pytest.mark.parametrize(
    ("facts", "found", "because"),
    [
        (crew(BRACK), [], "all of it is there"),
        (crew(BRACK, items=spoilt(SHIELD, **good_to(date(2026, 11, 27)))), [], "good on the day"),
        (crew(WIPE, items=without(GOGGLES)), ["ask"], "what only irritates asks"),
        (crew(SOAP, items=(GLOVES,)), [], "a shampoo asks for nothing"),
        (
            crew(BRACK, items=(*without(GOGGLES, SHIELD, HALF), FULL)),
            [],
            "a full-face mask guards eyes and face",
        ),
        (crew(CORRIN, items=without(GLOVES)), ["stop"], "isocyanates pass the skin"),
        (crew(respirator="half", items=without(HALF)), ["stop"], "the mask that the step is done in"),
        (crew(respirator="half"), [], "which is there"),
        (crew(BRACK, items=(), step=replace(ACID, signed_at=NOON)), [], "a signed step is over"),
        (crew(WIPE, kept=False, items=()), [], "a shop that keeps none of it is left in peace"),
        (crew(BRACK, kept=False, items=()), ["ask"], "but for a fluoride"),
        (crew(CORRIN, kept=False, items=()), ["ask"], "or isocyanates"),
        (crew(respirator="half", kept=False, items=()), ["ask"], "or a mask"),
        (crew(BRACK, WIPE, items=()), ["stop"], "one stop, what only asks is in it"),
    ],
)
def test_when_equipment_is_missed(facts, found, because) -> None:
    assert [one.grade for one in asked(equipment_on_hand, facts)] == found, because


def test_a_shop_that_never_said_what_serves_is_asked_once_with_the_way_out() -> None:
    one = only(equipment_on_hand, crew(BRACK, kept=False, items=()))

    assert one.says == "Nobody has said here which products protect people."
    assert one.because == (
        "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). Gloves, goggles and masks "
        "have dates, too."
    )
    assert one.do == (
        "Say under People, “What protects people here”, what each item serves; until then look for yourself "
        "before the first bottle is opened."
    )


def test_sprayed_isocyanates_are_done_on_air_from_a_hose() -> None:
    facts = crew(CORRIN, respirator="half", sprayed=True)
    one = next(one for one in asked(equipment_on_hand, facts) if "sprayed" in one.about)

    assert (one.grade, one.says) == ("stop", "Wheel acid sprays isocyanates with a half mask planned.")
    assert one.because == (
        "Wheel acid takes Corrin hardener (Resp. Sens. 1 H334, holds isocyanates). No filter warns of them: "
        "the air comes by a hose."
    )
    assert one.do == "Plan an air-fed mask for Wheel acid, or do not spray it; nothing else ends this stop."


def test_the_air_speaks_of_the_hose_itself_where_it_knows_the_composition() -> None:
    facts = crew(CORRIN, respirator="half", sprayed=True)
    known = Makeup(CORRIN.code, CORRIN.name, "other", "volume", composed=True)
    for makeup, stops in ((replace(known, composed=False), 1), (known, 0)):
        told = replace(facts, air=AirFacts(makeups={CORRIN.code: makeup}))
        assert len([one for one in asked(equipment_on_hand, told) if "sprayed" in one.about]) == stops


@pytest.mark.parametrize(
    ("facts", "because"),
    [
        (crew(CORRIN, respirator="air_fed", sprayed=True, items=(GLOVES, AIR)), "the mask is air-fed"),
        (crew(CORRIN, respirator="half"), "it is wiped, not sprayed"),
        (crew(WIPE, sprayed=True), "a panel wipe holds none"),
    ],
)
def test_nothing_is_said_of_hoses_where_none_is_needed(facts, because) -> None:
    assert asked(equipment_on_hand, facts) == (), because


def test_gloves_are_changed_by_the_clock_of_their_maker() -> None:
    one = only(glove_minutes, crew(BRACK, step=LONG, gloves=(STAND,)))

    assert (one.code, one.grade) == ("people.gloves", "tell")
    assert one.says == "Gloves are changed after 120 minutes in Wheel acid."
    assert one.because == "Ossen gloves stand Brack wheel acid for 120 minutes; Wheel acid runs 150."
    assert one.do == "Put enough pairs beside the work and change by the clock."
    assert one.source == "the glove maker's minutes: Ossen's table of May 2026"


BETTER = replace(STAND, glove="XBTTKLNB", minutes=480)
BETTER_HERE = item("BBTTKLNB", "gloves", "Ossen long gloves", product="XBTTKLNB")


@pytest.mark.parametrize(
    ("facts", "grades", "because"),
    [
        (crew(BRACK, gloves=(STAND,)), [], "they stand all of it"),
        (crew(BRACK, step=LONG), [], "nobody typed a minute"),
        (crew(BRACK, step=LONG, gloves=(STAND, BETTER)), ["tell"], "the better ones are not here"),
        (
            crew(BRACK, step=LONG, gloves=(STAND, BETTER), items=(GLOVES, BETTER_HERE)),
            [],
            "the better ones are here",
        ),
        (crew(BRACK, gloves=(replace(STAND, minutes=10),)), ["ask"], "ten minutes is a splash"),
        (crew(BRACK, gloves=(replace(STAND, minutes=11),)), ["tell"], "level 1 is more than ten"),
        (crew(WIPE, step=LONG, gloves=(STAND,)), [], "they are another product's minutes"),
    ],
)
def test_when_gloves_are_spoken_of(facts, grades, because) -> None:
    assert [one.grade for one in asked(glove_minutes, facts)] == grades, because


P280 = {"gloves": "gloves", "goggles": "eyes", "face_shield": "face", "apron": "clothing"}
# P284 (a mask) is what CLP asks against a respiratory sensitiser; the gloves are ours, and so marked.
OURS = {("Resp. Sens. 1", "gloves")}


def calls_for(hazard: str, statement: str) -> set[str]:
    """Return what P280 picks for a class in the EU, by the table that was compared with a public copy."""
    name, _, category = hazard.strip().rpartition(" ") if not statement else (hazard.strip(), "", "")
    return {
        pick
        for row in rows("precaution_choice")
        if row["precaution"] == "P280" and row["class"] == name and "EU" in row["regimes"]
        if statement in row["codes"] or row["codes"] == "*"
        if any(each.startswith(category) or each == "*" for each in row["categories"].split())
        for pick in row["pick"].split()
    }


@pytest.mark.parametrize("row", [row for row in rows("equipment_needed") if "." in row["hazard"]])
def test_what_a_class_asks_for_is_among_what_its_precaution_asks_for(row) -> None:
    """P280 as CLP Annex I calls for it; tests/expected/p_choice.csv compares that table."""
    called = calls_for(row["hazard"], row["statement"])
    ours = {one for one in row["items"].split() if (row["hazard"], one) not in OURS}
    assert {P280[one] for one in ours} <= called, called


@pytest.mark.parametrize(
    ("hazards", "sheet", "items", "because"),
    [
        (["Skin Corr. 1A H314"], {}, ("gloves", "goggles", "face_shield", "apron"), "the class alone"),
        (["Skin Corr. 1B H314"], {}, ("gloves", "goggles", "apron"), "1B leaves the face to the sheet"),
        (["Skin Corr. 1B H314", "fluoride"], {}, ITEMS, "a fluoride asks for all"),
        (["Skin Corr. 1A H314"], {"eyes": "sealed glasses"}, ("gloves", "goggles", "apron"), "the sheet"),
        (["Skin Corr. 1A H314"], {"body": "long sleeves"}, ITEMS, "not understood: the class decides"),
        (["Skin Corr. 1A H314"], {"hands": "none"}, ITEMS, "no word against the class"),
        ([], {"hands": "nitrile 0.4 mm", "body": "apron and boots"}, ("gloves", "apron"), "the sheet alone"),
        (["Eye Irrit. 2A H319"], {}, ("goggles",), "the US writes 2A"),
        (["Acute Tox. 3 H311"], {}, ("gloves", "apron"), "through the skin"),
        (["Acute Tox. 3 H331"], {}, (), "through the air is a matter of the air"),
        (["Flam. Liq. 2 H225"], {}, (), "no glove helps against fire"),
    ],
)
def test_what_is_worn_follows_the_sheet_then_the_class(hazards, sheet, items, because) -> None:
    assert worn_against(hazards, sheet) == items, because
