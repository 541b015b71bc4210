"""Whole mixtures, from their document to their label.

Expected: CLP Annex VI, ATP17 state (© European Union, CC BY 4.0), for substances; the UN's worked mixture
ST/SG/AC.10/C.4/2008/23 Annex 2, example 4; ECHA's mixture exercises of 5 March 2012; boundary arithmetic on
Annex VI limits for sodium hydroxide and hypochlorite.
"""

from typing import Any

import pytest

from safety.hazards.elements import UnknownRegime
from safety.hazards.mixtures.dilution import diluted
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import Classified, classify
from tests.safety.hazards.mixtures import substances as known
from tests.safety.hazards.mixtures.substances import of

ALL = ("EU", "US", "CA", "UN")
KEYS = (
    "hazards",
    "pictograms",
    "signal_word",
    "statements",
    "supplemental",
    "ate",
    "unknown_percent",
    "needs_review",
    "because",
)


def classed(document: dict[str, Any], regime: str) -> Classified:
    return classify(read_mixture(document), regime)


def test_an_unknown_regime_is_refused() -> None:
    with pytest.raises(UnknownRegime, match="EU, US, CA, UN"):
        classed(of((known.ETHANOL, 5)), "JP")


SUBSTANCES = [
    # substance, pictograms, word, statements, supplemental
    (known.PROPANOL, "02 07", "Danger", "H225 H319 H336", ""),
    (known.ACETONE, "02 07", "Danger", "H225 H319 H336", "EUH066"),
    (known.ETHANOL, "02", "Danger", "H225", ""),
    (known.XYLENE, "02 07", "Warning", "H226 H312+H332 H315", ""),
    (known.BUTYL_ACETATE, "02 07", "Warning", "H226 H336", "EUH066"),
    (known.TERT_BUTYL_ACETATE, "02", "Danger", "H225", "EUH066"),
    (known.SODIUM_HYDROXIDE, "05", "Danger", "H314", ""),
    (known.PHOSPHORIC_ACID, "05", "Danger", "H314", ""),
    (known.TETRAETHYL_SILICATE, "02 07", "Warning", "H226 H319 H332 H335", ""),
    (known.DIISOCYANATE, "06 08", "Danger", "H315 H317 H319 H331 H334 H335", "EUH204"),
]


@pytest.mark.parametrize("regime", ALL)
@pytest.mark.parametrize(("substance", "pictures", "word", "codes", "more"), SUBSTANCES)
def test_a_product_of_one_substance_has_the_label_of_annex_vi(
    substance: dict[str, Any], pictures: str, word: str, codes: str, more: str, regime: str
) -> None:
    answer = classed(of((substance, 100)), regime)
    expected = [f"GHS{number}" for number in pictures.split()]
    if substance is known.DIISOCYANATE and regime in ("US", "CA"):
        expected.insert(1, "GHS07")  # the skull silences 07 for acute toxicity alone; H335 keeps it
    assert list(answer.pictograms) == expected
    assert answer.signal_word == word
    assert list(answer.statements) == codes.split()
    assert [one for one in answer.supplemental if one.startswith("EUH")] == (
        more.split() if regime == "EU" else []
    )


HYDROXIDE = [
    # percent, skin in the EU, eyes in the EU, because
    (6, "Skin Corr. 1A H314", "Eye Dam. 1 H318", "its own limit: from 5 %"),
    (3, "Skin Corr. 1B H314", "Eye Dam. 1 H318", "from 2 to 5 %"),
    (1, "Skin Irrit. 2 H315", "Eye Irrit. 2 H319", "from 0.5 to 2 %"),
]


@pytest.mark.parametrize(("percent", "on_skin", "in_eyes", "because"), HYDROXIDE)
def test_sodium_hydroxide_by_its_own_limits(percent: float, on_skin: str, in_eyes: str, because: str) -> None:
    assert classed(of((known.SODIUM_HYDROXIDE, percent)), "EU").hazards == (on_skin, in_eyes), because


def test_two_bases_sum_over_their_limits() -> None:
    """1.2 / 2 + 1.2 / 2 = 1.2: corrosive together, each alone only irritant."""
    both = classed(of((known.SODIUM_HYDROXIDE, 1.2), (known.POTASSIUM_HYDROXIDE, 1.2)), "EU")
    assert "Skin Corr. 1B H314" in both.hazards
    assert classed(of((known.SODIUM_HYDROXIDE, 1.2)), "EU").hazards[0] == "Skin Irrit. 2 H315"


