"""The traps of exposure arithmetic, a test or more for each: what goes wrong most, and hurts most.

Numbers are worked by hand from the formulas' own definitions unless another source stands beside them.
"""

import math
from datetime import date
from typing import Any

import pytest

from safety.air.cure import given_off
from tests.safety.air.tasks import (
    ACETONE,
    AMMONIA,
    BUTANE,
    BUTOXYETHANOL,
    ETHANOL,
    FLUORIDE,
    HARDENER,
    ISOPROPANOL,
    METHANOL,
    NAPHTHA,
    PROPANE,
    QUARTZ,
    SILICATE,
    TODAY,
    XYLENE,
    answer,
    finding,
    grade,
    judged,
)

Emission = dict[str, Any]
CABIN = {"volume_m3": 3, "air_m3_h": 0}


def grams(emission: Emission, amount: float | None, **changed: Any) -> Emission:
    return emission | {"grams": amount} | changed


def only(emission: Emission, **changed: Any) -> dict[str, Any]:
    """The one contaminant of a task's answer."""
    [one] = answer(emission, **changed)["contaminants"]
    return one


# 1: two molar volumes
def test_the_same_grams_are_fewer_ppm_at_20_degrees_than_at_25() -> None:
    wipe = grams(ISOPROPANOL, 100)
    us, uk = (only(wipe, regime=regime)["room_ppm"] for regime in ("US", "UK"))
    assert us / uk == pytest.approx(24.45 / 24.055)


def test_both_published_units_stand_as_published_and_none_is_made_from_the_other() -> None:
    """OSHA Table Z-1: 400 ppm and 980 mg/m³, although 400 ppm are 983; methanol is listed in ppm alone."""
    one = only(grams(ISOPROPANOL, 100))
    assert (one["limit_ppm"], one["limit_mg_m3"]) == (400, 980)
    one = only(grams(METHANOL, 100))
    assert (one["limit_ppm"], one["limit_mg_m3"], one["room_mg_m3"]) == (200, None, None)


# 2: K once
def test_k_divides_the_air_of_the_build_up_and_the_purge_and_multiplies_what_is_needed() -> None:
    wipe, k = grams(ISOPROPANOL, 100), {"mixing_k": 5}
    mixed = answer(wipe, place=k)
    rate = 600 / 60 / 5 / 100
    room = 100_000 / 60 / 100 / rate * (1 - math.exp(-rate * 60))
    assert mixed["contaminants"][0]["room_mg_m3"] == pytest.approx(room)
    assert mixed["needed_m3_h"] == pytest.approx(5 * answer(wipe)["needed_m3_h"])
    assert mixed["clear_after_min"] == pytest.approx(
        math.log(mixed["contaminants"][0]["room_ppm"] / 40) / rate
    )


def test_k_never_comes_on_top_of_the_near_field() -> None:
    wipe = grams(ISOPROPANOL, 100)
    assert answer(wipe, place={"mixing_k": 1.5})["contaminants"][0]["breathing_zone_ppm"] == pytest.approx(
        answer(wipe)["contaminants"][0]["breathing_zone_ppm"]
    )


# 3: no dilution figure, stops, tenths
NO_FIGURE = [
    (grams(FLUORIDE, 1), "it is a fluoride"),
    (grams({"name": "ammonium bifluoride"}, 1), "it is a fluoride"),
    (grams(HARDENER, 1), "it is an isocyanate"),
    (grams({"name": "aliphatic polyisocyanate"}, 1), "it is an isocyanate"),
    (grams(QUARTZ, 1), "it is silica"),
    (grams(ISOPROPANOL, 1, form="mist"), "it is a mist"),
    (grams(ISOPROPANOL, 1, form="dust"), "it is a dust"),
    (grams({"name": "n-heptane", "cas": "142-82-5"}, 1), "it has a ceiling limit"),
    (grams({"name": "toluene", "cas": "108-88-3"}, 1), "it has a ceiling limit"),
    (grams(ISOPROPANOL, 1, hazards=["Acute Tox. 2 H330"]), "it carries H330"),
    (grams(ISOPROPANOL, 1, hazards=["Acute Tox. 3 H331"]), "it carries H331"),
    (grams(ISOPROPANOL, 1, hazards=["Resp. Sens. 1 H334"]), "it carries H334"),
    (grams(ISOPROPANOL, 1, hazards=["Carc. 1A H350i"]), "it carries H350i"),
    (grams(XYLENE, 1), "its lowest limit in any list is 50 ppm"),
    (grams({"name": "n-butyl acetate", "cas": "123-86-4"}, 1), "its lowest limit in any list is 50 ppm"),
    (grams(BUTOXYETHANOL, 1), "its lowest limit in any list is 5 ppm"),
    (grams(NAPHTHA, 1), "it has a ceiling limit"),
    (grams({"name": "something new"}, 1), "no limit was found"),
]


