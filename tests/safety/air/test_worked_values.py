"""Every formula against values worked outside this program, each with its source."""

import pytest

from safety.air.cure import given_off
from safety.air.explosive import fan_air_per_vapour, fan_m3_h, le_chatelier, lel_percent
from safety.air.hydrocarbons import reciprocal_mg_m3, rounded_mg_m3
from safety.air.near_field import exchange_m3_min, near_field, volume_m3
from safety.air.needed import dilution_m3_h, needed_for_breathing_zone, needed_for_room
from safety.air.room import fall, room
from safety.air.shift import additive_index, reduced, share_of_shift, twa_8h
from safety.air.units import MOLAR_VOLUME, mg_m3, ppm
from safety.air.values import Limit, NearField, Place

CFM = 1.699011  # m³/h in a cubic foot a minute
US_PINT_L = 0.473176
FT3_M3 = 0.0283168
AT_70_F = 24.15  # l/mol at 21.1 °C, which the constant 403 stands for


USUAL = NearField()


def place(volume: float, air_h: float, k: float = 1.0, near: NearField = USUAL) -> Place:
    return Place(volume, air_h, k, near)


def test_1_5_pints_of_methyl_chloroform_an_hour_need_285_cfm_and_1425_of_them_with_k_5() -> None:
    """ACGIH Industrial Ventilation ch. 2, worked example (from memory); exact 284.8 and 1424."""
    grams = 1.5 * US_PINT_L * 1.32 * 1000
    limit = Limit("", "TWA", 350, None, "M")
    dilution = dilution_m3_h(grams, 60, limit, 133.4, AT_70_F)
    assert dilution is not None
    assert dilution / CFM == pytest.approx(284.8, rel=0.002)
    assert needed_for_room([dilution], 5) / CFM == pytest.approx(1424, rel=0.002)


def test_a_limit_in_mg_gives_the_air_flow_without_any_molar_volume() -> None:
    """V2b is algebra: 300 g/h at 980 mg/m³."""
    assert dilution_m3_h(300, 60, Limit("", "TWA", None, 980, "S"), None, 24.45) == pytest.approx(
        306.122, 1e-5
    )


def test_a_gallon_of_toluene_needs_8564_cubic_feet_below_a_quarter_of_its_lower_limit() -> None:
    """29 CFR 1910.94(c)(6)(ii), its own example (from memory): LEL 1.4 %, 30.4 ft³ of vapour a gallon."""
    assert fan_air_per_vapour(1.4) * 30.4 == pytest.approx(8564, abs=0.5)


def test_a_fans_design_by_v5_is_four_hundred_over_the_limit_and_hotter_air_asks_for_more() -> None:
    """V5, ACGIH ch. 2 (from memory): 100·Sf/(LEL·B), B 0.7 above 250 °F; 2 % and Sf 4 are 200 volumes."""
    assert fan_m3_h(1, 2, 4) == pytest.approx(200)
    assert fan_m3_h(1, 2, 4, air_f=300) == pytest.approx(200 / 0.7)
    assert fan_m3_h(1, 2, 12) == pytest.approx(600)


@pytest.mark.parametrize(("changes_h", "minutes", "expected"), [(4, 20, 0.1841), (2, 40, 0.3682)])
def test_a_room_builds_up_as_a_handbooks_table_says(
    changes_h: float, minutes: float, expected: float
) -> None:
    """Engineering handbook's table (read): q = V = 1, m³ of contaminant an hour in 1 m³."""
    course = room(place(1, changes_h), minutes / 60 / 1000, minutes)
    assert course.peak == pytest.approx(expected, abs=5e-5)


@pytest.mark.parametrize(("minutes", "expected"), [(20.3, 200), (60, 419), (1e5, 600)])
def test_1_2_cfm_into_2000_cfm_reach_200_419_and_600_ppm(minutes: float, expected: float) -> None:
    """ACGIH ch. 2, worked example (from memory): V 100 000 ft³. A mg stands for 1e-6 of a m³ here."""
    hall = place(100_000 * FT3_M3, 2000 * CFM)
    ml = 1.2 * FT3_M3 * 1e6 * minutes
    assert room(hall, ml / 1000, minutes).peak == pytest.approx(expected, abs=1)


def test_purging_takes_the_logarithm_of_the_fall() -> None:
    """V4: from 600 to 100 ppm through 10 air changes an hour, ln 6 / 10 h."""
    assert fall(place(100, 1000), 600, 100) == pytest.approx(10.7506, abs=1e-4)


def test_the_near_fields_default_passes_8_042_m3_a_minute_and_holds_1_072_m3() -> None:
    """N3 (the parameter range from memory): r 0.8 m, 4 m/min; 3.6 to 15 m/min are 7.2 to 30.2."""
    assert exchange_m3_min(NearField()) == pytest.approx(8.042, abs=5e-4)
    assert volume_m3(NearField()) == pytest.approx(1.072, abs=5e-4)
    assert exchange_m3_min(NearField(air_speed_m_min=3.6)) == pytest.approx(7.2, abs=0.05)
    assert exchange_m3_min(NearField(air_speed_m_min=15)) == pytest.approx(30.2, abs=0.05)


# The near field that has β 10 m³/min and V_N 8 m³: V_N = ⅔πr³, β = πr²·speed.
RADIUS = (8 * 3 / (2 * 3.141592653589793)) ** (1 / 3)
EIGHT = NearField(RADIUS, 10 / (3.141592653589793 * RADIUS**2))


