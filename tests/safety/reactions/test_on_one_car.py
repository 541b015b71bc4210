"""One after the other on one car: what a signed rinse must part, and the ordinary work that goes on."""

import pytest

from safety.reactions.car import on_one_car
from safety.reactions.values import Substance
from tests.safety.reactions.products import (
    ALKALINE,
    BIFLUORIDE,
    BLEACH,
    CITRIC,
    COATING,
    IRON,
    PEROXIDE,
    RIM_ACID,
    SHAMPOO,
    SOUR_IRON,
    TAR,
    WIPE,
    of,
)


@pytest.mark.parametrize(
    ("first", "then", "because"),
    [
        (RIM_ACID, IRON, "mineral acid"),
        (BIFLUORIDE, IRON, "a fluoride acid"),
        (CITRIC, IRON, "an organic acid as well"),
        (RIM_ACID, SOUR_IRON, "an iron remover that holds the free acid"),
        (of("15", "glass etch"), IRON, "a fluoride that nobody called an acid"),
        (BLEACH, RIM_ACID, "chlorine"),
        (BLEACH, CITRIC, "chlorine"),
        (BLEACH, IRON, "heat and toxic gas"),
        (BLEACH, of("ammonia 106", "glass cleaner"), "chloramines from ammonia"),
        (BLEACH, of("ammonium 106", "wheel salt"), "chloramines from an ammonium salt"),
        (BLEACH, of("7 106", "cleaner with triethanolamine"), "chloramines from an amine"),
        (BLEACH, of("quat 106", "disinfectant"), "chloramines from quaternary ammonium"),
        (PEROXIDE, IRON, "peroxide heats thioglycolate up"),
        (PEROXIDE, of("20", "odour tracer"), "and any mercaptan"),
        (CITRIC, of("sulfite 106", "dye remover"), "sulfur dioxide"),
        (RIM_ACID, of("EUH031 106", "pool powder"), "its label says toxic gas with acids"),
        (RIM_ACID, of("EUH032 106", "etching salt"), "its label says very toxic gas with acids"),
    ],
)
def test_what_gives_off_toxic_gas_stops_in_either_order_until_a_rinse_is_signed(
    first: Substance, then: Substance, because: str
) -> None:
    for a, b in ((first, then), (then, first)):
        found = on_one_car(a, b)
        assert found is not None, because
        assert (found.code, found.grade) == ("reaction.car", "stop")
        assert found.do == "Rinse car and floor with water to a clear drain, and sign the rinse."
        assert on_one_car(a, b, rinsed=True) is None


def test_the_stop_says_what_would_happen_and_that_the_evidence_is_mixed() -> None:
    found = on_one_car(RIM_ACID, IRON)
    assert found is not None
    assert found.says == (
        "Kerbline rim acid and Rustfall iron remover follow one another on this car without a rinse. "
        "Thioglycolate or mercaptan with acid stinks, and toxic sulfur gas is possible; the "
        "evidence is mixed."
    )
    assert found.because == (
        "House rule S5 (thioglycolate and acid): toxic gas. Also found: chart, cell 1-20 (mineral acids, "
        "non-oxidising with mercaptans and organic sulfides): toxic gas and flammable gas."
    )
    assert found.source == (
        "house rule S5: reagent data sheet; the NIOSH Pocket Guide lists oxidisers and bases, not acids "
        "(read); EPA-600/2-80-076, figure 6, cell 1-20 (read in a copy)"
    )


@pytest.mark.parametrize(
    ("first", "then", "because"),
    [
        (ALKALINE, IRON, "iron remover after an alkaline wash"),
        (SHAMPOO, IRON, "iron remover after a neutral wash"),
        (IRON, WIPE, "a solvent after iron remover"),
        (IRON, TAR, "tar remover after iron remover"),
        (IRON, SOUR_IRON, "two iron removers are one chemistry"),
        (RIM_ACID, ALKALINE, "acid wheels, then an alkaline foam"),
        (RIM_ACID, SHAMPOO, "acid wheels, then a wash"),
        (RIM_ACID, CITRIC, "acid wheels, then water spots"),
        (PEROXIDE, RIM_ACID, "upholstery and wheels"),
        (ALKALINE, SOUR_IRON, "and one that holds the free acid"),
        (BLEACH, SHAMPOO, "bleach, then a wash"),
        (BLEACH, ALKALINE, "bleach is alkaline itself"),
        (BLEACH, of("6 106", "wash with an amide"), "an amide is no amine"),
        (BLEACH, PEROXIDE, "oxygen only, where the contents mix"),
        (PEROXIDE, of("quat 106", "disinfectant"), "peroxide makes no chloramines"),
        (PEROXIDE, of("7 106", "cleaner with an amine"), "nor from amines"),
        (ALKALINE, of("ammonium 106", "wheel salt"), "ammonia stinks in time"),
        (ALKALINE, of("sulfite 106", "dye remover"), "a sulfite with alkali"),
        (RIM_ACID, of("105 106", "rust converter"), "another reducer"),
        (RIM_ACID, of("EUH066 106", "degreaser"), "dry skin is no gas"),
        (SHAMPOO, of("EUH031 106", "pool powder"), "a neutral wash is no acid"),
        (SHAMPOO, of("quat 106", "disinfectant"), "a wash before a disinfectant"),
        (SHAMPOO, PEROXIDE, "a wash before the upholstery"),
        (SHAMPOO, RIM_ACID, "a wash before the wheels"),
        (SHAMPOO, WIPE, "a wash before the wipe"),
        (WIPE, TAR, "two solvents"),
        (SHAMPOO, COATING, "a wash days before the coating"),
        (COATING, COATING, "a second layer"),
    ],
)
def test_ordinary_work_goes_on(first: Substance, then: Substance, because: str) -> None:
    assert (on_one_car(first, then), on_one_car(then, first)) == (None, None), because


def test_a_daily_wheel_clean_with_acid_and_iron_remover_is_possible_in_order_with_its_rinse() -> None:
    steps = [(RIM_ACID, IRON, True), (IRON, ALKALINE, False), (ALKALINE, WIPE, False)]
    assert [on_one_car(a, b, rinsed) for a, b, rinsed in steps] == [None, None, None]


def test_a_silazane_coating_after_a_solvent_wipe_is_a_wait_and_no_stop() -> None:
    found = on_one_car(WIPE, COATING)
    assert found is not None
    assert (found.code, found.grade) == ("reaction.car_wait", "tell")
    assert found.says.startswith(
        "Clearday panel wipe and Tidewall coating meet on the panel where the wipe has not flashed off."
    )
    assert found.do == "Wait until the wipe has flashed off and the panel is dry, then coat."
    assert on_one_car(TAR, COATING) is None, "naphtha holds no alcohol"
