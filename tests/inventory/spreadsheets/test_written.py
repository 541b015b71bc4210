"""What stands in the shop after a file came in."""

from datetime import UTC, date, datetime, timedelta

import pytest

from inventory.codes import new_code
from inventory.models import Container, Job, Movement, Pack, Product, Supplier, Vehicle
from inventory.spreadsheets.rules.outcome import Becomes
from inventory.stock.rules.acts import Act
from tests import world as cast
from tests.world import LITRE, ML, NOON

from .shop import bring, cabinet, round_trip, service, stocked, table

pytestmark = pytest.mark.django_db
STOCK = (
    "product | content (in unit) | unit | place | sealed | opened on | lot | use by (printed)"
    " | how many alike | code"
)


def test_suppliers_are_added_and_changed() -> None:
    world = cast.larkmoor()
    says = bring(world, "suppliers", table(
        "name | lead time (days) | smallest order (EUR)", ["orlo  supply", 9, "150,00"], ["=Fell", 3, 12.5]
    ))  # fmt: skip
    assert says == "Suppliers: 1 new and 1 changed rows are in."
    assert list(Supplier.objects.order_by("id").values_list("name", "lead_days", "minimum_order_minor")) == [
        ("Orlo Supply", 9, 15_000),
        ("=Fell", 3, 1_250),
    ]


def test_products_come_with_their_lives_and_the_use_by_on_the_shelf_follows() -> None:
    world = cast.larkmoor()
    tidewall = cast.tidewall(world)
    bottle = cast.bottle(world, tidewall, 30 * ML, opened_at=NOON - timedelta(days=10))
    bring(world, "products", table(
        "name | kind | measured | open life | supplier",
        ["Tidewall coating", "coating", "by volume", "30 days", "Orlo Supply"],
        ["Fenmoor iron remover", "iron remover", "volume", "2 years", ""],
    ))  # fmt: skip
    bottle.refresh_from_db()
    # Opened on 15 November 2026 + 30 days.
    assert bottle.use_by_on == date(2026, 12, 15)
    made = Product.objects.get(name="Fenmoor iron remover")
    assert (made.kind, made.traced, made.open_life, made.open_life_unit) == ("iron", True, 24, "month")
    assert (made.supplier, len(made.code), made.code[0]) == (None, 8, "X")


def test_a_size_made_the_usual_one_takes_that_from_the_other() -> None:
    world = cast.larkmoor()
    hollin = cast.hollin(world)
    cast.pack(hollin, 5 * LITRE, gtin="05012345678900")
    bring(world, "packs", table(
        "product | holds (in unit) | unit | GTIN | price of one (EUR)",
        [hollin.code, "1", "l", "4006381333931", "9.90"],
        ["Hollin panel wipe", "5 l", None, 5012345678900, 22],
    ))  # fmt: skip
    assert list(Pack.objects.order_by("id").values_list("amount", "gtin", "price_minor", "usual")) == [
        (5 * LITRE, "05012345678900", 2_200, True),
        (LITRE, "04006381333931", 990, False),
    ]
    bring(
        world,
        "packs",
        table("product | holds (in unit) | usual size", [hollin.name, "1 l", "yes"]),
        token="second",
    )
    assert list(Pack.objects.order_by("id").values_list("usual", flat=True)) == [False, True]


def test_what_a_pack_is_made_of_is_read_and_an_empty_cell_keeps_it() -> None:
    world = cast.larkmoor()
    hollin = cast.hollin(world)
    bring(world, "packs", table(
        "product | holds (in unit) | unit | made of",
        [hollin.name, "1", "l", "glass or plastic"],
        [hollin.name, "2", "l", "safety can"],
    ))  # fmt: skip
    bring(world, "packs", table(
        "product | holds (in unit) | unit | made of",
        [hollin.name, "1", "l", None],
        [hollin.name, "2", "l", "not said"],
    ), token="second")  # fmt: skip
    assert list(Pack.objects.order_by("amount").values_list("amount", "vessel")) == [
        (LITRE, "plastic"),
        (2 * LITRE, ""),
    ]


def test_opening_stock_is_received_by_the_ledger_bottle_by_bottle() -> None:
    world = stocked()
    label, before = new_code("B"), set(Container.objects.values_list("code", flat=True))
    bring(world, "stock", table(
        STOCK,
        ["Tidewall coating", 30, "ml", "Store", "yes", None, "T-7", "2027-08", 3, None],
        ["Hollin panel wipe", "3,5 l", None, "Bay 1", "no", "2026-11-20", "", None, None, label],
    ))  # fmt: skip
    new = Container.objects.exclude(code__in=before).order_by("id")
    assert [(str(each.product), each.content, each.state, str(each.use_by_on)) for each in new] == [
        ("Tidewall coating", 30 * ML, "sealed", "2027-08-31"),
        ("Tidewall coating", 30 * ML, "sealed", "2027-08-31"),
        ("Tidewall coating", 30 * ML, "sealed", "2027-08-31"),
        ("Hollin panel wipe", 3_500 * ML, "open", "None"),
    ]
    assert (new[3].code, new[3].full, new[3].opened_at, new[3].estimated) == (
        label, 5 * LITRE, datetime(2026, 11, 20, 12, tzinfo=UTC), False,
    )  # fmt: skip
    assert len({each.lots.get().pk for each in new[:3]}) == 1, "one batch"


