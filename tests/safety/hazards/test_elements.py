"""What stands on a label.

Expected values: CLP Annex VI entries of the ATP17 state (© European Union, CC BY 4.0).
"""

import pytest

from safety.hazards.classes import UnknownHazard, classes, read_hazard
from safety.hazards.elements import UnknownRegime, elements
from safety.hazards.statements import UnknownStatement, texts, wording

DIISOCYANATE = [
    "Acute Tox. 3 H331",
    "STOT SE 3 H335",
    "Skin Irrit. 2 H315",
    "Eye Irrit. 2 H319",
    "Resp. Sens. 1 H334",
    "Skin Sens. 1 H317",
]

ANNEX_VI = [
    # substance, hazards, pictograms, word, statements
    (
        "propan-2-ol",
        ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"],
        "02 07",
        "Danger",
        "H225 H319 H336",
    ),
    ("ethanol", ["Flam. Liq. 2 H225"], "02", "Danger", "H225"),
    (
        "xylene",
        ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "Acute Tox. 4 H312", "Skin Irrit. 2 H315"],
        "02 07",
        "Warning",
        "H226 H312+H332 H315",
    ),
    ("sodium hydroxide", ["Skin Corr. 1A H314"], "05", "Danger", "H314"),
    (
        "tetraethyl silicate",
        ["Flam. Liq. 3 H226", "Acute Tox. 4 H332", "STOT SE 3 H335", "Eye Irrit. 2 H319"],
        "02 07",
        "Warning",
        "H226 H319 H332 H335",
    ),
    ("hexamethylene diisocyanate", DIISOCYANATE, "06 08", "Danger", "H315 H317 H319 H331 H334 H335"),
]


def test_an_unknown_class_is_named_in_the_refusal() -> None:
    with pytest.raises(UnknownHazard, match=r"no class “flam. liquid 2” is in the table"):
        elements(["Flam. Liquid 2 H225"], "EU")


def test_a_code_of_another_class_is_refused_with_the_one_expected() -> None:
    with pytest.raises(UnknownHazard, match=r"Flam. Liq. 2 carries H225, not H226"):
        read_hazard("Flam. Liq. 2 H226")


def test_a_hazard_without_a_code_is_refused() -> None:
    with pytest.raises(UnknownHazard, match="class, category and H-code"):
        read_hazard("Flam. Liq. 2")


def test_an_unknown_regime_is_refused() -> None:
    with pytest.raises(UnknownRegime, match="EU, US, CA, UN"):
        elements([], "JP")


def test_an_unknown_statement_is_refused() -> None:
    with pytest.raises(UnknownStatement, match="H999"):
        wording("H999", "EU")


@pytest.mark.parametrize(("substance", "hazards", "pictures", "word", "codes"), ANNEX_VI)
def test_annex_vi_substances_get_their_printed_elements(
    substance: str, hazards: list[str], pictures: str, word: str, codes: str
) -> None:
    label = elements(hazards, "EU")
    assert label.pictograms == tuple(f"GHS{number}" for number in pictures.split()), substance
    assert label.signal_word == word
    assert label.statements == tuple(codes.split())


PRECEDENCE = [
    # regime, hazards, pictograms, because
    (
        "US",
        DIISOCYANATE,
        "GHS06 GHS07 GHS08",
        "the US skull silences 07 for acute toxicity alone; H335 keeps it",
    ),
    ("CA", DIISOCYANATE, "GHS06 GHS07 GHS08", "as in the US"),
    ("UN", DIISOCYANATE, "GHS06 GHS08", "the UN skull silences 07 altogether"),
    ("US", ["Acute Tox. 3 H311", "Acute Tox. 4 H302"], "GHS06", "07 stood for acute toxicity only"),
    (
        "EU",
        ["Skin Corr. 1B H314", "Skin Sens. 1 H317"],
        "GHS05 GHS07",
        "corrosion does not silence a sensitiser",
    ),
    ("EU", ["Eye Dam. 1 H318", "Skin Irrit. 2 H315"], "GHS05", "corrosion silences irritation"),
    (
        "EU",
        ["Met. Corr. 1 H290", "Skin Irrit. 2 H315"],
        "GHS05 GHS07",
        "metals only: the safe choice keeps 07",
    ),
    ("EU", ["Resp. Sens. 1 H334", "Skin Sens. 1 H317"], "GHS08", "08 for the lungs silences 07 for the skin"),
    ("EU", ["STOT RE 2 H373", "Skin Sens. 1 H317"], "GHS07 GHS08", "08 for organs does not"),
    ("EU", ["Flam. Liq. 3 H226", "Aquatic Chronic 3 H412"], "GHS02", "chronic 3 has no pictogram"),
]


