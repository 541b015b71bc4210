"""What the rules are told of a shop, over the real ledger. Today is Wednesday 25 November 2026."""

from datetime import date, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Job, Kind, KitPart, Order, OrderLine
from inventory.reorder import queries
from inventory.reorder.queries import ToOrder
from inventory.reorder.rules import Booked, MonthIsOver, OnOrder, ProductFacts, Stock
from inventory.reorder.rules.months import NoMonth, month_called
from inventory.stock.rules.acts import Act
from tests.world import (
    LITRE,
    ML,
    NOON,
    TODAY,
    World,
    bottle,
    hollin,
    job,
    larkmoor,
    need,
    pack,
    product,
    record,
    spray_bottle,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    return larkmoor()


def facts(world: World, code: str, on: date = TODAY) -> ProductFacts:
    """Return what the rules are told of one product."""
    return next(each for each in queries.products_of(world.shop, on) if each.code == code)


def line(world: World, code: str):
    """Return one product's line of November's report."""
    report = queries.report(world.shop, TODAY, TODAY)
    every = [each for order in report.orders for each in (*order.lines, *order.enough)]
    return next(each for each in every if each.product.code == code)


def used_a_millilitre_a_day(world: World, of):
    """Use 365 ml of a litre, all of it 364 days ago: 365 days since the first use, 1 ml a day."""
    kept = bottle(world, of, LITRE, at=NOON - timedelta(days=370))
    record(world, Act("use", NOON - timedelta(days=364), source=kept.code, amount=365 * ML))
    return kept


def ordered(world: World, of, packs: int, state: str = "placed", **facts: object) -> OrderLine:
    """Order packs of a litre, placed two days ago and due on 29 November."""
    placed = Order.objects.create(
        shop=world.shop,
        supplier=world.orlo,
        state=state,
        placed_on=TODAY - timedelta(days=2),
        due_on=date(2026, 11, 29),
    )
    return OrderLine.objects.create(
        order=placed, pack=of.packs.first() or pack(of, LITRE), packs=packs, **facts
    )


def test_a_month_that_is_over_is_refused(world):
    with pytest.raises(MonthIsOver, match=r"^October 2026 ended before 25 November 2026\. Ask for 2026-11"):
        queries.report(world.shop, date(2026, 10, 1), TODAY)


@pytest.mark.parametrize(
    ("text", "says", "because"),
    [
        ("2026-13", "“2026-13” is no month: write it as YYYY-MM, 2026-11 for this one.", "13 months"),
        ("2026-1", "“2026-1” is no month: write it as YYYY-MM, 2026-11 for this one.", "one digit"),
        ("12/2026", "“12/2026” is no month: write it as YYYY-MM, 2026-11 for this one.", "other order"),
        ("0000-05", "“0000-05” is no month: write it as YYYY-MM, 2026-11 for this one.", "no year 0"),
        ("२०२६-११", "“२०२६-११” is no month: write it as YYYY-MM, 2026-11 for this one.", "other digits"),
        (
            "2027-12",
            "December 2027 is more than a year ahead. Ask for 2027-11 or an earlier month.",
            "nobody knows the use of that month",
        ),
    ],
)
def test_what_is_no_month_is_refused_with_one_to_ask_for(text, says, because):
    with pytest.raises(NoMonth) as refused:
        month_called(text, TODAY)
    assert str(refused.value) == says, because


def test_the_same_month_of_next_year_is_the_last_to_ask_for():
    assert month_called("2027-11", TODAY) == date(2027, 11, 1)


def test_what_is_held_is_not_counted_whether_the_bottle_is_or_its_lot(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE, lot="A")
    frozen = bottle(world, wipe, LITRE, lot="A")
    bottle(world, wipe, LITRE, lot="B")
    recalled = wipe.lots.get(number="B")
    assert len(facts(world, wipe.code).stock) == 3

    record(world, Act("quarantine", NOON, target=frozen.code, facts={"reason": "frozen"}))
    record(world, Act("quarantine", NOON, lot=recalled.code, facts={"reason": "recalled"}))
    assert facts(world, wipe.code).stock == (Stock(kept.content, None),)


def test_what_has_gone_is_not_counted(world):
    wipe = hollin(world)
    thrown = bottle(world, wipe, LITRE)
    record(world, Act("discard", NOON, target=thrown.code, facts={"reason": "leaking"}))
    assert facts(world, wipe.code).stock == ()


def test_stock_that_dies_before_the_next_delivery_is_not_counted_as_usable(world):
    coating = tidewall(world)
    used_a_millilitre_a_day(world, wipe := hollin(world))
    bottle(world, coating, 30 * ML, expires_on=date(2026, 11, 28))
    bottle(world, coating, 50 * ML, expires_on=date(2027, 6, 30))
    assert line(world, coating.code).usable == 50 * ML
    assert line(world, wipe.code).usable == 635 * ML


def test_an_opened_bottle_dies_by_its_open_life(world):
    coating = tidewall(world)
    bottle(
        world, coating, 30 * ML, expires_on=date(2027, 6, 30), at=NOON - timedelta(days=90),
        opened_at=NOON - timedelta(days=88),
    )  # fmt: skip
    assert facts(world, coating.code).stock == (Stock(30 * ML, date(2026, 11, 27), sealed=False),)


def test_a_mixed_bottle_counts_for_the_product_in_it(world):
    wipe, spray = hollin(world), spray_bottle(world)
    neat = bottle(world, wipe, LITRE)
    record(
        world,
        Act("fill", NOON, source=neat.code, target=spray.code, amount=100 * ML, added=LITRE, parts=(1, 9)),
    )
    assert sorted(each.content for each in facts(world, wipe.code).stock) == [100 * ML, 900 * ML]


def test_a_use_that_was_taken_back_is_no_use(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE)
    use = record(world, Act("use", NOON, source=kept.code, amount=280 * ML))[-1]
    assert facts(world, wipe.code).mean_per_day == 10 * ML

    record(world, Act("reverse", NOON, reverses=use.seq))
    assert facts(world, wipe.code).mean_per_day == 0


def test_use_of_more_than_a_year_ago_is_forgotten(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE, at=NOON - timedelta(days=400))
    record(world, Act("use", NOON - timedelta(days=365), source=kept.code, amount=300 * ML))
    assert facts(world, wipe.code).mean_per_day == 0

    record(world, Act("use", NOON - timedelta(days=364), source=kept.code, amount=365 * ML))
    assert facts(world, wipe.code).mean_per_day == ML


def test_the_use_of_another_shop_is_not_ours(world):
    mine, other = hollin(world), larkmoor("farrow")
    used_a_millilitre_a_day(other, hollin(other))
    assert facts(world, mine.code).mean_per_day == 0


def test_a_booking_counts_once_beside_the_mean_use(world):
    wipe = hollin(world)
    used_a_millilitre_a_day(world, wipe)
    assert line(world, wipe.code).wanted.expected == 12 * ML, "25 November through 6 December, 1 ml a day"

    need(step(job(world, NOON + timedelta(days=2))), wipe, 8 * ML)
    wanted = line(world, wipe.code).wanted
    assert (wanted.booked, wanted.unbooked) == (8 * ML, 4 * ML)
    assert wanted.expected == 12 * ML, "20 ml would order the booked car twice"


def test_what_a_job_used_already_is_not_wanted_again(world):
    wipe = hollin(world)
    kept = used_a_millilitre_a_day(world, wipe)
    car = job(world, NOON - timedelta(hours=2))
    wiping = step(car)
    need(wiping, wipe, 8 * ML)
    record(world, Act("use", NOON, source=kept.code, amount=5 * ML, job=car.code, step=wiping.code))
    assert facts(world, wipe.code).booked == (Booked(TODAY, 3 * ML),)

    wiping.signed_at = NOON
    wiping.save()
    assert facts(world, wipe.code).booked == ()


@pytest.mark.parametrize("state", [Job.State.CANCELLED, Job.State.CLOSED])
def test_a_job_that_ended_wants_nothing(world, state):
    wipe, car = hollin(world), job(world)
    need(step(car), wipe, 8 * ML)
    assert facts(world, wipe.code).booked == (Booked(date(2026, 11, 26), 8 * ML),)

    Job.objects.filter(pk=car.pk).update(state=state)
    assert facts(world, wipe.code).booked == ()


def test_a_need_of_a_kind_is_wanted_of_the_product_of_it_that_is_used_most(world):
    first = product(world, "Ardle wipe", Kind.SOLVENT)
    usual = hollin(world)
    need(step(job(world)), Kind.SOLVENT, 8 * ML)
    assert facts(world, first.code).booked, "nothing was used yet: the first by name"

    used_a_millilitre_a_day(world, usual)
    assert facts(world, usual.code).booked == (Booked(date(2026, 11, 26), 8 * ML),)
    assert facts(world, first.code).booked == ()


def test_what_is_on_order_counts_until_it_is_received(world):
    wipe = hollin(world)
    row = ordered(world, wipe, 3)
    assert facts(world, wipe.code).on_order == (OnOrder(3 * LITRE, date(2026, 11, 29)),)

    row.received, row.damaged, row.wrong = 1, 1, 1
    row.save()
    assert facts(world, wipe.code).on_order == (OnOrder(2 * LITRE, date(2026, 11, 29)),), (
        "both are still owed"
    )

    row.received = 3
    row.save()
    assert facts(world, wipe.code).on_order == ()


def test_more_than_was_ordered_is_not_less_than_nothing(world):
    wipe = hollin(world)
    ordered(world, wipe, 1, received=2)
    assert facts(world, wipe.code).on_order == ()


@pytest.mark.parametrize(
    ("state", "closed", "because"),
    [
        ("draft", False, "nobody asked the supplier yet"),
        ("cancelled", False, "it does not come"),
        ("received", False, "it stands on the shelf"),
        ("placed", True, "the rest was closed"),
    ],
)
def test_only_what_is_awaited_is_on_order(world, state, closed, because):
    wipe = hollin(world)
    ordered(world, wipe, 3, state, closed_short=closed)
    assert facts(world, wipe.code).on_order == (), because


def test_a_kit_on_order_brings_its_parts_and_a_case_its_bottles(world):
    coating, wipe = tidewall(world), hollin(world)
    kit = pack(coating, 30 * ML, per_case=4)
    KitPart.objects.create(pack=kit, product=wipe, amount=20 * ML)
    ordered(world, coating, 2)
    assert [each.amount for each in facts(world, coating.code).on_order] == [240 * ML]
    assert [each.amount for each in facts(world, wipe.code).on_order] == [160 * ML]


def test_a_case_is_ordered_as_the_bottles_in_it_and_only_the_usual_sizes_are(world):
    wipe = hollin(world)
    pack(wipe, LITRE, per_case=12, multiple=2, price_minor=9_600, gtin="09520000001018")
    pack(wipe, 5 * LITRE, usual=False)
    (found,) = facts(world, wipe.code).packs
    assert (found.code, found.amount, found.price_minor, found.multiple, found.noun) == (
        "09520000001018", 12 * LITRE, 9_600, 2, "case",
    )  # fmt: skip


def test_the_lead_time_is_the_products_own_else_its_suppliers(world):
    assert facts(world, hollin(world).code).lead_days == 6
    assert facts(world, tidewall(world, lead_days=0).code).lead_days == 0
    assert facts(world, product(world, "Ardle wipe", Kind.SOLVENT, supplier=None).code).supplier.name == (
        "No supplier yet"
    )


@pytest.mark.parametrize(
    ("life", "unit", "days", "because"),
    [
        (1, "month", 31, "it comes on 1 December and lasts to 1 January"),
        (3, "month", 90, "1 December to 1 March"),
        (14, "day", 14, "as typed"),
        (30, "minute", 0, "gone the day it comes"),
        (None, "month", None, "it does not die sealed"),
    ],
)
def test_a_sealed_life_is_counted_in_days_from_the_delivery(world, life, unit, days, because):
    coating = tidewall(world, sealed_life=life, sealed_life_unit=unit)
    assert facts(world, coating.code).sealed_life_days == days, because


def test_how_cars_are_booked_comes_from_the_shops_own_year(world):
    wipe = hollin(world)
    for number in range(20):
        ended = job(world, NOON - timedelta(days=10), booked_at=NOON - timedelta(days=14))
        state = Job.State.CANCELLED if number < 5 else Job.State.CLOSED
        Job.objects.filter(pk=ended.pk).update(state=state)
    job(world, NOON + timedelta(days=6), booked_at=NOON - timedelta(days=14))
    long_ago = job(world, NOON - timedelta(days=390), booked_at=NOON - timedelta(days=400))
    Job.objects.filter(pk=long_ago.pk).update(state=Job.State.CANCELLED)

    found = facts(world, wipe.code)
    assert (found.bookings_seen, found.cancelled) == (20, 0.25)
    assert found.days_booked_ahead == 5, "15 cars 4 days ahead and an open one 20 days"


def test_a_shop_that_cancelled_everything_still_gets_its_report(world):
    wipe = hollin(world)
    ended = job(world)
    Job.objects.filter(pk=ended.pk).update(state=Job.State.CANCELLED)
    assert facts(world, wipe.code).cancelled == 0.99


def test_the_spread_of_use_a_job_is_measured_over_jobs(world):
    wipe = hollin(world)
    kept = bottle(world, wipe, LITRE)
    for amount in (30, 40, 50):
        car = job(world, NOON - timedelta(days=1))
        record(world, Act("use", NOON, source=kept.code, amount=amount * ML, job=car.code))
    assert facts(world, wipe.code).spread_per_booking == pytest.approx(8_164.97, abs=0.01)


def test_archived_products_are_not_ordered(world):
    gone = hollin(world, archived=True)
    assert gone.code not in {each.code for each in queries.products_of(world.shop, TODAY)}


def test_a_line_says_when_it_is_empty_and_what_is_not_counted(world):
    wipe = hollin(world)
    pack(wipe, LITRE, price_minor=1_450)
    kept = bottle(world, wipe, 300 * ML, expires_on=date(2026, 12, 31))
    bottle(world, wipe, 200 * ML, expires_on=date(2026, 11, 20))
    record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=280 * ML))

    found = line(world, wipe.code)
    assert (found.packs, found.cost_minor) == (1, 1_450)
    assert found.because == (
        "Empty on 27 November; lead time 6 days: ordered today it comes 4 days late, on 1 December. "
        "200 ml on hand is out of date and not counted."
    )