def test_an_unknown_opened_day_is_written_as_estimated_and_only_asks() -> None:
    world, before = stocked(), list(Container.objects.values_list("code", flat=True))
    bring(
        world,
        "stock",
        table(STOCK, ["Tidewall coating", 20, "ml", "Store", "no", "unknown", "", None, 1, None]),
    )
    new = Container.objects.exclude(code__in=before).get()
    # 45 days before 25 November 2026, which was summer time in London: noon there is 11:00 UTC.
    assert (new.opened_at, new.estimated) == (datetime(2026, 10, 11, 11, tzinfo=UTC), True)
    assert (new.use_by_on, new.use_by_firm) == (date(2027, 1, 9), False)


def test_a_whole_box_is_one_container() -> None:
    world, before = stocked(), list(Container.objects.values_list("code", flat=True))
    bring(world, "stock", table(
        STOCK + " | one code for the whole box",
        ["Tidewall coating", 30, "ml", "Store", "yes", None, "", None, 12, None, "yes"],
    ))  # fmt: skip
    new = Container.objects.exclude(code__in=before).get()
    assert (new.noun, new.full, new.content) == ("box", 360 * ML, 360 * ML)


def test_a_changed_content_is_a_count_and_a_changed_place_a_move() -> None:
    world = stocked()
    hollin = Product.objects.get(name="Hollin panel wipe")
    bottle = cast.bottle(world, hollin, LITRE, opened_at=NOON - timedelta(days=2))
    cabinet(world)
    bring(world, "stock", table(
        "code | product | content (in unit) | unit | place", [bottle.code.lower(), "", 400, "ml", "Cabinet"]
    ))  # fmt: skip
    lines = Movement.objects.filter(target=bottle).order_by("-seq")[:2]
    assert [(line.kind, line.person) for line in lines] == [("move", world.ines), ("count", world.ines)]
    bottle.refresh_from_db()
    assert (bottle.content, str(bottle.place)) == (400 * ML, "Cabinet")
    assert {each.becomes for each in round_trip(world, "stock", "xlsx").outcomes} == {Becomes.SAME}


def test_a_job_is_booked_with_the_steps_of_its_service() -> None:
    world = cast.larkmoor()
    service(world, "One-step polish")
    bring(world, "jobs", table(
        "vehicle | plate | size | service | starts at (local time) | bay | technician",
        ["Grey estate", "LK26", "large", "one-step polish", "2026-10-25 01:30+00:00", "Bay 2", "Tomas"],
    ))  # fmt: skip
    job = Job.objects.get()
    assert (job.title, str(job.vehicle), job.vehicle.size) == ("One-step polish", "Grey estate", "large")
    assert (job.starts_at, job.ends_at) == (
        datetime(2026, 10, 25, 1, 30, tzinfo=UTC), datetime(2026, 10, 25, 4, 30, tzinfo=UTC),
    )  # fmt: skip
    first, second = job.steps.all()
    assert (first.bay, first.person, first.needs.get().amount) == (world.bay_2, world.tomas, 65 * ML)
    assert (second.name, second.starts_at) == ("Coat", datetime(2026, 10, 25, 3, 30, tzinfo=UTC))


def test_a_job_out_of_a_spreadsheet_is_planned_with_the_shop_s_own_median_as_on_its_page() -> None:
    world = cast.larkmoor()
    service(world, "One-step polish")
    wipe = cast.hollin(world)
    past = NOON - timedelta(days=20)
    for ml in (80, 90, 100):
        done = cast.job(world, past, vehicle=cast.car(world, f"Car {ml}", size="large"))
        step, bottle = cast.step(done), cast.bottle(world, wipe, 500 * ML)
        facts = {"measured": True}
        cast.record(world, Act("use", past, source=bottle.code, amount=ml * ML, job=done.code,
                               step=step.code, facts=facts))  # fmt: skip
    bring(world, "jobs", table(
        "vehicle | size | service | starts at (local time)",
        ["Grey estate", "large", "one-step polish", "2026-12-01 08:30"],
        ["Red van", "small", "one-step polish", "2026-12-01 08:30"],
    ))  # fmt: skip
    planned = {job.vehicle.name: job.steps.get(position=1).needs.get().amount
               for job in Job.objects.filter(service__isnull=False)}  # fmt: skip
    assert planned == {"Grey estate": 90 * ML, "Red van": 40 * ML}


def test_a_known_job_of_two_days_moves_by_the_clock_on_the_wall() -> None:
    world = stocked()
    booked = cast.job(world, datetime(2026, 11, 26, 8, 30, tzinfo=UTC))
    cast.step(booked), cast.step(booked, "Cure", after_hours=24)
    bring(world, "jobs", table(
        "code | vehicle | starts at (local time)", [booked.code, "Grey estate", "2027-03-27 08:30"]
    ))  # fmt: skip
    job = Job.objects.get()
    assert [step.starts_at for step in job.steps.all()] == [
        datetime(2027, 3, 27, 8, 30, tzinfo=UTC), datetime(2027, 3, 28, 7, 30, tzinfo=UTC),
    ]  # fmt: skip
    assert job.ends_at == datetime(2027, 3, 28, 8, 30, tzinfo=UTC)


def test_a_known_job_moves_with_its_steps_and_its_car_stays_one_car() -> None:
    world = stocked()
    booked = cast.job(world)
    cast.step(booked, after_hours=1)
    code = booked.code
    bring(world, "jobs", table(
        "code | vehicle | starts at (local time) | bay", [code, "Grey estate", "2026-12-01 08:30", "Bay 1"]
    ))  # fmt: skip
    step = Job.objects.get().steps.get()
    assert (step.starts_at, step.bay) == (datetime(2026, 12, 1, 9, 30, tzinfo=UTC), world.bay_1)
    bring(world, "jobs", table(
        "vehicle | called | starts at (local time)", ["Grey estate", "Second visit", "2026-12-09 08:30"]
    ), token="second")  # fmt: skip
    assert (Job.objects.count(), Vehicle.objects.count()) == (2, 1)
