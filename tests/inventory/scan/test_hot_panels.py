"""A panel that was read too hot: the station asks with the bottle in hand. That it stains: trade pages."""

from datetime import timedelta

import pytest

from inventory.models import Vehicle
from tests.inventory.scan.desk import desk
from tests.world import LITRE, ML, NOON, bottle, job, larkmoor, need, product, step

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("panel", "hears", "because"),
    [
        (75, "ask: Bay 1, Wheels: the panel is at 75 °C, too hot for Brack wheel soap.", "it dries on it"),
        (30, "recorded: Brack wheel soap ", "a panel of 30 °C is none that is hot"),
    ],
)
def test_a_wheel_cleaner_is_asked_about_on_a_hot_panel(panel: int, hears: str, because: str) -> None:
    world = larkmoor()
    car = job(world, NOON)
    Vehicle.objects.update(surfaces=["lacquered_wheel"])
    soap = product(world, "Brack wheel soap", "wheel", needs_sheet=False)
    need(step(car, "Wheels", bay=world.bay_1), soap, 100 * ML)
    here = desk(world)
    here.hears(world.bay_1.code, f"air 21 panel {panel} humidity 52", car.code)

    heard = here.hears(bottle(world, soap, LITRE, opened_at=NOON - timedelta(days=1)).code)

    assert heard.startswith(hears), because
