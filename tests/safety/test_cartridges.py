"""When to change a cartridge: the rule of thumb from every side, and what is said at its end."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.cartridges import CartridgeError, Load, Schedule, cartridge_change, change_out

DRY = {"boiling_c": 82, "humidity": 50}


def hours(ppm: float | None, **changed: object) -> float | None:
    return change_out(Load(ppm, **(DRY | changed))).hours  # type: ignore[arg-type]


@pytest.mark.parametrize(("ppm", "work_rate"), [(50, 0), (50, -1), (-1, 1)])
def test_what_nobody_can_breathe_is_refused(ppm: float, work_rate: float) -> None:
    with pytest.raises(CartridgeError, match="more than 0 was expected"):
        Load(ppm, 82, 50, work_rate)


def test_a_makers_hours_of_none_are_refused() -> None:
    with pytest.raises(CartridgeError, match="more than 0 was expected, not 0"):
        change_out(Load(50, 82), 0)


@pytest.mark.parametrize(
    ("ppm", "changed", "expected", "because"),
    [
        (199.999, {}, 8, "just below 200 ppm: 8 h at normal work rate"),
        (20, {}, 40, "ten times less: five times longer"),
        (2, {}, 200, "and once more"),
        (0, {}, 200, "a trace counts as 2 ppm"),
        (199.999, {"humidity": 85}, 8, "85 % is not over 85 %"),
        (199.999, {"humidity": 85.1}, 4, "over 85 %: half"),
        (199.999, {"humidity": None}, 4, "nobody measured: half"),
        (199.999, {"work_rate": 2}, 4, "twice the work, half the hours"),
        (20, {"work_rate": 2, "humidity": 90}, 10, "both"),
        (199.999, {"boiling_c": 70.1}, 8, "just above 70 °C"),
    ],
)
def test_hours_by_the_rule_of_thumb(
    ppm: float, changed: dict[str, object], expected: float, because: str
) -> None:
    """OSHA's respirator pages quoting AIHA ch. 36: all four sentences of the rule."""
    assert hours(ppm, **changed) == pytest.approx(expected, rel=1e-4), because


@pytest.mark.parametrize(
    ("ppm", "changed", "because"),
    [
        (200, {}, "200 ppm are breathed; the rule of thumb ends at 200 ppm."),
        (50, {"boiling_c": 70}, "It boils at 70 °C; the rule of thumb begins above 70 °C."),
        (50, {"boiling_c": 56}, "It boils at 56 °C; the rule of thumb begins above 70 °C."),
        (50, {"boiling_c": None}, "Concentration or boiling point is not known."),
        (None, {}, "Concentration or boiling point is not known."),
        (50, {"organic": False}, "The rule of thumb is for organic vapours alone."),
    ],
)
def test_outside_the_rule_nobody_can_say(ppm: float | None, changed: dict[str, object], because: str) -> None:
    found = change_out(Load(ppm, **(DRY | changed)))  # type: ignore[arg-type]
    assert (found.hours, found.because) == (None, because)


def test_the_makers_hours_go_before_the_rule_also_where_they_are_fewer() -> None:
    found = change_out(Load(20, 82, 50), 6)
    assert (found.hours, found.because) == (6, "Its maker gives 6 hours.")
    assert change_out(Load(300, 56, 50), 2).hours == 2


def test_the_numbers_behind_the_hours_are_said() -> None:
    found = change_out(Load(20, 82, 90, 2))
    assert found.because == (
        "8 hours at 200 ppm, five times longer at a tenth; 20 ppm counted, halved since humidity is over "
        "85 %, work rate 2."
    )
    assert change_out(Load(20, 82)).because.endswith("halved since humidity is not known.")


@pytest.mark.parametrize(
    ("used", "task", "expected", "because"),
    [
        (7, 1, None, "it lasts the task to the hour"),
        (7, 1.1, ("cartridges.change", "ask"), "it does not last the task"),
        (8, 0, ("cartridges.spent", "stop"), "its hours are over"),
        (7.9, 0, None, "they are not"),
    ],
)
def test_a_cartridge_stops_when_its_hours_are_over(
    used: float, task: float, expected: tuple[str, str] | None, because: str
) -> None:
    found = cartridge_change("half mask A2", used, Schedule(8, "", ""), task)
    assert [(one.code, one.grade) for one in found] == ([expected] if expected else []), because


def test_a_spent_cartridge_says_its_hours_and_that_odour_is_no_schedule() -> None:
    [told] = cartridge_change("half mask A2", 9.5, change_out(Load(20, 82, 50, 5)))
    assert told.says == "half mask A2 has been worn 9.5 of its 8 hours."
    assert told.do == "Fit a new cartridge and write today's date on it. Odour is no schedule."
    [told] = cartridge_change("half mask A2", 7, Schedule(8, "", ""), 2)
    assert told.says == "half mask A2 has been worn 7 of its 8 hours; the task takes 2 more."


def test_hours_that_nobody_can_say_are_asked_for() -> None:
    [told] = cartridge_change("half mask AX", 1, change_out(Load(50, 56, 50)))
    assert (told.code, told.grade) == ("cartridges.hours", "ask")
    assert told.says == "Nobody can say how long half mask AX lasts here."
    assert told.do == "Type the hours from its maker's data, or wear supplied air. Odour is no schedule."


LOADS = st.builds(
    Load, st.floats(0, 250), st.floats(40, 200), st.none() | st.floats(0, 100), st.floats(0.3, 4)
)


@given(LOADS, st.floats(1, 3))
def test_more_vapour_or_more_work_never_lengthens_the_hours(load: Load, times: float) -> None:
    now = change_out(load).hours
    assert load.ppm is not None
    worse = (
        Load(load.ppm * times, load.boiling_c, load.humidity, load.work_rate),
        Load(load.ppm, load.boiling_c, load.humidity, load.work_rate * times),
        Load(load.ppm, load.boiling_c, None, load.work_rate),
    )
    for harder in (change_out(one).hours for one in worse):
        assert harder is None or (now is not None and harder <= now * (1 + 1e-9))