def test_100_mg_a_minute_reach_20_mg_beside_the_work_and_10_in_the_room() -> None:
    """Worked by hand from N1: Q 10, β 10 m³/min, V 100, V_N 8."""
    assert (exchange_m3_min(EIGHT), volume_m3(EIGHT)) == (pytest.approx(10), pytest.approx(8))
    steady = near_field(place(100, 600, near=EIGHT), 0.1 * 1e4, 1e4)
    assert steady.peak == pytest.approx(20, abs=1e-6)
    assert room(place(100, 600, near=EIGHT), 0.1 * 1e4, 1e4).peak == pytest.approx(10, abs=1e-6)


def test_the_mixing_factor_that_one_box_would_need_grows_with_the_air_flow() -> None:
    """N1: C_N = (G/Q)(1 + Q/β). By hand: Q 10, β 10 m³/min ask for 2; twice the air asks for 3."""
    for air_h, factor in ((600, 2), (1200, 3)):
        bay = place(100, air_h, near=EIGHT)
        at_nose, average = near_field(bay, 0.1 * 1e4, 1e4).peak, room(bay, 0.1 * 1e4, 1e4).peak
        assert at_nose / average == pytest.approx(factor, abs=1e-6)


def test_after_15_minutes_the_approximation_says_17_769() -> None:
    """N2 by hand: 10(1 − exp(−1.5)) + 10(1 − exp(−18.75))."""
    assert near_field(place(100, 600, near=EIGHT), 1.5, 15).peak == pytest.approx(17.769, abs=5e-4)


def test_785_g_of_isopropanol_an_hour_are_530_9_ppm_in_the_room_and_1192_9_at_the_nose() -> None:
    """Worked by hand: 600 m³/h, 100 m³, default near field; what gathers there is 662 ppm by itself."""
    bay = place(100, 600)
    at_nose, average = near_field(bay, 785, 60).peak, room(bay, 785, 60).peak
    assert ppm(average, 60.10, 24.45) == pytest.approx(530.9, abs=0.1)
    assert ppm(at_nose, 60.10, 24.45) == pytest.approx(1192.9, abs=0.2)
    gathered = 785_000 / 60 / exchange_m3_min(NearField())
    assert ppm(gathered, 60.10, 24.45) == pytest.approx(662, abs=0.5)


@pytest.mark.parametrize(
    ("grams", "for_room", "for_nose"), [(300, 305, 830), (100, 102, 129), (785, 798, None)]
)
def test_isopropanol_needs_this_air_for_the_room_and_that_for_the_breathing_zone(
    grams: float, for_room: float, for_nose: float | None
) -> None:
    """Worked by hand: 400 ppm, 24.45 l/mol; 300 g/h and 100 g/h."""
    dilution = dilution_m3_h(grams, 60, Limit("", "TWA", 400, 980, "S"), 60.10, 24.45)
    assert dilution is not None
    assert needed_for_room([dilution], 1) == pytest.approx(for_room, abs=0.5)
    breathing = needed_for_breathing_zone([dilution], NearField())
    assert breathing == (None if for_nose is None else pytest.approx(for_nose, abs=0.5))


def test_the_shifts_average_of_oshas_example_is_81_25_ppm() -> None:
    """29 CFR 1910.1000(d)(1)(ii), its own example (read)."""
    assert twa_8h([(2, 150), (2, 75), (4, 50)]) == 81.25


def test_oshas_mixture_takes_0_925_of_its_limit() -> None:
    """29 CFR 1910.1000(d)(2)(ii), its own example (read)."""
    assert additive_index([500 / 1000, 45 / 200, 40 / 200]) == pytest.approx(0.925)


def test_100_ppm_of_ammonia_are_69_65_mg() -> None:
    """mg/m³ = ppm·MW/24.45; worked by hand."""
    assert mg_m3(100, 17.03, MOLAR_VOLUME["US"]) == pytest.approx(69.65, abs=0.005)
    assert ppm(69.65, 17.03, MOLAR_VOLUME["US"]) == pytest.approx(100, abs=0.01)


def test_a_gram_of_silazane_gives_off_1_08_litres_of_hydrogen() -> None:
    """Stoichiometry by hand: 0.089 g of hydrogen, 24.45 l/mol, 2.016 g/mol."""
    [hydrogen] = [one for one in given_off("polysilazane", "", 1) if one.name == "hydrogen"]
    assert hydrogen.grams / 2.016 * 24.45 == pytest.approx(1.08, abs=0.005)


def test_ten_hours_a_shift_leave_seven_tenths_of_a_limit_and_eight_all_of_it() -> None:
    """Brief and Scala (from memory): (8/10)·(14/16)."""
    assert reduced(100, 10) == pytest.approx(70)
    assert reduced(100, 8) == 100
    assert share_of_shift(70, 600, 100) == pytest.approx(1)
    assert share_of_shift(100, 240, 100) == pytest.approx(0.5)


def test_two_vapours_share_their_lower_limit_by_le_chatelier() -> None:
    """Worked by hand: half isopropanol (2.0 %), half xylene (0.9 %) burn from 1.241 %."""
    assert le_chatelier([(0.5, 2.0), (0.5, 0.9)]) == pytest.approx(1.2414, abs=1e-4)
    assert lel_percent([(2000, 20_000), (900, 9000)]) == pytest.approx(20)


def test_a_white_spirit_of_52_27_and_21_percent_is_limited_at_840_rounded_800() -> None:
    """EH40's own example of the reciprocal calculation (from memory, computed)."""
    parts = {"alkanes from C7": 0.52, "cycloalkanes from C7": 0.27, "aromatics": 0.21}
    assert reciprocal_mg_m3(parts) == pytest.approx(840, abs=0.5)
    assert rounded_mg_m3(reciprocal_mg_m3(parts)) == 800
