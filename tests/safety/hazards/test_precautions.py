"""Which precautionary statements a label prints, and in which words.

Expected texts: tests/expected/p_statements.csv, a public copy of CLP Annex IV (CC BY 4.0, © European Union).
Which statement stands before another is from memory, as the table of choices says.
"""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from safety.hazards.classes import REGIMES, UnknownHazard, classes
from safety.hazards.elements import UnknownRegime
from safety.hazards.phrases import needs_filling, printed, regulation
from safety.hazards.precautions import ANY, NONE, PHASES, Precaution, choices, choose, read, texts, wording
from safety.hazards.statements import UnknownLanguage, UnknownStatement
from safety.hazards.tables import rows
from tests.safety.hazards.outside import expected

OUTSIDE = {row["code"]: row for row in expected("p_statements")}
TABLE = {row["code"]: row for row in rows("precautions") if "EU" in row["regimes"].split()}


def chosen(*hazards: str, regime: str = "EU", public: bool = False) -> list[str]:
    """The codes that a label prints, in its order."""
    return [one.code for one in choose(hazards, regime, public=public).printed]


def bare(text: str) -> str:
    """A text with nothing but its words: no brackets, no signs between choices, one kind of dots."""
    return re.sub(r"[^\w]+", " ", regulation(text)).strip().casefold()


def test_an_unknown_regime_class_statement_or_language_is_refused() -> None:
    with pytest.raises(UnknownRegime, match="“XX” is not one of EU, US, CA, UN"):
        choose(["Flam. Liq. 2 H225"], "XX")
    with pytest.raises(UnknownHazard, match="no class"):
        choose(["Flam. Fog 2 H225"], "EU")
    with pytest.raises(UnknownStatement, match="P999 is not in the table for EU"):
        wording(Precaution("P999"), "EU")
    with pytest.raises(UnknownLanguage, match="no texts in “fr”"):
        wording(Precaution("P210"), "EU", "fr")


def test_no_statement_that_a_class_calls_for_is_without_a_text_under_that_regime() -> None:
    called = {(row.precaution, regime) for row in choices() for regime in row.regimes}
    assert {one for one in called if one[0] != NONE} - set(texts()) == set()


def test_no_class_is_without_a_row_under_a_regime_that_has_it() -> None:
    rows_of = {
        (row.name, category, regime)
        for row in choices()
        for category in row.categories
        for regime in row.regimes
    }
    missing = [
        (one.name, one.category, regime)
        for one in classes().values()
        for regime in one.regimes
        if not {(one.name, ANY, regime), (one.name, one.category, regime)} & rows_of
    ]
    assert missing == []


def test_every_row_has_a_phase_a_weight_and_a_mark() -> None:
    odd = [
        row
        for row in choices()
        if (row.phase not in PHASES and row.precaution != NONE)
        or row.weight not in (1, 2, 3)
        or row.mark not in ("S", "S2", "M")
        or (row.weight == 3 and not row.condition)
    ]
    assert odd == []


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_text_marked_as_compared_has_the_words_of_the_regulation(language: str) -> None:
    odd = {
        code: (row[language], OUTSIDE[code][language])
        for code, row in TABLE.items()
        if row[f"mark_{language}"] == "S2" and bare(row[language]) != bare(OUTSIDE[code][language])
    }
    assert odd == {}


def test_a_text_that_differs_from_the_copy_says_that_it_is_from_memory() -> None:
    """P103 is one: the copy of 2021 has “Read label before use.”, replaced since."""
    differ = {
        code
        for code, row in TABLE.items()
        if code in OUTSIDE and OUTSIDE[code]["en"] and bare(row["en"]) != bare(OUTSIDE[code]["en"])
    }
    assert "P103" in differ
    assert {code for code in differ if TABLE[code]["mark_en"] != "M"} == set()


WIPE = ("Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336")
ACID = ("Skin Corr. 1A H314", "Acute Tox. 3 H311", "Met. Corr. 1 H290")
COATING = ("Flam. Liq. 3 H226", "Resp. Sens. 1 H334", "Skin Sens. 1 H317")


@pytest.mark.parametrize(
    ("hazards", "regime", "codes", "because"),
    [
        ((), "EU", "", "what is not classified calls for none"),
        (
            WIPE, "EU", "P210 P261 P271 P280 P304+P340 P305+P351+P338",
            "six at most: first what the classes need most",
        ),
        (
            ACID, "EU", "P260 P280 P301+P330+P331 P303+P361+P353 P305+P351+P338 P310 P361+P364",
            "more than six, because these hazards need them all",
        ),
        (("Aerosol 1 H222+H229",), "EU", "P210 P211 P251 P410+P412", "all four, they are no more"),
        (
            ("Water-react. 2 H261",), "CA", "P223 P231+P232 P280 P302+P335+P334 P402+P404",
            "disposal by local rules waits for who knows them",
        ),
    ],
)  # fmt: skip
def test_a_label_prints_few_statements_the_most_needed_ones(
    hazards: tuple[str, ...], regime: str, codes: str, because: str
) -> None:
    assert chosen(*hazards, regime=regime) == codes.split(), because


