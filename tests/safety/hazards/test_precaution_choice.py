"""The tables of precautions against outside copies: every text, and what each hazard calls for.

Expected: tests/expected/p_statements.csv (CLP Annex IV, CC BY 4.0, © European Union), p_choice.csv (PubChem's
summary of the UN's tables), and below the label tables of CLP Annex I, consolidation of 1 Sep 2025.
"""

import re

import pytest

from safety.hazards.classes import classes
from safety.hazards.phrases import regulation
from safety.hazards.statements import languages
from safety.hazards.tables import languages_of, rows
from tests.safety.hazards.outside import expected

OUTSIDE = {row["code"]: row for row in expected("p_statements")}
TEXTS = {row["code"]: row for row in rows("precautions")}
CHOICE = rows("precaution_choice")
TYPING_ERROR = "a slip of the copy"
LATER = "the copy has the text of 2008; ours is the later one, from memory and marked M"
CENTRE = "CLP writes CENTER everywhere else; one spelling on a label"

# (language, code) → why our words are not the copy's
DIFFERENT = {
    ("en", "P103"): LATER,
    ("es", "P103"): LATER,
    ("en", "P280"): "hearing protection and “…” were added for explosives; from memory and marked M",
    ("es", "P280"): "hearing protection and “…” were added for explosives; from memory and marked M",
    ("es", "P244"): TYPING_ERROR + ": valvulas without its accent",
    ("es", "P310"): TYPING_ERROR + ": Ĺ for Í in TOXICOLOGÍA",
    ("es", "P311"): TYPING_ERROR + ": Ĺ for Í in TOXICOLOGÍA",
    ("es", "P301+P310"): TYPING_ERROR + ": Ĺ for Í in TOXICOLOGÍA",
    ("es", "P308+P311"): TYPING_ERROR + ": Ĺ for Í in TOXICOLOGÍA",
    ("es", "P342+P311"): TYPING_ERROR + ": Ĺ for Í in TOXICOLOGÍA",
    ("en", "P312"): CENTRE,
    ("en", "P301+P312"): CENTRE,
    ("en", "P306+P360"): TYPING_ERROR + ": rinse without a capital after the colon",
    ("en", "P336"): TYPING_ERROR + ": “Do no rub”",
    ("en", "P410+P412"): TYPING_ERROR + ": “Do no expose”",
    ("en", "P411"): "one blank of ours takes both units",
    ("es", "P411"): "one blank of ours takes both units",
    ("en", "P413"): "one blank of ours takes the weight, the temperature and their units",
    ("es", "P413"): "one blank of ours takes the weight, the temperature and their units",
}


def bare(text: str) -> str:
    """A text without the spaces around "/" and "…", which the regulation sets now one way, now another."""
    return re.sub(r"\s*([/…])\s*", r"\1", text).rstrip(". ")


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_text_is_the_regulations_or_the_difference_is_explained(language: str) -> None:
    compared = [code for code, row in OUTSIDE.items() if row[language] and code in TEXTS]
    odd = {
        (language, code)
        for code in compared
        if bare(regulation(TEXTS[code][language])) != bare(OUTSIDE[code][language])
    }
    assert len(compared) > 110
    assert odd == {key for key in DIFFERENT if key[0] == language}


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_text_marked_as_compared_is_word_for_word_the_copys(language: str) -> None:
    claimed = {code for code, row in TEXTS.items() if row[f"mark_{language}"] == "S2"}
    same = {code for code, row in OUTSIDE.items() if row[language] and (language, code) not in DIFFERENT}
    assert claimed == same


def test_no_statement_of_the_regulation_is_missing() -> None:
    assert {code for code, row in OUTSIDE.items() if row["en"]} - set(TEXTS) == set()


def test_every_text_stands_in_every_language_that_hazards_have() -> None:
    assert languages_of("precautions") == languages()
    assert [code for code, row in TEXTS.items() if not all(row[one] for one in languages())] == []


def test_a_blank_or_choice_is_the_same_in_every_language() -> None:
    for code, row in TEXTS.items():
        shapes = {(row[one].count("<"), row[one].count("{"), row[one].count("[")) for one in languages()}
        assert len(shapes) == 1, code


