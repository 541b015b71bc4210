"""Hardness: the practitioner's own figures (common practice, no source), and two scales kept apart."""

import pytest

from inventory.trade.hardness import PENCIL_IS_NOT_MOHS, HardnessError, mohs, pencils, scratches


def test_a_pencil_grade_has_no_place_on_the_mohs_scale() -> None:
    with pytest.raises(HardnessError) as refused:
        scratches("9H", "quartz")
    assert str(refused.value) == PENCIL_IS_NOT_MOHS
    assert PENCIL_IS_NOT_MOHS == (
        "Pencil 9H is not 9 on the Mohs scale: the pencil scale ends at 9H, and a film that no pencil marks "
        "is still scratched by quartz dust, 7 on the Mohs scale."
    )


def test_an_unknown_material_is_refused_with_what_is_known() -> None:
    with pytest.raises(HardnessError) as refused:
        scratches("quartz", "chewing gum")
    assert str(refused.value) == (
        "“chewing gum” is not in the table of hardness: name talc, gypsum, clear coat and paint, calcite, "
        "fluorite, apatite, feldspar, quartz, topaz, corundum, diamond."
    )


def test_clear_coat_is_two_to_four_and_quartz_seven_by_common_practice() -> None:
    clear, quartz = mohs()["clear coat and paint"], mohs()["quartz"]
    assert (clear.low, clear.high, clear.mark) == (2, 4, "common practice, no source")
    assert (quartz.low, quartz.high, quartz.mark) == (7, 7, "common practice, no source")


def test_9h_ends_the_pencil_scale() -> None:
    assert pencils()[-1] == "9H"
    assert pencils()[0] == "6B"
    assert [pencils().index(one) for one in ("B", "HB", "F", "H")] == [5, 6, 7, 8]


def test_what_is_typed_from_memory_says_so() -> None:
    assert mohs()["diamond"].mark == "from memory"


@pytest.mark.parametrize(
    ("harder", "softer", "expected", "because"),
    [
        ("quartz", "clear coat and paint", True, "dust on paint: 7 above 2 to 4"),
        ("clear coat and paint", "quartz", False, "never the other way round"),
        ("apatite", "clear coat and paint", True, "5 is above all of 2 to 4"),
        ("fluorite", "clear coat and paint", None, "4 is where the range ends: nobody can say"),
        ("gypsum", "clear coat and paint", None, "2 is where the range begins"),
        ("talc", "clear coat and paint", False, "1 is under all of it"),
        ("quartz", "quartz", None, "equals may mark each other"),
        ("diamond", "corundum", True, "10 above 9"),
    ],
)
def test_the_harder_scratches_the_softer_and_nobody_guesses_between(
    harder: str, softer: str, expected: bool | None, because: str
) -> None:
    assert scratches(harder, softer) is expected, because
