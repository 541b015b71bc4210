"""What a bottle mixed with water is: refusals to guess first, then what the dilution makes of the sheet.

Expected classes: the limits of sodium hydroxide (CLP Annex VI, ATP17: from 5 % 1A, 2 to 5 % 1B, 0.5 to 2 %
skin and eye irritant), the generic limits of CLP Tables 3.3.3 and 3.8.3 (eye irritants from 10 %, drowsiness
from 20 %), and parts by volume turned into percent by weight by hand: 6 % at 1.08 kg/l, 1:10, is
6 · 1.08 / 11.08 = 0.585 %.
"""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.hazards.changes import fingerprint, what_changed
from safety.hazards.composed import composed
from safety.hazards.facts import Measured, SheetFacts, label_parts
from safety.hazards.mix import known_of, mixed, unsettled

LYE = {
    "name": "Sodium hydroxide",
    "cas": "1310-73-2",
    "percent": 6,
    "hazards": ["Skin Corr. 1A H314"],
    "limits": [
        {"from": 5, "hazard": "Skin Corr. 1A H314"},
        {"from": 2, "to": 5, "hazard": "Skin Corr. 1B H314"},
        {"from": 0.5, "to": 2, "hazard": "Skin Irrit. 2 H315"},
        {"from": 0.5, "to": 2, "hazard": "Eye Irrit. 2 H319"},
    ],
}
ALCOHOL = {
    "name": "Propan-2-ol",
    "cas": "67-63-0",
    "percent": 70,
    "hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"],
    "no_acute_toxicity": True,
}
ALKALINE = SheetFacts(
    hazards=("Met. Corr. 1 H290", "Skin Corr. 1A H314"),
    statements=("H290", "H314", "P280"),
    composition={"form": "liquid", "ph": 13.5, "ingredients": [LYE]},
    mixes=(Measured((1, 10), ph=11.2),),
)
WIPE = SheetFacts(
    hazards=("Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"),
    statements=("H225", "H319", "H336", "EUH066"),
    composition={"form": "liquid", "flash_point_c": 19, "boiling_point_c": 80, "ingredients": [ALCOHOL]},
)


def of(facts: SheetFacts, **composition: Any) -> SheetFacts:
    return replace(facts, composition=(facts.composition or {}) | composition)


@pytest.mark.parametrize(
    ("facts", "note", "because"),
    [
        (
            replace(ALKALINE, composition=None),
            "Mixed 1:10 with water. Classes of the concentrate: no composition on its sheet.",
            "nobody typed section 3 in",
        ),
        (
            of(ALKALINE, ingredients=[LYE | {"percent": 300}]),
            "Mixed 1:10 with water. Classes of the concentrate: its composition cannot be read.",
            "300 % is nothing",
        ),
        (
            replace(ALKALINE, mixes=()),
            "Classes not settled: pH 13.5 is the concentrate's: it is kept until the dilution's is measured; "
            "treat as the concentrate.",
            "the pH of the mix decides, and nobody measured it",
        ),
        (
            replace(ALKALINE, hazards=(*ALKALINE.hazards, "Skin Sens. 1 H317")),
            "Classes not settled: section 2 of the sheet says Skin Sens. 1 H317, which its composition does "
            "not give; treat as the concentrate.",
            "the maker knows something that section 3 does not name",
        ),
    ],
)
def test_what_cannot_be_reckoned_keeps_the_classes_of_the_concentrate_and_says_so(
    facts: SheetFacts, note: str, because: str
) -> None:
    found = mixed(facts, "EU", (1, 10), 1.08).facts
    assert str(found.note) == note, because
    assert set(facts.hazards) <= set(found.hazards), because
    assert label_parts(found, "EU").notice == note


def test_a_sheet_whose_hazards_nobody_typed_in_stays_one() -> None:
    bare = replace(ALKALINE, hazards=(), statements=())
    notice = label_parts(mixed(bare, "EU", (1, 10)).facts, "EU").notice
    assert notice == "Its sheet is here, its hazards are not typed in yet: treat as hazardous, ask the owner."


