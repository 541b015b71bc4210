"""Decanting: when nozzle and container are bonded."""

import pytest

from safety.flammables.decanting import decanting, must_be_bonded


@pytest.mark.parametrize(
    ("of", "flash_c", "expected", "because"),
    [
        (1, -45, True, "category 1"),
        (2, 12, True, "category 2"),
        (3, 37.7, True, "category 3 below 37.8 °C"),
        (3, 37.8, False, "and not from there"),
        (3, None, True, "nobody knows its flash point"),
        (4, 61, False, "category 4"),
        (0, None, False, "does not burn"),
        (None, None, False, "nobody classified it: told elsewhere"),
    ],
)
def test_what_lights_below_37_8_degrees_is_bonded(
    of: int | None, flash_c: float | None, expected: bool, because: str
) -> None:
    """29 CFR 1910.106(e)(6)(ii): 100 °F."""
    assert must_be_bonded(of, flash_c) is expected, because
    assert bool(decanting("thinner", of, flash_c)) is expected


def test_pouring_says_what_to_do_first() -> None:
    [told] = decanting("panel wipe", 2, 12)
    assert (told.code, told.grade) == ("flammables.bonding", "tell")
    assert told.says == "panel wipe can light from a spark of static while it is poured."
    assert told.because == "It is a flammable liquid of category 2, flash point 12 °C."
    assert told.do.startswith("Join nozzle and container by a bonding wire before you pour;")