@pytest.mark.parametrize(("emission", "why"), NO_FIGURE)
def test_no_air_flow_is_named_where_dilution_protects_nobody(emission: Emission, why: str) -> None:
    document = answer(emission)
    assert (document["needed_m3_h"], document["needed_m3_h_breathing_zone"]) == (None, None)
    told = finding("air.no_figure", emission)
    assert told is not None
    assert told.because == f"{emission['name']}: {why}."
    assert told.do == "Local exhaust, and a competent person's assessment."


@pytest.mark.parametrize("emission", [ISOPROPANOL, ACETONE, ETHANOL, METHANOL, BUTANE])
def test_an_air_flow_is_named_where_every_list_allows_100_ppm(emission: Emission) -> None:
    assert answer(grams(emission, 1))["needed_m3_h"] > 0
    assert finding("air.no_figure", grams(emission, 1)) is None


@pytest.mark.parametrize(
    ("emission", "regime", "why"),
    [
        (grams(ISOPROPANOL, 1), "EU", "isopropanol: no 8-hour limit was found in EU IOELV."),
        (
            grams(
                {"name": "resin"}, 1, limits=[{"kind": "TWA", "value": 900, "unit": "mg/m3", "from": "sheet"}]
            ),
            "UK",
            "resin: its limits cannot be told in ppm.",
        ),
    ],
)
def test_no_air_flow_is_named_where_the_regime_has_no_limit_or_none_in_ppm(
    emission: Emission, regime: str, why: str
) -> None:
    told = finding("air.no_figure", emission, regime=regime)
    assert told is not None
    assert told.because == why


def test_a_limit_in_mg_alone_is_told_in_ppm_for_this_bound() -> None:
    """800 mg/m³ of ethanol are 425 ppm, 100 mg/m³ are 53: below 100."""
    for value, allowed in ((800, True), (100, False)):
        typed = [{"kind": "TWA", "value": value, "unit": "mg/m3", "from": "our country"}]
        assert (answer(grams(ETHANOL, 1, limits=typed), regime="EU")["needed_m3_h"] is not None) is allowed


def test_one_that_forbids_a_figure_forbids_it_for_the_sum() -> None:
    assert answer(grams(ISOPROPANOL, 10), grams(XYLENE, 1))["needed_m3_h"] is None


def test_no_air_flow_is_enough_where_the_near_field_alone_reaches_the_limit() -> None:
    """785 g/h of isopropanol gather to 662 ppm, 300 g/h to 253 ppm, by hand; the limit is 400."""
    document = answer(grams(ISOPROPANOL, 785))
    assert document["needed_m3_h"] == pytest.approx(798, abs=1)
    assert document["needed_m3_h_breathing_zone"] is None
    told = finding("air.no_flow_is_enough", grams(ISOPROPANOL, 785))
    assert told is not None
    assert (
        told.says
        == "No air flow is enough for who works here; the figure for the room serves only the others."
    )
    document = answer(grams(ISOPROPANOL, 300))
    assert document["needed_m3_h_breathing_zone"] == pytest.approx(830, abs=1)


@pytest.mark.parametrize(
    ("emission", "respirator", "expected"),
    [
        (grams(FLUORIDE, 0.001), "none", "stop"),
        (grams(FLUORIDE, 0.001), "half", "stop"),
        (grams(FLUORIDE, 0.001), "full", None),
        (grams(HARDENER, 0.0001, form="mist"), "powered_full", "stop"),
        (grams(HARDENER, 0.0001, form="mist"), "air_fed", None),
        (grams(HARDENER, 0.0001), "none", None),
        (grams(QUARTZ, 0.0001), "none", "stop"),
        (grams(QUARTZ, 0.0001), "half", None),
        (grams(QUARTZ, 0.0001), "ffp3", "stop"),  # no class of the US table
        (grams(ISOPROPANOL, 1, form="mist"), "quarter", "stop"),
        (grams(ISOPROPANOL, 1), "none", None),
    ],
)
def test_what_needs_a_named_protection_stops_without_it(
    emission: Emission, respirator: str, expected: str | None
) -> None:
    assert grade("air.named_protection", emission, respirator=respirator) == expected


