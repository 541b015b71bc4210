"""One step takes a coating from one lot: the rule that the check, the station, signing and closing share.

That two lots may differ in shade and cure is common practice, no source.
"""

from dataclasses import dataclass

import pytest

from inventory.stock.rules.one_lot import NOTHING, apart, batch_of, binds, joins, of_one_lot, refusal, stands

A, B = frozenset({"LOTA"}), frozenset({"LOTB"})


@dataclass(frozen=True)
class Pot:
    """A bottle, as far as its lot matters."""

    code: str
    batch: frozenset[str]
    concentrate: int


OLD, NEW, FULL = Pot("OLD", A, 10), Pot("NEW", B, 15), Pot("FULL", B, 30)


@pytest.mark.parametrize(
    ("kind", "mixes", "bound", "because"),
    [
        ("coating", False, True, "a coating shows where one lot ends and another begins"),
        ("coating", True, False, "its maker allows lots side by side"),
        ("coating", None, True, "any coating, of whatever make"),
        ("polish", False, False, "a polish is wiped off again"),
    ],
)
def test_a_step_keeps_to_one_lot_of_a_coating(
    kind: str, mixes: bool | None, bound: bool, because: str
) -> None:
    assert binds(kind, mixes) is bound, because


@pytest.mark.parametrize(
    ("batch", "had", "may", "because"),
    [
        (B, A, False, "the step has lot A"),
        (A | B, A, False, "a bottle filled from both lots brings the second one in"),
        (A, A, True, "the same lot"),
        (B, NOTHING, True, "the first bottle decides"),
        (A, A | B, True, "two lots are on the step already: no third one is brought"),
    ],
)
def test_a_bottle_joins_what_its_step_has_had(
    batch: frozenset[str], had: frozenset[str], may: bool, because: str
) -> None:
    assert joins(batch, had) is may, because


def test_a_product_that_may_mix_its_lots_is_one_batch_whatever_the_lot() -> None:
    assert batch_of("XTID", A, mixes_lots=True) == batch_of("XTID", B, mixes_lots=True)
    assert batch_of("XTID", A, mixes_lots=False) != batch_of("XTID", B, mixes_lots=False)


@pytest.mark.parametrize(
    ("amount", "had", "codes", "because"),
    [
        (10, NOTHING, ["OLD"], "the first lot of the queue suffices"),
        (40, NOTHING, ["NEW", "FULL"], "lot A is too little, both bottles of lot B are enough"),
        (90, NOTHING, ["NEW", "FULL"], "no lot suffices: the fullest one"),
        (10, B, ["NEW", "FULL"], "the step has lot B, though lot A would do"),
        (10, frozenset({"LOTC"}), [], "nothing is left of the lot that the step has"),
    ],
)
def test_bottles_of_one_lot_are_offered(
    amount: int, had: frozenset[str], codes: list[str], because: str
) -> None:
    assert [pot.code for pot in of_one_lot([OLD, NEW, FULL], amount, had)] == codes, because


@pytest.mark.parametrize(
    ("amount", "got", "usable", "had", "is_so", "because"),
    [
        (40, 40, 70, NOTHING, False, "one lot suffices"),
        (40, 30, 60, NOTHING, True, "there is enough, but only of two lots"),
        (40, 30, 35, NOTHING, False, "too little in all is the graver cause: it can be ordered"),
        (40, 30, 35, A, True, "the step began with lot A: more of another lot would not help it"),
        (40, 30, 30, A, False, "there is no other lot either"),
    ],
)
def test_lots_are_what_is_wrong(
    amount: int, got: int, usable: int, had: frozenset[str], is_so: bool, because: str
) -> None:
    assert apart(amount, got, usable, had) is is_so, because


def test_a_refusal_says_the_amounts_and_both_ways_out() -> None:
    assert refusal("Tidewall coating", "40 ml", "30 ml", NOTHING, do="Give", signed=False) == (
        "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest. "
        "Give what came of one lot, or an owner says why two lots are right, on the check page. "
        "What a second lot put on the car already is scanned at a station and said with ALREADY: "
        "it is written down and flagged."
    )


def test_no_owner_is_named_where_no_check_asks_any_more() -> None:
    said = refusal("Tidewall coating", "10 ml", "0 ml", A, do="Give", signed=True)
    assert said.startswith(
        "Tidewall coating: 10 ml more needed from the lot that the step has, 0 ml of it left. "
        "Give what came of one lot. What"
    )


def test_an_owners_word_stands_for_its_own_step_and_product_or_kind() -> None:
    words = {("XTID", "SONE")}
    assert stands(words, "SONE", "XTID", "coating")
    assert not stands(words, "STWO", "XTID", "coating")
    assert not stands(words, "SONE", "XOTH", "coating")
