"""Booking, moving, cancelling, signing and closing over the real ledger."""

from datetime import UTC, datetime, timedelta

import pytest

from inventory.jobs import actions, queries
from inventory.jobs.forms import CloseForm
from inventory.models import Job, Movement, Service, StepNeed
from inventory.stock import booking
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.stock.signing import sign_stage
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
TOMORROW = NOON + timedelta(days=1)


def service(world: w.World, wipe, ml: int = 100) -> Service:
    row = Service.objects.create(shop=world.shop, name="Coating over two days")
    first = row.steps.create(position=1, stage="coat", name="Panel wipe", starts_after=0, minutes=60)
    first.needs.create(product=wipe, amount=ml * ML)
    row.steps.create(position=2, stage="cure", name="Cure", starts_after=1440, minutes=720)
    return row


def test_a_booking_takes_steps_hours_and_amounts_from_the_service(shop: w.World) -> None:
    job = booking.book(
        shop.shop,
        service(shop, w.hollin(shop)),
        w.car(shop, size="large"),
        TOMORROW,
        title="Coating",
        at=NOON,
    )

    steps = list(job.steps.order_by("position"))
    assert [(step.name, step.stage, step.starts_at, step.ends_at) for step in steps] == [
        ("Panel wipe", "coat", TOMORROW, TOMORROW + timedelta(hours=1)),
        ("Cure", "cure", TOMORROW + timedelta(days=1), TOMORROW + timedelta(days=1, hours=12)),
    ]
    assert steps[0].needs.get().amount == 130 * ML
    assert (job.starts_at, job.ends_at) == (TOMORROW, TOMORROW + timedelta(days=1, hours=12))


def use(world: w.World, wipe, ml: int, *, measured: bool, size: str = "large") -> None:
    past = w.job(world, NOON - timedelta(days=20), vehicle=w.car(world, size=size))
    step = w.step(past)
    bottle = w.bottle(world, wipe, 500 * ML)
    facts = {"measured": measured, "assumed": not measured}
    at = NOON - timedelta(days=20)
    w.record(
        world, Act("use", at, source=bottle.code, amount=ml * ML, job=past.code, step=step.code, facts=facts)
    )


@pytest.mark.parametrize(
    ("last", "amount", "because"),
    [
        ({"measured": True}, 160 * ML, "three measured uses on this size: their median"),
        ({"measured": False}, 130 * ML, "two measured and one assumed: the service's amount by size"),
        ({"measured": True, "size": "small"}, 130 * ML, "the third was on another size"),
    ],
)
def test_the_shop_s_median_replaces_the_service_s_amount(
    shop: w.World, last: dict, amount: int, because: str
) -> None:
    wipe = w.hollin(shop)
    use(shop, wipe, 150, measured=True)
    use(shop, wipe, 170, measured=True)
    use(shop, wipe, 160, **last)

    job = booking.book(
        shop.shop, service(shop, wipe), w.car(shop, size="large"), TOMORROW, title="C", at=NOON
    )

    need = job.steps.get(position=1).needs.get()
    assert need.amount == amount, because
    own = ["Hollin panel wipe: 160 ml. The median of your last 3 measured uses."]
    assert queries.medians(job, [need], NOON) == (own if amount == 160 * ML else [])


def wiping(world: w.World, wipe, ml: int, starts_at=TOMORROW, name: str = "Grey estate") -> Job:
    job = w.job(world, starts_at, vehicle=w.car(world, name), hours=1)
    w.need(w.step(job, bay=world.bay_2), wipe, ml * ML)
    return job


def sheetless(wipe):
    wipe.needs_sheet = False
    wipe.save()
    return wipe


def test_cancelling_frees_the_stock_at_once_and_says_who_gains(shop: w.World) -> None:
    wipe = sheetless(w.hollin(shop))
    w.bottle(shop, wipe, 200 * ML)
    first = wiping(shop, wipe, 60)
    wiping(shop, wipe, 180, TOMORROW + timedelta(days=1), name="Red van")

    assert actions.cancel(first, at=NOON) == ["Red van gains: it is ready now."]
    assert actions.book_again(first, at=NOON) == ["Red van gives way: it asks, 1 finding open."]


def test_moving_a_job_moves_its_unsigned_steps_and_says_who_gains_and_who_gives_way(shop: w.World) -> None:
    wipe = sheetless(w.hollin(shop))
    w.bottle(shop, wipe, 200 * ML)
    first = wiping(shop, wipe, 60)
    wiping(shop, wipe, 180, TOMORROW + timedelta(days=1), name="Red van")

    said = actions.move(first, TOMORROW + timedelta(days=3), at=NOON)

    assert sorted(said) == [
        "Grey estate gives way: it asks, 1 finding open.",
        "Red van gains: it is ready now.",
    ]
    first.refresh_from_db()
    assert first.starts_at == first.steps.get().starts_at == TOMORROW + timedelta(days=3)
    assert first.ends_at == TOMORROW + timedelta(days=3, hours=1)