@pytest.mark.parametrize(
    ("emission", "minutes", "expected", "because"),
    [
        (grams(ISOPROPANOL, 785), 60, "stop", "1 193 ppm against 500 in 15 minutes"),
        (grams(ISOPROPANOL, 100), 60, "ask", "152 ppm are 30 % of 500"),
        (grams(ISOPROPANOL, 20), 60, "tell", "30 ppm are 6 % of 500"),
        (grams(XYLENE, 4), 15, "tell", "a job of a few grams is not a stop"),
        (grams(BUTOXYETHANOL, 5), 15, "tell", "likewise"),
        (grams(ETHANOL, 1800), 480, "ask", "no 15-minute value: the shift's average alone, below 1000 ppm"),
    ],
)
def test_a_breathing_zone_stops_at_its_own_limit_asks_from_a_tenth_and_is_told_below(
    emission: Emission, minutes: float, expected: str, because: str
) -> None:
    assert grade("air.exposure", emission, minutes=minutes) == expected, because


def test_the_shifts_average_is_the_tasks_mean_over_480_minutes() -> None:
    """Ethanol has an 8-hour value alone. The mean of an hour at 300 g, by the integrals of both parts."""
    told = finding("air.exposure", grams(ETHANOL, 300))
    assert told is not None
    g = 300_000 / 60
    far, near = g / 10 * (1 - (1 - math.exp(-6)) / 6), g / 8.04248
    near *= 1 - (1 - math.exp(-7.5 * 60)) / (7.5 * 60)
    percent = (far + near) * 24.45 / 46.07 / 1000 * 60 / 480 * 100
    assert f"ethanol {percent:.3g} % of 1000 ppm (OSHA PEL, read)" in told.because
    assert "Not judged, no 15-minute limit is listed: ethanol." in told.because


# 4: assigned factors differ
@pytest.mark.parametrize(("regime", "respirator"), [("US", "full"), ("UK", "full")])
def test_a_full_face_gas_mask_divides_by_50_in_the_us_and_by_20_in_the_uk(
    regime: str, respirator: str
) -> None:
    emission = grams(AMMONIA, 30)
    told = finding("air.respirator", emission, regime=regime, respirator=respirator)
    assert told is not None
    assert f"its protection factor is {50 if regime == 'US' else 20}" in told.because


# 5: no limit is not safe; the skin
def test_no_limit_found_asks_and_names_the_list() -> None:
    told = finding("air.no_limit", grams(ISOPROPANOL, 10), regime="EU")
    assert told is not None
    assert (told.grade, told.says) == ("ask", "No limit was found for isopropanol in EU IOELV.")
    document = answer(grams(ISOPROPANOL, 10), regime="EU")
    assert (document["index"], document["needed_m3_h"], document["clear_after_min"]) == (None, None, None)
    assert finding("air.no_limit", grams(ISOPROPANOL, 10)) is None


def test_air_below_the_limit_does_not_clear_the_skin() -> None:
    told = finding("air.skin", grams(BUTOXYETHANOL, 0.01))
    assert told is not None
    assert told.because == "Its limit carries a skin notation: air below the limit does not clear the task."
    assert finding("air.skin", grams(ISOPROPANOL, 0.01)) is None


# 6: every contaminant is summed
def test_two_that_stay_below_their_limits_reach_the_limit_together() -> None:
    alone = [grade("air.exposure", grams(each, 170)) for each in (ISOPROPANOL, ACETONE)]
    first, second = (answer(grams(each, 170))["index"] for each in (ISOPROPANOL, ACETONE))
    both = answer(grams(ISOPROPANOL, 170), grams(ACETONE, 170))
    assert alone == ["ask", "ask"]
    assert both["index"] == pytest.approx(first + second)
    assert both["needed_m3_h"] == pytest.approx(
        sum(answer(grams(each, 170))["needed_m3_h"] for each in (ISOPROPANOL, ACETONE))
    )


def test_an_index_of_a_part_is_none() -> None:
    assert answer(grams(ISOPROPANOL, 100), grams(ACETONE, None))["index"] is None


