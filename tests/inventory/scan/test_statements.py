"""How many statements a line takes: as few in a long ledger as in a short one."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.stock import ledger
from inventory.stock.rules.acts import Act
from tests.inventory.scan.desk import Desk, desk
from tests.world import (
    ML,
    NOON,
    bottle,
    job,
    larkmoor,
    need,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db
LONG_AGO = NOON - timedelta(days=300)


def test_a_scan_onto_a_car_takes_as_few_statements_in_a_long_ledger_as_in_a_short_one() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    car = job(world, NOON)
    # Three hours apart: whenever the first coat is scanned within its hour, the second is in its window.
    for hour in (0, 3):
        need(step(car, after_hours=hour), coat, 10 * ML)
    bottles = [bottle(world, coat, 30 * ML, lot="A") for _ in range(2)]
    here = desk(world)
    here.say(car.code)
    short = statements(here, bottles[0].code)
    for _ in range(40):
        bottle(world, coat, 30 * ML, place=world.bay_2)
    fill_ledger(here, bottles[0].code, 1000)
    assert (short, statements(here, bottles[1].code)) == (18, 18)


def statements(here: Desk, line: str) -> int:
    """Return how many statements one line takes, the transaction's own apart."""

    with CaptureQueriesContext(connection) as captured:
        here.say(line)
    control = ("SAVEPOINT", "RELEASE", "BEGIN", "COMMIT")
    return sum(not query["sql"].startswith(control) for query in captured.captured_queries)


def fill_ledger(here: Desk, code: str, entries: int) -> None:
    """Write so many entries about one bottle."""

    later = NOON + timedelta(hours=2)
    acts = [Act("count", later, target=code, amount=29 * ML) for _ in range(entries)]
    ledger.record(here.station.shop, acts, by=None, recorded_at=later)
