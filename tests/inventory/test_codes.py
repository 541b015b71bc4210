"""Our own codes: eight letters that catch the slips of a hand and an eye."""

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.codes import (
    COMMANDS,
    LETTERS,
    TYPES,
    CodeError,
    check_letter,
    code_of,
    command_of,
    letter_of,
    new_code,
    pair,
    tidy,
)

unhurried = settings(deadline=None)  # a loaded machine is slow, not wrong

codes = st.builds(
    lambda letter, six: letter + six + check_letter(letter + six),
    st.sampled_from(sorted(TYPES)),
    st.text(LETTERS, min_size=6, max_size=6),
)


@unhurried
@given(codes)
def test_every_single_wrong_letter_is_caught(code: str) -> None:
    wrong = [
        code[:at] + letter + code[at + 1 :] for at in range(8) for letter in LETTERS if letter != code[at]
    ]
    assert len(wrong) == 8 * 16
    assert [each for each in wrong if tidy(each)] == []


@unhurried
@given(codes)
def test_every_swap_of_neighbours_is_caught(code: str) -> None:
    swapped = [code[:at] + code[at + 1] + code[at] + code[at + 2 :] for at in range(7)]
    assert [each for each in swapped if each != code and tidy(each)] == []


def test_weights_that_are_all_alike_would_let_a_swap_through(monkeypatch: pytest.MonkeyPatch) -> None:
    assert tidy("BTKRVNXH") is None
    monkeypatch.setattr("inventory.codes.own._WEIGHTS", (1,) * 7)
    alike = "BKTRVNX" + check_letter("BKTRVNX")
    assert tidy(alike) == alike
    assert tidy("BTK" + alike[3:]) == "BTK" + alike[3:]


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("BKTRVNX", "seven letters"),
        ("BKTRVNXHH", "nine letters"),
        ("BKTRVNXB", "another check letter"),
        ("AKTRVNXH", "A sits elsewhere on another keyboard"),
        ("BKTR_VNXH", "an underscore is not a space"),
        ("KBBBBBBJ", "the check is right, but K is no type"),
        ("", "nothing"),
        ("BКTRVNXH", "a Cyrillic letter that looks right"),
    ],
)
def test_what_is_not_ours_is_not_tidied(text: str, because: str) -> None:
    assert tidy(text) is None, because


@pytest.mark.parametrize("text", ["BKTRVNXH", "bktrvnxh", "BKTR VNXH", "bktr-vnxh", " Bktr vnxh "])
def test_a_code_is_read_in_any_case_and_grouping(text: str) -> None:
    assert tidy(text) == "BKTRVNXH"


def test_a_code_is_printed_in_two_groups_and_knows_its_type() -> None:
    assert pair("BKTRVNXH") == "BKTR VNXH"
    assert letter_of("BKTRVNXH") == "B"


def test_an_unknown_type_gets_no_code() -> None:
    with pytest.raises(CodeError, match="no type of code"):
        new_code("K")


def test_a_new_code_takes_its_letters_from_the_chooser() -> None:
    letters = iter("KTRVNX")

    def choose(offered: Sequence[str]) -> str:
        assert offered == LETTERS
        return next(letters)

    assert new_code("B", choose) == "BKTRVNXH"


@pytest.mark.parametrize("letter", sorted(TYPES))
def test_a_new_code_of_every_type_is_tidy(letter: str) -> None:
    code = new_code(letter)
    assert tidy(code) == code
    assert letter_of(code) == letter


def test_letters_move_on_no_common_keyboard() -> None:
    # QWERTY, QWERTZ and AZERTY differ in these letters and in the digit row.
    assert set(LETTERS) & set("AQWYZM0123456789") == set()
    assert len(LETTERS) == 17


def test_command_codes_are_valid_and_unique() -> None:
    printed = list(COMMANDS.values())
    assert [tidy(code) for code in printed] == printed
    assert {letter_of(code) for code in printed} == {"C"}
    assert len(set(printed)) == len(printed) == 27


def test_command_codes_never_change_since_they_hang_on_walls() -> None:
    assert (code_of("yes"), code_of("no"), code_of("undo")) == ("CFKENGBX", "CSSDEFNX", "CVTSHHNP")


def test_a_command_is_found_by_its_code_only() -> None:
    assert command_of("cfke ngbx") == "yes"
    assert command_of("BKTRVNXH") is None
    assert command_of("yes") is None
    with pytest.raises(CodeError, match="no command"):
        code_of("explode")
