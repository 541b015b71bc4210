"""The air of a step as a curve: its figures, its words, its picture; the check is never milder than it."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.bays.charts import PENS, air_picture
from inventory.bays.rules import Curve, curve, limits_in_words, worst_quarter
from inventory.drawing import svg
from inventory.precheck.questions.air import breathed
from inventory.precheck.questions.evaporation import StepAir, steps_in_air
from inventory.precheck.questions.topics.air import AirStep
from safety.air.values import FIFTEEN_MINUTES, Place
from tests.inventory.precheck.airs import BAY_2, QUELL, case, coating, facts, wiping


def air_of(step: AirStep, **more: object) -> tuple[StepAir, object]:
    """Return a step's air, and its contaminants as they are judged."""
    asked = case(facts(step, **more))  # type: ignore[arg-type]
    [of] = steps_in_air(asked, asked.facts.air.steps)
    return of, breathed(asked, of).facts


def drawn(step: AirStep, **more: object) -> Curve:
    """Return the curve of a step."""
    of, judged = air_of(step, **more)
    found = curve(of, judged.contaminants)  # type: ignore[attr-defined]
    assert found is not None
    return found


def test_a_bay_that_nobody_measured_has_no_curve() -> None:
    of, judged = air_of(wiping(234), place=replace(BAY_2, place=Place(160.0, None, 3.0)))
    assert curve(of, judged.contaminants) is None  # type: ignore[attr-defined]


def test_a_wipe_ends_at_its_own_figures_and_is_said_in_words() -> None:
    """By hand (airs.py): the room's K model after 15 minutes, 144.1 g in 160 m³ at 320 m³/h: 708.9 mg/m³.

    G/Q′ = 9609.6 / 5.333 = 1801.8; 1 − e^(−0.5) = 0.3935; of 1250 mg/m³ (500 ppm by 24.055 l/mol) 56.7 %.
    Who works: 600.6 · (1 − e^−1.5) + 1194.9 = 1661.5 mg/m³, 133 %.
    """
    found = drawn(wiping(234))
    assert found.room_peak.room == pytest.approx(56.7, abs=0.2)
    assert found.peak.nose == pytest.approx(133, abs=0.3)
    assert found.says == (
        "Who works here breathes most after 15 minutes, 133 % of the limit; the room's average is highest "
        "after 15 minutes, 56.8 %. Over the worst quarter of an hour who works here breathes 119 % on "
        "average. Who works is at or above the limit from minute 1 to 15. After 60 minutes it is 12.7 %."
    )
    assert limits_in_words(found) == "100 % is isopropanol 500 ppm, 15-minute limit (UK WEL, read in a copy)."


def test_a_little_never_speaks_of_being_above_the_limit() -> None:
    assert "above the limit" not in drawn(wiping(10)).says


def test_a_cure_is_drawn_through_its_hour_and_what_only_evaporates_is_not() -> None:
    cured, wiped = drawn(coating(40)), drawn(wiping(40))
    assert (cured.until, wiped.until) == (120, 60)
    at = {point.minute: point.nose for point in cured.points}
    assert at[59] > 0.9 * at[30]
    assert at[75] < 0.6 * at[59]
    assert "Parts of the limits are summed." in limits_in_words(cured)


def test_what_others_let_go_beside_it_lifts_the_room_as_much_as_its_own() -> None:
    """Twice the grams are twice the average; who works meets the others through the room alone."""
    red = replace(wiping(100), code="SREDKLNB", job="000000000003")
    alone, beside = drawn(wiping(100)), drawn(wiping(100), others=[red])
    assert beside.room_peak.room == pytest.approx(2 * alone.room_peak.room)
    assert alone.peak.nose < beside.peak.nose < 1.5 * alone.peak.nose
    coats = drawn(wiping(100), others=[replace(coating(40), code="SREDKLNB", starts_at=red.starts_at)])
    assert coats.until == 120
    assert coats.room_peak.room > alone.room_peak.room


def test_a_step_of_ten_minutes_peaks_after_ten() -> None:
    short = wiping(40)
    found = drawn(replace(short, ends_at=short.starts_at + (short.ends_at - short.starts_at) / 3))
    assert found.peak.minute == 10


@given(
    st.sampled_from([wiping, coating]),
    st.floats(1, 500),
    st.floats(10, 1000),
    st.floats(0, 5000),
    st.floats(1, 20),
)
@settings(max_examples=60, deadline=None)
def test_the_check_is_never_milder_than_the_curve_and_the_nose_never_below_the_room(
    make: object, ml: float, volume: float, flow: float, k: float
) -> None:
    of, judged = air_of(make(ml), place=replace(BAY_2, place=Place(volume, flow, k)))  # type: ignore[operator]
    found = curve(of, judged.contaminants)  # type: ignore[attr-defined]
    assert found is not None
    assert all(point.nose >= point.room * (1 - 1e-9) for point in found.points)
    saturated = any(
        point.nose > 1000 for point in found.points
    )  # the check stops at saturation, a curve does not
    [short] = [each.index for each in judged.nose if each.kind == FIFTEEN_MINUTES]  # type: ignore[attr-defined]
    assert saturated or 100 * short >= worst_quarter(found.points) * (1 - 0.005)


@pytest.mark.parametrize("width", [330.0, 640.0])
@pytest.mark.parametrize(
    ("step", "more", "because"),
    [
        (wiping(234), {}, "above the limit"),
        (wiping(180), {}, "just below it"),
        (wiping(10), {}, "far below it"),
        (coating(40), {}, "an hour of cure"),
        (wiping(30, inside=True), {}, "a cabin without air, where nothing falls"),
    ],
)
def test_a_picture_names_its_limit_and_no_word_leaves_it_or_touches_another(
    step: AirStep, more: dict[str, object], width: float, because: str
) -> None:
    picture = air_picture(drawn(step, **more), width)
    assert [line.kind for line in picture.strokes][-2:] == ["room", "nose"]
    assert "the limit, 100 %" in [text.text for text in picture.words]
    boxes = []
    for text in picture.words:
        long = len(text.text) * 11 * 0.54
        left = {"start": text.x, "middle": text.x - long / 2, "end": text.x - long}[text.anchor]
        assert left >= -4, (text, because)
        assert left + long <= width + 8, (text, because)
        assert 8 <= text.y <= picture.height, (text, because)
        boxes.append((left, left + long, text.y - 8, text.y, text.text))
    for at, one in enumerate(boxes):
        for other in boxes[at + 1 :]:
            apart = one[1] <= other[0] or other[1] <= one[0] or one[3] <= other[2] or other[3] <= one[2]
            assert apart, (one, other, because)


def test_the_picture_is_whole_xml_with_a_title_and_words_for_who_does_not_see_it() -> None:
    found = drawn(replace(wiping(234), name="Wipe <b> & dry"))
    root = ElementTree.fromstring(svg(air_picture(found), PENS, "SWPX"))
    assert root.attrib["aria-labelledby"] == "SWPX-title SWPX-desc"
    space = "{http://www.w3.org/2000/svg}"
    assert root.find(f"{space}title").text == "Air over time: Wipe <b> & dry"  # type: ignore[union-attr]
    assert root.find(f"{space}desc").text == found.says  # type: ignore[union-attr]
    assert not re.search(r"style=|#[0-9a-f]{3}", svg(air_picture(found), PENS, "x"))


def test_a_cleaner_lets_nothing_go_and_has_no_air() -> None:
    asked = case(facts(wiping(100, QUELL)))
    assert steps_in_air(asked, asked.facts.air.steps) == []
