"""A panel's line on its page: the sentence, and how wide the bar is drawn, for figures worked by hand."""

from datetime import UTC, datetime

import pytest

from inventory.jobs.rules.panels import WIDTH, Bar, Left, left
from inventory.trade.paint import Cut, Panel, Reading
from inventory.trade.paint.left import panels_left

BONNET = Panel("panel1", "bonnet", "steel", "clear_coat")


def line(*readings: Reading, grade: str = "", surface: str = "clear_coat"):
    cuts = [Cut("cut", None, grade, 2, "Rask compound", "wool pad")] if grade else []
    panel = Panel("panel1", "bonnet", "steel", surface)
    return next(iter(panels_left([panel], list(readings), cuts)), None)


def read(um: int | None, film: str = "whole", day: int = 2, when: str = "before") -> Reading:
    at = datetime(2026, 11, day, 9, tzinfo=UTC)
    return Reading(BONNET.code, BONNET.name, at, when, um, film, um is not None)


@pytest.mark.parametrize(
    ("of", "says", "because"),
    [
        (line(), "not read yet", "no reading is no figure"),
        (line(read(None)), "the gauge cannot read it", "an answer of its own"),
        (line(surface="glass"), "no paint", "glass is not cut"),
        (line(read(120)), "40 µm above the floor of 80 µm", "whole film over 80"),
        (line(read(60, "clear")), "20 µm above the floor of 40 µm", "clear coat over 40"),
        (line(read(80)), "at the floor of 80 µm", "not a micrometre to give"),
        (line(read(82), grade="two_step"), "3 µm under the floor of 80 µm", "the cut is taken off already"),
        (line(read(120), read(42, "clear")), "2 µm above the floor of 40 µm", "the tighter film speaks"),
    ],
)
def test_what_is_left_is_said_in_words(of, says: str, because: str) -> None:
    assert left(of, "µm").says == says, because


def test_what_was_read_planned_and_taken_stands_beside_it() -> None:
    of = line(read(127, day=1), read(124, day=1, when="after"), read(120), grade="two_step")
    assert left(of, "µm") == Left(
        Bar(80.4, 11.5), "35 µm above the floor of 80 µm", "120 µm whole film", removed="3 µm", planned="5 µm"
    )


def test_a_shop_that_thinks_in_mils_reads_mils() -> None:
    assert left(line(read(120)), "mil").says == "1.57 mil above the floor of 3.15 mil"


@pytest.mark.parametrize(
    ("of", "bar", "because"),
    [
        (line(read(120)), Bar(WIDTH, 0), "never cut and nothing planned: full"),
        (line(read(120, day=1), read(100)), Bar(54, 0), "half of what there was"),
        (line(read(100), grade="two_step"), Bar(81, 27), "15 of 20 stay, 5 of 20 go"),
        (line(read(82), grade="two_step"), Bar(0, WIDTH), "all of it goes"),
        (line(read(70)), Bar(0, 0), "under the floor there was nothing to give"),
        (line(), None, "no bar without a figure"),
    ],
)
def test_the_bar_is_what_stays_of_the_most_there_ever_was(of, bar: Bar | None, because: str) -> None:
    assert left(of, "µm").bar == bar, because


def test_the_planned_part_begins_where_what_stays_ends() -> None:
    assert Bar(81, 27).planned_x == 83
