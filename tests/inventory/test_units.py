"""Amounts: one strict grammar in, few figures out."""

import csv
import subprocess
import sys
from decimal import Decimal
from pathlib import Path

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.units import (
    Amount,
    AmountError,
    Dimension,
    by_density,
    dilution,
    in_words,
    parse_amount,
    pour_in_words,
    show,
)

unhurried = settings(deadline=None)  # a loaded machine is slow, not wrong

VOLUME, MASS, PIECES, LENGTH = Dimension.VOLUME, Dimension.MASS, Dimension.PIECES, Dimension.LENGTH
EXPECTED = Path(__file__).parent.parent / "expected" / "units.csv"


def outside_truth() -> list[dict[str, str]]:
    lines = EXPECTED.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def amount_or_refusal(text: str, **options: str | None) -> Amount | str:
    try:
        return parse_amount(text, **options)
    except AmountError as refusal:
        return str(refusal)


@pytest.mark.parametrize(
    ("text", "because"),
    [
        ("-5 ml", "negative"),
        ("−5 ml", "negative, with a true minus"),
        ("+5 ml", "a sign is not part of an amount"),
        ("1e3 ml", "an exponent"),
        ("1E+3 ml", "an exponent with a sign"),
        ("٥ ml", "Arabic digits"),
        ("５ ml", "full-width digits"),
        ("5² ml", "a superscript is no digit"),
        ("0.0004 ml", "rounds to 0"),
        ("0.5 µl", "half-even to 0"),
        ("9223372036854775808 µl", "one above the largest column value"),
        ("99999999999999999999999999 gal", "far above it"),
        ("12", "no unit"),
        ("ml", "no number"),
        ("", "nothing"),
        ("5 km", "a unit outside the list"),
        ("5 gallons", "a spelling outside the list"),
        ("10 pcs 3", "something behind the unit"),
        (".5 ml", "no figure before the mark"),
        ("5. ml", "no figure behind the mark"),
        ("1,2,3 ml", "marks that are neither"),
        ("1,00,000 ml", "groups of two"),
        ("12 34 ml", "a group of two behind a space"),
        ("1'000 ml", "an apostrophe is not in the grammar"),
        ("1/0 l", "nothing can be divided by 0"),
        ("2 3/2 l", "not a proper fraction"),
        ("9**9**9 l", "arithmetic"),
        ("1:10", "a ratio is no amount"),
        ("2 1/2 pcs", "pieces are whole"),
        ("0.4 pc", "pieces are whole"),
        ("1" * 61 + " ml", "longer than any amount"),
    ],
)
def test_a_text_without_one_reading_is_refused(text: str, because: str) -> None:
    with pytest.raises(AmountError) as refusal:
        parse_amount(text, system="us")
    assert str(refusal.value).endswith("."), because


@pytest.mark.parametrize(
    ("text", "options", "readings"),
    [
        ("1,000 ml", {}, ["1000 ml", "1 ml"]),
        ("1.000 ml", {}, ["1000 ml", "1 ml"]),
        ("12,500 g", {}, ["12500 g", "12.5 g"]),
        ("16 fl oz", {}, ["473.2 ml (US)", "454.6 ml (imperial)"]),
        ("1 pt", {"system": "metric"}, ["473.2 ml (US)", "568.3 ml (imperial)"]),
        ("3 oz", {}, ["85.05 g", "88.72 ml (US)", "85.24 ml (imperial)"]),
        ("3 oz", {"system": "us"}, ["85.05 g", "88.72 ml (US)"]),
        ("3 oz", {"dimension": "volume"}, ["88.72 ml (US)", "85.24 ml (imperial)"]),
    ],
)
def test_what_has_two_readings_is_refused_with_both(
    text: str, options: dict[str, str], readings: list[str]
) -> None:
    with pytest.raises(AmountError) as refusal:
        parse_amount(text, **options)
    assert [each for each in readings if each in str(refusal.value)] == readings


@pytest.mark.parametrize("wrong", [{"dimension": "heat"}, {"system": "roman"}, {"decimal": "dot"}])
def test_an_option_that_does_not_exist_is_refused_in_words(wrong: dict[str, str]) -> None:
    with pytest.raises(AmountError, match="name "):
        parse_amount("5 ml", **wrong)