# 7: effective dates
@pytest.mark.parametrize(
    ("on", "limit"), [(date(2026, 11, 25), 0.010), (date(2028, 12, 31), 0.010), (date(2029, 1, 1), 0.006)]
)
def test_the_eu_limit_of_isocyanates_falls_after_2028(on: date, limit: float) -> None:
    """98/24/EC Annex I (read): 10 µg NCO/m³ until 2028-12-31, then 6."""
    [one] = answer(grams(HARDENER, 0.001), regime="EU", on=on)["contaminants"]
    assert one["limit_mg_m3"] == pytest.approx(limit)


def test_an_isocyanate_is_counted_by_its_mass_of_nco() -> None:
    """HDI holds two NCO of 42.017 in 168.19: 49.96 %. A product that does not say counts whole."""
    known, unknown = (
        answer(grams(each, 0.001), regime="EU") for each in (HARDENER, {"name": "polyisocyanate hardener"})
    )
    assert known["index"] / unknown["index"] == pytest.approx(2 * 42.017 / 168.193, abs=1e-4)


# 8: a room average is too mild for who works
@pytest.mark.parametrize("k", [1, 3, 10])
def test_who_works_is_judged_by_the_larger_of_two_models(k: float) -> None:
    one = only(grams(ISOPROPANOL, 100), place={"mixing_k": k})
    near = only(grams(ISOPROPANOL, 100))["breathing_zone_ppm"]
    assert one["breathing_zone_ppm"] == pytest.approx(max(near, one["room_ppm"]))


# 9: the lowest of the regime's limits
@pytest.mark.parametrize(
    ("emission", "regime", "limit", "origin", "mark"),
    [
        (SILICATE, "US", 10, "NIOSH REL", "S"),
        (ISOPROPANOL, "US", 400, "OSHA PEL", "S"),
        (ACETONE, "US", 250, "NIOSH REL", "S"),
        (ACETONE, "UK", 500, "UK WEL", "S2"),
        (ACETONE, "EU", 500, "EU IOELV", "S2"),
        (AMMONIA, "EU", 20, "EU IOELV", "M"),
        ({"name": "chlorine", "cas": "7782-50-5"}, "US", 0.5, "NIOSH REL, ceiling", "M"),
    ],
)
def test_the_lowest_limit_of_the_regime_judges_and_says_where_it_is_from(
    emission: Emission, regime: str, limit: float, origin: str, mark: str
) -> None:
    one = only(grams(emission, 1), regime=regime)
    assert (one["limit_ppm"], one["limit_from"], one["mark"]) == (limit, origin, mark)


def test_lists_are_compared_in_a_unit_that_both_publish() -> None:
    """Naphtha: PEL 500 ppm and 2000 mg/m³, REL 350 mg/m³ alone."""
    one = only(grams(NAPHTHA, 1))
    assert (one["limit_ppm"], one["limit_mg_m3"], one["limit_from"]) == (None, 350, "NIOSH REL")


def test_all_limits_are_shown_and_the_legal_one_is_named() -> None:
    told = finding("air.exposure", grams(ACETONE, 1))
    assert told is not None
    assert told.because.endswith(
        "All limits of acetone: OSHA PEL (the legal one) 8-hour limit 1000 ppm / 2400 mg/m³; "
        "NIOSH REL 8-hour limit 250 ppm."
    )


def test_a_limit_in_ppm_that_nothing_can_be_compared_with_asks() -> None:
    typed = [
        {"kind": "LEL", "value": 1, "unit": "%", "from": "sheet"},
        {"kind": "TWA", "value": 50, "unit": "ppm", "from": "sheet"},
    ]
    told = finding("air.no_molar_mass", grams({"name": "resin"}, 1, limits=typed))
    assert told is not None
    assert (told.grade, told.says) == ("ask", "resin cannot be compared with its limit.")
    typed[1]["unit"] = "mg/m3"
    assert finding("air.no_molar_mass", grams({"name": "resin"}, 1, limits=typed)) is None


def test_without_a_unit_in_common_each_limit_judges_in_its_own() -> None:
    typed = [
        {"kind": "TWA", "value": 10, "unit": "ppm", "from": "list one"},
        {"kind": "TWA", "value": 1, "unit": "mg/m3", "from": "list two"},
    ]
    one = only(grams(ISOPROPANOL, 10, limits=typed), regime="EU")
    assert one["limit_from"] == "list two"
    loose = [typed[0], typed[1] | {"value": 1000}]
    assert only(grams(ISOPROPANOL, 10, limits=loose), regime="EU")["limit_from"] == "list one"


