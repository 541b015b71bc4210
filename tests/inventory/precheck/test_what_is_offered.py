"""Which bottle a finding offers instead: the same work, past no date then, and how much of it there is."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions import Facts, ProductFacts
from inventory.stock.rules.use_by import Dates
from inventory.trade.edits import Edits
from inventory.trade.profile import Profile, profile
from inventory.trade.standing_in import stands_in
from tests.inventory.precheck.cases import (
    COAT,
    HOLLIN,
    MAKER_90,
    NOON,
    SALTMERE,
    SHOP_90,
    TIDEWALL,
    WIPE,
    bottle,
    facts,
    found,
    need,
    opened,
)

KTRV, NRXV, BLLK = "BKTRVNXH", "BNRXVHKL", "BLLKKLNB"
WIPE_180 = need(WIPE, HOLLIN, 180)
OFFER = "Saltmere panel wipe BNRX VHKL is free in Store: 0.5 l, "
PAINT = profile("coating")
WHEELS = profile("coating", edits=Edits(touches=("wheels",)))
TRIM = profile("coating", edits=Edits(touches=("plastic", "trim")))
SOLVENT = profile("solvent")


def short_of_hollin(**about: object) -> Facts:
    return facts(WIPE_180, shelf=(bottle(KTRV, HOLLIN, 140), bottle(NRXV, SALTMERE, 500, **about)))


@pytest.mark.parametrize(
    ("about", "offers", "because"),
    [
        ({}, True, "another make that goes out of date never"),
        ({"dates": Dates(expires_on=date(2026, 11, 27))}, True, "good through the step's own day"),
        ({"dates": Dates(expires_on=date(2026, 11, 26))}, False, "over a day before the step"),
        (opened(89, MAKER_90), False, "opened, and dead by then"),
        (opened(89, SHOP_90), False, "an estimate is a date, too: nobody is sent to what may be over"),
        (opened(88, SHOP_90), True, "within the estimate"),
        ({"dates": Dates(best_before_on=date(2026, 11, 22))}, False, "best before last Sunday"),
        ({"held": "frozen"}, False, "held"),
    ],
)
def test_another_make_is_offered_only_where_it_is_past_no_date_then(
    about: dict[str, object], offers: bool, because: str
) -> None:
    assert (OFFER in found(short_of_hollin(**about))[0].do) is offers, because


@pytest.mark.parametrize(
    ("other", "wanted", "serves", "because"),
    [
        (WHEELS, WHEELS, True, "a wheel coating for a wheel coating"),
        (TRIM, WHEELS, False, "a trim coating does not go on wheels"),
        (WHEELS, PAINT, False, "nor a wheel coating on paint"),
        (profile("coating", edits=Edits(touches=("paint", "film", "wheels"))), WHEELS, True, "and more"),
        (profile("wax"), PAINT, False, "another kind"),
        (profile("coating", edits=Edits(family="spray")), PAINT, False, "another family"),
        (profile("wheel", edits=Edits(family="acid")), profile("wheel"), False, "an acid for an alkali"),
        (profile("acid", frozenset({"15"})), profile("acid"), False, "it brings a fluoride with it"),
        (profile("acid"), profile("acid", frozenset({"15"})), True, "the twin: it brings less"),
        (profile("pad"), profile("pad"), False, "nobody knows what a pad is for"),
        (profile("polish"), profile("polish"), False, "nobody knows which of two polishes cuts more"),
        (None, SOLVENT, False, "what it does is not loaded"),
        (SOLVENT, None, False, "what is wanted of it is not loaded"),
        (SOLVENT, SOLVENT, True, "a wipe for a wipe"),
        (
            profile("solvent", edits=Edits(never=("matte_film",))), SOLVENT, False,
            "its owner keeps it off a surface that the other may touch",
        ),
    ],
)  # fmt: skip
def test_one_make_stands_in_for_another_where_it_does_the_same_on_the_same(
    other: Profile | None, wanted: Profile | None, serves: bool, because: str
) -> None:
    assert stands_in(other, wanted) is serves, because


def coating(name: str, does: Profile, code: str) -> ProductFacts:
    return ProductFacts(code, name, "coating", "coating", "volume", does=does)


def test_a_trim_coating_is_not_offered_for_the_wheels_and_a_second_wheel_coating_is() -> None:
    wheel, trim, twin = (
        coating("Tidewall wheel coating", WHEELS, "XWHLKLNB"),
        coating("Tidewall trim coating", TRIM, "XTRMKLNB"),
        coating("Saltmere wheel coating", WHEELS, "XTWNKLNB"),
    )
    products = {one.code: one for one in (wheel, trim, twin)}
    of = facts(need(COAT, wheel, 20), shelf=(bottle(NRXV, trim, 50),), products=products, sheets={})
    both = replace(of, shelf=(*of.shelf, bottle(BLLK, twin, 50)))

    assert "is free" not in found(of)[0].do
    assert "Saltmere wheel coating BLLK KLNB is free in Store: 50 ml, sealed" in found(both)[0].do


COAT_20 = need(COAT, TIDEWALL, 20)
DYING = bottle(KTRV, TIDEWALL, 30, **opened(89, MAKER_90))
GOOD = Dates(expires_on=date(2027, 6, 30))


@pytest.mark.parametrize(
    ("shelf", "way", "because"),
    [
        (
            (bottle(NRXV, TIDEWALL, 30, dates=GOOD),),
            "Take BNRX VHKL (sealed, good to 30 June): bring it to Bay 2, and put the other aside.",
            "it holds all that is needed",
        ),
        (
            (bottle(NRXV, TIDEWALL, 12, dates=GOOD), bottle(BLLK, TIDEWALL, 12, dates=GOOD)),
            "Take BLLK KLNB (sealed, good to 30 June; it holds 12 ml of the 20 ml): bring it to Bay 2, "
            "and put the other aside.",
            "the first of two that only together hold enough",
        ),
        (
            (bottle(NRXV, TIDEWALL, 30, dates=Dates(best_before_on=date(2026, 11, 22))),),
            "What else is free for it is past an estimated life: look at it first, and say what you saw.",
            "nobody is sent to a bottle that is past its date without being told",
        ),
    ],
)
def test_the_bottle_to_take_is_past_no_date_and_says_how_much_it_holds(shelf, way: str, because: str) -> None:
    one = next(one for one in found(facts(COAT_20, shelf=(DYING, *shelf))) if one.code == "out_of_date")

    assert one.do == f"Friday 09:00 is after its use-by, Thursday 26 November. {way}", because


def test_what_takes_a_held_bottles_place_says_how_much_it_holds() -> None:
    shelf = (
        bottle(KTRV, HOLLIN, 200, held="frozen", sealed=False),
        bottle(NRXV, HOLLIN, 100),
        bottle(BLLK, HOLLIN, 100),
    )

    assert found(facts(WIPE_180, shelf=shelf))[0].do == (
        "Take BLLK KLNB (sealed, does not go out of date; it holds 100 ml of the 180 ml), and move this out "
        "of reach. An owner releases it once it is right."
    )


FAR = timedelta(days=8)
COVER = bottle(NRXV, TIDEWALL, 30, dates=GOOD)


def at(before: timedelta, *shelf) -> list[tuple[str, str]]:
    now = COAT.starts_at - before
    return [(one.grade, one.do) for one in found(facts(COAT_20, shelf=shelf), now)]


AFTER = "Friday 27 November, 09:00 is after its use-by, Thursday 26 November. "


@pytest.mark.parametrize(
    ("shelf", "before", "grade", "because"),
    [
        ((DYING, COVER), FAR, "tell", "eight days ahead, and another that lasts covers it"),
        ((DYING, COVER), timedelta(days=7, minutes=1), "tell", "more than seven days off"),
        ((DYING, COVER), timedelta(days=7), "stop", "in its week a hand would take the open one"),
        ((DYING,), FAR, "stop", "it is the only one, however far off"),
        ((DYING, replace(COVER, content=10_000)), FAR, "stop", "what lasts does not cover it"),
    ],
)
def test_what_dies_long_before_its_step_is_told_where_other_stock_covers_it(
    shelf, before: timedelta, grade: str, because: str
) -> None:
    assert [one[0] for one in at(before, *shelf)] == [grade], because


def test_the_note_says_what_becomes_of_the_bottle() -> None:
    assert at(FAR, DYING, COVER) == [
        (
            "tell",
            AFTER
            + "There is enough that lasts until then: use this one up first, or empty it once it is over.",
        )
    ]


def test_a_bottle_that_is_over_already_is_to_be_emptied() -> None:
    gone = bottle(KTRV, TIDEWALL, 30, **opened(120, MAKER_90))

    assert at(FAR, gone, COVER)[0][1].endswith("There is enough that lasts until then: empty this one.")


def test_a_later_step_that_nothing_covers_stops_beside_an_earlier_one_that_is_covered() -> None:
    second = need(COAT, TIDEWALL, 20, id=f"{COAT.code}-second", starts_at=COAT.ends_at, ends_at=COAT.ends_at)
    of = facts(COAT_20, second, shelf=(DYING, replace(COVER, content=25_000)))

    grades = [one.grade for one in found(of, NOON - FAR) if one.code == "out_of_date"]

    assert grades == ["stop"]
