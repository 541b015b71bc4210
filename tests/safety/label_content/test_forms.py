"""What each form of label says, and what it refuses; no paper is drawn here."""

from dataclasses import replace

import pytest

from safety.hazards.facts import Note, SheetFacts
from safety.hazards.mix import NO_COMPOSITION, unsettled
from safety.label_content import Bottle, UnknownForm, forms_of, label_for
from safety.print.words import UnknownLanguage
from tests.safety.cast import ACID, COATING, COMPOUND, WIPE

WIPED = Bottle(
    "Hollin panel wipe",
    "BKTRVNXH",
    replace(WIPE, statements=("H225", "H319", "H336", "P210")),
    capacity_ml=500,
    size="500 ml",
    lots=("HO-2405",),
    opened_on="28 Aug 2026",
    use_by="26 Nov 2026",
    because="opened + 90 days",
    maker="Orlo Surface Care",
    telephone="0800 555 0142",
)
MIXED = replace(
    WIPED,
    name="Brack wheel acid",
    facts=ACID,
    parts=(1, 10),
    filled=True,
    mixed_on="20 Nov 2026",
    mixed_by="Tomas",
    opened_on="",
)


@pytest.mark.parametrize(
    ("regime", "form", "says"),
    [
        (
            "EU",
            "sticker",
            "is not there; under the rules of EU there are maker, secondary, small, tag, lasting.",
        ),
        ("EU", "us_workplace", "is for US only"),
        ("US", "ca_workplace", "is for CA only"),
        ("UN", "small", "is for EU and US and CA only"),
    ],
)
def test_a_form_that_a_regime_does_not_have_is_refused_with_those_it_has(
    regime: str, form: str, says: str
) -> None:
    with pytest.raises(UnknownForm, match="under the rules of") as refused:
        label_for(replace(WIPED, regime=regime), form)
    assert says in str(refused.value)


def test_a_language_that_labels_do_not_speak_is_refused() -> None:
    with pytest.raises(UnknownLanguage, match="“xx” is not one of en, es"):
        label_for(replace(WIPED, language="xx"), "secondary")


def test_the_makers_bottle_gets_our_code_lot_days_and_why_and_where_to_stick_it() -> None:
    label = label_for(WIPED, "maker")
    assert (label.code, label.use_by, label.because) == ("BKTRVNXH", "26 Nov 2026", "opened + 90 days")
    assert label.facts == ("lot HO-2405", "opened 28 Aug 2026")
    assert label.advice == "Stick it clear of the maker’s hazards, lot and date."
    assert (label.pictograms, label.signal_word, label.statements) == ((), None, ())


@pytest.mark.parametrize(
    ("facts", "says"),
    [
        (None, "No data sheet yet: treat as hazardous, ask the owner."),
        (
            SheetFacts(),
            "Its sheet is here, its hazards are not typed in yet: treat as hazardous, ask the owner.",
        ),
        (COMPOUND, ""),
    ],
)
def test_the_makers_bottle_still_warns_of_a_missing_sheet(facts: SheetFacts | None, says: str) -> None:
    assert label_for(replace(WIPED, facts=facts), "maker").notice == says


def test_a_towel_is_told_neither_hazards_nor_where_to_stick_it() -> None:
    label = label_for(Bottle("Brack towels", "BKTRVNXH", has_hazards=False), "maker")
    assert (label.notice, label.advice) == ("", "")


def test_a_filled_bottle_says_product_parts_when_by_whom_until_when_and_every_element() -> None:
    label = label_for(MIXED, "secondary")
    assert label.name == "Brack wheel acid, 1:10"
    assert label.facts == ("1 part + 10 water", "lot HO-2405", "mixed 20 Nov 2026 by Tomas")
    assert (label.signal_word, label.pictograms) == ("Danger", ("GHS05", "GHS06"))
    assert label.statements == (
        "May be corrosive to metals.",
        "Toxic in contact with skin.",
        "Causes severe skin burns and eye damage.",
    )
    assert label.supplier == "Orlo Surface Care · 0800 555 0142"
    assert label_for(replace(MIXED, parts=(2, 5), by_weight=True), "secondary").facts[0] == (
        "2 parts + 5 water by weight"
    )


def test_precautions_of_the_sheet_stand_in_words_and_supplemental_statements_stay() -> None:
    assert label_for(WIPED, "secondary").precautions[0].startswith("Keep away from heat")
    assert "Contains isocyanates." in " ".join(
        label_for(replace(WIPED, facts=COATING), "secondary").statements
    )


