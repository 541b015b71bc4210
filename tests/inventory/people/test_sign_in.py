"""Signing in: a guesser is slowed down, everybody else is let in."""

from datetime import datetime, timedelta
from typing import Any

import pytest
from django.test import Client
from django.urls import reverse

from tests.world import NOON, World, larkmoor

pytestmark = pytest.mark.django_db
BEFORE = "Please enter a correct username and password"
WAIT = "Too many wrong tries. Wait"
DOORS = ("people:login", "admin:login")


class Clock:
    """What time it is, until somebody says otherwise."""

    now: datetime = NOON

    def later(self, seconds: float) -> None:
        self.now += timedelta(seconds=seconds)


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    made = Clock()
    monkeypatch.setattr("django.utils.timezone.now", lambda: made.now)
    return made


@pytest.fixture
def world(settings: Any) -> World:
    settings.TRUSTED_PROXIES = []
    return larkmoor()


def tries(password: str, who: str = "ines", door: str = "people:login", **meta: str) -> str:
    """Return what the page says, empty where it lets in."""
    sent = {"username": who, "password": password}
    answer = Client().post(reverse(door), sent, **meta)
    return "" if answer.status_code == 302 else answer.content.decode()


def wrong(times: int, **more: str) -> None:
    for _ in range(times):
        tries("open sesame", **more)


@pytest.mark.parametrize("door", DOORS)
def test_the_fourth_try_after_three_wrong_ones_waits_even_with_the_right_password(
    world: World, clock: Clock, door: str
) -> None:
    wrong(3, door=door)
    assert "Too many wrong tries. Wait 1 second, then try again." in tries("clear coat", door=door)
    clock.later(1)
    assert tries("clear coat", door=door) == ""


def test_one_door_counts_for_the_other(world: World, clock: Clock) -> None:
    wrong(3, door="admin:login")
    assert WAIT in tries("clear coat")


def test_two_wrong_ones_cost_nothing(world: World, clock: Clock) -> None:
    wrong(2)
    assert tries("clear coat") == ""


def test_a_right_password_begins_anew(world: World, clock: Clock) -> None:
    wrong(2)
    assert tries("clear coat") == ""
    wrong(2)
    assert tries("clear coat") == ""


def test_a_refused_try_does_not_lengthen_the_wait(world: World, clock: Clock) -> None:
    wrong(3)
    wrong(20)
    clock.later(1)
    assert tries("clear coat") == ""


def test_a_guesser_gets_one_try_a_minute_and_the_owner_elsewhere_waits_for_none(
    world: World, clock: Clock
) -> None:
    for _ in range(12):
        wrong(1, REMOTE_ADDR="192.168.1.66")
        clock.later(60)
    wrong(1, REMOTE_ADDR="192.168.1.66")
    assert "Wait 60 seconds" in tries("clear coat", REMOTE_ADDR="192.168.1.66")
    assert tries("clear coat", REMOTE_ADDR="192.168.1.20") == ""


def test_a_header_that_anybody_can_send_is_no_other_place(world: World, clock: Clock) -> None:
    for last in range(4):
        tries("open sesame", HTTP_X_FORWARDED_FOR=f"198.51.100.{last}")
    assert WAIT in tries("clear coat", HTTP_X_FORWARDED_FOR="198.51.100.9")


def test_a_name_that_nobody_has_is_told_the_same(world: World, clock: Clock) -> None:
    assert BEFORE in tries("open sesame", who="nobody")
    wrong(2, who="nobody")
    assert WAIT in tries("open sesame", who="nobody")


def test_one_account_does_not_slow_another(world: World, clock: Clock) -> None:
    wrong(5)
    assert tries("clear coat", who="tomas") == ""


def test_the_admins_door_still_opens_for_owners_alone(world: World, clock: Clock) -> None:
    assert "staff account" in tries("clear coat", who="tomas", door="admin:login")