def test_every_class_category_and_code_has_a_row_in_each_of_its_regimes() -> None:
    missing = [
        (one.name, one.category, code, regime)
        for one in classes().values()
        for code in one.codes
        for regime in one.regimes
        if not called(one.name, one.category, code, regime)
        # CLP has one category 2 of eye irritation.
        and not (regime == "EU" and one.category == "2B")
    ]
    assert missing == []


def called(name: str, category: str, code: str, regime: str) -> set[str]:
    """The statements that the table of choices has for a class, "-" where none is assigned."""
    return {
        row["precaution"]
        for row in CHOICE
        if row["class"] == name
        and (row["categories"] == "*" or category in row["categories"].split())
        and (row["codes"] == "*" or code in row["codes"].split())
        and regime in row["regimes"].split()
    }


def test_no_choice_names_a_class_category_or_code_that_does_not_exist() -> None:
    for row in CHOICE:
        if row["class"] == "*":
            continue
        known = [one for one in classes().values() if one.name == row["class"]]
        assert known, row
        assert row["categories"] == "*" or set(row["categories"].split()) <= {
            one.category for one in known
        }, row
        codes = {code for one in known for code in one.codes} | {"H281"}
        assert row["codes"] == "*" or set(row["codes"].split()) <= codes, row


def test_no_choice_is_without_a_text_of_its_regime_and_no_text_without_a_choice() -> None:
    named = {row["precaution"] for row in CHOICE} - {"-"}
    assert named - set(TEXTS) == set()
    for row in CHOICE:
        if row["precaution"] != "-":
            assert set(row["regimes"].split()) <= set(TEXTS[row["precaution"]]["regimes"].split()), row
    parts = {part for code in named for part in code.split("+")}
    unused = {p for code in TEXTS if code[0] == "P" for p in re.split(r"[+ ]", code) if p not in parts}
    assert unused == set()


@pytest.mark.parametrize("row", expected("p_choice"), ids=lambda row: row["code"])
def test_what_the_un_calls_for_is_what_its_table_says(row: dict[str, str]) -> None:
    found = {
        precaution
        for one in classes().values()
        if row["code"] in one.codes and "UN" in one.regimes and one.name != "Aerosol"
        for precaution in called(one.name, one.category, row["code"], "UN")
    }
    if row["code"] in ("H222", "H223"):
        found = called("Aerosol", "1", "H222", "UN")
    if row["code"] == "H281":
        found = called("Press. Gas (Ref. Liq.)", "", "H281", "UN")
    assert found == set(row["precautions"].split())


EU_TABLES = [
    # class, category, code, what its label table of CLP Annex I lists
    ("Aerosol", "3", "H229", "P210 P251 P410+P412"),
    ("Acute Tox.", "1", "H300", "P264 P270 P301+P310 P321 P330 P405 P501"),
    ("Acute Tox.", "3", "H311", "P280 P302+P352 P312 P321 P361+P364 P405 P501"),
    ("Acute Tox.", "4", "H312", "P280 P302+P352 P312 P321 P362+P364 P501"),
    ("Acute Tox.", "2", "H310", "P262 P264 P270 P280 P302+P352 P310 P321 P361+P364 P405 P501"),
    ("Resp. Sens.", "1A", "H334", "P261 P284 P304+P340 P342+P311 P501"),
    ("Skin Sens.", "1", "H317", "P261 P272 P280 P302+P352 P333+P313 P321 P362+P364 P501"),
    ("STOT SE", "1", "H370", "P260 P264 P270 P308+P311 P321 P405 P501"),
    ("STOT SE", "3", "H335", "P261 P271 P304+P340 P312 P403+P233 P405 P501"),
]


@pytest.mark.parametrize(("name", "category", "code", "listed"), EU_TABLES)
def test_what_the_eu_calls_for_is_what_its_label_table_lists(
    name: str, category: str, code: str, listed: str
) -> None:
    assert called(name, category, code, "EU") == set(listed.split())
