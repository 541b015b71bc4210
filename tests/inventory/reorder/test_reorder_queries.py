"""What the rules are told of a shop, over the real ledger. Today is Wednesday 25 November 2026."""

from datetime import date, timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Kind, KitPart
from inventory.reorder import queries
from inventory.reorder.queries import ToOrder
from inventory.reorder.rules import OnOrder, Stock
from inventory.stock.rules.acts import Act
from tests.inventory.reorder.used_shop import facts, line, ordered, used_a_millilitre_a_day
from tests.world import (
    LITRE,
    ML,
    NOON,
    TODAY,
    bottle,
    hollin,
    job,
    need,
    pack,
    product,
    record,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db


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
        need(step(job(world)), Kind.SOLVENT, ML)

    for number in range(3):
        stocked(number)
    few = cost()
    for number in range(3, 30):
        stocked(number)
    assert (few, cost()) == (12, 12)
