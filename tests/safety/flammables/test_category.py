"""Categories of flammable liquids by flash and boiling point."""

import pytest

from safety.flammables.category import category, of_sheet
from safety.hazards.classes import read_hazard


@pytest.mark.parametrize(
    ("name", "flash_c", "boiling_c", "expected"),
    [
        ("acetone", -20, 56, 2),
        ("isopropanol", 12, 82, 2),
        ("xylene", 25, 138, 3),
        ("2-butoxyethanol", 61, 171, 4),
        ("diethyl ether", -45, 34.6, 1),
    ],
)
def test_five_solvents_have_their_published_category(
    name: str, flash_c: float, boiling_c: float, expected: int
) -> None:
    """Flash and boiling points of the NIOSH Pocket Guide and safety cards, by 29 CFR 1910.106(a)(19)."""
    assert category(flash_c, boiling_c, "US") == expected, name


@pytest.mark.parametrize(
    ("flash_c", "boiling_c", "expected", "because"),
    [
        (22.9, 35, 1, "boils at or below 35 °C"),
        (22.9, 35.1, 2, "boils just above"),
        (23, 35, 3, "from 23 °C the boiling point is nothing"),
        (60, 150, 3, "60 °C is still 3"),
        (60.1, 150, 4, "above"),
        (93, 200, 4, "93 °C is still 4"),
        (93.1, 200, 0, "above it does not count"),
        (12, None, 2, "boiling point unknown: 2, which may be 1"),
        (None, 80, None, "no flash point: nobody knows"),
    ],
)
def test_a_category_changes_at_these_bounds(
    flash_c: float | None, boiling_c: float | None, expected: int | None, because: str
) -> None:
    """29 CFR 1910.106(a)(19), 1910.1200 Table B.6.1."""
    assert category(flash_c, boiling_c, "US") == expected, because


@pytest.mark.parametrize(("regime", "expected"), [("US", 4), ("CA", 4), ("UN", 4), ("EU", 0), ("UK", 0)])
def test_the_eu_and_the_uk_have_no_category_4(regime: str, expected: int) -> None:
    """CLP Annex I Table 2.6.1 ends at 60 °C."""
    assert category(61, 171, regime) == expected


@pytest.mark.parametrize(
    ("hazards", "flash_c", "regime", "expected", "because"),
    [
        (None, None, "US", (None, False), "nobody looked and nobody measured"),
        ([], None, "US", (0, False), "looked at and not classified"),
        (["Eye Irrit. 2 H319"], None, "US", (0, False), "other hazards do not burn"),
        (["Flam. Liq. 2 H225"], None, "EU", (2, False), "its class"),
        (["Flam. Liq. 4 H227"], None, "US", (4, False), "the US has category 4"),
        (["Flam. Liq. 4 H227"], None, "UK", (0, False), "the UK has not"),
        ([], 61, "US", (4, False), "a European sheet leaves category 4 out: the flash point says it"),
        ([], 61, "EU", (0, False), "where it does not count"),
        (["Flam. Liq. 1 H224"], 12, "US", (1, False), "the graver of class and flash point"),
        (["Flam. Liq. 3 H226"], 12, "US", (2, False), "and the other way round"),
        (None, 25, "US", (3, False), "measured, not yet classified"),
        (["Aerosol 1 H222+H229"], None, "US", (1, True), "an aerosol has its own categories"),
        (["Aerosol 3 H229", "Flam. Liq. 2 H225"], 12, "US", (3, True), "which go before the liquid's"),
    ],
)
def test_a_sheet_gives_the_category_that_counts(
    hazards: list[str] | None,
    flash_c: float | None,
    regime: str,
    expected: tuple[int | None, bool],
    because: str,
) -> None:
    read = None if hazards is None else [read_hazard(one) for one in hazards]
    assert of_sheet(read, flash_c, 100, regime) == expected, because