def test_in_the_eu_the_limit_that_the_shop_typed_takes_the_indicative_ones_place() -> None:
    typed = [{"kind": "TWA", "value": 600, "unit": "ppm", "from": "our country"}]
    one = only(grams(ACETONE, 10, limits=typed), regime="EU")
    assert (one["limit_ppm"], one["limit_from"], one["mark"]) == (600, "our country", "typed")
    assert finding("air.indicative", grams(ACETONE, 10, limits=typed), regime="EU") is None
    assert grade("air.indicative", grams(ACETONE, 10), regime="EU") == "tell"


def test_elsewhere_a_typed_limit_judges_only_where_it_is_lower() -> None:
    for value, origin in ((100, "our state"), (900, "NIOSH REL")):
        typed = [{"kind": "TWA", "value": value, "unit": "ppm", "from": "our state"}]
        assert only(grams(ACETONE, 10, limits=typed))["limit_from"] == origin


def test_a_naphtha_is_never_without_limit_in_the_uk() -> None:
    """EH40's reciprocal calculation; its composition unknown, it counts as aromatic: 500 mg/m³."""
    one = only(grams(NAPHTHA, 1), regime="UK")
    assert (one["limit_mg_m3"], one["limit_from"], one["mark"]) == (
        500,
        "UK WEL, reciprocal calculation",
        "M",
    )


# 10: the car's cabin
def test_in_a_closed_cabin_3_8_ml_of_isopropanol_make_400_ppm_and_18_8_ml_a_tenth_of_the_lower_limit() -> (
    None
):
    """3 m³, no air; 0.785 g/ml; worked by hand."""
    assert only(grams(ISOPROPANOL, 3.8 * 0.785), place=CABIN)["room_ppm"] == pytest.approx(400, rel=0.015)
    assert answer(grams(ISOPROPANOL, 18.8 * 0.785), place=CABIN)["lel_percent"] == pytest.approx(10, rel=0.01)
    assert answer(grams(BUTANE, 11), place=CABIN)["lel_percent"] == pytest.approx(10, rel=0.05)
    assert answer(grams(PROPANE, 11), place=CABIN)["lel_percent"] == pytest.approx(10, rel=0.1)


@pytest.mark.parametrize(
    ("emission", "place", "expected"),
    [
        (grams(ISOPROPANOL, 1), CABIN, "stop"),
        (grams(BUTANE, 1), CABIN, "stop"),
        (grams({"name": "aerosol"}, 1, hazards=["Aerosol 1 H222+H229"]), CABIN, "stop"),
        (grams({"name": "soap"}, 1, hazards=[]), CABIN, None),
        (grams(ISOPROPANOL, 1), CABIN | {"air_m3_h": 30}, None),
        (grams(ISOPROPANOL, 1), {"air_m3_h": 0}, None),
        (grams(PROPANE, 1), CABIN, "stop"),  # a propellant has no flash point
        (grams({"name": "MEK peroxide", "cas": "1338-23-4"}, 1), CABIN, "stop"),  # burns; at what is unknown
        (grams({"name": "1-methoxypropyl acetate", "cas": "108-65-6"}, 1), CABIN, "stop"),  # 42 °C
        (grams(BUTOXYETHANOL, 1), CABIN, None),  # 61 °C
        (grams(BUTOXYETHANOL, 1, hazards=["Flam. Liq. 3 H226"]), CABIN, "stop"),  # its sheet says so
        (grams({"name": "N-methylpyrrolidone", "cas": "872-50-4"}, 1), CABIN, None),  # 86 °C
    ],
)
def test_something_flammable_in_a_closed_cabin_stops(
    emission: Emission, place: dict[str, Any], expected: str | None
) -> None:
    """Category 3 ends at a flash point of 60 °C: CLP Annex I and GHS, table 2.6.1."""
    assert grade("air.closed_space", emission, place=place) == expected


def test_what_hardly_burns_in_a_closed_cabin_is_still_judged_by_what_is_breathed() -> None:
    """100 g of a cleaner with 3 % 2-butoxyethanol: 3 g in 3 m³ make 1 g/m³, about 207 ppm; OSHA has 50."""
    cleaner = grams(BUTOXYETHANOL, 3)
    assert grade("air.closed_space", cleaner, place=CABIN) is None
    assert grade("air.exposure", cleaner, place=CABIN, minutes=240) == "stop"