def test_a_volume_is_refused_where_a_mass_is_wanted() -> None:
    with pytest.raises(
        AmountError, match=r"“500 ml” is a volume, and a mass is wanted\. Write it in mg, g, kg"
    ):
        parse_amount("500 ml", dimension=MASS)


@pytest.mark.parametrize(
    ("text", "base", "because"),
    [
        ("12 ml", 12_000, "a whole number"),
        ("0.5 l", 500_000, "a point"),
        ("0,5 L", 500_000, "a comma, a capital"),
        ("1,5l", 1_500_000, "no space"),
        ("2 1/2 l", 2_500_000, "a mixed fraction"),
        ("1/2 l", 500_000, "a fraction"),
        ("21/2 l", 10_500_000, "twenty-one halves: nothing tells a whole part"),
        ("½ l", 500_000, "a vulgar fraction"),
        ("2½ l", 2_500_000, "a number before it"),
        ("2 ½ l", 2_500_000, "with a space"),
        ("1.000,5 ml", 1_000_500, "both marks: the last is decimal"),
        ("1,000.5 ml", 1_000_500, "both marks: the last is decimal"),
        ("1,000.500 ml", 1_000_500, "both marks, three figures behind"),
        ("1 000 ml", 1_000_000, "a space groups"),
        ("1\u202f000 ml", 1_000_000, "a narrow space groups"),
        ("1 000,250 ml", 1_000_250, "a space groups, so the comma is decimal"),
        ("1,000,000 µl", 1_000_000, "a mark that repeats groups"),
        ("1.000.000 µl", 1_000_000, "a mark that repeats groups"),
        ("0.500 ml", 500, "0 alone before the mark is no group"),
        ("0,500 ml", 500, "0 alone before the mark is no group"),
        ("1000,500 ml", 1_000_500, "four figures before it are no group"),
        ("1,0000 ml", 1_000, "four figures behind it are no group"),
        ("2.5 µl", 2, "half-even, down"),
        ("3.5 µl", 4, "half-even, up"),
        ("1/3 l", 333_333, "a third, rounded once"),
        ("0 ml", 0, "nothing is an amount"),
        ("9223372036854775807 µl", 2**63 - 1, "the largest column value"),
        ("500ML", 500_000, "capitals are not mega"),
        ("5 cc", 5_000, "cc"),
        ("5 CL", 50_000, "cl"),
        ("5 dl", 500_000, "dl"),
        ("2 litres", 2_000_000, "a word"),
        ("2 Liter", 2_000_000, "the other spelling"),
        ("2 ltr", 2_000_000, "an abbreviation"),
        ("5 μl", 5, "Greek mu"),
        ("5 µL", 5, "the micro sign"),
        ("5 UL", 5, "typed u"),
    ],
)
def test_a_volume_is_read(text: str, base: int, because: str) -> None:
    assert parse_amount(text) == Amount(base, VOLUME), because


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("5 mg", Amount(5, MASS)),
        ("1.5 KG", Amount(1_500_000, MASS)),
        ("2 lbs", Amount(907_185, MASS)),
        ("1 pc", Amount(1, PIECES)),
        ("10 pcs", Amount(10, PIECES)),
        ("1 Piece", Amount(1, PIECES)),
        ("10 pieces", Amount(10, PIECES)),
        ("120 um", Amount(120, LENGTH)),
        ("3 mil", Amount(76, LENGTH)),
    ],
)
def test_other_dimensions_are_read(text: str, amount: Amount) -> None:
    assert parse_amount(text) == amount


@pytest.mark.parametrize("spelling", ["fl oz", "fl. oz.", "floz", "FL OZ", "Fl. Oz.", "fl  oz"])
def test_every_spelling_of_the_fluid_ounce_is_read(spelling: str) -> None:
    assert parse_amount(f"16{spelling}", system="us") == Amount(473_176, VOLUME)


@pytest.mark.parametrize(
    ("text", "decimal", "base"),
    [
        ("1,000 ml", "point", 1_000_000),
        ("1,000 ml", "comma", 1_000),
        ("1.000 ml", "point", 1_000),
        ("1.000 ml", "comma", 1_000_000),
        ("0.5 ml", "comma", 500),  # only one reading, whatever the shop's mark
    ],
)
def test_the_shops_mark_settles_what_has_two_readings(text: str, decimal: str, base: int) -> None:
    assert parse_amount(text, decimal=decimal).base == base