@pytest.mark.parametrize(("regime", "hazards", "pictures", "because"), PRECEDENCE)
def test_pictograms_follow_precedence(regime: str, hazards: list[str], pictures: str, because: str) -> None:
    assert " ".join(elements(hazards, regime).pictograms) == pictures, because
    assert " ".join(elements(hazards[::-1], regime).pictograms) == pictures, "the order of hazards is nothing"


def test_sodium_hypochlorite_prints_h410_for_acute_1_with_chronic_2_in_the_eu() -> None:
    hazards = [
        "Aquatic Acute 1 H400",
        "Aquatic Chronic 2 H411",
        "Skin Corr. 1B H314",
        "Eye Dam. 1 H318",
        "EUH031",
    ]
    label = elements(hazards, "EU")
    assert label.statements == ("H314", "H410")
    assert label.supplemental == ("EUH031",)


def test_un_drops_only_h400_beside_h410() -> None:
    assert elements(["Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"], "UN").statements == ("H400", "H411")
    assert elements(["Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"], "UN").statements == ("H410",)


def test_what_a_regime_has_no_class_for_is_left_out_by_name() -> None:
    label = elements(["Flam. Liq. 4 H227", "Aquatic Chronic 1 H410"], "CA")
    assert label.statements == ("H227",)
    assert label.left_out == ("Aquatic Chronic 1 H410",)


def test_an_aerosol_always_carries_both_its_statements() -> None:
    assert elements(["Aerosol 1 H222"], "EU").statements == ("H222", "H229")


def test_nothing_hazardous_has_no_elements() -> None:
    label = elements([], "EU")
    assert (label.pictograms, label.signal_word, label.statements) == ((), None, ())


def test_spelling_follows_the_regime() -> None:
    assert wording("H225", "EU") == "Highly flammable liquid and vapour."
    assert wording("H225", "US") == "Highly flammable liquid and vapor."


def test_a_sensitiser_is_named_and_a_blank_is_never_printed_raw() -> None:
    assert wording("EUH208 limonene", "EU") == "Contains limonene. May produce an allergic reaction."
    assert "<" not in wording("EUH208", "EU")


def test_every_code_of_every_class_has_a_text() -> None:
    codes = {code for one in classes().values() for code in one.codes}
    assert {"H225", "H314", "H410", "EUH380"} <= codes
    assert codes - set(texts()) == set()


@pytest.mark.parametrize("written", ["Eye Irrit. 2A H319", "Eye Irrit. 2B H320"])
def test_an_eye_irritant_of_a_us_sheet_is_not_lost_on_an_eu_label(written: str) -> None:
    """CLP has one category 2, which covers both (hazard class table of GHS)."""
    label = elements([written], "EU")
    assert (label.pictograms, label.statements, label.left_out) == (("GHS07",), ("H319",), ())


SPELT = [
    "Flam. Liq. 2, H225",
    "Flam. Liq. 2; H225",
    "Flam. Liq. 2  H225",
    "flam. liq. 2 H225",
]


@pytest.mark.parametrize("written", SPELT)
def test_a_hazard_is_read_as_sheets_write_it(written: str) -> None:
    assert str(read_hazard(written)) == "Flam. Liq. 2 H225"


def test_two_codes_of_a_class_are_read_together() -> None:
    assert str(read_hazard("Aerosol 1, H222, H229")) == "Aerosol 1 H222+H229"
    assert str(read_hazard("STOT SE 3 H335+H336")) == "STOT SE 3 H335+H336"
    assert str(read_hazard("Press. Gas (Liq.) H280")) == "Press. Gas (Liq.) H280"
