"""The chart: complete as given, symmetric, doubtful cells with their note, and a blank is never "safe"."""

import csv
from pathlib import Path

import pytest

from safety.hazards.tables import rows
from safety.reactions.chart import cells
from safety.reactions.groups import UnknownGroup, groups, meant, read_group
from safety.reactions.meeting import meet
from safety.reactions.values import MARKS as WORDS
from tests.safety.reactions.products import of

GIVEN = Path(__file__).parents[2] / "expected" / "reactivity_epa.csv"
MARKS = {"": "S2", "doubtful": "doubtful", "memory": "M"}


def given() -> list[dict[str, str]]:
    """The transcription as it was handed over."""
    lines = [line for line in GIVEN.read_text("utf-8").splitlines() if not line.startswith("#")]
    return list(csv.DictReader(lines))


def test_the_chart_is_complete_as_given_and_holds_nothing_else() -> None:
    """EPA-600/2-80-076, figure 6, as transcribed."""
    expected = {(row["group_a"], row["group_b"], row["codes"], MARKS[row["mark"] or ""]) for row in given()}
    found = {(row["group_a"], row["group_b"], row["codes"], row["mark"]) for row in rows("reactivity_chart")}
    assert len(expected) == 305
    assert found == expected
    assert len(cells()) == 305, "no pair stands twice, whichever group comes first"


# Typed from the printed chart's own rows and from the list of what happens in a shop.
@pytest.mark.parametrize(
    ("a", "b", "codes"),
    [
        ("1", "104", "GT H"),
        ("3", "104", "GT H"),
        ("7", "104", "GT F H"),
        ("1", "20", "GT GF"),
        ("20", "104", "GT F H"),
        ("1", "15", "GT"),
        ("10", "22", "GF H"),
        ("18", "106", "H G"),
        ("4", "18", "P H"),
        ("7", "18", "P H"),
        ("10", "18", "P H G"),
        ("4", "104", "F H"),
        ("16", "104", "F H"),
        ("19", "104", "F H"),
        ("29", "104", "F H"),
        ("1", "10", "H"),
        ("3", "10", "H"),
        ("10", "17", "GF H"),
        ("7", "17", "GT H"),
        ("7", "30", "GT H"),
    ],
)
def test_a_cell_says_the_same_whichever_group_comes_first(a: str, b: str, codes: str) -> None:
    for one, other in ((a, b), (b, a)):
        low, high = sorted((one, other), key=int)
        [found] = [pair for pair in meet(of(one), of(other)) if pair.rule == f"{low}-{high}"]
        assert " ".join(found.codes) == codes
        assert found.source == f"EPA-600/2-80-076, figure 6, cell {low}-{high}"


@pytest.mark.parametrize(
    ("a", "b", "codes"),
    [
        ("3", "22", "F GF H"),
        ("8", "23", "F GF H G"),
        ("2", "33", "GT F GF H"),
        ("21", "101", "F GF H G"),
        ("34", "104", "GT F H G"),
        ("101", "104", "GT F H G"),
        ("1", "105", "GT GF H"),
        ("2", "105", "GT F GF H"),
        ("7", "105", "GF H G"),
        ("8", "105", "GF H G"),
        ("11", "105", "GT H"),
        ("12", "105", "GT F H"),
        ("13", "105", "F H"),
        ("16", "105", "E F H"),
    ],
)
def test_a_doubtful_cell_gives_the_union_and_says_that_it_is_doubtful(a: str, b: str, codes: str) -> None:
    [found] = [pair for pair in meet(of(a), of(b)) if pair.rule == f"{a}-{b}"]
    assert (" ".join(found.codes), found.mark) == (codes, "doubtful")
    note = "The transcription is doubtful in this cell: the union of its readings is given."
    assert found.says.endswith(f". {note}")
    doubtful = [row for row in given() if row["mark"] == "doubtful"]
    assert len(doubtful) == 14, "and no other cell is"


def test_a_cell_that_is_not_doubtful_carries_no_note() -> None:
    [found] = meet(of("5"), of("105"))
    assert (found.mark, found.says) == (
        "S2",
        "The chart gives fire, flammable gas and heat for aldehydes with strong reducers.",
    )


def test_a_cell_from_memory_says_so() -> None:
    [found] = meet(of("105"), of("106"))
    assert (found.rule, found.mark, " ".join(found.codes)) == ("105-106", "M", "GT GF")


@pytest.mark.parametrize("other", ["1", "29", "106", "quat", "105"])
def test_water_reactive_goes_with_nothing(other: str) -> None:
    [found] = [pair for pair in meet(of("107"), of(other)) if pair.rule == "107"]
    assert (" ".join(found.codes), found.source, found.mark) == ("GT GF", "chart, column 107", "M")


def test_two_water_reactive_substances_do_not_fire_the_column_for_being_alike() -> None:
    assert meet(of("107"), of("107", "another")) == ()


@pytest.mark.parametrize("table", ["chart", "groups", "rules", "words"])
def test_every_row_is_whole_and_says_how_it_is_known(table: str) -> None:
    found = rows(f"reactivity_{table}")
    assert [row for row in found if None in row or None in row.values()] == []
    assert {row["mark"] for row in found} <= set(WORDS)


def test_a_blank_cell_finds_nothing() -> None:
    assert meet(of("10"), of("23")) == ()


def test_there_are_41_groups_with_their_names() -> None:
    numbers = [each for each in groups() if each.isdigit()]
    assert numbers == [str(n) for n in (*range(1, 35), *range(101, 108))]
    assert (groups()["20"].name, groups()["104"].name) == (
        "mercaptans and organic sulfides",
        "strong oxidisers",
    )


@pytest.mark.parametrize(
    ("tag", "more"),
    [
        ("hypochlorite", "10 104"),
        ("peroxide", "104"),
        ("ammonia", "10"),
        ("sulfite", "105"),
        ("hydrochloric", "1"),
        ("nitric", "1 2"),
        ("light-metal", "23"),
        ("quat", ""),
    ],
)
def test_a_tag_brings_the_groups_it_belongs_to(tag: str, more: str) -> None:
    assert meant({tag}) == {tag, *more.split()}


def test_a_group_that_is_not_there_is_refused_with_those_that_are() -> None:
    with pytest.raises(UnknownGroup) as refused:
        read_group("108")
    assert str(refused.value) == (
        "“108”: a number from 1 to 34 or 101 to 107, or one of hypochlorite, peroxide, ammonia, ammonium, "
        "quat, sulfite, carbonate, hydrochloric, nitric, light-metal, water-sensitive, cobalt, residue, "
        "glass, titanium, skin, flame was expected."
    )


def test_a_group_is_read_in_either_case() -> None:
    assert read_group(" Quat ") == "quat"
