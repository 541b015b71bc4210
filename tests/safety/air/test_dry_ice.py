"""Dry ice: the gas it becomes, and where that stops."""

from datetime import date

import pytest

from safety.air.dry_ice import DryIceError, co2_ppm, dry_ice, gas_m3

TODAY = date(2026, 11, 29)


@pytest.mark.parametrize(("kg", "volume"), [(1, 0), (1, -5), (-1, 100), (1, float("nan"))])
def test_no_room_and_less_than_no_ice_are_refused(kg: float, volume: float) -> None:
    with pytest.raises(DryIceError, match="more than 0 was expected"):
        co2_ppm(kg, volume)


def test_a_kilogram_is_0_556_cubic_metres_and_5556_ppm_in_a_hundred() -> None:
    """By hand: 1000 g / 44.01 g/mol · 24.45 l/mol = 555.6 l."""
    assert gas_m3(1) == pytest.approx(0.556, abs=0.0005)
    assert co2_ppm(1, 100) == pytest.approx(5556, abs=1)


@pytest.mark.parametrize(
    ("kg", "regime", "grade", "because"),
    [
        (0.89, "US", None, "4944 ppm"),
        (0.91, "US", "ask", "5056 ppm reach the 8-hour value of 5000"),
        (5.3, "US", "ask", "29 444 ppm"),
        (5.5, "US", "stop", "30 556 ppm reach the 15-minute value of 30 000"),
        (2.6, "UK", "ask", "14 444 ppm"),
        (2.8, "UK", "stop", "15 556 ppm reach the UK's 15 000"),
        (7.1, "EU", "ask", "39 444 ppm: the EU has no short value"),
        (7.3, "EU", "stop", "40 556 ppm are immediately dangerous"),
    ],
)
def test_dry_ice_is_judged_by_the_regimes_limits(
    kg: float, regime: str, grade: str | None, because: str
) -> None:
    """100 m³. OSHA PEL, NIOSH REL and IDLH (from memory), UK WEL (read in a copy), EU IOELV (from memory)."""
    found = dry_ice(kg, 100, regime, TODAY)
    assert [one.grade for one in found] == ([grade] if grade else []), because


def test_dry_ice_says_its_gas_the_limit_and_the_way_out() -> None:
    [told] = dry_ice(3, 100, "UK", TODAY)
    assert told.says == "3 kg of dry ice make 16667 ppm of carbon dioxide in 100 m³."
    assert told.because == (
        "3 kg become 1.67 m³ of gas; UK WEL 15-minute limit 15000 ppm / 27400 mg/m³ is reached."
    )
    assert told.do == (
        "Open the doors and air the place, also low down, or use less than 0.9 kg; nobody in pit or cabin."
    )
    assert told.source == "UK WEL, safety/tables/exposure_limits.csv (read in a copy)"


def test_in_a_closed_cabin_a_quarter_of_a_kilogram_is_immediately_dangerous() -> None:
    """3 m³: 0.25 kg make 46 296 ppm, 0.2 kg 37 037."""
    [told] = dry_ice(0.25, 3, "EU", TODAY)
    assert told.grade == "stop"
    assert "what is immediately dangerous to life or health, 40000 ppm, is reached" in told.because
    assert [one.grade for one in dry_ice(0.2, 3, "EU", TODAY)] == ["ask"]


def test_no_dry_ice_adds_nothing() -> None:
    assert co2_ppm(0, 100) == 0
    assert dry_ice(0, 100, "US", TODAY) == ()