def test_an_ounce_is_told_by_the_products_dimension() -> None:
    assert parse_amount("3 oz", dimension="mass") == Amount(85_049, MASS)
    assert parse_amount("3 oz", dimension="volume", system="us") == Amount(88_721, VOLUME)


def test_a_bare_number_answers_only_how_many_pieces() -> None:
    assert parse_amount("12", dimension="pieces") == Amount(12, PIECES)
    with pytest.raises(AmountError, match="has no unit"):
        parse_amount("12", dimension="volume")


@pytest.mark.parametrize("row", outside_truth(), ids=lambda row: f"{row['text']} {row['system']}")
def test_factors_are_those_of_the_handbook(row: dict[str, str]) -> None:
    amount = parse_amount(row["text"], system=row["system"] or None, dimension=row["dimension"])
    assert (amount.base, amount.unit) == (int(row["base"]), row["unit"])


@pytest.mark.parametrize(
    ("base", "dimension", "system", "shown"),
    [
        (1_200_000, VOLUME, "metric", "1.2 l"),
        (500_000, VOLUME, "metric", "0.5 l"),
        (30_000, VOLUME, "metric", "30 ml"),
        (473_176, VOLUME, "metric", "473.2 ml"),
        (1_235_000, VOLUME, "metric", "1235 ml"),
        (1_234_567, VOLUME, "metric", "1.23 l"),
        (250, VOLUME, "metric", "250 µl"),
        (0, VOLUME, "metric", "0 ml"),
        (12_345_678_000, VOLUME, "metric", "12346 l"),
        (850_000, MASS, "metric", "850 g"),
        (85_049, MASS, "metric", "85.05 g"),
        (5, MASS, "metric", "5 mg"),
        (12, PIECES, "us", "12 pieces"),
        (-250_000, VOLUME, "metric", "−250 ml"),  # what a count found missing
        (1, PIECES, "metric", "1 piece"),
        (76, LENGTH, "us", "76 µm"),
        (473_176, VOLUME, "us", "16 fl oz"),
        (473_176, VOLUME, "imperial", "16.65 fl oz"),
        (3_785_412, VOLUME, "us", "1 gal"),
        (1_000, VOLUME, "us", "1 ml"),  # 0.03 fl oz would say less
        (453_592, MASS, "us", "1 lb"),
    ],
)
def test_an_amount_is_shown_in_few_figures(base: int, dimension: Dimension, system: str, shown: str) -> None:
    assert show(base, dimension, system) == shown


@pytest.mark.parametrize(
    ("text", "options", "words"),
    [
        ("16 fl oz", {"system": "us"}, "16 fl oz (US) = 473.2 ml"),
        ("1 PT", {"system": "imperial"}, "1 pt (imperial) = 568.3 ml"),
        ("3 oz", {"dimension": "mass"}, "3 oz = 85.05 g"),
        ("3 oz", {"dimension": "volume", "system": "us"}, "3 fl oz (US) = 88.72 ml"),
        ("2½ gal", {"system": "us"}, "2½ gal (US) = 9.46 l"),
        ("500 ml", {}, "0.5 l"),
        ("12 pcs", {}, "12 pieces"),
    ],
)
def test_other_measures_are_said_back_in_words(text: str, options: dict[str, str], words: str) -> None:
    assert in_words(text, parse_amount(text, **options), options.get("system")) == words


@unhurried
@given(
    st.integers(0, 10**12), st.sampled_from(["metric", "us", "imperial"]), st.sampled_from(list(Dimension))
)
def test_what_is_shown_can_be_typed_back(base: int, system: str, dimension: Dimension) -> None:
    read = parse_amount(show(base, dimension, system), dimension=dimension, system=system)
    # Four figures, two decimals: never further off than half a percent.
    assert abs(read.base - base) <= base * 0.005