# 11: the lower explosive limit and the flash point
@pytest.mark.parametrize(("amount", "expected"), [(14.8, "stop"), (14.5, "ask"), (7.4, "ask"), (7.2, None)])
def test_a_tenth_of_the_lower_limit_stops_and_a_twentieth_asks(amount: float, expected: str | None) -> None:
    """14.75 g of isopropanol in 3 m³ are 2 000 ppm, a tenth of 2 %."""
    assert grade("air.lel", grams(ISOPROPANOL, amount), place=CABIN) == expected


def test_all_vapours_and_propellants_count_together() -> None:
    """Le Chatelier: two shares of 6 % are 12 %."""
    both = (grams(ISOPROPANOL, 8.85), grams(BUTANE, 6.85))
    shares = [answer(each, place=CABIN)["lel_percent"] for each in both]
    assert (
        answer(*both, place=CABIN)["lel_percent"] == pytest.approx(sum(shares)) == pytest.approx(12, rel=0.01)
    )
    assert [grade("air.lel", *both, place=CABIN), grade("air.lel", both[0], place=CABIN)] == ["stop", "ask"]


def test_a_flammable_part_without_lower_limit_is_asked_for_by_name() -> None:
    emission = grams({"name": "new solvent"}, 1, hazards=["Flam. Liq. 2 H225"])
    told = finding("air.lel_unknown", emission)
    assert told is not None
    assert told.says == "New solvent burns, and its share of the explosive limit is not known."
    assert answer(emission)["lel_percent"] is None
    assert finding("air.lel_unknown", grams({"name": "soap"}, 1, hazards=[])) is None
    unsure = finding("air.lel_unknown", grams({"name": "soap"}, 1))
    assert unsure is not None
    assert unsure.says == "Nobody knows whether soap burns."


@pytest.mark.parametrize(
    ("emissions", "air_c", "panel_c", "expected", "because"),
    [
        ([ISOPROPANOL], 20, 20, "tell", "12 °C ≤ 20 + 5"),
        ([ISOPROPANOL], 6.9, 6.9, None, "12 °C > 6.9 + 5"),
        ([ISOPROPANOL], 6.9, 7, "tell", "the panel is the warmer one"),
        ([BUTOXYETHANOL], 25, 25, None, "61 °C"),
        ([BUTOXYETHANOL], 20, 56, "tell", "a panel in the sun"),
        ([XYLENE, ISOPROPANOL], 10, 10, "tell", "a mixture: 25 °C ≤ 10 + 15"),
        ([BUTANE], -20, -20, "tell", "a gas lights at any temperature"),
    ],
)
def test_nothing_may_spark_where_the_flash_point_is_near_the_warmer_of_air_and_panel(
    emissions: list[Emission], air_c: float, panel_c: float, expected: str | None, because: str
) -> None:
    """EN 1127-1 (from memory): 5 K to spare, 15 K for a mixture."""
    given = [grams(each, 0.1) for each in emissions]
    assert grade("air.ignition", *given, air_c=air_c, panel_c=panel_c) == expected, because


def test_a_mixture_keeps_fifteen_kelvin_where_one_liquid_keeps_five() -> None:
    """Xylene lights from 25 °C: alone it is spoken of from 20 °C of air, beside another from 10 °C."""
    both = finding("air.ignition", grams(XYLENE, 0.1), grams(ISOPROPANOL, 0.1), air_c=10)
    assert both is not None
    assert both.about == ("xylene", "isopropanol")
    assert finding("air.ignition", grams(XYLENE, 0.1), air_c=19.9) is None
    assert finding("air.ignition", grams(XYLENE, 0.1), air_c=20) is not None


def test_the_lowest_lower_limit_counts_the_tables_or_the_typed_one() -> None:
    typed = [{"kind": "LEL", "value": 1, "unit": "%", "from": "its sheet"}]
    lower, usual = (answer(grams(ISOPROPANOL, 5, **more))["lel_percent"] for more in ({"limits": typed}, {}))
    assert lower == pytest.approx(2 * usual)
    typed[0]["value"] = 4
    assert answer(grams(ISOPROPANOL, 5, limits=typed))["lel_percent"] == pytest.approx(usual)


