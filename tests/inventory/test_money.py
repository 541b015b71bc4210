"""Money is whole minor units; a text that is no price, or two prices, is refused in a sentence."""

import pytest

from inventory.money import MoneyError, parse_money, show_money


@pytest.mark.parametrize(
    ("text", "says", "because"),
    [
        ("1,000", "“1,000” can be read as 1000.00 or as 1.000: write 1000 or 1.00.", "a thousand or one"),
        ("1.000", "“1.000” can be read as 1000.00 or as 1.000: write 1000 or 1.00.", "a point groups too"),
        ("", "“” is not a price. Write it like €22.50.", "nothing is no price"),
        ("-3", "“-3” is not a price. Write it like €22.50.", "nothing is bought for less than nothing"),
        ("1e3", "“1e3” is not a price. Write it like €22.50.", "an exponent is no price"),
        ("22.505", "“22.505” can be read as 22505.00 or as 22.505: write 22505 or 22.50.", "half a cent"),
        ("22.5050", "“22.5050” is not a price. Write it like €22.50.", "hundredths of a cent"),
        ("٢٢", "“٢٢” is not a price. Write it like €22.50.", "digits that the ledger does not print"),
        ("22 USD", "“22 USD” is not a price. Write it like €22.50.", "another currency than the shop's"),
        ("9" * 18, f"“{'9' * 18}” is more than can be kept. Check the figure.", "beyond 64 bits"),
    ],
)
def test_a_text_that_is_not_one_price_is_refused(text: str, says: str, because: str) -> None:
    with pytest.raises(MoneyError) as refused:
        parse_money(text)
    assert str(refused.value) == says, because


@pytest.mark.parametrize(
    ("text", "minor", "because"),
    [
        ("22", 2200, "whole"),
        ("22.5", 2250, "one digit behind the point is tens of cents"),
        ("22,50", 2250, "a comma is a point elsewhere"),
        ("€22.00", 2200, "the sign before"),
        ("22.00 €", 2200, "the sign behind"),
        ("22 EUR", 2200, "the letters behind"),
        ("1 250.00", 125000, "a space groups"),
        ("0.05", 5, "cents alone"),
    ],
)
def test_a_price_is_read_in_cents(text: str, minor: int, because: str) -> None:
    assert parse_money(text) == minor, because


@pytest.mark.parametrize(
    ("minor", "currency", "text"),
    [
        (2200, "EUR", "€22.00"),
        (5, "GBP", "£0.05"),
        (-300, "USD", "−$3.00"),
        (125000, "EUR", "€1\u00a0250.00"),
        (2200, "PLN", "22.00\u00a0PLN"),
        (2200, "JPY", "¥2\u00a0200"),
    ],
)
def test_an_amount_of_money_is_shown_with_its_currency(minor: int, currency: str, text: str) -> None:
    assert show_money(minor, currency) == text


def test_a_currency_without_a_minor_unit_has_no_point() -> None:
    with pytest.raises(MoneyError, match="is not a price"):
        parse_money("22.5", "JPY")
    assert parse_money("2200", "JPY") == 2200
