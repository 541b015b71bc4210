"""The size of a container by what is in it and what it is made of."""

import pytest

from safety.flammables.containers import ContainerError, container_size

PINT, QUART, GALLON = 0.473176473, 0.946352946, 3.785411784


def test_a_material_that_the_table_does_not_know_is_refused_with_those_it_does() -> None:
    with pytest.raises(ContainerError) as refused:
        container_size(2, "wood", 1, "US")
    assert str(refused.value) == (
        "material: one of glass or plastic, metal, safety can, metal drum, portable tank was expected, "
        "not “wood”."
    )


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
def test_a_container_is_right_up_to_table_h_12_and_asks_beyond(
    material: str, largest: tuple[float, ...]
) -> None:
    """29 CFR 1910.106(d)(2)(iii), Table H-12."""
    for of, litres in enumerate(largest, 1):
        assert container_size(of, material, litres, "US") == ()
        [told] = container_size(of, material, litres * 1.01, "US")
        assert (told.code, told.grade) == ("flammables.container", "ask")


def test_a_bottle_that_is_too_large_says_what_would_do() -> None:
    [told] = container_size(2, "glass or plastic", 5, "US")
    assert told.says == "This container of 5 l (1.3 gal) is too large for a category 2 liquid."
    assert told.because == "In glass or plastic it may hold at most 0.946 l (0.25 gal)."
    assert told.do == "Keep it in metal or a safety can, or buy smaller ones."
    assert told.source == "29 CFR 1910.106(d)(2)(iii), Table H-12 (read)"


def test_small_glass_has_one_exception_and_large_glass_none() -> None:
    [small] = container_size(2, "glass or plastic", 1, "US")
    assert small.do.endswith(
        "Glass or plastic stays allowed where metal would spoil the liquid or be eaten by it."
    )
    [gallon] = container_size(1, "glass or plastic", GALLON, "US")
    assert "stays allowed" in gallon.do
    [large] = container_size(2, "glass or plastic", 4, "US")
    assert "stays allowed" not in large.do


def test_a_jug_labelled_18_93_litres_is_five_gallons_that_metal_may_hold() -> None:
    [told] = container_size(2, "glass or plastic", 18.93, "US")
    assert told.do == "Keep it in metal or a safety can, or buy smaller ones."


def test_what_no_can_may_hold_is_bought_smaller_or_left_in_its_drum() -> None:
    [told] = container_size(3, "metal", 25, "US")
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
    assert container_size(of, "glass or plastic", 20, regime) == (), because


def test_a_bottle_labelled_473_ml_is_a_pint() -> None:
    assert container_size(1, "glass or plastic", 0.4735, "US") == ()
    assert container_size(1, "glass or plastic", 0.5, "US") != ()
