"""The whole check: 15 steps on 8 surfaces, 25 products in the bay, 10 other cars; and a year of jobs anew."""

from collections.abc import Callable
from datetime import timedelta

from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.management.bench.figures import Figure, milliseconds, typical
from inventory.management.bench.ground import LITRE, STEPS, Ground
from inventory.models import Job, Kind, Panel, Place, Product, Profile, Stage, Step, StepNeed, Vehicle
from inventory.precheck.queries import TOPICS, check, facts_of, verdicts
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from safety.models import DataSheet, SheetVersion

SURFACES = (
    "clear_coat", "single_stage", "matte", "fresh_refinish", "wrap_gloss", "glass", "lamp", "bare_plastic",
)  # fmt: skip
# A kind a step, in an order of work; 25 products of these kinds stand in the bay.
KINDS = (
    Kind.FOAM, Kind.SHAMPOO, Kind.WHEEL, Kind.IRON, Kind.TAR, Kind.ACID, Kind.LUBRICANT, Kind.COMPOUND,
    Kind.POLISH, Kind.SOLVENT, Kind.COATING, Kind.TOPPER, Kind.DRESSING, Kind.GLASS, Kind.INTERIOR,
)  # fmt: skip
IN_BAY, OTHERS, BATCH = 25, 10, 50
ISOPROPANOL = {"name": "Propan-2-ol", "cas": "67-63-0", "percent": 70, "hazards": ["Flam. Liq. 2 H225"]}


def whole_check(ground: Ground, times: int, jobs: int, told: Callable[[int], object]) -> list[Figure]:
    """Measure the check with every topic, its queries at 1 and at 15 steps, and a year of jobs in batches."""
    bay = Place.objects.create(
        shop=ground.shop, name="Bay 2", kind=Place.Kind.BAY, volume_m3=160, air_m3_h=960, eyewash_at="door"
    )
    products = _stocked(ground, bay)
    job = _job(ground, bay, products, STEPS)
    for _ in range(OTHERS):
        _job(ground, bay, products, STEPS)
    loads, wholes = _by_turns(ground, job, times)
    loading, whole = typical(loads), typical(wholes)
    asked = _queries(ground, job)
    twice = _job(ground, bay, products, 2 * STEPS)
    for _ in range(OTHERS):
        _job(ground, bay, products, 2 * STEPS)
    if _queries(ground, twice) != asked:
        raise RuntimeError(f"The check asks {asked} times, and more for twice the steps and cars.")
    name = f"whole check: {STEPS} steps, {len(SURFACES)} surfaces, {IN_BAY} products, {OTHERS} other cars"
    return [
        Figure(name, whole, "ms"),
        Figure("whole check: loading the same facts", loading, "ms"),
        Figure("whole check to loading the same facts", whole / loading, "times"),
        Figure("whole check: queries, as many for twice the steps and cars", asked, ""),
        _a_year(ground, bay, products, jobs, told),
    ]


def _by_turns(ground: Ground, job: Job, times: int) -> tuple[list[float], list[float]]:
    """Time loading and the whole check by turns: other work on the machine then slows both alike."""
    loads, wholes = [], []
    for _ in range(times):
        loads.append(milliseconds(lambda: facts_of(ground.shop, [job], TOPICS)))
        wholes.append(milliseconds(lambda: check(job, ground.now)))
    return loads, wholes


def _queries(ground: Ground, job: Job) -> int:
    with CaptureQueriesContext(connection) as seen:
        check(job, ground.now)
    return len(seen)


def _a_year(
    ground: Ground, bay: Place, products: list[Product], jobs: int, told: Callable[[int], object]
) -> Figure:
    booked = [_job(ground, bay, products, 5, after_days=2 + day) for day in range(jobs)]

    def all_of_them() -> None:
        for start in range(0, len(booked), BATCH):
            some = booked[start : start + BATCH]
            verdicts(ground.shop, ground.now, some)
            told(len(some))

    return Figure(f"a year of {jobs} jobs checked anew", milliseconds(all_of_them) / 1000, "s")


def _stocked(ground: Ground, bay: Place) -> list[Product]:
    sheet = DataSheet.objects.create(supplier="Hollin", title="Cleaner")
    today = ground.now.date()
    SheetVersion.objects.create(
        sheet=sheet, revision_on=today, hazards=["Flam. Liq. 2 H225"], flash_point_c=18.0, typed_on=today,
        composition=[ISOPROPANOL], confirmed_on=today, confirmed_by="Ines",
    )  # fmt: skip
    made = []
    for number in range(IN_BAY):
        kind = KINDS[number % len(KINDS)]
        product = Product.objects.create(
            shop=ground.shop, name=f"Marl {kind} {number}", kind=kind, needs_sheet=False,
            dimension=Product.Dimension.VOLUME, sheet=sheet if kind == Kind.SOLVENT else None,
        )  # fmt: skip
        Profile.objects.create(product=product)
        new = NewBottle(product.code, 5 * LITRE, noun="bottle", lot=LotFacts(f"M-{number}"))
        receive = Act("receive", ground.now, new=new, amount=5 * LITRE, place=bay.code)
        ledger.record(ground.shop, [receive], by=ground.person, recorded_at=ground.now)
        made.append(product)
    return made


def _job(ground: Ground, bay: Place, products: list[Product], steps: int, after_days: int = 1) -> Job:
    starts = ground.now + timedelta(days=after_days)
    vehicle = Vehicle.objects.create(shop=ground.shop, name="red van")
    Panel.objects.bulk_create(
        Panel(vehicle=vehicle, position=at, name=f"panel {at}", surface=surface, substrate="steel")
        for at, surface in enumerate(SURFACES)
    )
    job = Job.objects.create(
        shop=ground.shop, vehicle=vehicle, title="Everything", starts_at=starts,
        ends_at=starts + timedelta(hours=steps), booked_at=ground.now,
    )  # fmt: skip
    rows = Step.objects.bulk_create(
        Step(
            job=job, position=at, stage=Stage.WASH, name=f"Step {at + 1}", bay=bay, person=ground.person,
            starts_at=starts + timedelta(hours=at), ends_at=starts + timedelta(hours=at + 1),
        )
        for at in range(steps)
    )  # fmt: skip
    StepNeed.objects.bulk_create(
        StepNeed(step=row, product=products[at % len(products)], amount=20_000) for at, row in enumerate(rows)
    )
    return job
