"""What the ledger writes and what it refuses, through its one public door, on a real database."""

from datetime import date, timedelta

import pytest
from django.db import IntegrityError, transaction

from inventory.codes import pair
from inventory.models import Container, Head, Lot, Movement
from inventory.stock import ledger
from inventory.stock.audit import audit
from inventory.stock.lots import OtherDate
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from inventory.stock.rules.lines import NotHereYet, Refused, TooLittle
from tests.lines import at
from tests.world import (
    LITRE,
    ML,
    NOON,
    World,
    bottle,
    hollin,
    larkmoor,
    marl,
    product,
    record,
    spray_bottle,
    tidewall,
)

pytestmark = pytest.mark.django_db


def now(container: Container) -> Container:
    """Return a bottle as the shelf has it now."""
    return Container.objects.get(pk=container.pk)


def kinds() -> list[str]:
    return list(Movement.objects.order_by("seq").values_list("kind", flat=True))


def refusal(world: World, *acts: Act) -> Refused:
    """Return what the ledger says against some acts; nothing of them may stay."""
    before = kinds()
    with pytest.raises(Refused) as caught:
        record(world, *acts)
    assert kinds() == before
    assert list(audit()) == []
    return caught.value


def test_an_unknown_code_is_refused_by_name(world: World) -> None:
    says = refusal(world, Act("move", NOON, target="BXXXXXXX", place=world.bay_1.code)).says
    assert says == "BXXX XXXX is no code of a bottle here. Scan it again, or type it."


def test_a_bottle_of_another_shop_is_unknown_here(world: World) -> None:
    other = larkmoor("brackside")
    theirs = bottle(other, hollin(other), LITRE)
    assert refusal(world, Act("open", NOON, target=theirs.code)).code == "unknown"


def test_a_place_of_another_shop_is_unknown_here(world: World) -> None:
    other = larkmoor("brackside")
    ktrv = bottle(world, hollin(world), LITRE)
    says = refusal(world, Act("move", NOON, target=ktrv.code, place=other.store.code)).says
    assert says == f"{pair(other.store.code)} is no place of this shop. Scan it again, or type it."


def test_too_little_says_what_is_booked_and_the_way_out(world: World) -> None:
    ktrv = bottle(world, hollin(world), 1500 * ML, opened_at=at(-5))
    refused = refusal(world, Act("use", NOON, source=ktrv.code, amount=2 * LITRE))
    assert refused.says == f"{pair(ktrv.code)} is booked at 1.5 l. If it holds more, say so and carry on."
    assert type(refused) is TooLittle


def test_saying_that_it_holds_more_writes_a_count_and_the_use_together(world: World) -> None:
    ktrv = bottle(world, hollin(world), 1500 * ML, opened_at=at(-5))
    count = Act("count", NOON, target=ktrv.code, amount=2 * LITRE)
    written = record(world, count, Act("use", NOON, source=ktrv.code, amount=2 * LITRE))
    assert [line.kind for line in written] == ["count", "use"]
    assert written[0].facts["difference"] == 500 * ML
    assert now(ktrv).state == "empty"


def test_a_late_use_of_too_much_says_what_was_booked_at_that_hour(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-9))
    record(world, Act("count", at(-1), target=ktrv.code, amount=5 * LITRE))
    refused = refusal(world, Act("use", at(-4), source=ktrv.code, amount=2 * LITRE))
    assert refused.says == f"{pair(ktrv.code)} is booked at 1 l. If it holds more, say so and carry on."


def test_a_late_use_that_starves_a_later_entry_names_the_entry_in_the_way(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-9))
    record(world, Act("use", at(-1), source=ktrv.code, amount=900 * ML))
    refused = refusal(world, Act("use", at(-4), source=ktrv.code, amount=200 * ML))
    assert refused.says == f"Entry 3 is in the way: {pair(ktrv.code)} holds less than that."
    assert (type(refused), refused.seq) == (Refused, 3), "counting first is no way out of this one"


