"""The words of hazard statements, compared with an outside copy of the regulation in two languages.

Expected: tests/expected/h_statements.csv, the texts of CLP Annex III (CC BY 4.0, © European Union).
"""

import re

import pytest

from safety.hazards.statements import UnknownLanguage, is_national, languages, texts, wording
from tests.safety.hazards.outside import expected

OUTSIDE = {row["code"]: row for row in expected("h_statements")}

# (language, code) → (what we print, what the copy has, why ours stays)
DIFFERENT = {
    ("en", "H200"): (
        "Unstable explosive.",
        "Unstable explosives.",
        "the plural names the class; GHS Annex 3 and the label tables of Annex I have the singular",
    ),
    ("en", "H202"): (
        "Explosive; severe projection hazard.",
        "Explosive, severe projection hazard.",
        "its sisters H201 and H203 and Table 2.1.2 of Annex I have the semicolon",
    ),
}
REPEALED = {
    "EUH001": "repealed on 17 Oct 2020 for desensitised explosives",
    "EUH006": "repealed on 1 June 2015 for chemically unstable gases",
    "EUH059": "repealed on 19 April 2011 for H420",
}
# Not in CLP Annex III, so the copy cannot carry them.
NOT_EUROPEAN = set("H227 H282 H283 H284 H303 H305 H313 H316 H320 H333 H401 H402".split())  # noqa: SIM905


def printed(text: str) -> str:
    """A text of the copy as a label prints it: what is only filled in dropped, ending in one full stop."""
    return re.sub(r" ?<[^>]*>", "", text).rstrip(". ") + "."


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_text_is_the_regulations_or_the_difference_is_explained(language: str) -> None:
    odd = {}
    for code, row in OUTSIDE.items():
        if row[language] and code in texts() and code != "EUH208":
            ours, theirs = wording(code, "EU", language), printed(row[language])
            if ours != theirs:
                odd[(language, code)] = (ours, theirs)
    assert odd == {key: (ours, theirs) for key, (ours, theirs, _) in DIFFERENT.items() if key[0] == language}


def test_the_copy_and_the_table_hold_the_same_statements() -> None:
    assert set(OUTSIDE) - set(texts()) == set(REPEALED), "repealed statements are printed no longer"
    missing = {code for code in texts() if code not in OUTSIDE and not is_national(code)}
    assert missing == NOT_EUROPEAN


def test_a_repealed_statement_has_no_text_in_the_copy() -> None:
    assert all(OUTSIDE[code]["en"] == "" for code in REPEALED)


def test_a_text_marked_as_compared_was_compared() -> None:
    """S2 in Spanish means that the copy has it; the rest is from memory and says so."""
    claimed = {code for code, row in texts().items() if row["mark_es"] == "S2"}
    assert claimed == {code for code, row in OUTSIDE.items() if row["es"]}
    from_memory = {code for code, row in texts().items() if row["mark_en"] == "M"}
    assert from_memory == {code for code in texts() if is_national(code)}


def test_a_language_without_texts_is_refused_with_those_there_are() -> None:
    with pytest.raises(UnknownLanguage, match="no texts in “fr”, only in en, es"):
        wording("H225", "EU", "fr")


def test_every_statement_has_a_text_in_every_language() -> None:
    assert languages() == ("en", "es")
    assert [code for code, row in texts().items() if not all(row[one] for one in languages())] == []


FILLED = [
    ("EUH208 limonene", "en", "Contains limonene. May produce an allergic reaction."),
    ("EUH208", "en", "Contains a sensitising substance. May produce an allergic reaction."),
    ("EUH208 limoneno", "es", "Contiene limoneno. Puede provocar una reacción alérgica."),
    ("H372 the lungs", "en", "Causes damage to the lungs through prolonged or repeated exposure."),
    ("H372", "en", "Causes damage to organs through prolonged or repeated exposure."),
    ("H371", "es", "Puede provocar daños en los órganos."),
]


@pytest.mark.parametrize(("statement", "language", "sentence"), FILLED)
def test_a_blank_is_filled_in_and_never_printed_raw(statement: str, language: str, sentence: str) -> None:
    assert wording(statement, "EU", language) == sentence


SPELT = [
    ("H225", "EU", "en", "Highly flammable liquid and vapour.", "as CLP spells"),
    ("H225", "US", "en", "Highly flammable liquid and vapor.", "as the US spells"),
    ("H225", "US", "es", "Líquido y vapores muy inflamables.", "no regime spells Spanish differently"),
    (
        "H300+H310",
        "EU",
        "es",
        "Mortal en caso de ingestión o en contacto con la piel.",
        "joined texts are translated",
    ),
    (
        "H360FD",
        "US",
        "en",
        "May damage fertility. May damage the unborn child.",
        "suffix letters have a text",
    ),
]


@pytest.mark.parametrize(("code", "regime", "language", "sentence", "because"), SPELT)
def test_a_statement_is_spelt_as_its_regime_and_language_do(
    code: str, regime: str, language: str, sentence: str, because: str
) -> None:
    assert wording(code, regime, language) == sentence, because
