"""What is ordered of one product, and the sentences that say why."""

from datetime import date, timedelta

import pytest
from hypothesis import given

from inventory.reorder.rules import (
    Booked,
    MonthIsOver,
    OnOrder,
    Pack,
    ProductFacts,
    Stock,
    Supplier,
    WrongFacts,
    order_line,
    packs_of,
    reorder_report,
    use_per_day,
)
from inventory.units import Dimension

from .shelf import DECEMBER, LITRE, MADE_ON, ML, MONTH_END, december_report, product, some_product


def line_of(**changes):
    return order_line(product(**changes), MONTH_END, MADE_ON, "EUR")


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda: Pack("X", 0, 100), "Pack X holds nothing. Give the amount of one pack."),
        (
            lambda: Pack("X", 5, 100, multiple=0),
            "Pack X is sold in multiples of less than one. Give 1 or more.",
        ),
        (lambda: Stock(-1), "A container holds less than nothing. Count it again."),
        (
            lambda: product(mean_per_day=-1),
            "Hollin panel wipe: use per day is below nothing. Leave returns out of the history.",
        ),
        (lambda: product(lead_days=-1), "Hollin panel wipe: the lead time is below 0 days. Give 0 or more."),
        (
            lambda: product(cancelled=1.0),
            "Hollin panel wipe: the share of cancelled bookings must be from 0 to below 1.",
        ),
    ],
)
def test_facts_that_cannot_be_are_refused(make, says: str) -> None:
    with pytest.raises(WrongFacts) as refused:
        make()
    assert str(refused.value) == says


def test_a_month_that_is_over_is_refused() -> None:
    with pytest.raises(MonthIsOver) as refused:
        reorder_report([], "Larkmoor Works", date(2026, 11, 1), MADE_ON, "EUR", "0")
    assert (
        str(refused.value) == "November 2026 ended before 1 December 2026. Ask for 2026-12 or a later month."
    )


def test_a_month_can_be_asked_for_until_its_last_day() -> None:
    report = reorder_report([], "Larkmoor Works", DECEMBER, MONTH_END, "EUR", "0")
    assert report.says == "Nothing to order: what is on hand and on order is enough."


@pytest.mark.parametrize(
    ("facts", "because", "why"),
    [
        (
            {"stock": (Stock(1_600 * ML),)},
            "Empty on 9 December otherwise; lead time 6 days.",
            "eight days of 200 ml, then nothing is left for the ninth",
        ),
        (
            {"stock": (Stock(400 * ML),)},
            "Empty on 3 December; lead time 6 days: ordered today it comes 4 days late, on 7 December.",
            "too late already: say by how much",
        ),
        ({}, "Empty today; lead time 6 days: ordered today it comes 6 days late, on 7 December.", "no stock"),
        (
            {"stock": (Stock(400 * ML),), "lead_days": 1},
            "Empty on 3 December otherwise; lead time 1 day.",
            "one day is no days",
        ),
        (
            {"stock": (Stock(7_400 * ML),), "spread_per_day": 100 * ML},
            "Lasts through 6 January at the expected use. That is 1 l below the 8.4 l to order up to.",
            "1.645 · 100 ml · √37 = 1.0006 l of safety is missing",
        ),
        (
            {"stock": (Stock(8 * LITRE),)},
            "Lasts through 6 January at the expected use.",
            "7.4 l are wanted until then",
        ),
        (
            {"mean_per_day": 0.0},
            "Not used in the last 12 months and not booked.",
            "a product that died is not ordered",
        ),
        (
            {"mean_per_day": 0.0, "spread_per_day": 90 * ML},
            "Not used in the last 12 months and not booked.",
            "a spread without a mean is no need",
        ),
        (
            {"packs": (), "stock": (Stock(1_600 * ML),)},
            "Empty on 9 December otherwise; lead time 6 days. "
            "No pack of it is recorded: add one to the product, then it can be ordered.",
            "nothing to order it in",
        ),
        (
            {"stock": (Stock(LITRE, date(2026, 11, 30)), Stock(8 * LITRE))},
            "Lasts through 6 January at the expected use. 1 l on hand is out of date and not counted.",
            "dead stock is told",
        ),
        (
            {"stock": (Stock(LITRE, date(2026, 12, 2)), Stock(8 * LITRE))},
            "Lasts through 6 January at the expected use. "
            "0.6 l on hand expires unused by 2 December and is not counted.",
            "two days use 400 ml of it, its last day included",
        ),
    ],
)
def test_the_because_says_when_it_is_empty_and_what_is_not_counted(
    facts: dict, because: str, why: str
) -> None:
    assert line_of(**facts).because == because, why