def test_a_statement_that_the_table_lacks_is_never_dropped() -> None:
    odd = replace(WIPE, statements=("H225", "P999"))
    assert "P999" in label_for(replace(WIPED, facts=odd), "secondary").precautions


def test_the_us_workplace_form_names_the_general_hazards_in_words_and_points_to_the_sheet() -> None:
    """29 CFR 1910.1200(f)(6)(ii)."""
    label = label_for(replace(WIPED, regime="US"), "us_workplace")
    assert label.statements == ("Catches fire.", "Irritates eyes.", "Makes drowsy.")
    assert (label.pictograms, label.advice) == (("GHS02", "GHS07"), "See the data sheet.")


def test_what_no_plain_heading_covers_keeps_its_statement_on_the_us_form() -> None:
    """H227 has a signal word and no pictogram in the US: no heading speaks for it."""
    warm = SheetFacts(hazards=("Flam. Liq. 4 H227",))
    label = label_for(replace(WIPED, facts=warm, regime="US"), "us_workplace")
    assert label.statements == ("Combustible liquid.",)


def test_the_canadian_form_has_the_name_as_on_the_sheet_precautions_and_the_sheet() -> None:
    label = label_for(replace(WIPED, regime="CA", sheet_name="Hollin Wipe RTU"), "ca_workplace")
    assert label.name == "Hollin Wipe RTU"
    assert label.precautions[0].startswith("Keep away from heat")
    assert label.precautions[-1] == "Wear: sealed glasses, nitrile."
    assert label.advice == "See the data sheet."


def test_without_precautions_the_canadian_form_keeps_the_hazards() -> None:
    label = label_for(replace(WIPED, facts=WIPE, regime="CA"), "ca_workplace")
    assert label.statements[0] == "Highly flammable liquid and vapor."


def test_a_vials_tag_has_a_hole_and_every_element() -> None:
    label = label_for(replace(WIPED, facts=COATING, capacity_ml=30), "tag")
    assert (label.hole, label.advice) == (True, "Tie it to the neck. Never cover the maker’s label.")
    assert "Flammable liquid and vapour." in label.statements


def test_a_lasting_label_keeps_what_lasts_and_leaves_the_days_to_the_pen() -> None:
    label = label_for(MIXED, "lasting")
    assert label.facts == ("holds 500 ml", "1 part + 10 water")
    assert (label.use_by, label.because, label.fill_says) == ("", "", "Filled on")
    assert label.statements == label_for(MIXED, "secondary").statements


def test_a_spanish_label_speaks_spanish_in_every_form() -> None:
    for regime in ("EU", "US", "CA"):
        for form in forms_of(regime):
            label = label_for(
                replace(MIXED, regime=regime, language="es", capacity_ml=50, use_by_says="Usar antes del"),
                form,
            )
            spoken = " ".join((label.signal_word or "", *label.statements, *label.facts, label.advice))
            for english in ("Danger", "Causes", "mixed", "part +", "label", "sheet", "Burns"):
                assert english not in spoken, (regime, form, english)
    assert label_for(replace(MIXED, language="es"), "secondary").signal_word == "Peligro"


def test_the_eu_asks_a_size_by_capacity_and_the_us_does_not() -> None:
    assert (label_for(WIPED, "secondary").first, label_for(WIPED, "secondary").side_if_possible_mm) == (
        "tall",
        16,
    )
    barrel = label_for(replace(WIPED, capacity_ml=20_000), "secondary")
    assert (barrel.first, barrel.side_mm, barrel.x_height_mm) == ("wide", 23, 1.8)
    american = label_for(replace(WIPED, regime="US", capacity_ml=20_000), "secondary")
    assert (american.first, american.side_mm) == ("medium", 10)


@pytest.mark.parametrize(
    ("note", "says", "because"),
    [
        (
            Note(NO_COMPOSITION, (("product", 1), ("water", 10))),
            "Mezcla 1:10 con agua. Clases del concentrado: su ficha no da la composición.",
            "the whole sentence is known in Spanish",
        ),
        (
            unsettled(("The pH of the mix was not measured.",)),
            "Clases sin resolver: véase su página; trátese como el concentrado.",
            "the reason is known in English alone: it stands on the bottle's page",
        ),
    ],
)
def test_what_is_said_of_a_mix_is_said_in_the_labels_language(note: Note, says: str, because: str) -> None:
    mix = Bottle("Limpiador", "BKTRVNXH", replace(WIPE, note=note), language="es", parts=(1, 10), filled=True)
    assert label_for(mix, "secondary").notice == says, because