def test_no_figure_stands_above_saturation() -> None:
    """Xylene of 25 °C at most: 0.9 kPa at 20 °C is 8 900 ppm, about 11 500 at 25 °C."""
    one = only(grams(XYLENE, 100_000), place={"air_m3_h": 1})
    assert one["room_ppm"] == one["breathing_zone_ppm"] == pytest.approx(11_500, rel=0.05)
    cold = only(grams(XYLENE, 100_000), place={"air_m3_h": 1}, air_c=20)
    assert cold["room_ppm"] == pytest.approx(0.9 / 101.325 * 1e6)


# 12: the worst quarter of an hour, and the peak
def test_a_short_step_is_judged_by_its_worst_quarter_of_an_hour() -> None:
    """The shift's average of both is the same or smaller; the quarter of an hour is not."""
    assert grade("air.exposure", grams(ISOPROPANOL, 170), minutes=15) == "stop"
    assert grade("air.exposure", grams(ISOPROPANOL, 170), minutes=120) == "ask"


def test_a_ceiling_is_met_by_the_peak() -> None:
    chlorine = grams({"name": "chlorine", "cas": "7782-50-5"}, 0.2)
    told = finding("air.exposure", chlorine, minutes=5)
    assert told is not None
    peak = only(chlorine, minutes=5)["breathing_zone_ppm"]
    assert f"The peak against the ceiling: chlorine {peak / 0.5 * 100:.3g} % of 0.5 ppm" in told.because


# 13: what cures gives off
@pytest.mark.parametrize(
    ("name", "cas", "expected"),
    [
        ("polysilazane", "", [("ammonia", 0.38), ("hydrogen", 0.089)]),
        ("crosslinker", "1185-55-3", [("methanol", 0.71)]),
        ("ethyl silicate", "78-10-4", [("ethanol", 0.88)]),
        ("isopropanol", "67-63-0", []),
    ],
)
def test_a_gram_that_cures_gives_off_this(name: str, cas: str, expected: list[tuple[str, float]]) -> None:
    assert [(gas.name, gas.grams) for gas in given_off(name, cas, 1)] == expected


def test_what_cures_is_told_to_count_its_gases() -> None:
    told = finding("air.cure", grams(SILICATE, 1))
    assert told is not None
    assert told.because == "Complete hydrolysis: 1 g of ethyl silicate gives off 0.88 g of ethanol."
    assert finding("air.cure", grams(ISOPROPANOL, 1)) is None


# 14: unknown is dangerous
@pytest.mark.parametrize(
    ("emission", "place", "missing"),
    [
        (grams(ISOPROPANOL, 10), {"volume_m3": None}, "the volume of the place"),
        (grams(ISOPROPANOL, 10), {"air_m3_h": None}, "its air flow"),
        (grams(ISOPROPANOL, None), {}, "the grams of isopropanol"),
    ],
)
def test_an_unknown_exposure_asks_and_advises_no_cartridge(
    emission: Emission, place: dict[str, Any], missing: str
) -> None:
    told = finding("air.unknown", emission, place=place, respirator="half")
    assert told is not None
    assert (told.grade, told.says) == ("ask", f"The exposure is not known: {missing} is missing.")
    document = answer(emission, place=place, respirator="half")
    assert document["index"] is document["contaminants"][0]["room_ppm"] is document["clear_after_min"] is None
    assert finding("air.respirator", emission, place=place, respirator="half") is None
    assert judged(emission, place=place).facts.enough == ()


def test_the_air_flow_that_is_needed_does_not_ask_for_the_one_there_is() -> None:
    assert answer(grams(ISOPROPANOL, 100), place={"air_m3_h": None})["needed_m3_h"] == pytest.approx(
        102, abs=0.5
    )
    assert answer(grams(ISOPROPANOL, None))["needed_m3_h"] is None


def test_an_unknown_mixing_factor_counts_as_6_and_is_shown() -> None:
    six, unknown = (answer(grams(ISOPROPANOL, 100), place={"mixing_k": k}) for k in (6, None))
    told = finding("air.mixing", grams(ISOPROPANOL, 100), place={"mixing_k": None})
    assert six["contaminants"] == unknown["contaminants"]
    assert told is not None
    assert told.says == "How well the air mixes is not known: K counts as 6."
    assert finding("air.mixing", grams(ISOPROPANOL, 100), place={"mixing_k": 6}) is None


def test_marks_travel_to_the_reader() -> None:
    told = finding("air.exposure", grams(AMMONIA, 1), regime="EU", on=TODAY)
    assert told is not None
    assert "(EU IOELV, from memory: check it)" in told.because
