"""Cars with a past, and what the check is told of their surfaces."""

from datetime import timedelta

from inventory.models import Job, Place, Product, Profile, Step, Vehicle
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.surfaces import load
from inventory.precheck.questions.topics import SurfaceFacts
from tests import world as w
from tests.world import ML, NOON

DAY = timedelta(days=1)
TOMORROW = NOON + DAY


def facts(*jobs: Job) -> SurfaceFacts:
    """Return what the check is told of the first of these jobs, all of them under check."""
    return load(Loading(jobs[0].shop, jobs))[jobs[0].pk]


def coating_job(world: w.World, coating: Product, vehicle: Vehicle | None = None, **facts_: object) -> Job:
    made = w.job(world, TOMORROW, vehicle=vehicle, **facts_)  # type: ignore[arg-type]
    w.need(w.step(made, "Coating", after_hours=2, bay=world.bay_2), coating, 20 * ML)
    return made


def visit(world: w.World, vehicle: Vehicle, *steps: tuple[str, Product | str], days_ago: int = 30) -> Job:
    """Book and close a visit of a car so many days ago, every step signed an hour after its start."""
    made = w.job(world, NOON - days_ago * DAY, vehicle=vehicle)
    for number, (name, takes) in enumerate(steps):
        step = w.step(made, name, after_hours=number)
        w.need(step, takes, 20 * ML)
        Step.objects.filter(pk=step.pk).update(signed_at=step.ends_at, signed_by=world.tomas)
    Job.objects.filter(pk=made.pk).update(state=Job.State.CLOSED)
    return made


def wax(world: w.World) -> Product:
    made = w.product(world, "Sallow paste wax", "wax")
    Profile.objects.create(product=made, family="wax")
    return made


def dressing(
    world: w.World, at_hours: float, bay: Place, *, of: Product | str = "dressing", days: int = 0
) -> Job:
    """Book another car whose tyres are dressed so many hours before the coat of `coating_job`."""
    made = w.job(world, TOMORROW + days * DAY, vehicle=w.car(world, "Red van"))
    w.need(w.step(made, "Tyres", after_hours=2 - at_hours, hours=0.5, bay=bay), of, 20 * ML)
    return made
