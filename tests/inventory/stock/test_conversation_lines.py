"""What one line is, before anybody asks what it means."""

from datetime import date

import pytest

from inventory.codes import code_of
from inventory.stock.conversation import Done, State, read_line

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("text", "part", "value", "because"),
    [
        (code_of("open"), "command", "open", "the card on the wall"),
        (code_of("open").lower(), "command", "open", "a scanner with caps lock"),
        ("Open", "command", "open", "the word"),
        ("as planned", "command", "planned", "people say it in two words"),
        ("not given", "command", "no_lot", "as the form on the wall has it"),
        ("no date", "command", "no_date", "the key on screen"),
        ("12", "number", 12, "how many"),
        ("x12", "number", 12, "how many, as printed on a case"),
        ("12 ×", "number", 12, "how many, the other way round"),
        ("40 ml", "amount", "40 ml", "an amount"),
        ("½ l", "amount", "½ l", "an amount that starts with a fraction"),
        ("2 1/2 fl oz", "amount", "2 1/2 fl oz", "an amount with a fraction in it"),
        ("1:10", "ratio", (1, 10), "product to water"),
        ("neat", "ratio", (1, 0), "no water"),
        ("before 412 g", "weight", "before", "weighed first"),
        ("After 380 g", "weight", "after", "weighed again"),
        ("T-88", "words", True, "a lot, where a lot is asked"),
        ("use by 03/2028", "command", "", "a date is no command"),
        ("3 Apr 2027", "amount", "", "a date is no amount"),
        ("BKTRVNXB", "code", "", "one letter is wrong"),
    ],
)
def test_a_line_is_read(text: str, part: str, value: object, because: str) -> None:
    assert getattr(read_line(text, today=TODAY), part) == value, because


def test_a_wrong_letter_is_named() -> None:
    assert "one letter is wrong" in read_line("BKTRVNXB", today=TODAY).error


def test_a_makers_symbol_is_read_last() -> None:
    said = read_line("0104006381333931172803311OT", today=TODAY)
    assert said.packs == ()
    said = read_line("01040063813339311728033110T-88", today=TODAY)
    assert (said.packs[0].gtin, said.packs[0].lot) == ("04006381333931", "T-88")


def test_a_state_kept_as_json_comes_back_equal() -> None:
    state = State(
        who="HBCDFGHJ", verb="fill", slots={"parts": [1, 10]}, waiting=(("40 ml", "2026-11-25T12:00:00"),),
        done=(Done("HBCDFGHJ", (4, 5), "10 ml", ({"does": "order_line", "id": 1, "received": 2},)),),
    )  # fmt: skip
    kept = state.as_json() | {"what an older version kept": 1}
    assert State.from_json(kept).as_json() == state.as_json()