@pytest.mark.parametrize(
    ("day", "hours", "because"),
    [
        (datetime(2027, 3, 27, 8, 30, tzinfo=UTC), 23, "the clock goes forward in the night"),
        (datetime(2027, 10, 30, 7, 30, tzinfo=UTC), 25, "the clock goes back in the night"),
        (datetime(2027, 5, 8, 7, 30, tzinfo=UTC), 24, "the clock stays"),
    ],
)
def test_a_second_day_begins_at_the_same_hour_on_the_wall_over_a_clock_change(
    shop: w.World, day: datetime, hours: int, because: str
) -> None:
    job = w.job(shop, datetime(2026, 11, 26, 8, 30, tzinfo=UTC))
    w.step(job), w.step(job, "Cure", after_hours=24)

    actions.move(job, day, at=NOON)
    booked = booking.book(shop.shop, service(shop, w.hollin(shop)), job.vehicle, day, title="C", at=NOON)

    for each in (job, booked):
        first, second = (step.starts_at.astimezone(shop.shop.zone) for step in each.steps.all())
        assert (f"{first:%H:%M}", f"{second:%H:%M}") == ("08:30", "08:30"), because
        assert second.astimezone(UTC) - first.astimezone(UTC) == timedelta(hours=hours), because


def test_a_step_that_falls_into_the_skipped_hour_still_ends_after_it_starts(shop: w.World) -> None:
    job = w.job(shop, datetime(2026, 11, 26, 0, 30, tzinfo=UTC))
    w.step(job)
    skipped = w.step(job, "Cure", after_hours=1, hours=0.5)

    actions.move(job, datetime(2027, 3, 28, 0, 30, tzinfo=UTC), at=NOON)

    skipped.refresh_from_db()
    assert skipped.starts_at == skipped.ends_at == datetime(2027, 3, 28, 1, 30, tzinfo=UTC)


