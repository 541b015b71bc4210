"""Each question of the check: where it speaks, in its whole sentence, and the nearest silent case."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from inventory.precheck.questions import Facts, SheetFacts
from inventory.precheck.questions.facts import LabelFacts
from inventory.stock.rules.use_by import Dates, Life
from tests.inventory.precheck.cases import (
    BRACK,
    COAT,
    FRIDAY,
    HOLLIN,
    MAKER_90,
    NOON,
    SALTMERE,
    SHOP_90,
    TIDEWALL,
    WIPE,
    bottle,
    earlier,
    facts,
    found,
    need,
    opened,
    said,
)

KTRV, NRXV, FULL = "BKTRVNXH", "BNRXVHKL", bottle("BFLLKLNB", HOLLIN, 500)
NOTHING_OF_IT = (
    "Hollin panel wipe: 180 ml needed, 0 ml free: there is nothing of it here, and Panel wipe cannot be done."
)
WIPE_180 = need(WIPE, HOLLIN, 180)
COAT_20 = need(COAT, TIDEWALL, 20, one_lot=True)
DYING = bottle(KTRV, TIDEWALL, 30, **opened(89, MAKER_90))
FRESH = bottle(NRXV, TIDEWALL, 30, dates=Dates(expires_on=date(2027, 6, 30)))
THURSDAY, FRIDAY_ON = date(2026, 11, 26), date(2026, 11, 27)


def sealed_until(day: date, **more: object):
    return bottle(KTRV, TIDEWALL, 30, dates=Dates(expires_on=day), **more)


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (facts(WIPE_180, shelf=(bottle(KTRV, HOLLIN, 180),)), None, "to the drop"),
        (
            facts(WIPE_180, shelf=(bottle(KTRV, HOLLIN, 140),)),
            ("ask", "Hollin panel wipe: 180 ml needed, 140 ml free."),
            "40 ml are missing",
        ),
        (
            facts(WIPE_180, shelf=()),
            ("ask", NOTHING_OF_IT),
            "an empty shelf is short of all, and says so",
        ),
        (
            facts(WIPE_180, shelf=(bottle(KTRV, TIDEWALL, 30),)),
            ("ask", NOTHING_OF_IT),
            "what else stands there is not it",
        ),
        (
            facts(WIPE_180, earlier(HOLLIN, 200), shelf=(bottle(KTRV, HOLLIN, 200),)),
            ("ask", "Hollin panel wipe: 180 ml needed, 0 ml free."),
            "its twin: it is here, and all of it is another job's",
        ),
        (facts(WIPE_180, earlier(HOLLIN, 60), shelf=(bottle(KTRV, HOLLIN, 240),)), None, "enough for both"),
        (
            facts(WIPE_180, earlier(HOLLIN, 60), shelf=(bottle(KTRV, HOLLIN, 200),)),
            ("ask", "Hollin panel wipe: 180 ml needed, 140 ml free."),
            "the earlier job takes its 60 ml first",
        ),
        (
            facts(
                WIPE_180,
                earlier(HOLLIN, 60, starts_at=FRIDAY + timedelta(days=3)),
                shelf=(bottle(KTRV, HOLLIN, 200),),
            ),
            None,
            "a later job takes what is left",
        ),
        (
            facts(need(WIPE, "solvent", 180), shelf=(bottle(KTRV, HOLLIN, 100), bottle(NRXV, SALTMERE, 80))),
            None,
            "a kind takes every make",
        ),
        (
            facts(need(WIPE, "solvent", 180), shelf=(bottle(KTRV, HOLLIN, 100),)),
            ("ask", "Panel wipe: 180 ml needed, 100 ml free."),
            "a kind is named by its own word",
        ),
        (
            facts(need(WIPE, "wax", 5)),
            ("ask", "Wax: this shop has no product of this kind."),
            "nothing of the kind was ever made a product",
        ),
        (
            facts(need(WIPE, HOLLIN, 100), need(COAT, HOLLIN, 80), shelf=(bottle(KTRV, HOLLIN, 140),)),
            ("ask", "Hollin panel wipe: 180 ml needed, 140 ml free."),
            "two steps short of one product are one cause",
        ),
    ],
)
def test_too_little_usable_stock_asks(of: Facts, speaks: tuple[str, str] | None, because: str) -> None:
    assert said(of) == ([speaks] if speaks else []), because


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (facts(COAT_20, shelf=(sealed_until(FRIDAY_ON),)), None, "its printed day is its last good day"),
        (
            facts(COAT_20, shelf=(sealed_until(THURSDAY),)),
            ("stop", "Tidewall coating BKTR VNXH dies before its step."),
            "nothing else is there",
        ),
        (
            facts(COAT_20, shelf=(sealed_until(NOON.date() - timedelta(days=1)),)),
            ("stop", "Tidewall coating BKTR VNXH is out of date."),
            "it is dead already",
        ),
        (
            facts(COAT_20, shelf=(sealed_until(THURSDAY), FRESH)),
            None,
            "a sealed one that dies in the store is nobody's hand away while another lasts",
        ),
        (
            facts(COAT_20, shelf=(DYING,)),
            ("stop", "Tidewall coating BKTR VNXH dies before its step."),
            "opened 28 August + 90 days is Thursday",
        ),
        (
            facts(COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, **opened(88, MAKER_90)),)),
            None,
            "opened a day later it lasts through Friday",
        ),
        (
            facts(COAT_20, shelf=(DYING, FRESH)),
            ("stop", "Tidewall coating BKTR VNXH dies before its step."),
            "the open one is the one a hand takes",
        ),
        (
            facts(COAT_20, shelf=(DYING, replace(FRESH, place="PBAYTWOX"))),
            None,
            "the good one stands in the bay",
        ),
        (
            facts(
                COAT_20,
                shelf=(sealed_until(THURSDAY), bottle(NRXV, TIDEWALL, 30, dates=Dates(expires_on=THURSDAY))),
            ),
            ("stop", "Tidewall coating BKTR VNXH and 1 more die before their step."),
            "one product, one finding",
        ),
        (
            facts(
                COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(open=Life(120, "minute", "maker"))),)
            ),
            ("stop", "Tidewall coating BKTR VNXH dies during its step."),
            "opened at 09:00 for two hours, the step lasts until 11:30",
        ),
        (
            facts(
                COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(open=Life(180, "minute", "maker"))),)
            ),
            None,
            "three hours are enough for two and a half",
        ),
        (
            facts(
                replace(COAT_20, amount=10_000),
                earlier(TIDEWALL, 10),
                shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(open=Life(1, "day", "maker"))),),
            ),
            ("stop", "Tidewall coating BKTR VNXH dies before its step."),
            "the earlier job opens it on Wednesday, so it is dead by Friday",
        ),
        (
            facts(
                replace(COAT_20, amount=10_000),
                earlier(TIDEWALL, 10),
                shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(open=Life(2, "day", "maker"))),),
            ),
            None,
            "opened on Wednesday for two days it is good on Friday",
        ),
    ],
)
def test_what_dies_by_a_firm_date_stops(of: Facts, speaks: tuple[str, str] | None, because: str) -> None:
    assert said(of) == ([speaks] if speaks else []), because


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (
            facts(COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, **opened(89, SHOP_90)),)),
            ("ask", "Tidewall coating BKTR VNXH is past its estimated life at its step."),
            "this shop's own estimate asks",
        ),
        (
            facts(COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, **opened(88, SHOP_90)),)),
            None,
            "within the estimate",
        ),
        (
            facts(COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(best_before_on=THURSDAY)),)),
            ("ask", "Tidewall coating BKTR VNXH is past its best-before date at its step."),
            "best before is no use-by",
        ),
        (
            facts(COAT_20, shelf=(bottle(KTRV, TIDEWALL, 30, dates=Dates(best_before_on=FRIDAY_ON)),)),
            None,
            "best before Friday, used on Friday",
        ),
    ],
)
def test_what_outlives_an_estimate_asks(of: Facts, speaks: tuple[str, str] | None, because: str) -> None:
    assert said(of) == ([speaks] if speaks else []), because


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (
            facts(WIPE_180, shelf=(replace(FULL, held="left open"),)),
            ("stop", "Hollin panel wipe BFLL KLNB is held: left open."),
            "it is all there is",
        ),
        (
            facts(WIPE_180, shelf=(replace(FULL, held="left open"), bottle(KTRV, HOLLIN, 200))),
            None,
            "held and sealed in the store, and there is enough without it",
        ),
        (
            facts(
                WIPE_180, shelf=(replace(FULL, held="left open", place="PBAYTWOX"), bottle(KTRV, HOLLIN, 200))
            ),
            ("stop", "Hollin panel wipe BFLL KLNB is held: left open."),
            "it stands where the step is done",
        ),
        (
            facts(WIPE_180, shelf=(replace(FULL, held="frozen", sealed=False), bottle(KTRV, HOLLIN, 200))),
            ("stop", "Hollin panel wipe BFLL KLNB is held: frozen."),
            "it is open, and the good one is still sealed in the store",
        ),
        (
            facts(
                WIPE_180,
                shelf=(
                    replace(FULL, held="frozen", sealed=False),
                    bottle(KTRV, HOLLIN, 200, place="PBAYTWOX"),
                ),
            ),
            None,
            "the good one stands in the bay",
        ),
        (
            facts(
                WIPE_180, recalled=frozenset({FULL.code}), shelf=(replace(FULL, held="maker's notice 12"),)
            ),
            ("stop", "Hollin panel wipe BFLL KLNB is recalled: maker's notice 12."),
            "a recall is called by its name",
        ),
        (
            facts(WIPE_180, shelf=(replace(FULL, held="frozen"), bottle(KTRV, HOLLIN, 200, held="frozen"))),
            ("stop", "2 bottles of Hollin panel wipe are held: frozen."),
            "one reason is one cause",
        ),
    ],
)
def test_held_or_recalled_stock_stops(of: Facts, speaks: tuple[str, str] | None, because: str) -> None:
    assert said(of) == ([speaks] if speaks else []), because


def sheets(of, sheet: SheetFacts) -> Facts:
    acid = need(WIPE, of, 50)
    return facts(acid, shelf=(bottle(KTRV, of, 500),), sheets={of.code: sheet})


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (sheets(HOLLIN, SheetFacts()), ("ask", "Hollin panel wipe has no data sheet."), "none was attached"),
        (sheets(HOLLIN, SheetFacts(attached=True, confirmed=True)), None, "attached and confirmed"),
        (sheets(HOLLIN, SheetFacts(needed=False)), None, "a towel needs none"),
        (
            sheets(HOLLIN, SheetFacts(attached=True)),
            ("ask", "Hollin panel wipe has a data sheet that nobody has confirmed."),
            "a version that nobody confirmed shows nothing",
        ),
        (sheets(BRACK, SheetFacts()), ("stop", "Brack wheel acid has no data sheet."), "an acid"),
        (sheets(BRACK, SheetFacts(attached=True, confirmed=True)), None, "the acid's sheet is here"),
        (
            sheets(HOLLIN, SheetFacts(attached=True, fluoride=True)),
            ("stop", "Hollin panel wipe has a data sheet that nobody has confirmed."),
            "the unread sheet says it frees fluoride",
        ),
        (
            sheets(HOLLIN, SheetFacts(attached=True, isocyanate=True)),
            ("stop", "Hollin panel wipe has a data sheet that nobody has confirmed."),
            "the unread sheet says isocyanates",
        ),
        (
            sheets(HOLLIN, SheetFacts(attached=True, confirmed=True, isocyanate=True)),
            None,
            "read and confirmed",
        ),
    ],
)
def test_a_missing_sheet_asks_and_stops_for_what_is_grave(
    of: Facts, speaks: tuple[str, str] | None, because: str
) -> None:
    assert said(of) == ([speaks] if speaks else []), because


OPEN = bottle(KTRV, HOLLIN, 500, sealed=False)


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (
            facts(WIPE_180, shelf=(OPEN,), labels={}),
            ("ask", "Hollin panel wipe BKTR VNXH is open and has no label of ours."),
            "never printed",
        ),
        (facts(WIPE_180, shelf=(OPEN,), labels={KTRV: LabelFacts(labelled_at=NOON)}), None, "printed"),
        (
            facts(WIPE_180, shelf=(replace(OPEN, sealed=True),), labels={}),
            None,
            "sealed, its maker's label does",
        ),
        (
            facts(WIPE_180, shelf=(OPEN,), labels={KTRV: LabelFacts(NOON - timedelta(1), NOON)}),
            ("ask", "Hollin panel wipe BKTR VNXH was filled after its label was printed."),
            "its label is about what was in it before",
        ),
        (
            facts(WIPE_180, shelf=(OPEN,), labels={KTRV: LabelFacts(NOON, NOON)}),
            None,
            "labelled as it was filled",
        ),
    ],
)
def test_an_open_bottle_without_its_label_asks(
    of: Facts, speaks: tuple[str, str] | None, because: str
) -> None:
    assert said(of) == ([speaks] if speaks else []), because


LOT_A, LOT_B = frozenset({"LLTAKLNB"}), frozenset({"LLTBKLNB"})
COAT_40 = need(COAT, TIDEWALL, 40, one_lot=True)


@pytest.mark.parametrize(
    ("of", "speaks", "because"),
    [
        (
            facts(
                COAT_40,
                shelf=(bottle(KTRV, TIDEWALL, 30, lots=LOT_A), bottle(NRXV, TIDEWALL, 25, lots=LOT_B)),
            ),
            ("stop", "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest."),
            "55 ml, but of two lots",
        ),
        (
            facts(
                COAT_40,
                shelf=(bottle(KTRV, TIDEWALL, 30, lots=LOT_A), bottle(NRXV, TIDEWALL, 25, lots=LOT_A)),
            ),
            None,
            "two bottles of one lot",
        ),
        (
            facts(
                replace(COAT_40, one_lot=False),
                shelf=(bottle(KTRV, TIDEWALL, 30, lots=LOT_A), bottle(NRXV, TIDEWALL, 25, lots=LOT_B)),
            ),
            None,
            "the product allows more",
        ),
        (
            facts(
                COAT_40, shelf=(bottle(KTRV, TIDEWALL, 30, lots=LOT_A), bottle(NRXV, TIDEWALL, 5, lots=LOT_B))
            ),
            ("ask", "Tidewall coating: 40 ml needed, 30 ml free."),
            "too little in any case: that is the one cause",
        ),
        (
            facts(
                COAT_40,
                shelf=(
                    bottle(KTRV, TIDEWALL, 30, lots=LOT_A),
                    bottle(NRXV, TIDEWALL, 25, lots=LOT_B),
                    bottle("BDEDKLNB", TIDEWALL, 30, dates=Dates(expires_on=THURSDAY)),
                    bottle("BHLDKLNB", TIDEWALL, 30, held="left open"),
                ),
            ),
            ("stop", "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest."),
            "what is dead or held in the store is not what is missing: two lots are the one cause",
        ),
        (
            facts(
                need(COAT, TIDEWALL, 8, one_lot=True, had=LOT_A),
                shelf=(bottle(KTRV, TIDEWALL, 3, lots=LOT_A), bottle(NRXV, TIDEWALL, 25, lots=LOT_B)),
            ),
            ("stop", "Tidewall coating: 8 ml more needed from the lot that the step has, 3 ml of it left."),
            "begun with the first lot, 25 ml of the second do not finish it",
        ),
        (
            facts(
                need(COAT, TIDEWALL, 8, one_lot=True, had=LOT_A),
                shelf=(bottle(KTRV, TIDEWALL, 10, lots=LOT_A), bottle(NRXV, TIDEWALL, 25, lots=LOT_B)),
            ),
            None,
            "the first lot still holds enough",
        ),
    ],
)
def test_a_coating_comes_from_one_lot_in_a_step(
    of: Facts, speaks: tuple[str, str] | None, because: str
) -> None:
    assert said(of) == ([speaks] if speaks else []), because


def test_a_stop_about_a_date_names_the_bottle_to_take_instead_and_shows_its_numbers() -> None:
    one = found(facts(COAT_20, shelf=(DYING, FRESH)))[0]

    assert one.do == (
        "Friday 09:00 is after its use-by, Thursday 26 November. "
        "Take BNRX VHKL (sealed, good to 30 June): bring it to Bay 2, and put the other aside."
    )
    assert one.because == (
        "Tidewall coating BKTR VNXH: opened 28 August + 90 days, given by the maker, so the last of it is "
        "Thursday 26 November. Coating runs from Friday 09:00 to Friday 11:30."
    )
    assert one.source == "the day it was opened and the open life kept with the product"
    assert one.about == (KTRV, COAT.code, NRXV)


def test_a_stop_without_another_bottle_says_when_ordering_is_too_late() -> None:
    one = found(facts(COAT_20, shelf=(DYING,)))[0]

    assert one.do == (
        "Friday 09:00 is after its use-by, Thursday 26 November. Nothing else that lasts is free for it. "
        "An order comes too late for this step: Orlo Supply needs 6 days."
    )


def test_a_stop_says_how_much_lasts_where_some_does() -> None:
    some = bottle(NRXV, TIDEWALL, 5, lots=DYING.lots)
    one = found(facts(COAT_20, shelf=(DYING, some)))[0]

    assert one.do == (
        "Friday 09:00 is after its use-by, Thursday 26 November. Of what lasts, 5 ml of 20 ml is free. "
        "An order comes too late for this step: Orlo Supply needs 6 days."
    )


def test_too_little_names_the_earlier_job_another_make_and_the_day_to_order() -> None:
    soon = replace(HOLLIN, lead_days=1)
    shelf = (bottle(KTRV, HOLLIN, 200), bottle(NRXV, SALTMERE, 500))
    of = facts(WIPE_180, earlier(HOLLIN, 60), shelf=shelf)
    one = found(replace(of, products={**of.products, HOLLIN.code: soon}))[0]

    assert one.do == (
        "Job JDPR HHLN on Wednesday 25 November takes 60 ml first. "
        "Saltmere panel wipe BNRX VHKL is free in Store: 0.5 l, sealed, does not go out of date. "
        "Order by Thursday 26 November: Orlo Supply needs 1 day."
    )
    assert one.because == (
        "This job still takes 180 ml, Panel wipe from Friday 08:30; 140 ml is left for it after earlier "
        "jobs, so 40 ml is missing."
    )


def test_a_bottle_of_another_make_that_is_spoken_for_is_not_offered() -> None:
    shelf = (bottle(KTRV, HOLLIN, 140), bottle(NRXV, SALTMERE, 500))
    one = found(facts(WIPE_180, earlier(SALTMERE, 480), shelf=shelf))[0]

    assert "Saltmere" not in one.do


def test_a_late_step_is_judged_by_now_since_what_it_opens_is_opened_now() -> None:
    of = facts(COAT_20, shelf=(sealed_until(FRIDAY_ON),))

    assert said(of, FRIDAY) == []
    assert said(of, FRIDAY + timedelta(days=1)) == [("stop", "Tidewall coating BKTR VNXH is out of date.")]
