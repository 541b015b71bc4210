"""What a mix holds and what must be poured of it: whole base units, never less product than was asked for."""

import pytest

from inventory.stock.rules.mixes import gross, share
from inventory.units import read_mix


@pytest.mark.parametrize(
    ("concentrate", "parts", "poured", "because"),
    [
        (100, (1, 0), 100, "neat: what is poured is the product"),
        (100, (1, 10), 1_100, "one part in eleven"),
        (100, (2, 7), 450, "two parts in nine"),
        (1, (2, 7), 5, "4.5 rounds up: with 4 there would be too little in it"),
        (0, (1, 10), 0, "nothing is nothing"),
    ],
)
def test_of_a_mix_so_much_is_poured_that_no_product_is_missing(
    concentrate: int, parts: tuple[int, int], poured: int, because: str
) -> None:
    assert gross(concentrate, parts) == poured, because
    assert share(poured, parts) >= concentrate
    assert poured == 0 or share(poured - 1, parts) < concentrate


@pytest.mark.parametrize(
    ("typed", "parts"),
    [("2:20", (1, 10)), ("2:7", (2, 7)), ("2:0", (1, 0)), ("3:0", (1, 0)), ("neat", (1, 0))],
)
def test_equal_mixes_are_read_as_one(typed: str, parts: tuple[int, int]) -> None:
    assert read_mix(typed) == parts
