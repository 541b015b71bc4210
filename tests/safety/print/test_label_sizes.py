"""Sizes by capacity against CLP Table 1.3 and Regulation 2024/2865, on both sides of every limit."""

import pytest

from safety.hazards.facts import SheetFacts
from safety.label_content import Bottle, label_for
from safety.print.label import choose
from safety.print.label_sheets import print_labels
from safety.print.label_sizes import first_for, rule_for, rules
from safety.print.label_ways import X_HEIGHT
from tests.safety.cast import WIPE
from tests.safety.print.paper import diamonds, faults, letters_mm


def test_a_package_that_holds_nothing_is_refused() -> None:
    for capacity in (0, -1, float("nan")):
        with pytest.raises(ValueError, match="more than 0 ml was expected"):
            rule_for(capacity)


@pytest.mark.parametrize(
    ("ml", "label", "side", "wished", "x_height", "stock"),
    [
        (30, (52, 74), 10, 16, 1.2, "tall"),
        (500, (52, 74), 10, 16, 1.2, "tall"),
        (501, (52, 74), 10, 16, 1.4, "tall"),
        (3_000, (52, 74), 10, 16, 1.4, "tall"),
        (3_001, (74, 105), 23, 23, 1.8, "wide"),
        (50_000, (74, 105), 23, 23, 1.8, "wide"),
        (50_001, (105, 148), 32, 32, 2.0, "extra"),
        (500_000, (105, 148), 32, 32, 2.0, "extra"),
        (500_001, (148, 210), 46, 46, 2.0, "drum"),
    ],
)
def test_a_capacity_asks_for_its_row_of_the_table(
    ml: float, label: tuple[float, float], side: float, wished: float, x_height: float, stock: str
) -> None:
    """CLP Annex I, Table 1.3 (consolidation of 1 Sep 2025); x-heights of Regulation (EU) 2024/2865."""
    rule = rule_for(ml)
    assert (rule.width, rule.height) == label
    assert (rule.side, rule.side_if_possible, rule.x_height) == (side, wished, x_height)
    assert first_for(rule).name == stock


def test_every_side_is_a_fifteenth_of_the_least_label_if_possible() -> None:
    """CLP 1.2.1.4: each pictogram covers at least one fifteenth of the label's minimum area.

    The table rounds to whole millimetres: its own 32 mm are 1.2 % short of a fifteenth of 105 × 148 mm.
    """
    for rule in rules():
        assert (rule.side_if_possible + 0.5) ** 2 >= rule.width * rule.height / 15


@pytest.mark.parametrize(("ml", "side", "x_height"), [(500, 10, 1.2), (3_000, 10, 1.4), (5_000, 23, 1.8)])
def test_what_is_printed_keeps_side_and_x_height_as_read_off_the_page(
    ml: float, side: float, x_height: float
) -> None:
    """A square of that side stands on its point in a box 1.414 times as wide."""
    content = label_for(
        Bottle("Hollin panel wipe", "BKTRVNXH", WIPE, capacity_ml=ml, use_by="26 Nov 2026"), "secondary"
    )
    pdf, _ = print_labels([content], choose(content).size)
    assert faults(pdf, edge=1.0) == []
    # The drawing leaves a hair of white round the frame: 3 % of its box.
    assert all(box.right - box.left >= side * 2**0.5 * 0.97 for box in diamonds(pdf))
    words = " ".join(content.statements)
    small = [capital for text, capital in letters_mm(pdf) if text in words]
    assert small
    assert min(small) * X_HEIGHT >= x_height - 0.005


def test_a_label_says_which_row_asked_for_its_size() -> None:
    content = label_for(Bottle("Hollin panel wipe", "BKTRVNXH", WIPE, capacity_ml=5000), "secondary")
    says = choose(content).says
    assert (
        "CLP Table 1.3 [S] asks for 74 × 105 mm and diamonds of 23 mm a side for a package up to 50 l" in says
    )


def test_a_harmless_product_needs_no_diamonds_but_keeps_its_size() -> None:
    content = label_for(
        Bottle("Stott rinse", "BKTRVNXH", SheetFacts(not_classified=True), capacity_ml=500), "secondary"
    )
    assert choose(content).size.name == "tall"