@pytest.mark.parametrize("regime", ALL)
def test_sodium_hydroxide_of_0_4_percent_is_put_to_review_for_its_ph(regime: str) -> None:
    answer = classed(of((known.SODIUM_HYDROXIDE, 0.4)), regime)
    assert any("pH" in said for said in answer.needs_review)
    measured = classed(of((known.SODIUM_HYDROXIDE, 0.4), ph=12.9), regime)
    assert [text.partition(" 1")[0] for text in measured.hazards] == ["Skin Corr.", "Eye Dam."], (
        "CLP 3.2.3.1.2"
    )


def test_phosphoric_acid_of_9_9_percent_is_nothing_for_skin_and_eyes_in_the_eu() -> None:
    answer = classed(of((known.PHOSPHORIC_ACID, 9.9), ph=2.5), "EU")
    assert not any(text.startswith(("Skin", "Eye")) for text in answer.hazards)


def test_hypochlorite_of_5_percent_active_chlorine() -> None:
    answer = classed(of((known.HYPOCHLORITE, 5)), "EU")
    assert answer.statements == ("H314", "H410")
    assert {"Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"} < set(answer.hazards)
    assert "EUH031" in answer.supplemental
    assert "EUH031" not in classed(of((known.HYPOCHLORITE, 4.9)), "EU").supplemental


WORKED = {
    "form": "liquid",
    "ingredients": [
        {"name": "1", "percent": 26, "ate": {"oral": 2737, "vapour": 11}, "hazards": []},
        {"name": "2", "percent": 23, "ate": {"oral": 4500, "vapour": 19}, "hazards": []},
        {"name": "3", "percent": 11, "ate": {"oral": 5001}, "unknown": ["inhalation"], "hazards": []},
        {"name": "4", "percent": 40, "ate": {"oral": 400, "vapour": 4}, "hazards": []},
    ],
}


@pytest.mark.parametrize(("regime", "oral"), [("UN", 873), ("US", 873), ("CA", 873), ("EU", 1000)])
def test_the_uns_worked_mixture(regime: str, oral: float) -> None:
    answer = classed(WORKED, regime)
    assert answer.hazards == ("Acute Tox. 3 H331", "Acute Tox. 4 H302")
    assert answer.ate["oral"] == pytest.approx(oral, abs=0.5)
    assert answer.ate["vapour"] == pytest.approx(6.6, abs=0.05)
    assert answer.unknown_percent == {"inhalation": 11}
    assert (answer.signal_word, answer.statements) == ("Danger", ("H302", "H331"))


EXERCISES = [
    # percent of a skin irritant of category 2, regime, class, because
    (0.8, "EU", (), "below the cut-off"),
    (1.8, "EU", (), "counts, and stays below 10 %"),
    (1.8, "UN", ("Skin Irrit. 3 H316",), "the UN has a category for it"),
    (10, "EU", ("Skin Irrit. 2 H315",), "10 %"),
]


@pytest.mark.parametrize(("percent", "regime", "hazards", "because"), EXERCISES)
def test_echas_skin_irritant(percent: float, regime: str, hazards: tuple[str, ...], because: str) -> None:
    irritant = {"name": "irritant", "hazards": ["Skin Irrit. 2 H315"]}
    assert classed(of((irritant, percent)), regime).hazards == hazards, because


def test_naphtha_without_a_benzene_figure_keeps_its_classes() -> None:
    answer = classed(of((known.NAPHTHA, 20), viscosity_mm2_s_40c=2), "EU")
    assert answer.hazards == ("Muta. 1B H340", "Carc. 1B H350", "Asp. Tox. 1 H304")


def test_the_answer_has_the_keys_that_scripts_rely_on() -> None:
    document = classed(of((known.XYLENE, 60)), "EU").as_json()
    assert tuple(document) == KEYS
    assert all(list(one) == ["class", "rule", "source", "mark", "numbers"] for one in document["because"])
    assert {one["class"] for one in document["because"]} >= set(document["hazards"]), (
        "each class has its reason"
    )


@pytest.mark.parametrize("regime", ALL)
def test_nothing_hazardous_is_not_classified_and_asks_nothing(regime: str) -> None:
    answer = classed(of(({"name": "sugar", "hazards": [], "no_acute_toxicity": True}, 5)), regime)
    assert (answer.hazards, answer.needs_review, answer.because) == ((), (), ())


@pytest.mark.parametrize("regime", ALL)
def test_an_ingredient_nobody_looked_at_is_never_passed_in_silence(regime: str) -> None:
    answer = classed(of(({"name": "resin", "ate": {"oral": 6000}}, 30)), regime)
    assert answer.needs_review == (
        "The classes of resin (30 %) are not known: 30 % counted only by what is measured on it.",
    )


