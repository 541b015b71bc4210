"""The numbers of a reason in words: units, three figures, and nothing of the program's own."""

import pytest

from safety.hazards.mixtures.values import Because
from safety.hazards.reasons import number, numbers_of


@pytest.mark.parametrize(
    ("numbers", "says", "because"),
    [
        (
            {
                "counted": [{"name": "Propan-2-ol", "percent": 32.765957446808514, "limit": 10.0}],
                "shares": 3.2765957446808516,
            },
            "Propan-2-ol 32.8 %, limit 10 %; shares 3.28",
            "a sum and its shares",
        ),
        ({"percent": {"Xylene": 55.0}, "sum": 55.0}, "percent Xylene 55 %; sum 55 %", "shares by name"),
        ({"flash_point_c": 28, "boiling_point_c": None}, "flash point 28 °C; boiling point not known",
         "a measured value, and one that nobody measured"),
        ({"ingredient": "Lye", "own_limit": 0.5}, "Lye; own limit 0.5 %", "one alone"),
        (
            {"counted": [{"name": "a", "percent": 26, "ate": 2737, "from": "its value"}], "ate": 872.5,
             "unit": "mg/kg", "limit": 2000},
            "a 26 %, ATE 2737, from its value; ATE 872 mg/kg; limit 2000 mg/kg",
            "an ATE carries its own unit, and so does its limit",
        ),
    ],
)  # fmt: skip
def test_numbers_are_said_with_their_units(numbers: dict[str, object], says: str, because: str) -> None:
    assert numbers_of(Because("x", "rule", "source", "S", numbers)) == says, because


@pytest.mark.parametrize(
    ("value", "says"),
    [(123456.0, "123000"), (0.00012345, "0.000123"), (0.0, "0.0"), (None, "not known"), ((), "none")],
)
def test_a_number_has_three_figures_and_no_powers_of_ten(value: object, says: str) -> None:
    assert number(value) == says