@pytest.mark.parametrize(
    ("facts", "packs", "why"),
    [
        ({"stock": (Stock(7_400 * ML),)}, 0, "37 days of 200 ml are there"),
        ({"stock": (Stock(7_399 * ML),)}, 1, "a millilitre short is a pack"),
        ({}, 2, "7.4 l in packs of 5 l"),
        ({"on_order": (OnOrder(5 * LITRE, date(2026, 12, 10)),)}, 1, "what is on order counts"),
        ({"on_order": (OnOrder(5 * LITRE, date(2027, 1, 7)),)}, 2, "but not what comes after the period"),
        ({"on_order": (OnOrder(5 * LITRE, date(2026, 11, 20)),)}, 1, "what is overdue is still expected"),
        ({"on_order": (OnOrder(5 * LITRE),)}, 1, "without a day it comes after the lead time"),
        ({"stock": (Stock(5 * LITRE, date(2026, 12, 5)),)}, 2, "4 l of it die: 6.4 l are wanted"),
        ({"stock": (Stock(5 * LITRE, date(2026, 12, 25)),)}, 1, "all of it is used before it dies"),
        ({"packs": (Pack("C", LITRE, 700, multiple=6),)}, 12, "a case is not split"),
        ({"stock": (Stock(7 * LITRE),), "packs": (Pack("C", LITRE, 700, minimum=4),)}, 4, "the least sold"),
        ({"packs": (Pack("S", LITRE, 900), Pack("L", 5 * LITRE, 3_000))}, 2, "2 × 30.00 beats 8 × 9.00"),
        ({"packs": (Pack("S", LITRE, 600), Pack("L", 5 * LITRE, 3_000))}, 8, "8 × 6.00 beats 2 × 30.00"),
        ({"packs": (Pack("S", LITRE, None), Pack("L", 5 * LITRE, 3_000))}, 2, "a known price comes first"),
        ({"booked": (Booked(date(2026, 12, 9), 5 * LITRE),)}, 2, "a booking within the mean is in it"),
        ({"booked": (Booked(date(2026, 12, 9), 11 * LITRE),)}, 3, "more is booked than the mean"),
        ({"booked": (Booked(date(2027, 1, 7), 11 * LITRE),)}, 2, "a job after the period waits"),
        ({"booked": (Booked(date(2026, 11, 28), 3 * LITRE),)}, 3, "an overdue job comes on top of the mean"),
    ],
)
def test_whole_packs_fill_up_what_is_lacking(facts: dict, packs: int, why: str) -> None:
    assert line_of(**facts).packs == packs, why


def test_eighteen_millilitres_of_a_bottle_of_thirty_are_one_bottle() -> None:
    bottle = Pack("TW30", 30, 5_500)
    choice = packs_of(bottle, needed=70, for_bookings=0, useful=18)
    assert choice.packs == 1
    assert choice.unused == 12
    assert choice.unused_minor == 2_200


