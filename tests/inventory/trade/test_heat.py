"""Heat and thickness: the practitioner's own figures (common practice, no source), and pint beside them."""

import pint
import pytest

from inventory.trade.heat import Rated, heat_findings, hot_surfaces, in_both, to_celsius, to_fahrenheit
from inventory.trade.thickness import thickness
from inventory.units import Dimension, parse_amount
from safety.findings import Finding

UREG = pint.UnitRegistry()


def test_1200_fahrenheit_is_648_9_celsius() -> None:
    """Common practice, no source: what some coatings are said to stand."""
    assert round(to_celsius(1200), 1) == 648.9


@pytest.mark.parametrize("fahrenheit", [-40, 0, 32, 212, 572, 1200, 1562])
def test_fahrenheit_and_celsius_are_pints(fahrenheit: int) -> None:
    outside = UREG.Quantity(fahrenheit, UREG.degF).to(UREG.degC).magnitude
    assert to_celsius(fahrenheit) == pytest.approx(outside, abs=1e-9)
    assert to_fahrenheit(outside) == pytest.approx(fahrenheit, abs=1e-9)


@pytest.mark.parametrize(
    ("um", "expected"), [(40, "1.57 mil"), (120, "4.72 mil"), (12.7, "0.5 mil"), (80, "3.15 mil")]
)
def test_clear_coat_of_40_to_120_micrometres_is_1_57_to_4_72_mil(um: float, expected: str) -> None:
    """Common practice, no source; a mil is 25.4 µm by definition of the inch."""
    assert thickness(um, "mil") == expected
    assert UREG.Quantity(um, "micrometer").to("thou").magnitude == pytest.approx(
        float(expected.removesuffix(" mil")), abs=0.005
    )


@pytest.mark.parametrize(("typed", "um"), [("1.57 mil", 40), ("4.72 mil", 120), ("95 µm", 95)])
def test_what_is_shown_can_be_typed_back(typed: str, um: int) -> None:
    assert parse_amount(typed, dimension=Dimension.LENGTH).base == um
    assert thickness(um, typed.split()[1]) == typed


def test_a_thickness_is_shown_in_micrometres_or_mils_alone() -> None:
    with pytest.raises(KeyError):
        thickness(40, "furlong")


def test_a_coating_rated_below_its_surface_stops() -> None:
    assert heat_findings([Rated("BKTRVNXH", "Sill Coat", "caliper", 250)]) == (
        Finding(
            "heat.rating",
            "stop",
            "Sill Coat stands 250 °C (482 °F), and its surface gets hotter.",
            "Brake caliper up to 300 °C (572 °F), on the road.",
            "Take a coating that is rated for 300 °C (572 °F) or more, or leave the surface out.",
            "A table of working temperatures, from memory",
            ("BKTRVNXH",),
        ),
    )


def test_a_coating_of_unknown_rating_asks() -> None:
    assert heat_findings([Rated("BKTRVNXH", "Sill Coat", "caliper", None)]) == (
        Finding(
            "heat.rating",
            "ask",
            "Nobody has said what heat Sill Coat stands.",
            "Brake caliper up to 300 °C (572 °F), on the road.",
            "Read its technical sheet, and type its rated temperature in: 300 °C (572 °F) are wanted.",
            "A table of working temperatures, from memory",
            ("BKTRVNXH",),
        ),
    )


@pytest.mark.parametrize(
    ("surface", "stands_c", "because"),
    [
        ("caliper", 300, "rated for exactly what the surface reaches"),
        ("wheel", 250, "a wheel is cooler than a caliper"),
        ("exhaust_pipe", 649, "1200 °F stand an exhaust pipe"),
    ],
)
def test_a_coating_rated_for_its_surface_is_silent(surface: str, stands_c: int, because: str) -> None:
    assert heat_findings([Rated("BKTRVNXH", "Sill Coat", surface, stands_c)]) == (), because


def test_one_degree_less_than_the_surface_stops() -> None:
    assert [one.grade for one in heat_findings([Rated("B", "Sill Coat", "caliper", 299)])] == ["stop"]


def test_1200_fahrenheit_do_not_stand_a_manifold() -> None:
    [found] = heat_findings([Rated("B", "Sill Coat", "exhaust_manifold", 649)])
    assert (found.grade, found.says) == (
        "stop",
        "Sill Coat stands 649 °C (1200 °F), and its surface gets hotter.",
    )


def test_one_product_on_two_hot_surfaces_is_one_finding_with_the_hottest_named() -> None:
    uses = [Rated("B", "Sill Coat", "caliper", 200), Rated("B", "Sill Coat", "exhaust_pipe", 200)]
    [found] = heat_findings(uses)
    assert found.because == (
        "Brake caliper up to 300 °C (572 °F) and exhaust pipe up to 500 °C (932 °F), on the road."
    )
    assert found.do == "Take a coating that is rated for 500 °C (932 °F) or more, or leave the surface out."


def test_every_working_temperature_is_marked_from_memory() -> None:
    assert {one.mark for one in hot_surfaces().values()} == {"from memory"}
    assert in_both(300) == "300 °C (572 °F)"
