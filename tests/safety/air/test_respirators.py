"""Which mask is enough, and up to where: maximum use concentration, cartridge, and what is never enough."""

from typing import Any

import pytest

from safety.air.respirators import Exposed as Met
from safety.air.respirators import cartridge_cap, cartridge_for, enough, factors, maximum_use, why_not
from safety.air.substances import substances
from tests.safety.air.tasks import ACETONE, AMMONIA, ISOPROPANOL, XYLENE, finding, judged

CAS = {"isopropanol": "67-63-0", "xylene": "1330-20-7", "acetone": "67-64-1", "ammonia": "7664-41-7"}


def cap(name: str, limit_ppm: float, idlh_ppm: float, cartridge: str) -> float:
    return maximum_use(factors("US")["half"].factor, limit_ppm, idlh_ppm, cartridge_cap(cartridge, "US")).ppm


@pytest.mark.parametrize(
    ("name", "limit", "idlh", "cartridge", "expected", "because"),
    [
        ("isopropanol", 400, 2000, "organic vapor", 1000, "the cartridge"),
        ("xylene", 100, 900, "organic vapor", 900, "IDLH"),
        ("acetone", 250, 2500, "organic vapor", 1000, "the arithmetic alone: it boils at 56 °C"),
        ("ammonia", 25, 300, "ammonia", 250, "ten times the limit"),
    ],
)
def test_a_half_mask_may_be_used_up_to(
    name: str, limit: float, idlh: float, cartridge: str, expected: float, because: str
) -> None:
    """29 CFR 1910.134(d)(3)(i)(B) and 42 CFR 84.190; the four values worked by hand."""
    assert cap(name, limit, idlh, cartridge) == expected, because


@pytest.mark.parametrize(
    ("name", "regime", "expected"),
    [
        ("acetone", "US", "none"),
        ("acetone", "UK", "AX"),
        ("acetone", "EU", "AX"),
        ("isopropanol", "UK", "A"),
        ("xylene", "EU", "A"),
        ("ammonia", "UK", "K"),
        ("isopropanol", "US", "organic vapor"),
        ("ammonia", "US", "ammonia"),
    ],
)
def test_a_cartridge_goes_by_substance_boiling_point_and_regime(
    name: str, regime: str, expected: str
) -> None:
    """EN 14387 types (read): A above 65 °C, AX up to 65 °C, K ammonia; US: below 65 °C supplied air."""
    assert cartridge_for(substances()[CAS[name]], "vapour", regime) == expected


@pytest.mark.parametrize(
    ("regime", "cartridge", "expected"),
    [
        ("US", "organic vapor", 1000),
        ("US", "ammonia", 300),
        ("US", "chlorine", 10),
        ("US", "hydrogen chloride", 50),
        ("US", "sulfur dioxide", 50),
        ("US", "particles", None),
        ("UK", "A", 1000),
        ("EU", "K", 1000),
        ("UK", "P", None),
    ],
)
def test_a_cartridge_is_approved_up_to(regime: str, cartridge: str, expected: float | None) -> None:
    """42 CFR 84.190; EN 14387, whose classes 1, 2, 3 end at 1000, 5000, 10 000 ppm: the lowest counts."""
    assert cartridge_cap(cartridge, regime) == expected


def test_methanol_boils_just_below_65_degrees() -> None:
    assert cartridge_for(substances()["67-56-1"], "vapour", "US") == "none"
    assert cartridge_for(substances()["67-56-1"], "vapour", "UK") == "AX"


def test_dust_and_an_unknown_mist_need_a_particle_filter_an_unknown_vapour_supplied_air() -> None:
    assert (cartridge_for(None, "dust", "US"), cartridge_for(None, "mist", "UK")) == ("particles", "P")
    assert cartridge_for(None, "vapour", "US") == "none"
    assert cartridge_for(substances()["67-63-0"], "mist", "UK") == "A"


@pytest.mark.parametrize(
    ("regime", "expected"),
    [
        ("US", {"quarter": 5, "half": 10, "full": 50, "powered_half": 50, "powered_full": 1000, "hood": 25}),
        ("UK", {"ffp1": 4, "ffp2": 10, "ffp3": 20, "half": 10, "full": 20, "hood": 10}),
    ],
)
def test_assigned_protection_factors_are_those_of_the_regime(regime: str, expected: dict[str, float]) -> None:
    """29 CFR 1910.134 Table 1 (from memory, agrees with two faithful copies); BS EN 529 (read); TH1 is 10."""
    table = {kind: row.factor for kind, row in factors(regime).items() if kind != "air_fed"}
    assert table == expected


def met(
    name: str = "isopropanol", worst: float | None = 800, idlh: bool = False, cartridge: str = "organic vapor"
) -> Met:
    return Met(name, worst, idlh, cartridge)


NO_FACTOR = "has no protection factor in the US table; no factor is known here"
DANGEROUS = "isopropanol reaches the value that is immediately dangerous to life or health"


