"""The printed codes of a reading's values: letters only, and one wrong letter never makes another value."""

from decimal import Decimal
from itertools import combinations

import pytest

from inventory.codes import (
    AIR,
    COMMANDS,
    HUMIDITY,
    LETTERS,
    PANEL,
    CodeError,
    Value,
    check_letter,
    tidy,
    value_code,
    value_of,
)


@pytest.mark.parametrize(
    ("quantity", "amount", "says"),
    [
        ("rain", "3", "“rain” is no value of a reading. They are air, panel, humidity."),
        (AIR, "-40.1", "A code carries -40 to 451.1, not -40.1."),
        (PANEL, "451.2", "A code carries -40 to 451.1, not 451.2."),
    ],
)
def test_what_no_code_can_carry_is_refused(quantity: str, amount: str, says: str) -> None:
    with pytest.raises(CodeError) as refused:
        value_code(quantity, Decimal(amount))
    assert str(refused.value) == says


@pytest.mark.parametrize(
    ("quantity", "amount", "because"),
    [
        (AIR, "21", "a whole degree"),
        (AIR, "21.1", "70 °F"),
        (AIR, "-40", "the coldest"),
        (PANEL, "120", "a panel under a lamp"),
        (PANEL, "451.1", "the most that three letters carry"),
        (PANEL, None, "nobody measured the panel"),
        (HUMIDITY, "95", "a wet bay"),
    ],
)
def test_a_value_comes_back_from_its_code(quantity: str, amount: str | None, because: str) -> None:
    value = Value(quantity, None if amount is None else Decimal(amount))
    code = value_code(*value)
    assert tidy(code) == code, "it is one of our codes"
    assert value_of(f" {code[:4].lower()}-{code[4:]} ") == value, because


@pytest.mark.parametrize(
    ("quantity", "amount", "code"),
    [
        (AIR, "21", "RLDCVCVD"),
        (PANEL, "19", "RPDBRBRR"),
        (HUMIDITY, "50", "RHECXCXR"),
        (PANEL, None, "RPXXXXXJ"),
    ],
)
def test_a_card_that_hangs_on_the_wall_is_read_for_ever(quantity: str, amount: str | None, code: str) -> None:
    assert value_code(quantity, None if amount is None else Decimal(amount)) == code


def test_a_card_that_hangs_is_read_by_the_sum_that_is_printed_in_the_rules() -> None:
    """By hand: (21 + 40) · 10 = 610 = 2 · 289 + 1 · 17 + 15, letters D C V.

    24 + 27 + 8 + 6 + 75 + 8 + 105 = 253, and 253 + 2 is 15 · 17, so the check letter is number 2, D.
    """
    assert value_of("RLDCVCVD") == Value(AIR, Decimal(21))


def test_neighbours_on_a_card_differ_in_three_letters_or_more() -> None:
    """A code misread in two letters is no value at all, or one more than 28 degrees away."""
    tenths = [Decimal(each) / 10 for each in range(-400, 1201, 5)]
    codes = [(each, value_code(AIR, each)) for each in tenths]
    nearest = min(
        sum(a != b for a, b in zip(code, other, strict=True))
        for (one, code), (two, other) in combinations(codes, 2)
        if two - one < 28
    )
    assert nearest == 3


@pytest.mark.parametrize(
    ("code", "because"),
    [
        (COMMANDS["undo"], "a command"),
        ("RLDCVCVG", "a wrong check letter"),
        ("RLDCVCG" + check_letter("RLDCVCG"), "the letters once more are others"),
        ("RXDCVCV" + check_letter("RXDCVCV"), "measures nothing that is known"),
        ("air 21", "is typed, not scanned"),
    ],
)
def test_what_carries_no_value_is_none(code: str, because: str) -> None:
    assert value_of(code) is None, because


def test_no_single_wrong_letter_and_no_swap_makes_another_value() -> None:
    """The twin: without check letter and repetition, 16 of 17 wrong letters would make another value."""
    code = value_code(AIR, Decimal(21))
    wrong = [
        code[:at] + letter + code[at + 1 :] for at in range(8) for letter in LETTERS if letter != code[at]
    ]
    swapped = [code[:at] + code[at + 1] + code[at] + code[at + 2 :] for at in range(7)]
    assert [each for each in wrong + swapped if each != code and value_of(each)] == []