@pytest.mark.parametrize(
    ("needed", "booked", "useful", "packs", "above", "why"),
    [
        (100, 0, None, 4, False, "it does not die: rounded up"),
        (100, 0, 50, 2, False, "capped at the use before it dies, in whole packs"),
        (100, 80, 50, 3, False, "never below what booked jobs need"),
        (0, 80, 0, 3, False, "even where nothing else lacks"),
        (100, 0, 0, 0, False, "nothing of it would be used"),
        (0, 0, None, 0, False, "nothing lacks"),
    ],
)
def test_the_cap_is_the_use_before_it_dies(needed, booked, useful, packs, above, why) -> None:
    choice = packs_of(Pack("TW30", 30, 5_500), needed, booked, useful)
    assert (choice.packs, choice.above_cap) == (packs, above), why


def test_a_minimum_above_the_cap_prints_the_value_expected_to_expire() -> None:
    line = line_of(
        mean_per_day=10 * ML,
        sealed_life_days=94,
        packs=(Pack("BW1", LITRE, 1_900, minimum=6, noun="bottle"),),
    )
    # It comes on 7 December and may be used through 11 March: 101 days from 1 December, 10 ml each.
    assert line.packs == 6
    assert line.expected_to_expire_minor == round(4_990 / 1_000 * 1_900)
    assert line.because.endswith(
        "6 is the least that Orlo Supply sells: 4.99 l of it, worth €94.81, is expected to expire unused."
    )


def test_the_twin_without_a_sealed_life_orders_the_minimum_in_silence() -> None:
    line = line_of(mean_per_day=10 * ML, packs=(Pack("BW1", LITRE, 1_900, minimum=6, noun="bottle"),))
    assert line.expected_to_expire_minor == 0
    assert "expire" not in line.because


def test_stock_that_dies_is_not_counted_and_the_twin_that_counts_it_leaves_jobs_without() -> None:
    dying = Stock(5 * LITRE, date(2026, 12, 5))
    line = line_of(stock=(dying,))
    assert line.usable == pytest.approx(LITRE)
    counted_in_full = line_of(stock=(Stock(5 * LITRE),))
    assert line.packs - counted_in_full.packs == 1


def test_cancellations_count_only_after_twenty_bookings() -> None:
    booked = (Booked(date(2026, 12, 9), 10 * LITRE),)
    few = line_of(mean_per_day=0.0, booked=booked, cancelled=0.2, bookings_seen=19)
    enough = line_of(mean_per_day=0.0, booked=booked, cancelled=0.2, bookings_seen=20)
    assert few.wanted.booked == 10 * LITRE
    assert enough.wanted.booked == pytest.approx(8 * LITRE)
    assert enough.packs == 2, "never below what booked jobs need, all of which may come"


def test_the_order_is_placed_in_time_for_the_day_it_runs_out() -> None:
    assert line_of(stock=(Stock(1_600 * ML),)).order_by_on == date(2026, 12, 3)
    assert line_of(stock=(Stock(400 * ML),)).order_by_on == MADE_ON
    assert line_of(stock=(Stock(8 * LITRE),)).order_by_on is None


def test_with_the_order_the_product_does_not_run_out_after_it_came() -> None:
    for line in december_report().lines:
        comes = line.product.lead_days
        assert sum(line.coming_with_order.short[comes:]) == pytest.approx(0, abs=1e-3), line.product.name


def test_a_supplier_order_below_their_minimum_says_so_and_names_what_is_wanted_next() -> None:
    orlo = Supplier("Orlo Supply", minimum_order_minor=10_000)
    lines = [
        product(supplier=orlo),
        product(supplier=orlo, name="Tarn trim dressing", stock=(Stock(9 * LITRE),)),
        product(supplier=orlo, name="Sorrel clay lubricant", stock=(Stock(8 * LITRE),)),
    ]
    report = reorder_report(lines, "Larkmoor Works", DECEMBER, MADE_ON, "EUR", "0")
    assert report.orders[0].says == (
        "1 product, €60.00. That is €40.00 below their minimum order of €100.00."
        " The next they would be asked for is Sorrel clay lubricant."
    )