def test_a_signed_step_keeps_its_hour_when_the_job_moves(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    done, to_do = w.step(job, "Wash"), w.step(job, "Coat", after_hours=2)
    done.signed_at = NOON
    done.save()

    actions.move(job, TOMORROW + timedelta(days=1), at=NOON)

    done.refresh_from_db()
    to_do.refresh_from_db()
    assert done.starts_at == TOMORROW
    assert to_do.starts_at == TOMORROW + timedelta(days=1, hours=2)


def test_two_cars_in_one_bay_clash_and_cure_holds_it(shop: w.World) -> None:
    coated = w.job(shop, TOMORROW, vehicle=w.car(shop, "Red van"))
    w.step(coated, "Cure", stage="cure", hours=12, bay=shop.bay_2)
    job = wiping(shop, w.hollin(shop), 60, TOMORROW + timedelta(hours=3))

    assert [clash.says(shop.shop.zone) for clash in queries.bay_clashes(job)] == [
        "Panel wipe: Bay 2 is taken by Red van (Cure) until Friday 27 November, 00:00."
    ]
    actions.cancel(coated, at=NOON)
    assert queries.bay_clashes(job) == []


def test_signing_a_stage_books_what_nobody_scanned_as_planned_and_assumed(shop: w.World) -> None:
    soap = w.product(shop, "Brindle shampoo", "shampoo", needs_sheet=False)
    bottle = w.bottle(shop, soap, 500 * ML, opened_at=NOON - timedelta(days=3), place=shop.bay_2)
    job = wiping(shop, soap, 30)

    sign_stage(job, "coat", by=shop.tomas, at=NOON)

    bottle.refresh_from_db()
    assert bottle.content == 470 * ML
    assert Movement.objects.get(job=job, kind="use").facts["assumed"] is True
    assert queries.unsaid(job) == []


def test_closing_asks_only_about_what_was_neither_scanned_nor_signed(shop: w.World) -> None:
    wipe, coating = w.hollin(shop), w.tidewall(shop)
    bottle = w.bottle(shop, wipe, 500 * ML)
    job = w.job(shop)
    step = w.step(job)
    w.need(step, wipe, 180 * ML)
    unscanned = w.need(step, coating, 20 * ML)
    w.record(shop, Act("use", NOON, source=bottle.code, amount=180 * ML, job=job.code, step=step.code))

    assert [one.need for one in queries.unsaid(job)] == [unscanned]


def test_a_use_of_1_ml_does_not_speak_for_the_other_95(shop: w.World) -> None:
    wipe = w.hollin(shop)
    bottle = w.bottle(shop, wipe, 500 * ML)
    job = wiping(shop, wipe, 96)
    step = job.steps.get()
    w.record(shop, Act("use", NOON, source=bottle.code, amount=1 * ML, job=job.code, step=step.code))
    [one] = queries.unsaid(job)

    form = CloseForm({f"how_{one.need.pk}": "planned"}, shop=shop.shop, unsaid=[one])
    assert form.is_valid()
    actions.close(job, form.said, by=shop.tomas, at=NOON)

    assert one.left == 95 * ML
    assert ("planned", "as planned: the other 95 ml of 96 ml") in form.fields[f"how_{one.need.pk}"].choices
    assert sum(line.amount for line in Movement.objects.filter(job=job, kind="use")) == 96 * ML


@pytest.mark.parametrize(
    ("used", "left", "because"),
    [
        (60, [40 * ML, 100 * ML], "it counts off the first step that lacks it"),
        (160, [40 * ML], "what the first does not need counts off the next"),
        (200, [], "it is enough for both"),
    ],
)
def test_a_use_that_names_no_step_counts_once(
    shop: w.World, used: int, left: list[int], because: str
) -> None:
    wipe = w.hollin(shop)
    bottle = w.bottle(shop, wipe, 500 * ML)
    job = w.job(shop)
    for hour in (0, 2):
        w.need(w.step(job, after_hours=hour), wipe, 100 * ML)

    w.record(shop, Act("use", NOON, source=bottle.code, amount=used * ML, job=job.code))

    assert [one.left for one in queries.unsaid(job)] == left, because


def test_a_stage_posts_only_what_no_entry_of_the_car_has_covered(shop: w.World) -> None:
    soap = w.product(shop, "Brindle shampoo", "shampoo", needs_sheet=False)
    bottle = w.bottle(shop, soap, 500 * ML, opened_at=NOON - timedelta(days=3), place=shop.bay_2)
    job = wiping(shop, soap, 30)
    w.need(w.step(job, "Rinse", stage="cure", after_hours=2, bay=shop.bay_2), soap, 20 * ML)
    w.record(shop, Act("use", NOON, source=bottle.code, amount=10 * ML, job=job.code))

    sign_stage(job, "coat", by=shop.tomas, at=NOON)

    assert sorted(line.amount for line in Movement.objects.filter(job=job, kind="use")) == [10 * ML, 20 * ML]
    assert [one.left for one in queries.unsaid(job)] == [20 * ML]


def test_a_scanned_pad_is_used_and_not_asked_about_though_nothing_left_it(shop: w.World) -> None:
    pad = w.product(shop, "Orrin pad", "pad", dimension="pieces", wear_uses=20)
    bottle = w.bottle(shop, pad, 6)
    job = w.job(shop)
    step = w.step(job)
    w.need(step, pad, 1)
    w.record(shop, Act("use", NOON, source=bottle.code, amount=0, job=job.code, step=step.code))

    assert queries.unsaid(job) == []


@pytest.mark.parametrize(
    ("amount", "measured", "left", "outcome"),
    [
        (180 * ML, False, 320 * ML, "done"),
        (75 * ML, True, 425 * ML, "done"),
        (None, False, 500 * ML, "not_done"),
    ],
)
def test_closing_books_as_planned_another_amount_or_nothing(
    shop: w.World, amount: int | None, measured: bool, left: int, outcome: str
) -> None:
    wipe = w.hollin(shop)
    bottle = w.bottle(shop, wipe, 500 * ML, opened_at=NOON - timedelta(days=2))
    job = wiping(shop, wipe, 180)
    need = StepNeed.objects.get(step__job=job)

    actions.close(job, [actions.Said(need, amount, measured)], by=shop.tomas, at=NOON)

    bottle.refresh_from_db()
    need.refresh_from_db()
    assert (bottle.content, need.outcome, job.state) == (left, outcome, "closed")
    assert [line.facts["measured"] for line in Movement.objects.filter(job=job)] == (
        [measured] if amount else []
    )


def test_closing_takes_from_the_bottle_in_the_bay_first(shop: w.World) -> None:
    wipe = w.hollin(shop)
    opened = {"opened_at": NOON - timedelta(days=2)}
    w.bottle(shop, wipe, 500 * ML, expires_on=w.TODAY + timedelta(days=9), **opened)
    here = w.bottle(shop, wipe, 500 * ML, place=shop.bay_2, **opened)
    job = wiping(shop, wipe, 180)

    said = actions.Said(StepNeed.objects.get(step__job=job), 180 * ML)
    actions.close(job, [said], by=shop.tomas, at=NOON)

    assert Movement.objects.get(job=job).source == here


def test_closing_refuses_more_than_the_book_holds_and_writes_nothing(shop: w.World) -> None:
    wipe = w.hollin(shop)
    w.bottle(shop, wipe, 100 * ML)
    job = wiping(shop, wipe, 180)

    with pytest.raises(Refused) as refused:
        actions.close(
            job, [actions.Said(StepNeed.objects.get(step__job=job), 180 * ML)], by=shop.tomas, at=NOON
        )

    assert refused.value.says == (
        "Hollin panel wipe: the book holds 100 ml of the 180 ml. "
        "Count the bottle it came from, or give what is left."
    )
    job.refresh_from_db()
    assert job.state == "open"
    assert not Movement.objects.filter(job=job).exists()


def test_a_step_on_which_something_was_recorded_is_not_removed(shop: w.World) -> None:
    wipe = w.hollin(shop)
    bottle = w.bottle(shop, wipe, 500 * ML)
    job = wiping(shop, wipe, 180)
    step = job.steps.get()
    w.record(shop, Act("use", NOON, source=bottle.code, amount=90 * ML, job=job.code, step=step.code))

    with pytest.raises(Refused):
        actions.remove_step(step)

    assert job.steps.count() == 1
