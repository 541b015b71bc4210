"""The pace of tries: how long each wait is, what is counted together, what is forgotten."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta

import pytest
from django.db import connection
from django.test import RequestFactory

from inventory import throttle
from inventory.models import Attempt
from tests.world import NOON


@pytest.mark.parametrize(
    ("failures", "seconds"),
    [(0, 0), (1, 0), (2, 0), (3, 1), (4, 2), (5, 4), (8, 32), (9, 60), (10, 60), (10**9, 60)],
)
def test_the_wait_doubles_from_the_third_wrong_try_up_to_a_minute(failures: int, seconds: int) -> None:
    assert throttle.wait_seconds(failures) == seconds


@pytest.mark.parametrize(
    ("address", "counts_as", "because"),
    [
        ("192.168.1.20", "192.168.1.20", "one device"),
        ("::ffff:192.168.1.20", "192.168.1.20", "the same, as a dual-stack server writes it"),
        ("2001:db8:1:2:3::4", "2001:db8:1:2::/64", "one subscriber holds all of these"),
        ("", "", "a socket has no address"),
    ],
)
def test_what_counts_as_one_place(address: str, counts_as: str, because: str) -> None:
    request = RequestFactory().get("/", REMOTE_ADDR=address)
    assert throttle.address_of(request) == counts_as, because


@pytest.mark.django_db
def test_tries_are_counted_before_anybody_knows_whether_they_are_right() -> None:
    waits = [throttle.claim("ines", "192.168.1.20", NOON) for _ in range(5)]
    assert waits == [0, 0, 0, 1, 1]


@pytest.mark.django_db
def test_a_day_later_the_count_begins_anew_and_old_rows_are_gone() -> None:
    for account in ("ines", "tomas"):
        for _ in range(3):
            throttle.claim(account, "", NOON)
    tomorrow = NOON + timedelta(days=1, seconds=1)
    assert [throttle.claim("ines", "", tomorrow) for _ in range(3)] == [0, 0, 0]
    throttle.claim("wren", "", tomorrow)
    assert set(Attempt.objects.values_list("account", flat=True)) == {"ines", "wren"}


@pytest.mark.django_db
def test_a_clock_that_was_set_back_makes_nobody_wait_longer_than_the_rule() -> None:
    for _ in range(3):
        throttle.claim("ines", "", NOON)
    assert throttle.claim("ines", "", NOON - timedelta(hours=5)) == 1


@pytest.mark.django_db(transaction=True)
def test_many_tries_at_once_are_not_many_free_ones() -> None:
    def one(_: int) -> int:
        try:
            return throttle.claim("ines", "192.168.1.20", NOON)
        finally:
            connection.close()

    with ThreadPoolExecutor(8) as threads:
        waits = list(threads.map(one, range(40)))
    assert sorted(waits) == [0] * 3 + [1] * 37
