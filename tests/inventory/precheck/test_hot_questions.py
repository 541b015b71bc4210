"""Is anything wet put on a hot panel or wheel? That it stains: trade pages. The bound: common practice."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from inventory.precheck.questions import Facts, Finding
from inventory.precheck.questions.hot import not_on_a_hot_panel, wheels_cool_to_the_touch
from inventory.precheck.questions.topics import SurfaceFacts
from inventory.precheck.questions.topics.weather import Reading, WeatherFacts
from inventory.precheck.rules import check_job
from inventory.precheck.views.ways import way_out
from inventory.trade.acts import Act
from inventory.trade.edits import Edits
from tests.inventory.precheck.cases import COAT, JOB, NOON, WIPE
from tests.inventory.precheck.surfaces import PAINT, act

EIGHT = WIPE.starts_at - timedelta(minutes=30)
WHEELS = act(WIPE, "brack", "wheel", name="Brack wheel cleaner")
SHAMPOO = act(WIPE, "fenmoor", "shampoo", name="Fenmoor shampoo")


def asked(panel_c: float | None, *acts: Act, at: datetime = EIGHT, **facts: object) -> tuple[Finding, ...]:
    """Return what is said of a wipe at 08:30 in Bay 2, whose panel was read at 08:00."""
    reading = Reading(EIGHT, 21.0, panel_c, 52.0)
    of = Facts(
        JOB,
        **{"steps": (WIPE, COAT), **facts},  # type: ignore[arg-type]
        surfaces=SurfaceFacts((PAINT,), acts or (WHEELS,)),
        weather=WeatherFacts({"PBAYTWOX": reading}),
    )
    return check_job(of, at, questions=[not_on_a_hot_panel, wheels_cool_to_the_touch]).findings


def test_a_cleaner_on_a_panel_of_75_degrees_asks_with_the_number_and_the_way_out() -> None:
    (one,) = asked(75)

    assert one == Finding(
        "surface.hot", "ask",
        "Bay 2, Panel wipe: the panel is at 75 °C, too hot for Brack wheel cleaner.",
        "Measured Friday 08:00: air 21 °C, humidity 52 %, dew point 10.8 °C, the panel 75 °C, 64.2 K above "
        "it. On a hot wheel or panel it dries before it can be rinsed or levelled, and stains.",
        "Wait until the panel is at 35 °C or less, or cool it with water, and measure it again.",
        "trade pages, no authority; 35 °C for what is no coat: common practice, no source",
        ("PBAYTWOX", "brack", WIPE.code),
    )  # fmt: skip
    way = way_out(one, "JDPXKLNB")
    assert way is not None
    assert (way.label, way.to) == ("Measure the bay", "/bays/PBAYTWOX/")


@pytest.mark.parametrize(
    ("panel_c", "one", "asks", "because"),
    [
        (35.0, SHAMPOO, False, "at the bound it may go on"),
        (35.1, SHAMPOO, True, "above it, it is asked about"),
        (None, SHAMPOO, False, "the panel was not measured"),
        (75, act(WIPE, "quell", "interior", edits=Edits(traits=("wet",))), False, "seats are no panel"),
        (75, act(WIPE, "pad", "pad"), False, "a pad is not wet"),
        (75, act(WIPE, "tidewall", "coating"), False, "the weather's own question stops a coat"),
        (31, act(WIPE, "fen", "shampoo", edits=Edits(air_to_c=30)), True, "above its own window"),
        (40, act(WIPE, "fen", "shampoo", edits=Edits(air_to_c=45)), False, "its own window goes further"),
    ],
)
def test_what_is_wet_is_held_against_its_bound(
    panel_c: float | None, one: Act, asks: bool, because: str
) -> None:
    assert ["surface.hot"] * asks == [each.code for each in asked(panel_c, one)], because


def test_its_own_window_is_named_as_whose_word_it_is() -> None:
    own = act(WIPE, "fenmoor", "shampoo", name="Fenmoor shampoo", edits=Edits(air_to_c=30))
    (one,) = asked(31, own)

    assert one.do == "Wait until the panel is at 30 °C or less, or cool it with water, and measure it again."
    assert one.source == "Fenmoor shampoo's own window"


def test_a_bay_asks_once_about_all_steps_that_it_holds_up() -> None:
    later = act(COAT, "marl", "polish", name="Marl polish")

    (one,) = asked(75, SHAMPOO, later)

    assert one.about == ("PBAYTWOX", "fenmoor", "marl", WIPE.code, COAT.code)
    assert one.says == (
        "Bay 2, Panel wipe: the panel is at 75 °C, too hot for Fenmoor shampoo and Marl polish."
    )


def test_an_old_reading_and_a_signed_step_ask_nothing() -> None:
    signed = replace(WIPE, signed_at=EIGHT)

    assert asked(75, SHAMPOO, at=EIGHT + timedelta(hours=3)) == ()
    assert asked(75, SHAMPOO, steps=(signed, COAT)) == ()


# Wheels


def test_wheels_are_touched_before_a_wheel_cleaner_once_a_job() -> None:
    (one,) = asked(20, WHEELS, act(COAT, "acid", "acid"))

    assert (one.code, one.grade) == ("surface.cool_first", "tell")
    assert one.says == "Panel wipe: the wheels are cool to the touch before Brack wheel cleaner goes on."
    assert (
        one.do == "Hold the back of a hand to each wheel. Where it is hot, wait, or rinse it cool with water."
    )


@pytest.mark.parametrize(
    ("one", "at", "because"),
    [
        (SHAMPOO, EIGHT, "soap is no wheel product"),
        (act(WIPE, "acid", "acid", touches=frozenset({"glass"})), EIGHT, "this acid keeps off the wheels"),
        (WHEELS, NOON, "on Wednesday nobody feels how hot they are on Friday"),
    ],
)
def test_nobody_is_told_of_wheels_where_they_are_not_at_hand(one: Act, at: datetime, because: str) -> None:
    assert asked(20, one, at=at) == (), because