def test_today_is_told_what_cannot_wait_a_week_the_soonest_first(world):
    wipe, coating, paste = hollin(world), tidewall(world), product(world, "Sorrel wax", Kind.WAX, lead_days=2)
    for each, amount, left in ((wipe, LITRE, 135), (coating, 30 * ML, 50), (paste, LITRE, 300)):
        pack(each, amount, price_minor=1_000)
        kept = bottle(world, each, (280 + left) * ML, expires_on=date(2027, 12, 31))
        record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=280 * ML))

    found = queries.to_order(world.shop, NOON)
    assert [(each.what, each.by, each.because) for each in found] == [
        (
            "Tidewall coating, 30 ml · Orlo Supply",
            date(2026, 11, 25),
            "Empty on 30 November; lead time 6 days: ordered today it comes 1 day late, on 1 December.",
        ),
        (
            "Hollin panel wipe, 1 l · Orlo Supply",
            date(2026, 12, 2),
            "Empty on 8 December otherwise; lead time 6 days.",
        ),
    ]
    assert isinstance(found[0], ToOrder)


@pytest.mark.parametrize(
    ("on", "month", "because"),
    [
        (date(2026, 11, 23), date(2026, 11, 1), "the 30th is within a week"),
        (date(2026, 11, 24), date(2026, 12, 1), "a week later it is December"),
        (date(2026, 12, 28), date(2027, 1, 1), "over the year's end"),
    ],
)
def test_in_its_last_week_a_month_gives_way_to_the_next(on, month, because):
    assert queries.month_in_view(on) == month, because


def test_thirty_products_cost_as_many_queries_as_three(world):
    def cost() -> int:
        with CaptureQueriesContext(connection) as seen:
            queries.report(world.shop, TODAY, TODAY)
        return len(seen)

    def stocked(number: int) -> None:
        each = product(world, f"Ardle wipe {number}", Kind.SOLVENT)
        pack(each, LITRE, price_minor=900)
        kept = bottle(world, each, LITRE)
        record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=280 * ML))
        ordered(world, each, 1)
        need(step(job(world)), each, 8 * ML)

    for number in range(3):
        stocked(number)
    few = cost()
    for number in range(3, 30):
        stocked(number)
    assert (few, cost()) == (10, 10)
