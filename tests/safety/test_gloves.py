"""Gloves: letters, levels, and when a pair is through."""

from datetime import UTC, datetime, timedelta

import chemicals
import pytest

from safety.gloves import (
    GloveError,
    chemicals_of,
    glove_change,
    letter_for,
    letters,
    level,
    level_minutes,
    not_tested,
)

START = datetime(2026, 11, 29, 9, 0, tzinfo=UTC)


def after(minutes: float) -> datetime:
    return START + timedelta(minutes=minutes)


def test_a_stray_letter_is_refused() -> None:
    with pytest.raises(GloveError) as refused:
        chemicals_of("AQK")
    assert str(refused.value) == "marking: letters of ABCDEFGHIJKLMNOPST were expected, not “Q”."


@pytest.mark.parametrize("outside", [0, 7, -1])
def test_a_level_outside_1_to_6_is_refused(outside: int) -> None:
    with pytest.raises(GloveError, match="1 to 6 was expected"):
        level_minutes(outside)


def test_minutes_that_are_none_at_all_are_refused() -> None:
    with pytest.raises(GloveError, match="more than 0 was expected, not 0"):
        glove_change("nitrile", "acetone", 0, START, START)


@pytest.mark.parametrize(
    ("letter", "chemical", "strength"),
    [
        ("A", "methanol", ""), ("B", "acetone", ""), ("F", "toluene", ""), ("I", "ethyl acetate", ""),
        ("J", "n-heptane", ""), ("K", "sodium hydroxide", "40 %"), ("L", "sulfuric acid", "96 %"),
        ("N", "acetic acid", "99 %"), ("O", "ammonium hydroxide", "25 %"),
        ("P", "hydrogen peroxide", "30 %"), ("S", "hydrogen fluoride", "40 %"),
    ],
)  # fmt: skip
def test_a_letter_is_the_standards(letter: str, chemical: str, strength: str) -> None:
    """EN ISO 374-1:2016, Annex A (read)."""
    found = letters()[letter]
    assert (found.chemical, found.strength) == (chemical, strength)


def test_the_standard_has_eighteen_letters_and_neither_q_nor_r() -> None:
    """EN ISO 374-1:2016: twelve letters of the older edition and six more."""
    assert "".join(letters()) == "ABCDEFGHIJKLMNOPST"


@pytest.mark.parametrize("letter", list("ABCDEFGHIJKLMNOPST"))
def test_a_letters_cas_number_is_the_chemicals_of_that_name(letter: str) -> None:
    """The `chemicals` package's compilation of names; a rename there would show here."""
    assert chemicals.CAS_from_any(letters()[letter].chemical) == letters()[letter].cas


def test_a_marking_names_what_the_glove_was_chemicals_of() -> None:
    assert [one.chemical for one in chemicals_of("AKL")] == [
        "methanol",
        "sodium hydroxide",
        "sulfuric acid",
    ]
    assert chemicals_of("a k l k") == chemicals_of("AKL")
    assert chemicals_of("") == ()


def test_a_glove_without_the_letter_is_asked_about_and_one_with_it_is_not() -> None:
    [told] = not_tested("blue nitrile", "AKL", "acetone", "67-64-1")
    assert (told.code, told.grade) == ("gloves.letter", "ask")
    assert told.says == (
        "blue nitrile carries no letter B: its letters do not say that it holds acetone back."
    )
    assert told.do == (
        "Look up acetone in the glove maker's list and type its minutes, or take a glove with that letter."
    )
    assert told.source == "EN ISO 374-1:2016, Annex A (read)"
    assert not_tested("black butyl", "ABI", "acetone", "67-64-1") == ()
    [told] = not_tested("blue nitrile", "AKL", "nitric acid", "7697-37-2")
    assert told.source == "EN ISO 374-1:2016, Annex A (read in a copy)"


def test_what_the_standard_has_no_letter_for_is_no_finding_of_letters() -> None:
    """Isopropanol has none: the maker's minutes alone speak."""
    assert letter_for("67-63-0") is None
    assert letter_for("") is None
    assert not_tested("blue nitrile", "AKL", "isopropanol", "67-63-0") == ()


@pytest.mark.parametrize(("of", "minutes"), [(1, 10), (2, 30), (3, 60), (4, 120), (5, 240), (6, 480)])
def test_a_level_promises_more_than_its_minutes_and_not_those(of: int, minutes: int) -> None:
    """EN ISO 374-1 performance levels (from memory): more than 10, 30, 60, 120, 240, 480 min."""
    assert level_minutes(of) == minutes
    assert (level(minutes), level(minutes + 0.1)) == (of - 1, of)


@pytest.mark.parametrize(
    ("now", "task", "code", "grade", "because"),
    [
        (59, 0, None, None, "a minute is left"),
        (60, 0, "gloves.through", "stop", "the maker's minutes are over"),
        (90, 0, "gloves.through", "stop", "long over"),
        (40, 20, None, None, "it lasts the task to the minute"),
        (40, 21, "gloves.change", "tell", "it does not last the task"),
    ],
)
def test_a_pair_stops_when_its_minutes_are_over(
    now: float, task: float, code: str | None, grade: str | None, because: str
) -> None:
    found = glove_change("blue nitrile", "tar remover", 60, START, after(now), task)
    assert [(one.code, one.grade) for one in found.findings] == ([(code, grade)] if code else []), because
    assert (found.due_at, found.minutes_left) == (after(60), 60 - now)


def test_what_is_through_says_the_numbers_and_how_to_take_it_off() -> None:
    [told] = glove_change("blue nitrile", "tar remover", 60, START, after(75)).findings
    assert told.says == "tar remover is through blue nitrile by now: 75 minutes of 60."
    assert told.because == "Its maker gives 60 minutes against tar remover, from the first drop."
    assert told.do == "Take them off without touching the outside, wash your hands, put on a new pair."


def test_what_will_not_last_says_when_to_change() -> None:
    [told] = glove_change("blue nitrile", "tar remover", 60, START, after(40), 45).findings
    assert told.says == "blue nitrile will not last the task: 20 of its 45 minutes are left."
    assert told.do == "Change them by 10:00; lay a new pair ready before you start."


def test_minutes_that_nobody_typed_are_asked_for() -> None:
    found = glove_change("blue nitrile", "tar remover", None, START, after(5))
    assert (found.due_at, found.minutes_left) == (None, None)
    [told] = found.findings
    assert (told.code, told.grade) == ("gloves.minutes", "ask")
    assert told.do == "Type the minutes against tar remover from the glove maker's list."


def test_a_glove_without_any_letter_says_so() -> None:
    [told] = not_tested("thin vinyl", "", "acetone", "67-64-1")
    assert told.because == "It is marked with no letter; acetone is letter B."
    [told] = not_tested("blue nitrile", "AKL", "acetone", "67-64-1")
    assert told.because == "It is marked AKL; acetone is letter B."