def test_the_report_leads_with_one_sentence() -> None:
    report = december_report()
    assert report.says == "Order 7 products from 2 suppliers for €499.00, the first today."
    assert report.total_minor == 49_900
    assert report.unpriced == 1


def test_the_first_to_run_out_stands_on_top() -> None:
    orlo = december_report().orders[1]
    assert [line.product.name for line in orlo.lines] == [
        "Brack wheel acid",
        "Hollin panel wipe",
        "Finishing pads 150 mm",
        "Fenmoor iron remover",
        "Marl cutting compound",
    ]


def test_use_a_day_is_the_last_twelve_months_or_since_the_first_use() -> None:
    on = date(2026, 12, 1)
    long_ago = (on - timedelta(days=365), 9_000)
    assert use_per_day([], on) == (0.0, 0.0)
    assert use_per_day([long_ago], on) == (0.0, 0.0)
    mean, spread = use_per_day([long_ago, (on - timedelta(days=99), 300), (on, 100)], on)
    assert mean == 4.0, "400 in 100 days"
    assert spread == pytest.approx(1000**0.5), "√((300² + 100²) / 100)"


def test_one_use_yesterday_is_spread_over_four_weeks() -> None:
    mean, _ = use_per_day([(date(2026, 11, 30), 280)], date(2026, 12, 1))
    assert mean == 10.0


def test_a_shop_that_reads_gallons_reads_them_in_the_report() -> None:
    line = line_of(system="us", stock=(Stock(3_785_412, date(2026, 11, 30)), Stock(8 * LITRE)))
    assert line.because.endswith("1 gal on hand is out of date and not counted.")


def test_what_is_past_a_printed_best_before_is_not_called_an_estimate() -> None:
    past = date(2026, 11, 30)
    line = line_of(stock=(Stock(300 * ML, past, asks="best before"), Stock(8 * LITRE)))
    assert line.usable == 8 * LITRE
    assert line.because.endswith(
        "300 ml is past the best before printed on it and is not counted; test it or empty it."
    )


def test_tape_is_measured_in_metres() -> None:
    line = line_of(dimension=Dimension.LENGTH, stock=(Stock(50_500_000, date(2026, 11, 30)),))
    assert "50.5 m on hand is out of date and not counted." in line.because


def test_a_short_life_caps_the_order_and_says_so() -> None:
    line = line_of(sealed_life_days=10, packs=(Pack("PW1", LITRE, 700, noun="bottle"),))
    # It comes on 7 December and expires on the 17th: 17 days of 200 ml are 3.4 l, of the 7.4 l lacking.
    assert line.packs == 4
    assert line.because.endswith(
        "No more than gets used: a pack ordered today expires on 17 December."
        " 0.6 l of the order, worth €4.20, is expected to expire unused."
    )


@given(some_product)
def test_an_order_is_never_below_what_booked_jobs_need(facts: ProductFacts) -> None:
    line = order_line(facts, MONTH_END, MADE_ON, "EUR")
    ordered = line.choice.amount if line.choice else 0
    assert line.usable + line.on_order + ordered >= line.wanted.booked_in_full - 0.5


@given(some_product)
def test_an_order_fills_up_to_the_level_unless_it_would_expire(facts: ProductFacts) -> None:
    line = order_line(facts, MONTH_END, MADE_ON, "EUR")
    ordered = line.choice.amount if line.choice else 0
    reached = line.usable + line.on_order + ordered >= line.wanted.order_up_to - 0.5
    expires = facts.sealed_life_days is not None and (line.choice is None or line.choice.capped)
    assert reached or expires


@given(some_product)
def test_packs_come_in_the_multiples_sold_and_nothing_is_ordered_without_need(facts: ProductFacts) -> None:
    line = order_line(facts, MONTH_END, MADE_ON, "EUR")
    if line.choice:
        assert line.packs % line.choice.pack.multiple == 0
        assert line.packs >= line.choice.pack.minimum
        assert line.needed > 0