def test_nothing_happens_to_a_bottle_before_it_came(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE)
    refused = refusal(world, Act("use", NOON - timedelta(days=31), source=ktrv.code, amount=ML))
    assert refused.says == f"{pair(ktrv.code)} had not been received by then. Receive it first."
    assert type(refused) is NotHereYet


def test_a_negative_amount_is_refused_in_a_sentence_and_not_by_the_database(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    assert refusal(world, Act("use", NOON, source=ktrv.code, amount=-5)).says == (
        "Less than nothing cannot be taken. Say how much came out."
    )


def test_one_act_that_does_not_fit_leaves_none_of_them(world: World) -> None:
    ktrv, bktr = bottle(world, hollin(world), LITRE), bottle(world, marl(world), LITRE)
    good, bad = Act("open", NOON, target=ktrv.code), Act("use", NOON, source=bktr.code, amount=2 * LITRE)
    refusal(world, good, bad)
    assert now(ktrv).state == "sealed"
    assert Head.objects.get().seq == 2


def test_a_refused_receive_leaves_neither_bottle_nor_lot(world: World) -> None:
    new = NewBottle(hollin(world).code, LITRE, lot=LotFacts("NEW-1"))
    refusal(world, Act("receive", NOON, new=new, amount=LITRE, place="PXXXXXXX"))
    assert (Container.objects.count(), Lot.objects.count()) == (0, 0)


def test_a_label_that_is_on_another_bottle_is_refused(world: World) -> None:
    ktrv, of = bottle(world, hollin(world), LITRE), marl(world)
    says = refusal(
        world, Act("receive", NOON, new=NewBottle(of.code, 1000, code=ktrv.code), amount=1000)
    ).says
    assert says == f"{pair(ktrv.code)} is on another bottle already. Take the next label."


def test_a_use_of_a_sealed_bottle_writes_that_it_was_opened_first(world: World) -> None:
    ktrv = bottle(world, tidewall(world), 30 * ML)
    record(world, Act("use", NOON, source=ktrv.code, amount=10 * ML))
    assert kinds() == ["receive", "open", "use"]
    assert (now(ktrv).opened_at, now(ktrv).content) == (NOON, 20 * ML)
    assert (now(ktrv).use_by_on, now(ktrv).use_by_term) == (date(2027, 2, 23), "opened")


def test_a_late_use_of_a_bottle_that_was_sealed_by_then_opens_it_by_then(world: World) -> None:
    ktrv = bottle(world, tidewall(world), 30 * ML)
    record(world, Act("move", at(-1), target=ktrv.code, place=world.bay_1.code))
    record(world, Act("use", at(-48), source=ktrv.code, amount=10 * ML))
    assert now(ktrv).opened_at == at(-48)


def test_a_late_use_before_the_entry_that_opened_it_names_that_entry(world: World) -> None:
    ktrv = bottle(world, tidewall(world), 30 * ML, opened_at=at(-2))
    says = refusal(world, Act("use", at(-5), source=ktrv.code, amount=ML)).says
    assert says == f"Entry 2 is in the way: {pair(ktrv.code)} is open already; only a sealed one is opened."


def test_a_late_use_is_booked_to_what_the_bottle_held_at_that_hour(world: World) -> None:
    wipe, compound = hollin(world), tidewall(world)
    ktrv, bktr = bottle(world, wipe, LITRE), bottle(world, compound, LITRE)
    spray = spray_bottle(world)
    record(world, fill(ktrv, spray, -20, 100 * ML), Act("use", at(-19), source=spray.code, amount=60 * ML))
    record(
        world, Act("count", at(-18), target=spray.code, amount=0), Act("rinse", at(-17), target=spray.code)
    )
    record(world, fill(bktr, spray, -16, 100 * ML, water=900 * ML))
    late = record(world, Act("use", at(-18.5), source=spray.code, amount=10 * ML))[0]
    assert (late.product, late.concentrate) == (wipe, 10 * ML), "not the coating at 1:9 that is in it now"
    assert list(audit()) == []


def test_a_late_count_keeps_the_difference_to_what_was_booked_at_that_hour(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-9))
    record(world, Act("use", at(-8), source=ktrv.code, amount=100 * ML))
    record(world, Act("use", at(-1), source=ktrv.code, amount=300 * ML))
    count = record(world, Act("count", at(-5), target=ktrv.code, amount=850 * ML))[0]
    assert count.facts == {"content": 850 * ML, "difference": -50 * ML}
    assert now(ktrv).content == 550 * ML