@unhurried
@given(st.integers(0, 9999), st.sampled_from(["ml", "l", "g", "kg", "mg", "µl"]))
def test_an_amount_of_four_figures_comes_back_exactly(number: int, unit: str) -> None:
    amount = parse_amount(f"{number} {unit}")
    assert parse_amount(show(amount.base, amount.dimension)) == amount


@unhurried
@given(st.text(max_size=80), st.sampled_from([None, "us"]), st.sampled_from([None, "comma"]))
def test_no_text_raises_anything_but_a_refusal(text: str, system: str | None, decimal: str | None) -> None:
    answer = amount_or_refusal(text, system=system, decimal=decimal)
    assert answer.endswith(".") if isinstance(answer, str) else 0 <= answer.base < 2**63


@unhurried
@given(
    st.from_regex(
        r"[0-9]{0,4}[ .,/½e-]?[0-9]{0,3}[ .,/½]?[0-9]{0,3} ?(ml|l|oz|gal|fl oz|pcs|mil|xx)", fullmatch=True
    )
)
def test_no_text_that_is_nearly_an_amount_raises_anything_but_a_refusal(text: str) -> None:
    answer = amount_or_refusal(text, system="us", dimension="volume")
    assert answer.endswith(".") if isinstance(answer, str) else answer.dimension is VOLUME


def test_mass_and_volume_do_not_convert_without_a_density() -> None:
    with pytest.raises(AmountError, match=r"Type the product's density from its data sheet"):
        by_density(Amount(1_000_000, VOLUME), MASS, None)
    with pytest.raises(AmountError, match="Type the product's density"):
        by_density(Amount(1_000_000, VOLUME), MASS, 0)


def test_pieces_have_no_density() -> None:
    with pytest.raises(AmountError, match="not pieces into mass"):
        by_density(Amount(3, PIECES), MASS, 1_000_000)


@pytest.mark.parametrize(
    ("amount", "to", "density", "result", "because"),
    [
        (Amount(1_000_000, VOLUME), MASS, 785_000, Amount(785_000, MASS), "a litre weighs its density"),
        (Amount(785_000, MASS), VOLUME, 785_000, Amount(1_000_000, VOLUME), "and back"),
        (Amount(1, VOLUME), MASS, 2_500_000, Amount(2, MASS), "2.5 half-even"),
        (Amount(1, VOLUME), MASS, 3_500_000, Amount(4, MASS), "3.5 half-even"),
        (Amount(7, VOLUME), VOLUME, None, Amount(7, VOLUME), "nothing to convert"),
    ],
)
def test_a_density_converts_once(
    amount: Amount, to: Dimension, density: int | None, result: Amount, because: str
) -> None:
    assert by_density(amount, to, density) == result, because


def test_a_mix_without_product_is_refused() -> None:
    with pytest.raises(AmountError, match="at least one part of product"):
        dilution(1_000_000, 0, 10)
    with pytest.raises(AmountError, match="no negative water"):
        dilution(1_000_000, 1, -1)


def test_a_litre_at_one_to_ten_is_parts_added() -> None:
    assert dilution(1_000_000, 1, 10) == (90_909, 909_091)
    assert pour_in_words(90_909, 909_091) == "91 ml product into 909 ml water, water first"


def test_an_undiluted_fill_names_no_water() -> None:
    assert pour_in_words(*dilution(500_000, 1, 0)) == "500 ml product, undiluted"


@unhurried
@given(st.integers(0, 2**63 - 1), st.integers(1, 500), st.integers(0, 500))
def test_water_takes_the_exact_remainder(total: int, product_parts: int, water_parts: int) -> None:
    product, water = dilution(total, product_parts, water_parts)
    assert product + water == total
    assert min(product, water) >= 0


def test_the_parser_that_is_never_given_a_text_errs_in_silence() -> None:
    registry = pint.UnitRegistry(non_int_type=Decimal)
    assert registry("0,5 L").magnitude == 0
    assert registry("2 1/2 gal").magnitude == 1
    assert registry("500ML").to("l").magnitude == 500_000_000
    assert parse_amount("500ML") == parse_amount("0,5 L") == Amount(500_000, VOLUME)


def test_pint_is_not_imported_before_it_is_needed() -> None:
    looked = "import sys, inventory.units; print('pint' in sys.modules)"
    ran = subprocess.run([sys.executable, "-c", looked], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "False"
