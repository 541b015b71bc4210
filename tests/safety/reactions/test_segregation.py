"""The transport table: a second flag, which alone would let bleach stand beside acid."""

import pytest

from safety.reactions.segregation import table, transport, transport_classes
from safety.reactions.shelf import in_one_place
from safety.reactions.values import Substance
from tests.safety.reactions.products import of

ACID = Substance("acid", frozenset({"1"}), hazards=("Skin Corr. 1B H314", "Met. Corr. 1 H290"))
SOLVENT = Substance("solvent", frozenset({"29"}), hazards=("Flam. Liq. 2 H225",))
OXIDISER = Substance("oxidiser", hazards=("Ox. Sol. 2 H272",), liquid=False)
AEROSOL = Substance("aerosol", hazards=("Aerosol 1 H222+H229",))
POISON = Substance("poison", hazards=("Acute Tox. 1 H330",))
FLAMMABLE_SOLID = Substance("flammable solid", hazards=("Flam. Sol. 1 H228",), liquid=False)
EXPLOSIVE = Substance("explosive", hazards=("Expl. 1.4 H204",))
OTHER_EXPLOSIVE = Substance("other explosive", hazards=("Expl. 1.1 H201",))
CORROSIVE_SOLID = Substance("caustic pearls", hazards=("Skin Corr. 1A H314",), liquid=False)


def test_the_table_is_whole_and_symmetric() -> None:
    """49 CFR 177.848(d): 18 rows and columns."""
    assert len(table()) == 18 * 18
    assert [pair for pair in table() if table()[pair] != table()[pair[::-1]]] == []
    assert set(table().values()) == {"", "X", "O", "*"}


# Read from 49 CFR 177.848(d), cell by cell.
@pytest.mark.parametrize(
    ("a", "b", "cell"),
    [
        ("3", "5.1", "O"),
        ("5.1", "8-liq", "O"),
        ("3", "2.3A", "X"),
        ("6.1-PGI-A", "8-liq", "X"),
        ("4.2", "8-liq", "X"),
        ("2.1", "6.1-PGI-A", "O"),
        ("1.1-1.2", "1.4", "*"),
        ("8-liq", "8-liq", ""),
        ("3", "8-liq", ""),
    ],
)
def test_cells_of_the_regulation(a: str, b: str, cell: str) -> None:
    assert table()[a, b] == cell


@pytest.mark.parametrize(
    ("substance", "expected"),
    [
        (ACID, {"8-liq"}),
        (CORROSIVE_SOLID, set()),
        (SOLVENT, {"3"}),
        (OXIDISER, {"5.1"}),
        (AEROSOL, {"2.1"}),
        (POISON, {"6.1-PGI-A"}),
        (Substance("swallowed", hazards=("Acute Tox. 1 H300",)), set()),
        (Substance("heavy solvent", hazards=("Flam. Liq. 4 H227",)), set()),
        (Substance("misread", hazards=("Flammable!",)), set()),
    ],
)
def test_which_column_a_product_falls_under(substance: Substance, expected: set[str]) -> None:
    assert transport_classes(substance) == expected


@pytest.mark.parametrize(
    ("a", "b", "grade", "sentence"),
    [
        (POISON, SOLVENT, "ask", "Classes 3 and 6.1-PGI-A may not travel in one vehicle."),
        (POISON, ACID, "ask", "Classes 6.1-PGI-A and 8-liq may not travel in one vehicle."),
        (SOLVENT, OXIDISER, "tell", "Classes 3 and 5.1 may travel together only where leaks cannot meet."),
        (
            AEROSOL,
            POISON,
            "tell",
            ("Classes 2.1 and 6.1-PGI-A may travel together only where leaks cannot meet."),
        ),
        (
            EXPLOSIVE,
            OTHER_EXPLOSIVE,
            "tell",
            ("Classes 1.1-1.2 and 1.4 fall under the rules of their own for explosives."),
        ),
        (ACID, OXIDISER, "ask", "A corrosive liquid stands neither above nor beside class 5.1."),
        (ACID, FLAMMABLE_SOLID, "ask", "A corrosive liquid stands neither above nor beside class 4.1."),
        (CORROSIVE_SOLID, OXIDISER, None, None),
        (ACID, SOLVENT, None, None),
    ],
)
def test_what_transport_says(a: Substance, b: Substance, grade: str | None, sentence: str | None) -> None:
    for one, other in ((a, b), (b, a)):
        flag = transport(one, other)
        assert (flag and flag.grade, flag and flag.says) == (grade, sentence)


def test_bleach_beside_acid_is_blank_in_transport_and_stopped_on_a_shelf() -> None:
    bleach = Substance("bleach", frozenset({"hypochlorite"}), hazards=("Skin Corr. 1B H314",))
    assert transport(bleach, ACID) is None
    found = in_one_place(bleach, ACID)
    assert found is not None
    assert found.grade == "stop"


def test_transport_alone_asks_and_says_that_it_is_a_second_flag() -> None:
    found = in_one_place(POISON, ACID)
    assert found is not None
    assert (found.code, found.grade, found.says) == (
        "reaction.place_transport",
        "ask",
        "acid and poison stand together. Classes 6.1-PGI-A and 8-liq may not travel in one vehicle.",
    )
    assert found.because == (
        "The transport table is a second flag; the reaction rules found nothing, which is not safe."
    )
    assert found.source == (
        "49 CFR 177.848(d) (read in a copy; classes of the products from memory: check them)"
    )


def test_transport_is_folded_into_a_reaction_and_never_makes_it_milder() -> None:
    oxidiser = Substance("bleaching salt", frozenset({"104"}), hazards=("Ox. Sol. 2 H272",), liquid=False)
    found = in_one_place(oxidiser, Substance("wax", frozenset({"29"}), hazards=("Flam. Liq. 3 H226",)))
    assert found is not None
    assert found.grade == "stop"
    assert found.because.endswith(
        " In transport: Classes 3 and 5.1 may travel together only where leaks cannot meet."
    )


def test_transport_says_nothing_of_two_bottles_of_one_product() -> None:
    assert in_one_place(EXPLOSIVE, EXPLOSIVE) is None
    assert in_one_place(of("29"), of("16")) is None
