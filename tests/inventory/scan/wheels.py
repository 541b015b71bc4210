"""A wash of wheels in Bay 1 that plans so much of a cleaner, and what stands in the ledger of it."""

from datetime import timedelta

from inventory.models import Container, Job, Movement
from tests.inventory.scan.desk import Desk, desk
from tests.world import ML, NOON, World, bottle, job, larkmoor, need, product, step

OPENED = NOON - timedelta(days=1)


def washing(planned: int = 96, *held: int, traced: bool = False) -> tuple[World, Job, Desk, list[Container]]:
    """A wash in Bay 1 that plans 96 ml of a cleaner, and open bottles of it there (a litre)."""
    world = larkmoor()
    cleaner = product(world, "Brack wheel cleaner", "cleaner", needs_sheet=False, traced=traced)
    bottles = [bottle(world, cleaner, ml * ML, opened_at=OPENED, place=world.bay_1) for ml in held or (1000,)]
    car = job(world, NOON)
    need(step(car, "Wheels", stage="wash", bay=world.bay_1), cleaner, planned * ML)
    return world, car, desk(world), bottles


def used(car: Job) -> list[int]:
    """Return what stands in the ledger as used on a car, in millilitres."""
    rows = Movement.objects.filter(job=car, kind="use", reversed_by=None).order_by("seq")
    return [(row.amount or 0) // ML for row in rows]
