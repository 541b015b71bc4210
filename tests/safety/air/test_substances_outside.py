"""The table of what evaporates against the data of the `chemicals` package (its compilations by CAS number).

It answers for pure substances; its rows for naphtha, white spirit and mixed xylenes are not usable for mass.
"""

import chemicals
import pytest
from chemicals.dippr import EQ101
from chemicals.vapor_pressure import Psat_data_Perrys2_8

from safety.air.substances import Substance, saturation_ppm, substances
from safety.hazards.tables import rows

TABLE = substances()
NO_MASS = {
    "1330-20-7": "mixed xylenes; the package refuses them, each isomer is 106.165",
    "8052-41-3": "white spirit; a mixture has no molar mass (the package gives 241, that of one part)",
    "8002-05-9": "naphtha; a mixture",
    "68476-85-7": "liquefied gas; ours is propane's, the lightest part",
    "1338-23-4": "methyl ethyl ketone peroxide is sold as a mixture of oligomers",
}
FLASH_DIFFERS = {
    # cas: (ours, the package's, why)
    "64-17-5": (13, 12, "55 °F and 12 °C are the same reading, rounded twice"),
    "540-88-5": (4, 1, "sheets say 1 to 22 °C by method; covered by the 5 K to spare"),
    "78-10-4": (37, 38, "99 °F, rounded"),
    "8052-41-3": (38, 43.3, "a cut: ours is the lowest flash point that the name may have"),
    "68-11-1": (126, 124, "two open-cup readings; nothing in a workshop is that hot"),
    "67-56-1": (11, 9, "52 °F against the standard's 9 °C; covered by the 5 K to spare"),
    "108-65-6": (42, 42.9, "rounded down"),
    "78-93-3": (-9, -10, "16 °F, rounded"),
    "142-82-5": (-4, -7, "25 °F against the standard's −7 °C; both far below any workshop"),
    "115-10-6": (None, -41, "a gas: it counts as lightable at any temperature"),
    "106-97-8": (None, -60, "a gas: it counts as lightable at any temperature"),
    "127-18-4": (None, 45, "does not burn by its classification; the package's row is a wrong one"),
    "822-06-0": (130, 140, "two readings, the lower one is ours"),
    "144-62-7": (None, 166, "a solid, met as its solution"),
    "1338-23-4": (None, 93.3, "sold diluted; what it lights is its own oxygen, not its flash point"),
    "94-36-0": (None, 80, "a solid that decomposes"),
}
LEL_DIFFERS = {
    # cas: (ours in %, the package's, why)
    "123-86-4": (1.7, 1.2, "the agency's against the standard's for explosion protection, which is lower"),
    "108-88-3": (1.1, 1.0, "likewise"),
    "142-82-5": (1.05, 0.85, "likewise"),
    "115-10-6": (3.4, 2.7, "likewise"),
    "106-97-8": (1.6, 1.4, "likewise"),
    "78-93-3": (1.4, 1.5, "ours is the lower"),
}


def celsius(kelvin: float | None) -> float | None:
    return None if kelvin is None else round(kelvin - 273.15, 1)


@pytest.mark.parametrize("cas", [cas for cas in TABLE if cas not in NO_MASS])
def test_a_molar_mass_is_the_packages(cas: str) -> None:
    assert TABLE[cas].molar_mass == pytest.approx(chemicals.MW(cas), abs=0.008)


def test_what_has_no_molar_mass_of_its_own_is_named_with_the_reason() -> None:
    without = {cas for cas, one in TABLE.items() if one.molar_mass is None}
    assert without < set(NO_MASS)


@pytest.mark.parametrize("cas", TABLE)
def test_a_flash_point_is_the_packages_or_its_difference_is_explained(cas: str) -> None:
    ours, theirs = TABLE[cas].flash_point_c, celsius(chemicals.T_flash(cas))
    if cas in FLASH_DIFFERS:
        assert (ours, theirs) == FLASH_DIFFERS[cas][:2]
    elif theirs is not None:
        assert ours == theirs


def test_no_flash_point_of_ours_goes_unchecked() -> None:
    ours = [cas for cas, one in TABLE.items() if one.flash_point_c is not None]
    assert [cas for cas in ours if chemicals.T_flash(cas) is None] == []
    assert len(ours) >= 19


def test_no_flash_point_of_a_solvent_differs_by_more_than_the_5_kelvin_to_spare_unless_ours_is_lower() -> (
    None
):
    apart = {cas: ours - theirs for cas, (ours, theirs, _) in FLASH_DIFFERS.items() if ours is not None}
    assert max(apart.values()) <= 5


LEL = {row["cas"]: float(row["value"]) for row in rows("exposure_limits") if row["list"] == "LEL"}


@pytest.mark.parametrize("cas", LEL)
def test_a_lower_explosive_limit_is_the_packages_or_its_difference_is_explained(cas: str) -> None:
    theirs = chemicals.LFL(None, None, cas)
    if cas in LEL_DIFFERS:
        assert (LEL[cas], pytest.approx(theirs * 100)) == LEL_DIFFERS[cas][:2]
    elif theirs is not None:
        assert LEL[cas] == pytest.approx(theirs * 100)


VAPOURS = [one for one in TABLE.values() if one.vapour_pressure_kpa and one.cas in Psat_data_Perrys2_8.index]


@pytest.mark.parametrize("one", VAPOURS, ids=lambda one: one.name)
@pytest.mark.parametrize("air_c", [5, 10, 20, 30, 40])
def test_saturation_is_perrys_or_above_and_never_more_than_six_percent_below(
    one: Substance, air_c: float
) -> None:
    """Perry's *Chemical Engineers' Handbook*, 8th edition, table 2-8, as the package gives it.

    A cap may stand too high, as it does in the cold; too low it would hide what is breathed.
    """
    row = Psat_data_Perrys2_8.loc[one.cas]
    pascal = EQ101(air_c + 273.15, *(row[f"C{number}"] for number in range(1, 6)))
    most = saturation_ppm(one, air_c)
    assert most is not None
    assert 0.94 <= most / (pascal / 101_325 * 1e6) <= 1.25


def test_enough_vapours_were_compared() -> None:
    assert len(VAPOURS) >= 8


def test_the_cure_table_is_the_stoichiometry_of_complete_hydrolysis() -> None:
    """SiH2NH + 2 H2O → SiO2 + NH3 + 2 H2; CH3Si(OCH3)3 → 3 CH3OH; Si(OC2H5)4 → 4 C2H5OH."""
    mass = chemicals.MW
    unit = 28.0855 + 3 * 1.008 + 14.007
    expected = {
        ("silazane", "ammonia"): mass("7664-41-7") / unit,
        ("silazane", "hydrogen"): 2 * mass("1333-74-0") / unit,
        ("methyltrimethoxysilane", "methanol"): 3 * mass("67-56-1") / mass("1185-55-3"),
        ("tetraethyl silicate", "ethanol"): 4 * mass("64-17-5") / mass("78-10-4"),
    }
    table = {(row["ingredient"], row["gas"]): float(row["grams"]) for row in rows("cure_gases")}
    assert table == {key: pytest.approx(value, abs=0.006) for key, value in expected.items()}
