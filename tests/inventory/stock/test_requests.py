"""A request is answered once, whatever its grade."""

import pytest

from inventory.codes import pair
from inventory.models import Movement, Request
from inventory.stock import ledger
from inventory.stock.requests import Answer, KeyReused, answer_once
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from tests.lines import at
from tests.world import LITRE, ML, NOON, World, bottle, hollin, larkmoor

pytestmark = pytest.mark.django_db


class Station:
    """Someone who takes from KTRV and counts how often it was really done."""

    def __init__(self, world: World) -> None:
        self.world, self.done = world, 0
        self.ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))

    def asks(self, key: str, amount: int) -> Answer:
        def do(request: Request) -> Answer:
            self.done += 1
            act = Act("use", NOON, source=self.ktrv.code, amount=amount)
            try:
                lines = ledger.record(
                    self.world.shop, [act], by=self.world.tomas, recorded_at=NOON, request=request
                )
            except Refused as refusal:
                return {"grade": "stop", "says": refusal.says}
            return {"grade": "recorded", "movements": [line.seq for line in lines]}

        return answer_once(self.world.shop, key, {"use": amount}, NOON, do)


@pytest.fixture
def station() -> Station:
    return Station(larkmoor())


def test_a_key_that_comes_with_another_body_is_an_error(station: Station) -> None:
    station.asks("k-1", 10 * ML)
    with pytest.raises(KeyReused) as caught:
        station.asks("k-1", 20 * ML)
    assert caught.value.says == (
        "The key k-1 was used for another line already. Send this one under a new key."
    )
    assert Movement.objects.filter(kind="use").count() == 1


def test_a_request_sent_twice_is_done_once_and_gets_the_same_answer(station: Station) -> None:
    assert (
        station.asks("k-1", 10 * ML)
        == station.asks("k-1", 10 * ML)
        == {"grade": "recorded", "movements": [3]}
    )
    assert station.done == 1


def test_a_stop_is_answered_again_as_it_was_though_it_would_pass_by_now(station: Station) -> None:
    first = station.asks("k-1", 2 * LITRE)
    count = Act("count", NOON, target=station.ktrv.code, amount=3 * LITRE)
    ledger.record(station.world.shop, [count], by=station.world.tomas, recorded_at=NOON)
    assert station.asks("k-1", 2 * LITRE) == first
    assert (
        first["says"] == f"{pair(station.ktrv.code)} is booked at 1 l. If it holds more, say so and carry on."
    )


def test_what_was_refused_left_no_line_and_its_answer_stays(station: Station) -> None:
    station.asks("k-1", 2 * LITRE)
    assert Movement.objects.filter(kind="use").count() == 0
    assert Request.objects.get(key="k-1").answer["grade"] == "stop"


def test_the_lines_of_a_request_know_their_request(station: Station) -> None:
    station.asks("k-1", 10 * ML)
    assert [line.seq for line in Request.objects.get(key="k-1").movements.all()] == [3]


def test_two_shops_may_use_the_same_key(station: Station) -> None:
    other = Station(larkmoor("brackside"))
    station.asks("k-1", 10 * ML)
    assert other.asks("k-1", 20 * ML) == {"grade": "recorded", "movements": [3]}


def test_an_error_in_the_middle_leaves_the_key_free(station: Station) -> None:
    def fails(request: Request) -> Answer:
        raise RuntimeError("the cable fell out")

    with pytest.raises(RuntimeError):
        answer_once(station.world.shop, "k-1", {"use": 10 * ML}, NOON, fails)
    assert station.asks("k-1", 10 * ML)["grade"] == "recorded"