@pytest.mark.parametrize(
    ("facts", "parts", "hazards", "because"),
    [
        (ALKALINE, (1, 0), ("Met. Corr. 1 H290", "Skin Corr. 1A H314"), "undiluted the sheet speaks"),
        (
            ALKALINE,
            (1, 10),
            ("Met. Corr. 1 H290", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319"),
            "6 · 1.08 / 11.08 = 0.585 %, from 0.5 % irritant; its pH is measured",
        ),
        (
            ALKALINE,
            (1, 20),
            ("Met. Corr. 1 H290",),
            "0.307 %: below 0.5 %; the pH of 1:10 is no better than this",
        ),
        (
            WIPE,
            (1, 1),
            ("Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"),
            "70 · 0.88 / 1.88 = 32.8 %; nobody measured a flash point, so the concentrate's category stays",
        ),
        (WIPE, (1, 3), ("Flam. Liq. 2 H225", "Eye Irrit. 2 H319"), "70 · 0.88 / 3.88 = 15.9 %: below 20 %"),
        (WIPE, (1, 6), ("Flam. Liq. 2 H225",), "70 · 0.88 / 6.88 = 8.95 %: below 10 %"),
        (
            replace(WIPE, mixes=(Measured((1, 3), flash_point_c=35),)),
            (1, 3),
            ("Flam. Liq. 3 H226", "Eye Irrit. 2 H319"),
            "a flash point of 35 °C was measured on it: category 3 (23 to 60 °C)",
        ),
    ],
)
def test_a_mix_is_what_its_dilution_is(
    facts: SheetFacts, parts: tuple[int, int], hazards: tuple[str, ...], because: str
) -> None:
    density = 1.08 if facts is ALKALINE else 0.88
    found = mixed(facts, "EU", parts, density)
    assert set(found.facts.hazards) == set(hazards), because
    assert found.needs_review == ()
    assert str(found.facts.note) == ""


def test_a_mix_that_is_no_longer_classified_says_so_and_drops_the_concentrates_statements() -> None:
    soap = SheetFacts(
        hazards=("Eye Irrit. 2 H319",),
        statements=("H319", "P305+P351+P338"),
        composition={
            "form": "liquid",
            "ph": 7,
            "ingredients": [
                {"name": "Soap", "percent": 15, "hazards": ["Eye Irrit. 2 H319"], "no_acute_toxicity": True}
            ],
        },
    )
    parts = label_parts(mixed(soap, "US", (1, 200), 1.0).facts, "US")
    assert (parts.elements.pictograms, parts.statements) == ((), ())
    assert parts.notice == "Not classified as hazardous; see its sheet."


def test_supplemental_statements_of_the_sheet_stay_on_its_mix() -> None:
    assert "EUH066" in mixed(WIPE, "EU", (1, 3), 0.88).facts.statements


def test_an_unknown_density_counts_as_a_dense_one_and_is_said() -> None:
    found = mixed(ALKALINE, "EU", (1, 16))
    # 6 · 1.5 / 17.5 = 0.514 %; at 1.0 kg/l it would be 0.353 %, below the limit of 0.5 %
    assert "Skin Irrit. 2 H315" in found.facts.hazards
    assert found.because[-1].rule == "the product's density is not known: counted as 1.5 kg/l, the safe side"
    assert "Skin Irrit. 2 H315" not in mixed(ALKALINE, "EU", (1, 16), 1.0).facts.hazards


@pytest.mark.parametrize(
    ("parts", "ph", "because"),
    [
        ((1, 5), None, "thicker than anything measured"),
        ((1, 10), 11.2, "measured"),
        ((2, 20), 11.2, "the same mix, written otherwise"),
        ((1, 15), 11.2, "thinner: taken as no worse"),
        ((1, 100), 9.0, "the thinnest of the thicker ones"),
    ],
)
def test_what_was_measured_speaks_for_thinner_mixes_and_never_for_thicker_ones(
    parts: tuple[int, int], ph: float | None, because: str
) -> None:
    mixes = (Measured((1, 10), ph=11.2), Measured((1, 50), ph=9.0))
    known = known_of(mixes, parts)
    assert (known.ph if known else None) == ph, because


def test_the_reason_on_the_label_is_short_and_all_of_them_are_counted() -> None:
    long = "Something is not known " * 6
    assert str(unsettled((long,))) == "Classes not settled: see its page; treat as the concentrate."
    assert str(unsettled((long, "Its pH is not known."))) == (
        "Classes not settled (2 questions): its pH is not known; treat as the concentrate."
    )


@given(water=st.integers(1, 400), more=st.integers(1, 400), regime=st.sampled_from(["EU", "US", "CA", "UN"]))
def test_more_water_never_makes_the_label_graver(water: int, more: int, regime: str) -> None:
    words = {"Danger": 2, "Warning": 1, None: 0}
    for facts, density in ((ALKALINE, 1.08), (WIPE, 0.88)):
        thick, thin = (
            label_parts(mixed(facts, regime, (1, much), density).facts, regime).elements.signal_word
            for much in (water, water + more)
        )
        assert words[thin] <= words[thick] <= words[label_parts(facts, regime).elements.signal_word]


def test_a_sheet_and_its_composition_that_agree_have_no_difference() -> None:
    found = composed(WIPE, "EU")
    assert found is not None
    assert (found.only_sheet, found.only_composition) == ((), ())
    assert found.parts.statements[0].startswith("H225 Highly flammable")
    assert [one.hazard for one in found.because] == list(found.hazards)


def test_a_difference_is_named_on_its_side_and_metals_are_left_to_a_test() -> None:
    sheet = replace(ALKALINE, hazards=("Met. Corr. 1 H290", "Skin Irrit. 2 H315", "Skin Sens. 1 H317"))
    found = composed(sheet, "EU")
    assert found is not None
    assert found.only_sheet == ("Skin Sens. 1 H317",)
    assert found.only_composition == ("Skin Corr. 1A H314", "Eye Dam. 1 H318")


def test_a_sheet_without_composition_has_nothing_to_hold_against_it() -> None:
    assert composed(replace(WIPE, composition=None), "EU") is None


def test_what_changed_names_what_comes_and_what_goes() -> None:
    thick, thin = (label_parts(mixed(ALKALINE, "EU", parts, 1.08).facts, "EU") for parts in ((1, 0), (1, 10)))
    change = what_changed(thick, thin)
    assert change.says == "now Warning, GHS07, H315, H319; no longer Danger, H314."
    assert fingerprint(thick) != fingerprint(thin)


def test_another_regime_changes_what_it_words_otherwise_and_the_same_one_nothing() -> None:
    sheet = SheetFacts(hazards=("Aquatic Acute 1 H400", "Eye Irrit. 2 H319"))
    eu, ca = (label_parts(sheet, regime) for regime in ("EU", "CA"))
    assert what_changed(eu, ca).says == "now No class in CA: Aquatic Acute 1 H400; no longer GHS09, H400."
    assert not what_changed(eu, label_parts(sheet, "EU"))
    assert fingerprint(eu) == fingerprint(label_parts(sheet, "EU"))
