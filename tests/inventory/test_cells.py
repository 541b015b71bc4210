"""A spreadsheet never runs a text of ours, and gives every text back as it was."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from inventory.cells import guard, unguard


@pytest.mark.parametrize(
    ("typed", "kept", "because"),
    [
        ('=HYPERLINK("x")', '\'=HYPERLINK("x")', "an equals sign starts a formula"),
        ("+49 30 1234", "'+49 30 1234", "so does a plus, even of a telephone number"),
        ("-2 bottles", "'-2 bottles", "and a minus"),
        ("@SUM(A1)", "'@SUM(A1)", "and an at sign"),
        ("\t=1+1", "'\t=1+1", "some programs skip a tab"),
        ("\r=1+1", "'\r=1+1", "or a carriage return"),
        ("\n=1+1", "'\n=1+1", "or a line feed"),
        ("\0=1+1", "'\0=1+1", "or a NUL"),
        ("＝1+1", "'＝1+1", "full width reads as the same sign"),
        ("－1", "'－1", "full-width minus"),
        ("'quoted'", "''quoted'", "a text that starts with the mark must come back with it"),
        ("Tidewall coating", "Tidewall coating", "plain text stays"),
        ("5 l = 5 kg", "5 l = 5 kg", "a sign within is no start"),
        ("", "", "nothing stays nothing"),
    ],
)
def test_a_text_that_could_run_is_put_behind_an_apostrophe(typed: str, kept: str, because: str) -> None:
    assert guard(typed) == kept, because


@pytest.mark.parametrize("number", [-5, 0, -0.25, Decimal("-1.5"), True, None, date(2026, 12, 1)])
def test_what_is_no_text_is_never_touched(number: object) -> None:
    assert guard(number) is number
    assert unguard(number) is number


@given(st.text())
@example("'")
@example("''=")
@example("'=1+1")
@example("＠")
def test_every_text_comes_back_as_it_was(text: str) -> None:
    assert unguard(guard(text)) == text


@given(st.text())
def test_no_guarded_text_starts_a_formula(text: str) -> None:
    assert not guard(text).startswith(("=", "+", "-", "@", "\t", "\r", "\n", "\0", "＝", "＋", "－", "＠"))


def test_an_apostrophe_that_guards_nothing_stays() -> None:
    assert unguard("'til Friday") == "'til Friday"
