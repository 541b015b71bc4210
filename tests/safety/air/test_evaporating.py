"""What of a product goes into the air: what does not, first; then vapours, cure gases, fumes and mist.

Boiling point and vapour pressure by 2004/42/EC and 2010/75/EU (from memory); cure gases by exposure.md,
section 0, trap 13 (computed from the stoichiometry of complete hydrolysis).
"""

import pytest

from safety.air.evaporating import Ingredient, density_kg_l, released
from safety.hazards.mixtures.reading import read_hazards

FLAMMABLE = read_hazards(["Flam. Liq. 3 H226"], "here")[0]
SENSITISER = read_hazards(["Skin Sens. 1 H317"], "here")[0]
WATER = Ingredient("water", "7732-18-5", 0.3)
ISOPROPANOL = Ingredient("Propan-2-ol", "67-63-0", 0.7, FLAMMABLE)
SILAZANE = Ingredient("Polysilazane resin, trade secret", "", 0.35, SENSITISER)
FLUORIDE = Ingredient("Hydrogen fluoride", "7664-39-3", 0.02)
SURFACTANT = Ingredient("Alcohol ethoxylate C9-11", "68439-46-3", 0.05, ())
HARDENER = Ingredient("Hexamethylene diisocyanate", "822-06-0", 0.4)


def grams(emissions: tuple) -> dict[str, float | None]:
    return {one.name: one.grams for one in emissions}


@pytest.mark.parametrize(
    ("ingredient", "because"),
    [
        (WATER, "water never counts"),
        (SURFACTANT, "a surfactant is in no table of what evaporates, and does not burn"),
        (SILAZANE, "a resin stays on the panel"),
        (HARDENER, "it boils at 255 °C, above 250"),
        (Ingredient("sodium hydroxide", "1310-73-2", 0.06), "a salt in water only drifts"),
    ],
)
def test_what_does_not_evaporate_is_not_counted(ingredient: Ingredient, because: str) -> None:
    assert released([ingredient], 100.0).vapours == (), because


@pytest.mark.parametrize(
    ("ingredient", "name", "mass", "because"),
    [
        (ISOPROPANOL, "isopropanol", 70.0, "it boils at 82 °C; the table's own name is said"),
        (Ingredient("NMP", "872-50-4", 0.1), "N-methylpyrrolidone", 10.0, "202 °C and 0.04 kPa: it does"),
        (Ingredient("terpene", "", 0.1, FLAMMABLE), "terpene", 10.0, "no table knows it, its class burns"),
        (Ingredient("liquefied gas", "68476-85-7", 0.5), "liquefied petroleum gas", 50.0, "a propellant"),
    ],
)
def test_what_evaporates_counts_with_the_upper_end_of_its_share(
    ingredient: Ingredient, name: str, mass: float, because: str
) -> None:
    assert grams(released([ingredient, WATER], 100.0).vapours) == {name: pytest.approx(mass)}, because


def test_an_amount_that_nobody_knows_stays_unknown() -> None:
    assert grams(released([ISOPROPANOL], None).vapours) == {"isopropanol": None}


def test_an_acid_in_water_fumes_by_nobody_knows_how_much() -> None:
    found = released([FLUORIDE], 100.0)
    assert (found.vapours, grams(found.fumes)) == ((), {"hydrogen fluoride": None})


def test_a_coating_gives_off_what_its_cure_frees_and_a_cleaner_of_the_same_does_not() -> None:
    found = released([SILAZANE], 10.0, cures=True)
    assert grams(found.cure) == {
        "ammonia": pytest.approx(3.5 * 0.38),
        "hydrogen": pytest.approx(3.5 * 0.089),
    }
    assert released([SILAZANE], 10.0).cure == ()


def test_what_cures_takes_its_hour_and_what_evaporates_the_task() -> None:
    found = released([SILAZANE, ISOPROPANOL], 10.0, cures=True)
    assert {one.name: one.minutes(15) for one in found.weighed} == {
        "isopropanol": 15,
        "ammonia": 60,
        "hydrogen": 60,
    }


def test_what_is_sprayed_drifts_and_what_is_wiped_does_not() -> None:
    sprayed = released([SURFACTANT, ISOPROPANOL, WATER, HARDENER], 100.0, sprayed=True)
    assert [(one.name, one.form, one.grams) for one in sprayed.mist] == [
        ("Alcohol ethoxylate C9-11", "mist", None),
        ("hexamethylene diisocyanate", "mist", None),
    ]
    assert released([SURFACTANT, HARDENER], 100.0).mist == ()


@pytest.mark.parametrize(
    ("given", "of", "density"),
    [(0.88, ISOPROPANOL, 0.88), (None, ISOPROPANOL, 1.0), (None, Ingredient("DCM", "75-09-2", 1.0), 1.6)],
)
def test_an_unknown_density_counts_as_water_or_as_a_chlorinated_solvent(
    given: float | None, of: Ingredient, density: float
) -> None:
    assert density_kg_l(given, [of]) == density
