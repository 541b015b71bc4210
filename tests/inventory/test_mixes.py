"""Mixes as people type them and as the shop shows them: parts of product to parts of water."""

import pytest

from inventory.units import read_mix, show_mix


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("2/7", "a slash reads as a fraction"),
        ("10", "one number does not say of what"),
        ("0:10", "water alone is no mix"),
        ("1:", "water is missing"),
        (":10", "product is missing"),
        ("1:10:2", "two things are mixed, not three"),
        ("-1:10", "no part is negative"),
        ("1.5:10", "parts are whole: 3:20"),
        ("1:10000", "nobody measures one part in ten thousand"),
        ("１:10", "other scripts' digits are not typed here"),
        ("", "nothing was typed"),
    ],
)
def test_what_is_no_mix_is_not_guessed(text: str, because: str) -> None:
    assert read_mix(text) is None, because


@pytest.mark.parametrize(
    ("text", "parts", "shown"),
    [
        ("1:10", (1, 10), "1:10"),
        (" 2 : 7 ", (2, 7), "2:7"),
        ("1+4", (1, 4), "1:4"),
        ("neat", (1, 0), "neat"),
        ("Undiluted", (1, 0), "neat"),
    ],
)
def test_a_mix_is_read_and_shown_in_parts_and_reads_back(
    text: str, parts: tuple[int, int], shown: str
) -> None:
    assert read_mix(text) == parts
    assert show_mix(*parts) == shown
    assert read_mix(shown) == parts
