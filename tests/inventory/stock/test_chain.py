"""The chain: what a hash covers, and that a format once written is never edited."""

import hashlib
from datetime import UTC, datetime, timedelta, timezone

import pytest

from inventory.stock.rules.chain import GENESIS, hash_line, microseconds

BODY = {"seq": 1, "kind": "use", "amount": 5000, "facts": {"b": 1, "a": "½ drum"}, "lot": None}


def test_a_line_hashes_as_written_down_here_for_ever() -> None:
    text = (
        '{"amount":5000,"facts":{"a":"½ drum","b":1},"kind":"use","lot":null,"previous":"'
        + "0" * 64
        + '","seq":1,"version":1}'
    )
    assert hash_line(GENESIS, BODY) == hashlib.sha256(text.encode("utf-8")).hexdigest()
    assert hash_line(GENESIS, BODY) == "e519c3cebd9c5c796d5e84d311ff481a4b1e5458b58021f44aaef8f349e54196"


def test_the_order_of_the_keys_does_not_matter() -> None:
    assert hash_line(GENESIS, dict(reversed(BODY.items()))) == hash_line(GENESIS, BODY)


@pytest.mark.parametrize("change", [{"seq": 2}, {"amount": 5001}, {"facts": {}}, {"lot": "LXXXXXXX"}])
def test_every_change_gives_another_hash(change: dict[str, object]) -> None:
    assert hash_line(GENESIS, BODY | change) != hash_line(GENESIS, BODY)


def test_the_line_before_gives_another_hash() -> None:
    assert hash_line("1" * 64, BODY) != hash_line(GENESIS, BODY)


def test_a_format_that_is_not_known_is_no_hash() -> None:
    with pytest.raises(KeyError):
        hash_line(GENESIS, BODY, version=2)


@pytest.mark.parametrize(
    ("instant", "expected", "because"),
    [
        (datetime(1970, 1, 1, tzinfo=UTC), 0, "counts from 1970 in UTC"),
        (datetime(2026, 11, 25, 12, 0, 0, 1, tzinfo=UTC), 1_795_608_000_000_001, "the last digit stays"),
        (
            datetime(2255, 6, 5, 23, 47, 34, 740_993, tzinfo=UTC),
            9_007_199_254_740_993,
            "past what a float holds",
        ),
        (
            datetime(2026, 11, 25, 13, 0, 0, 1, tzinfo=timezone(timedelta(hours=1))),
            1_795_608_000_000_001,
            "another zone, the same instant",
        ),
        (datetime(1969, 12, 31, 23, 59, 59, 999_999, tzinfo=UTC), -1, "before 1970"),
    ],
)
def test_an_instant_is_whole_microseconds_without_rounding(
    instant: datetime, expected: int, because: str
) -> None:
    assert microseconds(instant) == expected, because