def test_demand_counts_the_product_and_not_its_water(world: World) -> None:
    ktrv, spray = bottle(world, hollin(world), LITRE), spray_bottle(world)
    record(world, fill(ktrv, spray, -3, 100 * ML, water=900 * ML))
    use = record(world, Act("use", NOON, source=spray.code, amount=500 * ML))[0]
    assert (use.amount, use.concentrate) == (500 * ML, 50 * ML)


def fill(source: Container, target: Container, hours: float, amount: int, water: int = 0) -> Act:
    """A pour of `amount`, with as much water as said."""
    parts = (1, water // amount)
    return Act(
        "fill",
        at(hours),
        source=source.code,
        target=target.code,
        amount=amount,
        added=amount + water,
        parts=parts,
    )


def test_a_mix_poured_over_neat_is_the_same_mix_of_the_same_hour(world: World) -> None:
    ktrv, one, two = bottle(world, hollin(world), LITRE), spray_bottle(world), spray_bottle(world)
    record(world, fill(ktrv, one, -9, 50 * ML, water=500 * ML), fill(one, two, -3, 200 * ML))
    assert (now(two).parts_product, now(two).parts_water) == (1, 10)
    assert now(two).mixed_at == at(-9)


def test_a_mix_poured_into_water_is_thinner_still(world: World) -> None:
    ktrv, one, two = bottle(world, hollin(world), LITRE), spray_bottle(world), spray_bottle(world)
    record(world, fill(ktrv, one, -9, 50 * ML, water=500 * ML), fill(one, two, -3, 100 * ML, water=100 * ML))
    assert (now(two).parts_product, now(two).parts_water) == (1, 21)


def test_what_is_poured_over_brings_its_opening_its_estimate_and_its_hold(world: World) -> None:
    of = tidewall(world)
    ktrv = bottle(world, of, LITRE, sealed=False, opened_at=None, estimated=True, lot="T-1")
    spray = spray_bottle(world)
    record(world, Act("quarantine", at(-4), target=ktrv.code, facts={"reason": "frozen"}))
    record(world, fill(ktrv, spray, -3, 100 * ML))
    poured = now(spray)
    assert (poured.opened_at, poured.estimated, poured.held) == (NOON - timedelta(days=30), True, "frozen")
    assert (poured.use_by_term, poured.use_by_firm) == ("opened", False)


def test_a_retested_bottle_topped_up_lives_until_the_earlier_of_the_two_dates(world: World) -> None:
    of = product(world, "Oskel glass cleaner", "glass")
    fresh = bottle(world, of, LITRE, lot="G-2", expires_on=date(2027, 2, 28))
    old, spray = bottle(world, of, LITRE, lot="G-1", expires_on=date(2026, 11, 1)), spray_bottle(world)
    record(world, fill(old, spray, -9, 100 * ML))
    record(
        world,
        Act(
            "retest",
            at(-8),
            target=spray.code,
            facts={"until": "2027-06-30", "test": "panel", "evidence": "photo"},
        ),
    )
    assert (now(spray).use_by_on, now(spray).use_by_term) == (date(2027, 6, 30), "retest")
    record(world, fill(fresh, spray, -7, 100 * ML))
    assert (now(spray).use_by_on, now(spray).use_by_term) == (date(2027, 2, 28), "retest")


def test_a_bottle_cannot_be_filled_from_itself(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    assert refusal(world, fill(ktrv, ktrv, -1, 10 * ML)).code == "itself"


def test_a_use_taken_back_restores_the_bottle(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    before = Container.objects.filter(pk=ktrv.pk).values().get()
    use = record(world, Act("use", at(-2), source=ktrv.code, amount=100 * ML))[0]
    record(world, Act("reverse", NOON, reverses=use.seq))
    assert Container.objects.filter(pk=ktrv.pk).values().get() == before


def test_a_reverse_is_refused_where_a_later_entry_stands_on_it(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    record(world, Act("use", at(-2), source=ktrv.code, amount=100 * ML))
    says = refusal(world, Act("reverse", NOON, reverses=2)).says
    assert says == f"Entry 3 is in the way: {pair(ktrv.code)} is still sealed. Open it first."


def test_a_count_taken_back_under_a_use_names_the_use_and_offers_no_count(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    record(world, Act("count", at(-4), target=ktrv.code, amount=2 * LITRE))
    record(world, Act("use", at(-3), source=ktrv.code, amount=2 * LITRE))
    refused = refusal(world, Act("reverse", NOON, reverses=3))
    assert refused.says == f"Entry 4 is in the way: {pair(ktrv.code)} holds less than that."
    assert type(refused) is Refused


def test_a_pour_is_taken_back_on_both_sides_or_not_at_all(world: World) -> None:
    ktrv, spray = bottle(world, hollin(world), LITRE), spray_bottle(world)
    pour = record(world, fill(ktrv, spray, -9, 100 * ML))[-1]
    use = record(world, Act("use", at(-8), source=spray.code, amount=10 * ML))[0]
    assert refusal(world, Act("reverse", NOON, reverses=pour.seq)).seq == use.seq
    record(world, Act("reverse", NOON, reverses=use.seq), Act("reverse", NOON, reverses=pour.seq))
    assert (now(ktrv).content, now(spray).content, now(spray).state) == (LITRE, 0, "empty")


@pytest.mark.parametrize(
    ("seq", "says"),
    [
        (4, "What was taken back stays taken back. Record it again instead."),
        (3, "Entry 3 was taken back already."),
        (99, "There is no entry 99 to take back."),
    ],
)
def test_a_reverse_is_not_reversed_nor_done_twice(world: World, seq: int, says: str) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    record(world, Act("use", at(-2), source=ktrv.code, amount=100 * ML))
    record(world, Act("reverse", NOON, reverses=3))
    assert refusal(world, Act("reverse", NOON, reverses=seq)).says == says


def test_what_is_gone_comes_back_by_a_reverse_of_the_discard(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    discard = record(world, Act("discard", at(-1), target=ktrv.code))[0]
    assert (discard.amount, now(ktrv).state, now(ktrv).content) == (LITRE, "gone", 0)
    record(world, Act("reverse", NOON, reverses=discard.seq))
    assert (now(ktrv).state, now(ktrv).content) == ("open", LITRE)


def test_expired_stock_can_always_be_discarded_held_or_not(world: World) -> None:
    ktrv = bottle(world, tidewall(world), 30 * ML, expires_on=date(2025, 1, 31))
    record(world, Act("quarantine", at(-2), target=ktrv.code, facts={"reason": "gelled"}))
    record(world, Act("discard", NOON, target=ktrv.code))
    assert now(ktrv).state == "gone"


def test_a_held_lot_holds_what_arrives_of_it_later(world: World) -> None:
    of = tidewall(world)
    bottle(world, of, 30 * ML, lot="T-1")
    lot = Lot.objects.get(number="T-1")
    record(world, Act("quarantine", at(-1), lot=lot.code, facts={"reason": "recalled", "recalled": True}))
    later = bottle(world, of, 30 * ML, lot="T-1", at=NOON)
    assert [(lot.held, lot.recalled) for lot in later.lots.all()] == [("recalled", True)]
    record(world, Act("release", NOON, lot=lot.code))
    assert [lot.held for lot in now(later).lots.all()] == [""]


def test_another_printed_date_on_a_known_lot_is_refused_with_both_dates(world: World) -> None:
    of = tidewall(world)
    bottle(world, of, 30 * ML, lot="T-1", expires_on=date(2027, 3, 31))
    new = NewBottle(of.code, 30 * ML, lot=LotFacts("T-1", date(2027, 4, 30)))
    refused = refusal(world, Act("receive", NOON, new=new, amount=30 * ML))
    assert type(refused) is OtherDate
    assert refused.says == (
        "Lot T-1 is booked with 2027-03-31, this bottle says 2027-04-30. "
        "If the first was wrong, correct the lot; otherwise read the number again."
    )


def test_the_first_printed_date_of_a_lot_reaches_the_bottles_that_came_before(world: World) -> None:
    of = hollin(world)
    first = bottle(world, of, LITRE, lot="H-1")
    assert now(first).use_by_on is None
    bottle(world, of, LITRE, lot="H-1", expires_on=date(2027, 3, 31))
    assert now(first).use_by_on == date(2027, 3, 31)


def test_a_late_receive_does_not_undo_a_correction_that_took_the_date_away(world: World) -> None:
    of = hollin(world)
    bottle(world, of, LITRE, lot="H-1", expires_on=date(2027, 3, 31))
    lot = Lot.objects.get(number="H-1")
    record(world, Act("correct", at(-1), lot=lot.code, facts={"expires_on": None}))
    bottle(world, of, LITRE, lot="H-1", expires_on=date(2027, 3, 31), at=at(-5))
    lot.refresh_from_db()
    assert lot.expires_on is None
    assert list(audit()) == []


def test_a_corrected_lot_gives_every_bottle_of_it_the_new_date(world: World) -> None:
    of = hollin(world)
    ktrv, bktr = (bottle(world, of, LITRE, lot="H-1", expires_on=date(2027, 3, 31)) for _ in range(2))
    lot = Lot.objects.get(number="H-1")
    record(world, Act("correct", NOON, lot=lot.code, facts={"expires_on": "2026-12-31"}))
    assert [now(ktrv).use_by_on, now(bktr).use_by_on] == [date(2026, 12, 31)] * 2


def test_a_retested_lot_says_retest_and_not_printed(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE, lot="H-1", expires_on=date(2026, 10, 31))
    lot = Lot.objects.get(number="H-1")
    record(
        world,
        Act("retest", NOON, lot=lot.code, facts={"until": "2027-04-30", "test": "wipe", "evidence": "photo"}),
    )
    assert (now(ktrv).use_by_on, now(ktrv).use_by_term) == (date(2027, 4, 30), "retest")


def test_a_life_that_is_edited_reaches_the_bottles_on_the_shelf(world: World) -> None:
    of = tidewall(world)
    ktrv = bottle(world, of, 30 * ML, opened_at=at(-24))
    of.open_life = 30
    of.save()
    assert ledger.refresh_use_by(Container.objects.filter(product=of)) == 1
    assert now(ktrv).use_by_on == date(2026, 12, 24)


def test_two_bottles_without_a_lot_number_are_of_two_lots(world: World) -> None:
    of = hollin(world)
    one, two = bottle(world, of, LITRE, lot=""), bottle(world, of, LITRE, lot="")
    assert one.lots.get() != two.lots.get()


def test_the_database_itself_keeps_content_from_going_below_zero(world: World) -> None:
    ktrv = bottle(world, hollin(world), LITRE)
    with pytest.raises(IntegrityError), transaction.atomic():
        Container.objects.filter(pk=ktrv.pk).update(content=-1)


def test_a_use_costs_few_queries(world: World, django_assert_max_num_queries) -> None:  # type: ignore[no-untyped-def]
    ktrv = bottle(world, hollin(world), LITRE, opened_at=at(-5))
    with django_assert_max_num_queries(9):
        record(world, Act("use", NOON, source=ktrv.code, amount=ML))