@pytest.mark.parametrize("regime", ALL)
def test_an_empty_list_and_a_missing_form_are_said(regime: str) -> None:
    answer = classed({"ingredients": []}, regime)
    assert answer.needs_review == (
        "Its form is not given: it counted as a liquid, and as breathed in every form.",
        "No ingredient is named: nothing but what was measured on the whole could be judged.",
    )


def test_the_gravest_class_of_an_outcome_stands_alone_with_its_reasons() -> None:
    strong, weak = {"name": "a", "hazards": ["Carc. 1B H350"]}, {"name": "b", "hazards": ["Carc. 2 H351"]}
    answer = classed(of((strong, 1), (weak, 5)), "EU")
    assert answer.hazards == ("Carc. 1B H350",)
    assert [one.hazard for one in answer.because] == ["Carc. 1B H350"]


def test_a_code_without_letters_covers_those_with_them() -> None:
    breathed, whole = (
        {"name": "a", "hazards": ["Carc. 1B H350i"]},
        {"name": "b", "hazards": ["Carc. 1B H350"]},
    )
    assert classed(of((breathed, 1)), "EU").hazards == ("Carc. 1B H350i",)
    assert classed(of((breathed, 1), (whole, 1)), "EU").hazards == ("Carc. 1B H350",)


def test_effects_on_organs_stand_beside_one_another() -> None:
    answer = classed(of(({"name": "a", "hazards": ["STOT SE 1 H370", "STOT SE 3 H335+H336"]}, 30)), "US")
    assert answer.hazards == ("STOT SE 1 H370", "STOT SE 3 H335", "STOT SE 3 H336")


def test_an_aerosol_is_judged_for_skin_without_its_propellant() -> None:
    """60 % propellant: 5 % of the can are 12.5 % of the liquid, above the 10 % of an irritant."""
    gas = {"name": "propane", "hazards": ["Flam. Gas 1A H220", "Press. Gas (Liq.) H280"]}
    irritant = {"name": "irritant", "hazards": ["Skin Irrit. 2 H315"]}
    can = of((gas, 60), (irritant, 5)) | {"form": "aerosol"}
    assert classed(can, "EU").hazards == ("Aerosol 1 H222+H229", "Skin Irrit. 2 H315")
    liquid = of((irritant, 5))
    assert classed(liquid, "EU").hazards == (), "its twin without propellant stays below"


def test_what_an_aerosol_gives_to_breathe_counts_with_its_propellant() -> None:
    gas = {"name": "propane", "hazards": ["Flam. Gas 1A H220", "Press. Gas (Liq.) H280"]}
    toxic = {"name": "x", "hazards": [], "ate": {"dust_mist": 1, "oral": 600}}
    answer = classed(of((gas, 50), (toxic, 10)) | {"form": "aerosol"}, "EU")
    assert answer.ate == {"oral": pytest.approx(3000), "dust_mist": pytest.approx(10)}


def test_a_dilution_says_what_was_not_measured_on_it() -> None:
    strong = read_mixture(of((known.SODIUM_HYDROXIDE, 20), ph=13.5))
    answer = classify(diluted(strong, 1, 99), "EU")
    assert answer.hazards[0].startswith("Skin Corr. 1"), "the concentrate's pH still speaks"
    assert answer.needs_review[-2:] == (
        "The product's density is not known: 1 part by volume counted as 1 part by weight (1 kg/l).",
        "pH 13.5 is the concentrate's: it is kept until the dilution's is measured.",
    )


def test_water_lowers_no_flammable_category() -> None:
    """The concentrate's 14 °C is carried into 1 : 100; so is a class without any flash point."""
    measured = read_mixture(of((known.PROPANOL, 70), flash_point_c=14, boiling_point_c=80))
    assert "Flam. Liq. 2 H225" in classify(diluted(measured, 1, 100), "EU").hazards
    unmeasured = classify(diluted(read_mixture(of((known.PROPANOL, 70))), 1, 100), "EU")
    assert "Flam. Liq. 2 H225" in unmeasured.hazards
    assert any("until one is measured" in said for said in unmeasured.needs_review)


def test_each_route_keeps_its_own_category() -> None:
    """The twin: keyed by severity alone, the milder route would go missing from the label."""
    poison = {"name": "x", "hazards": ["Acute Tox. 1 H300", "Acute Tox. 4 H312", "Acute Tox. 3 H331"]}
    assert classed(of((poison, 100)), "EU").hazards == (
        "Acute Tox. 1 H300",
        "Acute Tox. 3 H331",
        "Acute Tox. 4 H312",
    )