@pytest.mark.parametrize(
    ("hazards", "regime", "stays", "goes", "because"),
    [
        (("Skin Corr. 1A H314", "STOT SE 3 H335"), "US", "P260", "P261", "not breathing is avoiding it"),
        (COATING, "US", "P303+P361+P353", "P302+P352", "clothes off and rinse says wash"),
        (("Acute Tox. 3 H301", "Acute Tox. 4 H302"), "US", "P301+P310", "P301+P312", "at once"),
        (("Acute Tox. 3 H301", "Acute Tox. 4 H302"), "UN", "P301+P316", "P301+P317", "the same in Rev 10"),
        (WIPE, "US", "P403+P233 P403+P235", "P403+P235", "two storage statements make one sentence"),
        (WIPE, "US", "P403+P233 P403+P235", "P233", "the joined one says it"),
    ],
)  # fmt: skip
def test_a_statement_that_another_says_is_left_out(
    hazards: tuple[str, ...], regime: str, stays: str, goes: str, because: str
) -> None:
    codes = chosen(*hazards, regime=regime)
    assert stays in codes, because
    assert goes not in codes, because


def test_the_limit_of_six_is_european() -> None:
    assert (len(chosen(*WIPE)), len(chosen(*WIPE, regime="CA"))) == (6, 13)


def test_what_stands_only_under_a_condition_waits_for_somebody_who_knows() -> None:
    found = choose(["Flam. Liq. 2 H225"], "US")
    reasons = dict(found.left_out)
    assert reasons["P243"] == "only if it can be lit by static discharge"
    known = choose(["Flam. Liq. 2 H225"], "US", holds={"if it can be lit by static discharge"})
    assert "P243" in [one.code for one in known.printed]


def test_what_the_limit_of_six_leaves_out_is_said_with_the_reason() -> None:
    reasons = dict(choose(WIPE, "EU").left_out)
    assert reasons["P501"] == reasons["P233"] == "6 stand already (CLP Art 28(3))"


def test_the_public_is_told_to_keep_it_from_children_and_how_to_dispose_of_it() -> None:
    assert {"P102", "P501"} <= set(chosen("Skin Irrit. 2 H315", public=True))
    assert "P102" not in chosen("Skin Irrit. 2 H315")


@pytest.mark.parametrize(
    ("one", "regime", "language", "says"),
    [
        (Precaution("P280", ("gloves", "eyes")), "EU", "en", "Wear protective gloves and eye protection."),
        (Precaution("P280", ("gloves", "eyes")), "EU", "es", "Llevar guantes y gafas de protección."),
        (Precaution("P261"), "US", "en", "Avoid breathing dust, fume, gas, mist, vapors or spray."),
        (Precaution("P310"), "EU", "en", "Immediately call a POISON CENTER or doctor."),
        (Precaution("P264"), "EU", "en", "Wash hands thoroughly after handling."),
    ],
)
def test_a_statement_is_printed_chosen_and_filled(
    one: Precaution, regime: str, language: str, says: str
) -> None:
    assert wording(one, regime, language) == says


@pytest.mark.parametrize(
    ("text", "one", "because"),
    [
        ("P280", Precaution("P280", ("gloves", "eyes", "face")), "the classes say what to wear"),
        ("P280 gloves", Precaution("P280", ("gloves",)), "the sheet says it itself"),
        ("P370+P378 dry powder", Precaution("P370+P378", fill="dry powder"), "the blank's words"),
        ("P403+P233 P403+P235", Precaution("P403+P233 P403+P235"), "two codes of one sentence"),
    ],
)
def test_a_written_statement_is_read_back(text: str, one: Precaution, because: str) -> None:
    found = read(text, choose(WIPE, "EU").printed)
    assert found == one, because
    assert read(str(found)) == found


def test_a_blank_that_nobody_filled_in_is_refused_and_filled_it_is_printed() -> None:
    with pytest.raises(UnknownStatement, match=r"P370\+P378 has a blank: write its words behind the code"):
        wording(Precaution("P370+P378"), "EU")
    assert wording(read("P370+P378 dry powder"), "EU") == "In case of fire: Use dry powder to extinguish."


def test_nothing_is_printed_with_a_slash_a_bracket_or_a_blank() -> None:
    raw = [
        printed(row[language], language)
        for row in rows("precautions")
        for language in ("en", "es")
        if not needs_filling(row[language])
    ]
    assert [text for text in raw if set(text) & set("{}<>[]|…") or "/ " in text] == []


ALL = [
    " ".join(part for part in (one.name, one.category, one.codes[0]) if part) for one in classes().values()
]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(ALL), max_size=6, unique=True), st.sampled_from(REGIMES), st.randoms())
def test_the_order_of_hazards_does_not_matter(hazards: list[str], regime: str, random: object) -> None:
    mixed = list(hazards)
    random.shuffle(mixed)  # type: ignore[attr-defined]
    assert choose(hazards, regime) == choose(mixed, regime)
