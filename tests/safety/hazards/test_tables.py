"""Every table says where it comes from, and no two tables contradict one another."""

import re

import pytest

from safety.hazards.classes import REGIMES, classes, plain, read_hazard
from safety.hazards.statements import texts
from safety.hazards.tables import TABLES, header, rows

NAMES = sorted(path.stem for path in TABLES.glob("*.csv"))
OURS = ("classes", "statements", "supplemental", "precautions", "precaution_choice")
MARKS = {"S", "S2", "M"}


@pytest.mark.parametrize("table", NAMES)
def test_every_table_opens_with_its_source_and_what_its_marks_mean(table: str) -> None:
    lines = header(table)
    assert any(line.startswith("source:") for line in lines), lines
    assert any(line.startswith("mark:") for line in lines), lines


@pytest.mark.parametrize("table", OURS)
def test_every_row_is_marked_in_every_column_of_marks(table: str) -> None:
    odd = [
        row for row in rows(table) for column in row if column.startswith("mark") and row[column] not in MARKS
    ]
    assert odd == []


@pytest.mark.parametrize("table", OURS)
def test_no_row_has_more_or_fewer_cells_than_the_table_has_columns(table: str) -> None:
    assert [row for row in rows(table) if None in row or None in row.values()] == []


def test_no_class_stands_twice() -> None:
    assert len(classes()) == len(rows("classes"))


def test_no_class_has_a_code_without_a_text() -> None:
    assert {code for one in classes().values() for code in one.codes} - set(texts()) == set()


def test_no_text_has_a_code_that_neither_a_class_nor_the_supplemental_list_names() -> None:
    """Joined codes are made of codes of classes, and suffix letters belong to their plain code."""
    named = {code for one in classes().values() for code in one.codes}
    named |= {row["code"] for row in rows("supplemental")}
    parts = {part for code in texts() for part in code.split("+")}
    assert {part for part in parts if part not in named and plain(part) not in named} == set()


def test_no_supplemental_statement_is_without_a_text_or_belongs_to_a_class() -> None:
    listed = {row["code"] for row in rows("supplemental")}
    assert listed - set(texts()) == set()
    assert listed & {code for one in classes().values() for code in one.codes} == set()


def test_every_class_belongs_to_a_known_regime() -> None:
    assert all(one.regimes and set(one.regimes) <= set(REGIMES) for one in classes().values())


def test_every_class_can_be_written_and_is_read_back() -> None:
    for one in classes().values():
        written = " ".join(part for part in (one.name, one.category, one.codes[0]) if part)
        assert read_hazard(written).of == one, written


def test_a_signal_word_is_one_of_two_or_none_and_a_pictogram_one_of_nine() -> None:
    assert {one.signal_word for one in classes().values()} == {"Danger", "Warning", None}
    pictograms = {picture for one in classes().values() for picture in one.pictograms}
    assert pictograms == {f"GHS0{number}" for number in range(1, 10)}


REFERENCE = [
    # class, category, pictograms, word, codes, regimes: rows of the rules' own table, read from their sources
    ("Flam. Liq.", "4", "", "Warning", "H227", "US CA UN"),
    ("Chem. Press.", "2", "GHS02 GHS04", "Warning", "H283", "US CA UN"),
    ("Acute Tox.", "5", "", "Warning", "H303 H313 H333", "UN"),
    ("Skin Irrit.", "3", "", "Warning", "H316", "UN"),
    ("Asp. Tox.", "2", "GHS08", "Warning", "H305", "UN"),
    ("Aquatic Acute", "2", "", "", "H401", "UN"),
    ("Aquatic Acute", "1", "GHS09", "Warning", "H400", "EU US UN"),
    ("ED HH", "1", "", "Danger", "EUH380", "EU"),
    ("PMT", "", "", "Danger", "EUH450", "EU"),
    ("Lact.", "", "", "", "H362", "EU US CA UN"),
    ("Ozone", "1", "GHS07", "Warning", "H420", "EU US UN"),
    ("Simple Asphyxiant", "", "", "Warning", "N-ASPHYXIANT", "US CA"),
]


@pytest.mark.parametrize(("name", "category", "pictures", "word", "codes", "regimes"), REFERENCE)
def test_a_class_has_the_elements_and_regimes_of_its_source(
    name: str, category: str, pictures: str, word: str, codes: str, regimes: str
) -> None:
    one = classes()[(name.lower(), category)]
    assert " ".join(one.pictograms) == pictures
    assert (one.signal_word or "") == word
    assert " ".join(one.codes) == codes
    assert " ".join(one.regimes) == regimes


WITHOUT_H_CODE = [
    ("Simple Asphyxiant", "US", "N-ASPHYXIANT"),
    ("Comb. Dust", "CA", "N-DUST"),
    ("Acute Tox. (water) 3", "CA", "N-WATER-TOXIC"),
]


@pytest.mark.parametrize(("written", "regime", "code"), WITHOUT_H_CODE)
def test_what_has_no_h_code_is_written_without_one(written: str, regime: str, code: str) -> None:
    hazard = read_hazard(written)
    assert hazard.codes == (code,)
    assert read_hazard(str(hazard)) == hazard
    assert regime in hazard.of.regimes


def test_a_code_of_ours_never_looks_like_one_of_a_regulation() -> None:
    ours = [code for code in texts() if code.startswith("N-")]
    assert ours
    assert not any(re.search(r"H\d{3}", code) for code in ours)