@pytest.mark.parametrize(
    ("respirator", "ratio", "exposed", "expected"),
    [
        ("half", 10, [met()], ""),
        ("half", 10.1, [met()], "its protection factor is 10 and 10.1 is needed"),
        ("quarter", 6, [met()], "its protection factor is 5 and 6 is needed"),
        (
            "half", 2, [met(worst=1001)],
            "a cartridge organic vapor is approved for 1000 ppm and would meet 1001",
        ),
        (
            "full", 2, [met(worst=600), met("xylene", 500)],
            "a cartridge organic vapor is approved for 1000 ppm and would meet 1100",
        ),
        ("half", 2, [met("acetone", 300, cartridge="none")], "it does not filter acetone"),
        ("air_fed", 20, [met("acetone", 300, cartridge="none")], ""),
        ("air_fed", 20, [met("acetone", 5000, cartridge="organic vapor")], ""),
        ("powered_full", 1, [met(idlh=True)], DANGEROUS),
        ("air_fed", 1, [met(idlh=True)], DANGEROUS),
        ("ffp3", 1, [met()], f"an FFP3 mask {NO_FACTOR}"),
        ("none", 1, [met()], f"no respirator {NO_FACTOR}"),
        ("half", 1, [met(worst=None)], "nobody knows how many ppm of isopropanol its cartridge would meet"),
    ],
)  # fmt: skip
def test_a_respirator_is_enough_or_says_why_not(
    respirator: str, ratio: float, exposed: list[Met], expected: str
) -> None:
    assert why_not(respirator, "US", ratio, tuple(exposed)) == expected


def test_a_dust_mask_filters_no_vapour_and_a_half_mask_dust() -> None:
    dust, vapour = met("quartz", None, cartridge="P"), met(cartridge="A")
    assert why_not("ffp3", "UK", 5, (dust,)) == ""
    assert why_not("ffp3", "UK", 5, (vapour,)) == "it does not filter isopropanol"
    assert why_not("half", "UK", 5, (dust,)) == ""


def test_what_is_enough_is_listed_from_the_mildest() -> None:
    assert enough("US", 8, (met(),)) == ("half", "full", "powered_half", "powered_full", "hood", "air_fed")
    assert enough("US", 30, (met(),)) == ("full", "powered_half", "powered_full")
    assert enough("US", 2000, (met(),)) == ()


def wipe(amount: float, **changed: Any) -> dict[str, Any]:
    return ISOPROPANOL | {"grams": amount} | changed


def test_a_mask_that_is_enough_turns_the_stop_into_an_ask_with_what_comes_before_it() -> None:
    bare, masked = (finding("air.exposure", wipe(500), respirator=kind) for kind in ("none", "half"))
    assert bare is not None
    assert masked is not None
    assert (bare.grade, masked.grade) == ("stop", "ask")
    assert masked.do == (
        "Wear a half mask from start to clear air: medical evaluation and fit test in date, "
        "clean-shaven where it seals."
    )


def test_others_leave_where_the_rooms_own_average_reaches_a_limit() -> None:
    told = finding("air.exposure", wipe(300), respirator="half", place={"mixing_k": 6})
    assert told is not None
    assert told.do.startswith("The room's average reaches ")
    assert "nobody else stays in it." in told.do


def test_a_mask_that_is_not_enough_leaves_the_stop() -> None:
    told = finding("air.exposure", wipe(785), respirator="half")
    mask = finding("air.respirator", wipe(785), respirator="half")
    assert told is not None
    assert mask is not None
    assert (told.grade, mask.grade) == ("stop", "ask")
    assert mask.says == (
        "A half mask is not enough: a cartridge organic vapor is approved for 1000 ppm and would meet 1193."
    )


def test_a_mask_must_divide_the_ceilings_peak_too() -> None:
    """Chlorine has a ceiling of 0.5 ppm and no 8-hour value in the US; its cartridge ends at 10 ppm."""
    chlorine = {"name": "chlorine", "cas": "7782-50-5", "grams": 0.1}
    told = finding("air.respirator", chlorine, minutes=5, respirator="quarter", place={"volume_m3": 1000})
    assert told is not None
    peak = judged(chlorine, minutes=5, place={"volume_m3": 1000}).as_json()["contaminants"][0]
    needed = f"{peak['breathing_zone_ppm'] / 0.5:.3g}"
    assert (
        told.because
        == f"The air must be divided by {needed}; its protection factor is 5 (from memory: check it)."
    )


def test_at_idlh_no_mask_is_advised() -> None:
    """Isopropanol: 2000 ppm."""
    found = judged(wipe(1400), respirator="powered_full")
    assert [one.code for one in found.findings][:2] == ["air.idlh", "air.exposure"]
    assert found.findings[0].grade == "stop"
    assert found.facts.enough == ()
    assert "air.respirator" not in [one.code for one in found.findings]
    assert "air.idlh" not in [one.code for one in judged(wipe(785)).findings]


@pytest.mark.parametrize("emission", [XYLENE, ACETONE, AMMONIA])
def test_where_nothing_is_reached_and_nothing_worn_no_mask_is_spoken_of(emission: dict[str, Any]) -> None:
    assert finding("air.respirator", emission | {"grams": 0.01}) is None
