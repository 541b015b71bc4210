"""Stock rolled forward keeps every drop accounted for; its picture and its table say the same."""

from datetime import date, timedelta
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfbase import pdfmetrics

from inventory.drawing import Drawing, svg
from inventory.reorder.charts import PENS, TEXT, stock_chart, weeks
from inventory.reorder.rules import Delivery, ProductFacts, Stock, order_line, roll_forward
from safety.print.fonts import BOLD, REGULAR, register

from .shelf import LITRE, MADE_ON, ML, MONTH_END, december_report, product, some_product

days = st.integers(0, 40).map(lambda day: MADE_ON + timedelta(days=day))
lots = st.lists(st.builds(Stock, st.integers(0, 5_000), st.none() | days, st.booleans()), max_size=6)
deliveries = st.lists(st.builds(Delivery, days, st.integers(1, 5_000), st.none() | days), max_size=3)
uses = st.lists(st.floats(0, 900), min_size=41, max_size=41)


@given(lots, deliveries, uses)
def test_nothing_is_lost_in_the_reckoning(held: list[Stock], due: list[Delivery], use: list[float]) -> None:
    coming = roll_forward(held, due, use, MADE_ON)
    came_in = coming.start + sum(delivery.amount for delivery in due)
    used = sum(use) - sum(coming.short)
    died = sum(loss.amount for loss in coming.losses)
    assert came_in == pytest.approx(coming.levels[-1] + used + died, abs=0.01)
    assert min(coming.levels) >= 0


def test_the_first_to_expire_is_used_first_and_the_open_one_before_the_sealed() -> None:
    held = (
        Stock(100, date(2026, 12, 31), sealed=True),
        Stock(100, date(2026, 12, 31), sealed=False),
        Stock(100, date(2026, 12, 2)),
    )
    coming = roll_forward(held, (), [50.0, 50.0, 50.0], MADE_ON)
    assert coming.losses == ()
    assert coming.levels == (250, 200, 150)


def test_the_last_usable_day_counts_and_the_night_after_it_the_rest_is_gone() -> None:
    coming = roll_forward((Stock(100, MADE_ON),), (), [30.0, 30.0], MADE_ON)
    assert coming.levels == (0, 0)
    assert [(loss.on, loss.amount) for loss in coming.losses] == [(MADE_ON, 70.0)]
    assert coming.empty_on == date(2026, 12, 2)


def test_what_was_out_of_date_before_the_first_day_is_in_no_level() -> None:
    coming = roll_forward((Stock(100, date(2026, 11, 30)),), (), [0.0], MADE_ON)
    assert (coming.start, coming.dead, coming.levels) == (0, 100, (0,))


def test_the_table_has_a_row_a_week_and_the_last_day() -> None:
    line = order_line(product(stock=(Stock(1_600 * ML),)), date(2026, 12, 31), MADE_ON, "EUR")
    table = weeks(line)
    assert [week.on for week in table] == [
        date(2026, 12, 7),
        date(2026, 12, 14),
        date(2026, 12, 21),
        date(2026, 12, 28),
        date(2027, 1, 4),
        date(2027, 1, 6),
    ]
    assert [round(week.level / ML) for week in table] == [200, 0, 0, 0, 0, 0]
    assert [round(week.short / ML) for week in table] == [0, 1_200, 1_400, 1_400, 1_400, 400]
    assert round(table[0].level_with_order / ML) == 10_200


def test_the_picture_says_in_words_what_it_shows() -> None:
    tidewall = december_report().orders[0].lines[0]
    chart = stock_chart(tidewall)
    assert chart.title == "Stock to come: Tidewall coating"
    assert chart.says == (
        "72 ml on 1 December, 0 ml on 9 January; with this order 88 ml. 4 Dec: 4 ml expires;"
        " 10 Dec: this order brings 150 ml; 14 Dec: 30 ml on order comes; 22 Dec: empty."
    )
    assert {words.text for words in chart.words} >= {"0 = empty", "1 Dec: 72 ml", "22 Dec: empty"}


def boxes_of(chart: Drawing) -> list[tuple[float, float, float]]:
    """Return where each text begins, ends and stands, measured with the face it is printed in."""
    register()
    boxes = []
    for text in chart.words:
        long = pdfmetrics.stringWidth(text.text, BOLD if text.strong else REGULAR, TEXT)
        boxes.append(
            (text.x - long, text.x, text.y) if text.anchor == "end" else (text.x, text.x + long, text.y)
        )
    return boxes


@given(some_product, st.sampled_from([MADE_ON, MONTH_END, date(2027, 2, 28), date(2027, 11, 30)]))
def test_no_label_of_a_picture_leaves_it_or_covers_another(facts: ProductFacts, month_end: date) -> None:
    chart = stock_chart(order_line(facts, month_end, MADE_ON, "EUR"))
    boxes = boxes_of(chart)
    assert all(left >= 0 and right <= chart.width and y <= chart.height for left, right, y in boxes)
    for place, (left, right, y) in enumerate(boxes):
        others = boxes[place + 1 :]
        assert not [b for b in others if abs(b[2] - y) < 7 and b[0] < right and left < b[1]]


def test_no_mark_of_the_sample_runs_through_a_label() -> None:
    for line in december_report().lines:
        chart = stock_chart(line)
        for mark in (stroke.points for stroke in chart.strokes if stroke.kind == "mark"):
            (x, top), (_, bottom) = mark
            crossed = [box for box in boxes_of(chart) if box[0] < x < box[1] and top < box[2] - 3 < bottom]
            assert not crossed, chart.title


def test_the_svg_is_named_described_and_carries_no_style_of_its_own() -> None:
    hostile = product(name="Hollin <b> & 'co'", stock=(Stock(LITRE),))
    drawn = svg(stock_chart(order_line(hostile, date(2026, 12, 31), MADE_ON, "EUR")), PENS, "PBKTRLNV")
    root = ElementTree.fromstring(drawn)
    space = "{http://www.w3.org/2000/svg}"
    assert root.attrib["role"] == "img"
    named = [root.find(f"{space}title"), root.find(f"{space}desc")]
    assert root.attrib["aria-labelledby"] == " ".join(part.attrib["id"] for part in named if part is not None)
    assert named[0] is not None
    assert named[0].text == "Stock to come: Hollin <b> & 'co'"
    assert not [
        node for node in root.iter() if "style" in node.attrib or node.tag.endswith(("style", "script"))
    ]
