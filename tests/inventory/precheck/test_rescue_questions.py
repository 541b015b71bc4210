"""Is what saves an eye or a hand in reach: the eyewash run, the gel in date, the spill kit not dead?"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions.rescue import eyewash_in_reach, gel_in_reach, rescue_in_date
from tests.inventory.precheck.cases import NOON
from tests.inventory.precheck.crew import (
    ACID,
    BAY,
    BOTTLE,
    BRACK,
    GEL,
    LYE,
    SOAP,
    SPRAY,
    WIPE,
    asked,
    crew,
    good_to,
    item,
    only,
    said,
    spoilt,
    without,
)

DEAD = good_to(date(2026, 11, 26))
BARE = replace(BAY, eyewash_at="", run_at=None)
UNRUN = replace(BAY, run_at=NOON - timedelta(days=9))
NO_BOTTLE = without(BOTTLE)
BURNER = replace(WIPE, hazards=("Eye Dam. 1 H318",))
IN_OFFICE = replace(GEL, place="PFFCKLNB", place_name="Office", reach=frozenset({"PFFCKLNB"}))
IN_STORE = replace(GEL, code="BGELTLNB", place="PSTRKLNB", place_name="Store", reach=frozenset({"PSTRKLNB"}))
IN_BOX = replace(GEL, place="PBXXKLNB", place_name="Green box", reach=frozenset({"PBXXKLNB", BAY.code}))


def test_what_burns_eyes_stops_in_a_bay_without_an_eyewash() -> None:
    one = only(eyewash_in_reach, crew(LYE, bay=BARE, items=spoilt(BOTTLE, **DEAD)))

    assert (one.code, one.grade) == ("people.eyewash", "stop")
    assert one.says == "Bay 1 has no eyewash for what burns eyes."
    assert one.because == (
        "Wheel acid takes Fenmoor alkaline wash (Skin Corr. 1A H314). Ossen eyewash bottle BEYE KLNB in Bay "
        "1 is good to Thursday 26 November 2026."
    )
    assert one.do == (
        "Put a sealed eyewash bottle that is in date into it, or say on the page of Bay 1 where the eyewash "
        "is, within ten seconds' walk; nothing else ends this stop."
    )
    assert one.about == (BAY.code, "SACDKLNB")


def test_an_eyewash_that_was_not_run_this_week_is_run_and_no_word_takes_its_place() -> None:
    one = only(eyewash_in_reach, crew(LYE, bay=UNRUN, items=NO_BOTTLE))

    assert (one.code, one.grade) == ("people.eyewash_run", "ask")
    assert one.says == "The eyewash of Bay 1 was not run this week."
    assert one.because == (
        "Wheel acid takes Fenmoor alkaline wash (Skin Corr. 1A H314). It was last run on Monday 16 November, "
        "9 days ago."
    )
    assert one.do == (
        "Run it until it is clear (left of the door) and press “Ran it today” under People; that ends this "
        "question."
    )


@pytest.mark.parametrize(
    ("facts", "codes", "because"),
    [
        (crew(LYE), [], "run two days ago, and a bottle beside it"),
        (crew(LYE, bay=UNRUN), [], "outside the US a sealed bottle in date is enough"),
        (crew(LYE, bay=BARE), [], "also without any other eyewash"),
        (crew(LYE, bay=UNRUN, country="US"), ["people.eyewash_run"], "not in the US"),
        (crew(LYE, bay=BARE, country="US"), ["people.eyewash"], "where a bottle is no eyewash"),
        (crew(LYE, country="US"), [], "run this week in the US"),
        (crew(LYE, bay=BARE, items=spoilt(BOTTLE, sealed=False)), ["people.eyewash"], "an opened bottle"),
        (crew(LYE, items=NO_BOTTLE, bay=replace(BAY, run_at=NOON - timedelta(days=7))), [], "seven days"),
        (
            crew(LYE, items=NO_BOTTLE, bay=replace(BAY, run_at=NOON - timedelta(days=7, minutes=1))),
            ["people.eyewash_run"],
            "and a minute",
        ),
        (crew(LYE, items=NO_BOTTLE, bay=replace(BAY, run_at=None)), ["people.eyewash_run"], "never run"),
        (crew(BURNER, bay=BARE, items=NO_BOTTLE), ["people.eyewash"], "eyes alone"),
        (crew(WIPE, bay=BARE, items=NO_BOTTLE), [], "what irritates asks for no eyewash"),
        (crew(LYE, bay=BARE, items=NO_BOTTLE, step=replace(ACID, bay=None)), [], "no bay is known"),
        (crew(LYE, bay=BARE, items=NO_BOTTLE, step=replace(ACID, signed_at=NOON)), [], "signed"),
    ],
)
def test_when_an_eyewash_is_missed(facts, codes, because) -> None:
    assert [one.code for one in asked(eyewash_in_reach, facts)] == codes, because


def test_a_run_is_not_asked_for_before_its_own_week() -> None:
    far = replace(
        ACID, starts_at=ACID.starts_at + timedelta(days=7), ends_at=ACID.ends_at + timedelta(days=7)
    )
    assert asked(eyewash_in_reach, crew(LYE, bay=UNRUN, items=NO_BOTTLE, step=far)) == ()


def test_two_steps_in_one_bay_miss_one_eyewash() -> None:
    assert len(asked(eyewash_in_reach, crew(LYE, bay=BARE, items=NO_BOTTLE, steps=(ACID, SPRAY)))) == 1


def test_a_fluoride_without_gel_in_date_stops_and_names_the_tube_that_is_elsewhere() -> None:
    items = (*spoilt(GEL, **DEAD), IN_STORE)
    one = only(gel_in_reach, crew(BRACK, items=items))

    assert (one.code, one.grade) == ("people.gluconate", "stop")
    assert one.says == "No calcium gluconate gel in date is in reach of Bay 1."
    assert one.because == (
        "Wheel acid takes Brack wheel acid (Skin Corr. 1B H314, holds a fluoride). A fluoride burn hurts "
        "late and goes deep; the gel is rubbed in at once. Ossen gel BGEL KLNB in Bay 1 is good to Thursday "
        "26 November 2026."
    )
    assert one.do == (
        "Bring Ossen gel BGEL TLNB from Store to Bay 1 before Friday 08:30; nothing else ends this stop."
    )


@pytest.mark.parametrize(
    ("facts", "grades", "because"),
    [
        (crew(BRACK), [], "a tube lies in the bay"),
        (crew(BRACK, items=without(GEL)), ["stop"], "none anywhere"),
        (crew(BRACK, items=(IN_BOX,)), [], "in a box in the bay"),
        (crew(BRACK, items=(IN_OFFICE,)), [], "where the bay's first aid is"),
        (crew(BRACK, items=(IN_STORE,)), ["stop"], "in the store is too far"),
        (crew(BRACK, items=spoilt(GEL, **good_to(date(2026, 11, 27)))), [], "good on the day"),
        (crew(LYE, items=without(GEL)), [], "an alkali is rinsed"),
        (crew(BRACK, items=without(GEL), step=replace(ACID, signed_at=NOON)), [], "signed"),
        (crew(BRACK, items=without(GEL), step=replace(ACID, bay=None)), ["stop"], "no bay, no tube at all"),
        (crew(BRACK, items=(IN_STORE,), step=replace(ACID, bay=None)), [], "no bay: a tube somewhere"),
    ],
)
def test_when_the_gel_is_missed(facts, grades, because) -> None:
    assert [one.grade for one in asked(gel_in_reach, facts)] == grades, because


def test_a_fluoride_that_only_stands_in_the_bay_stops_too() -> None:
    stands = replace(BAY, fluorides=("Brack wheel acid",))
    one = only(gel_in_reach, crew(SOAP, bay=stands, items=without(GEL)))

    assert one.grade == "stop"
    assert one.because.startswith("Brack wheel acid stands in Bay 1. A fluoride burn hurts late")
    assert one.do == "Bring a tube that is in date to Bay 1 before Friday 08:30; nothing else ends this stop."
    assert asked(gel_in_reach, crew(SOAP, bay=stands)) == ()


SPILL = item("BSPLKLNB", "absorbent", "Ossen absorbent", **DEAD)
FIRE = item("BFRRKLNB", "extinguisher", "Ossen extinguisher", **good_to(date(2026, 11, 20)))
NEW_FIRE = item("BFRSKLNB", "extinguisher", "Ossen extinguisher")


def test_dead_rescue_stock_of_a_bay_is_one_question() -> None:
    one = only(rescue_in_date, crew(SOAP, items=(SPILL, FIRE)))

    assert (one.code, one.grade) == ("people.rescue", "ask")
    assert one.says == "Ossen extinguisher BFRR KLNB and 1 more are out of date in Bay 1."
    assert one.because == (
        "Ossen extinguisher BFRR KLNB in Bay 1 is good to Friday 20 November 2026. Ossen absorbent BSPL KLNB "
        "in Bay 1 is good to Thursday 26 November 2026."
    )
    assert one.do == "Put an extinguisher and absorbent that is in date there; take the old away."


@pytest.mark.parametrize(
    ("items", "says", "because"),
    [
        ((FIRE,), ["Ossen extinguisher BFRR KLNB is out of date in Bay 1."], "alone"),
        ((FIRE, NEW_FIRE), [], "another one hangs beside it"),
        ((NEW_FIRE,), [], "in date"),
        ((replace(FIRE, place_name="Store", reach=frozenset({"PSTRKLNB"})),), [], "in another room"),
        ((), [], "none at all is nobody's finding here"),
    ],
)
def test_when_rescue_stock_is_spoken_of(items, says, because) -> None:
    assert [sentence for _, _, sentence in said(rescue_in_date, crew(SOAP, items=items))] == says, because
