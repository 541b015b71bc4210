"""The size of a container by what is in it and what it is made of."""

import pytest

from inventory.models import Pack
from safety.findings import Finding
from safety.flammables.containers import ContainerError, container_size, sizes
from safety.flammables.values import Vessel

PINT, QUART, GALLON = 0.473176473, 0.946352946, 3.785411784


def judged(of: int | None, material: str, litres: float, regime: str = "US") -> tuple[Finding, ...]:
    return container_size(Vessel("Hollin panel wipe", of, material, litres), regime)


def test_a_material_that_the_table_does_not_know_is_refused_with_those_it_does() -> None:
    with pytest.raises(ContainerError) as refused:
        judged(2, "wood", 1)
    assert str(refused.value) == (
        "material: one of glass or plastic, metal, safety can, metal drum, portable tank was expected, "
        "not “wood”."
    )


def test_every_material_that_a_pack_can_be_made_of_is_in_the_table() -> None:
    said = [str(word) for value, word in Pack.Vessel.choices if value]
    assert said == ["glass or plastic", "metal", "safety can"]
    assert [word for word in said if word not in sizes("US")] == []


@pytest.mark.parametrize(
    ("material", "largest"),
    [
        ("glass or plastic", (PINT, QUART, GALLON, GALLON)),
        ("metal", (GALLON, 5 * GALLON, 5 * GALLON, 5 * GALLON)),
        ("safety can", (2 * GALLON, 5 * GALLON, 5 * GALLON, 5 * GALLON)),
        ("metal drum", (60 * GALLON,) * 4),
        ("portable tank", (660 * GALLON,) * 4),
    ],
)
def test_a_container_is_right_up_to_table_h_12_and_is_told_of_beyond(
    material: str, largest: tuple[float, ...]
) -> None:
    """29 CFR 1910.106(d)(2)(iii), Table H-12."""
    for of, litres in enumerate(largest, 1):
        assert judged(of, material, litres) == ()
        [told] = judged(of, material, litres * 1.01)
        assert (told.code, told.grade) == ("flammables.container", "tell")


@pytest.mark.parametrize(
    ("of", "material", "litres", "says", "because"),
    [
        (2, "glass or plastic", GALLON,
         "Hollin panel wipe: 3.8 l (1 gal) of category 2 in glass or plastic is above the 0.946 l (1 qt) of "
         "29 CFR 1910.106, Table H-12.", "a quart is said as one"),
        (1, "glass or plastic", 0.5,
         "Hollin panel wipe: 0.5 l (0.132 gal) of category 1 in glass or plastic is above the 0.473 l (1 pt) "
         "of 29 CFR 1910.106, Table H-12.", "a pint is said as one"),
        (3, "glass or plastic", 5,
         "Hollin panel wipe: 5 l (1.3 gal) of category 3 in glass or plastic is above the 3.8 l (1 gal) of "
         "29 CFR 1910.106, Table H-12.", "from a gallon on, gallons"),
    ],
)  # fmt: skip
def test_it_says_how_much_of_what_in_what_and_the_limit(
    of: int, material: str, litres: float, says: str, because: str
) -> None:
    [told] = judged(of, material, litres)
    assert told.says == says, because


def test_a_bottle_that_is_too_large_says_what_would_do() -> None:
    [told] = judged(2, "glass or plastic", 5)
    assert told.because == (
        "A container of glass or plastic may hold at most 0.946 l (1 qt) of a category 2 liquid."
    )
    assert told.do == "Keep it in metal or a safety can, or buy smaller ones."
    assert told.source == "29 CFR 1910.106(d)(2)(iii), Table H-12 (read)"
    assert told.about == ("Hollin panel wipe",)


def test_in_canada_it_says_whose_table_it_is() -> None:
    [told] = judged(2, "glass or plastic", 5, "CA")
    assert told.do == (
        "Keep it in metal or a safety can, or buy smaller ones. The table is the United States': your own "
        "fire code is not in our tables and comes first."
    )


def test_small_glass_has_one_exception_and_large_glass_none() -> None:
    [small] = judged(2, "glass or plastic", 1)
    assert small.do.endswith(
        "Glass or plastic stays allowed where metal would spoil the liquid or be eaten by it."
    )
    [gallon] = judged(1, "glass or plastic", GALLON)
    assert "stays allowed" in gallon.do
    [large] = judged(2, "glass or plastic", 4)
    assert "stays allowed" not in large.do


def test_a_jug_labelled_18_93_litres_is_five_gallons_that_metal_may_hold() -> None:
    [told] = judged(2, "glass or plastic", 18.93)
    assert told.do == "Keep it in metal or a safety can, or buy smaller ones."


def test_what_no_can_may_hold_is_bought_smaller_or_left_in_its_drum() -> None:
    [told] = judged(3, "metal", 25)
    assert told.do == "Buy it in smaller containers, or keep it in the metal drum it was shipped in."


@pytest.mark.parametrize(
    ("of", "regime", "because"),
    [
        (None, "US", "nobody knows whether it burns"),
        (0, "US", "it does not burn"),
        (2, "UK", "the table is the US law's"),
        (2, "EU", "likewise"),
    ],
)
def test_nothing_is_judged_where_the_table_says_nothing(of: int | None, regime: str, because: str) -> None:
    assert judged(of, "glass or plastic", 20, regime) == (), because
