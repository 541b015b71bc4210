"""Is the weather right for the coat? Bay 2 on Friday 27 November: a wipe at 08:30, the coating at 09:00.

At 25 °C and 60 % the dew point is 16.69 °C (exposure.md, section 6; psychrolib agrees within 0.05 °C).
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from inventory.precheck.questions import Facts, Finding, StepFacts
from inventory.precheck.questions.topics.weather import Coat, Reading, WeatherFacts
from inventory.precheck.questions.weather import panel_and_air_for_the_coat
from inventory.precheck.rules import check_job
from safety.weather import ProductWindow, window
from tests.inventory.precheck.cases import COAT, JOB, NOON, WIPE

NINE = COAT.starts_at
BEFORE = NINE - timedelta(minutes=30)
GOOD = Reading(BEFORE, 25.0, 22.0, 60.0)
COATING = Coat(COAT.code, "XTDWKLNB", "Tidewall coating", "coating", ProductWindow())
TOPPER = Coat(COAT.code, "XTPPKLNB", "Tidewall topper", "topper", ProductWindow())


def found(
    reading: Reading | None, coats: Iterable[Coat] = (COATING,), at: datetime = BEFORE,
    steps: tuple[StepFacts, ...] = (WIPE, COAT),
) -> tuple[Finding, ...]:  # fmt: skip
    readings = {"PBAYTWOX": reading} if reading else {}
    facts = Facts(JOB, steps=steps, weather=WeatherFacts(readings, tuple(coats)))
    return check_job(facts, at, questions=[panel_and_air_for_the_coat]).findings


def said(reading: Reading | None, *coats: Coat, at: datetime = BEFORE) -> list[tuple[str, str, str]]:
    return [(one.code, one.grade, one.says) for one in found(reading, coats or (COATING,), at)]


def test_a_panel_too_near_the_dew_point_stops_a_coating_and_says_the_wait() -> None:
    [one] = found(replace(GOOD, panel_c=19.5))
    assert one == Finding(
        "weather.dew_point", "stop",
        "Bay 2, Coating: the panel is 2.8 K above the dew point; at least 3 K above is wanted.",
        "Measured Friday 08:30: air 25 °C, humidity 60 %, dew point 16.7 °C, the panel 19.5 °C, 2.8 K above "
        "it. It matters to Tidewall coating. Panel 19.5 °C, dew point 16.7 °C at 25 °C and 60 %.",
        "Wait until the panel is at least 19.7 °C, or until humidity is down to 59 % at this air.",
        "Magnus formula (WMO); ISO 8502-4 practice, a house rule for car panels",
        ("PBAYTWOX", COAT.code),
    )  # fmt: skip


def test_a_panel_three_kelvin_above_it_is_not_spoken_of() -> None:
    assert found(replace(GOOD, panel_c=19.7)) == ()


@pytest.mark.parametrize(
    ("reading", "told", "because"),
    [
        (GOOD, [], "all of it lies in the window"),
        (
            replace(GOOD, humidity=86.0, panel_c=27.0),
            [("weather.humidity", "stop", "Bay 2, Coating: humidity is 86 %.")],
            "over 85 % stops",
        ),
        (
            replace(GOOD, humidity=82.0, panel_c=26.0),
            [("weather.humidity", "ask", "Bay 2, Coating: humidity is 82 %.")],
            "over 80 % asks",
        ),
        (
            replace(GOOD, humidity=28.0),
            [("weather.humidity", "ask", "Bay 2, Coating: humidity is 28 %.")],
            "under 30 % a coating that cures by moisture is asked about",
        ),
        (
            replace(GOOD, air_c=36.0, panel_c=36.0, humidity=50.0),
            [("weather.air", "stop", "Bay 2, Coating: the air is at 36 °C.")],
            "hot air and its hot panel are one cause",
        ),
        (
            replace(GOOD, air_c=28.0, panel_c=28.0, humidity=72.0),
            [("weather.note", "tell", "Bay 2, Coating: the air is at 28 °C.")],
            "what is only told stands in one note",
        ),
        (
            replace(GOOD, panel_c=None),
            [
                (
                    "weather.note",
                    "tell",
                    "Bay 2, Coating: the panel was not measured; it must be at least 19.7 °C.",
                )
            ],
            "without a panel the least that it must have is told",
        ),
    ],
)
def test_each_bound_of_the_window(reading: Reading, told: list[tuple[str, str, str]], because: str) -> None:
    assert said(reading) == told, because


def test_everything_that_is_told_stands_in_the_note_with_its_act() -> None:
    [note] = found(replace(GOOD, air_c=28.0, panel_c=28.0, humidity=72.0))
    assert "Humidity is 72 %." in note.because
    assert note.do == (
        "Wait until the air has cooled to at most 27 °C. Wait until the panel has cooled to at most 27 °C. "
        "Wait until humidity is down to 70 %."
    )


def test_a_topper_is_told_what_stops_a_coating() -> None:
    cold = replace(GOOD, panel_c=19.5)
    assert [grade for _, grade, _ in said(cold, TOPPER)] == ["tell"]
    assert [grade for _, grade, _ in said(cold, COATING, TOPPER)] == ["stop", "tell"]


def test_a_product_s_own_window_asks_where_the_trade_s_is_content() -> None:
    narrow = replace(COATING, window=window(18, 22, None, None), own="Tidewall's sheet, revision 3")
    [one] = found(GOOD, [narrow])
    assert (one.code, one.grade, one.source) == ("weather.air", "ask", "Tidewall's sheet, revision 3")
    assert one.do == "Wait until the air has cooled to at most 22 °C."
    assert found(GOOD) == ()


def test_a_product_s_own_window_is_content_where_the_trade_would_stop() -> None:
    warm = replace(GOOD, air_c=36.0, panel_c=36.0, humidity=50.0)
    assert found(warm, [replace(COATING, window=window(10, 40))]) == ()
    assert [one.grade for one in found(warm)] == ["stop"]


@pytest.mark.parametrize(
    ("at", "asked", "because"),
    [
        (NOON, False, "two days before nothing is said"),
        (NINE - timedelta(hours=2, minutes=1), False, "more than two hours before nobody would measure"),
        (NINE - timedelta(hours=2), True, "within two hours of the start it is asked for"),
        (NINE + timedelta(minutes=20), True, "a step that is late happens now"),
    ],
)
def test_a_bay_that_nobody_measured_is_asked_about_when_the_coat_is_near(
    at: datetime, asked: bool, because: str
) -> None:
    told = [("weather.not_measured", "ask", "Nobody has measured Bay 2 for Coating.")] if asked else []
    assert said(None, at=at) == told, because


def test_a_missing_reading_is_asked_for_once_whatever_is_laid_there() -> None:
    [one] = found(None, [COATING, replace(COATING, product="XOTHKLNB", name="Other"), TOPPER])
    assert one.do == "Measure air, panel and humidity there, and type them in on the bay's page."
    assert one.about == ("PBAYTWOX", COAT.code)


def test_for_a_topper_alone_nobody_is_sent_to_measure() -> None:
    assert found(None, [TOPPER]) == ()


@pytest.mark.parametrize(
    ("taken_at", "counts", "because"),
    [
        (NINE - timedelta(hours=2), True, "two hours before the start still speak for it"),
        (NINE - timedelta(hours=2, minutes=1), False, "older than that is another weather"),
    ],
)
def test_a_reading_counts_for_two_hours(taken_at: datetime, counts: bool, because: str) -> None:
    assert (found(replace(GOOD, taken_at=taken_at)) == ()) == counts, because


def test_an_old_reading_is_named_beside_the_question() -> None:
    [one] = found(replace(GOOD, taken_at=NINE - timedelta(hours=3)))
    assert "The last reading is of Friday 06:00." in one.because


def test_for_a_late_step_the_reading_must_be_of_now() -> None:
    late = NINE + timedelta(hours=2)
    assert found(GOOD, at=late)[0].code == "weather.not_measured"
    assert found(replace(GOOD, taken_at=late - timedelta(minutes=5)), at=late) == ()


def test_a_signed_coat_and_a_coat_without_a_bay_are_not_spoken_of() -> None:
    cold = replace(GOOD, panel_c=19.5)
    assert found(cold, steps=(WIPE, replace(COAT, signed_at=NINE))) == ()
    assert found(cold, steps=(WIPE, replace(COAT, bay=None))) == ()
