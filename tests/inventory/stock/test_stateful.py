"""Thousands of acts in any order against the real ledger: what must hold after each of them, come what may.

Conservation, never below zero, use by is the minimum, states equal the fold, a repeated key changes nothing,
a reversal restores, late and out-of-order entries. The other book (`book.py`) knows amounts and nothing else.
"""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from django.db import connection, transaction
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from inventory.models import Container, Head, Movement, Request
from inventory.stock import queries, requests
from inventory.stock.audit import audit
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from inventory.stock.rules.fold import fold
from inventory.stock.rules.lines import Refused, TooLittle
from tests.inventory.stock.book import Book, Entry, Impossible, played
from tests.lines import at
from tests.world import ML, NOON, hollin, larkmoor, record, tidewall

OPERATIONS = {"sqlite": 10_000, "postgresql": 2_000}
STEPS = 50
LONDON = ZoneInfo("Europe/London")
SLACK = 1.25  # some examples end early

HOURS = st.one_of(st.just(None), st.integers(0, 240))  # None: now, the next hour
AMOUNTS = st.one_of(st.sampled_from([0, 1, 5, 30]), st.integers(0, 60)).map(lambda ml: ml * ML)
PICK = st.integers(0, 10**6)
CHANGES = st.sampled_from(["open", "rinse", "move", "quarantine", "release", "retest"])
LOTS = st.tuples(st.integers(0, 2), st.integers(0, 400))  # which, and the days it lasts


class Shelf(RuleBasedStateMachine):
    """One shop in a transaction that is rolled back at the end of the example."""

    operations = 0
    refusals = 0

    def __init__(self) -> None:
        super().__init__()
        self.within = transaction.atomic()
        self.within.__enter__()
        self.world, self.book, self.clock = larkmoor(), Book(), 0
        coating = tidewall(self.world, mix_life=3, mix_life_by="shop")
        self.products = [coating, hollin(self.world, mix_life=3)]
        self.codes: list[str] = []
        self.touched: set[str] = set()
        self.stood = self.stands()

    def teardown(self) -> None:
        """Audit everything, then leave no trace."""
        try:
            assert list(audit()) == []
        finally:
            transaction.set_rollback(True)
            self.within.__exit__(None, None, None)

    # What the rules share

    def hour(self, asked: int | None) -> float:
        self.clock += asked is None
        return float(240 + self.clock if asked is None else asked)

    def stands(self) -> tuple[int, int, str]:
        return Movement.objects.count(), *Head.objects.values_list("seq", "hash").get()

    def bottle(self, pick: int) -> str:
        return self.codes[pick % len(self.codes)]

    def does(self, *acts: Act) -> list[Movement] | None:
        """Write acts, or see that a refusal left nothing behind."""
        type(self).operations += 1
        try:
            written = record(self.world, *acts)
        except Refused as refusal:
            type(self).refusals += 1
            self.refused = refusal
            assert self.stands() == self.stood
            return None
        self.stood = self.stands()
        for line in written:
            self.touched |= {each.code for each in (line.source, line.target) if each}
        return written

    def counts(self, code: str, kind: str, hour: float, amount: int, *acts: Act) -> list[Movement] | None:
        """Write acts and book them in the other book: where that says impossible, the ledger must refuse."""
        entry = Entry(10**9, hour, kind, amount)
        written = self.does(*acts)
        try:
            played(self.book.with_one_more(code, entry))
        except Impossible:
            assert written is None, f"{kind} of {amount} at {hour} fits nowhere, and was written"
            return None
        if written is None:
            assert not isinstance(self.refused, TooLittle), f"{amount} was there: {self.refused.says}"
            return None
        entry.seq = written[-1].seq
        self.book.write(code, entry)
        return written

    # The rules: one operation each

    @rule(product=PICK, amount=AMOUNTS, asked=HOURS, lot=LOTS, sealed=st.booleans())
    def receive(
        self, product: int, amount: int, asked: int | None, lot: tuple[int, int], sealed: bool
    ) -> None:
        hour, (number, days) = self.hour(asked), lot
        of = self.products[product % 2]
        facts = LotFacts(f"LOT-{number}-{days}" if number else "", NOON.date() + timedelta(days=days))
        new = NewBottle(of.code, 100 * ML, lot=facts, sealed=sealed)
        act = Act("receive", at(hour), new=new, amount=amount, place=self.world.store.code)
        self.arrives(act, hour, amount)

    @rule(asked=HOURS)
    def receive_a_spray_bottle(self, asked: int | None) -> None:
        hour = self.hour(asked)
        new = NewBottle(None, 100 * ML, refillable=True, sealed=False)
        self.arrives(Act("receive", at(hour), new=new, amount=0, place=self.world.store.code), hour, 0)

    def arrives(self, act: Act, hour: float, amount: int) -> None:
        written = self.does(act)
        assert written is not None, "what arrives is taken in"
        assert written[0].target is not None
        self.codes.append(written[0].target.code)
        self.book.write(self.codes[-1], Entry(written[0].seq, hour, "receive", amount))

    @precondition(lambda self: self.codes)
    @rule(pick=PICK, amount=AMOUNTS, asked=HOURS)
    def use(self, pick: int, amount: int, asked: int | None) -> None:
        code, hour = self.bottle(pick), self.hour(asked)
        self.counts(code, "use", hour, amount, Act("use", at(hour), source=code, amount=amount))

    @precondition(lambda self: self.codes)
    @rule(pick=PICK, amount=AMOUNTS, asked=HOURS)
    def count(self, pick: int, amount: int, asked: int | None) -> None:
        code, hour = self.bottle(pick), self.hour(asked)
        self.counts(code, "count", hour, amount, Act("count", at(hour), target=code, amount=amount))

    @precondition(lambda self: self.codes)
    @rule(pick=PICK, asked=HOURS, kind=st.sampled_from(["discard", "return"]))
    def leave(self, pick: int, asked: int | None, kind: str) -> None:
        code, hour = self.bottle(pick), self.hour(asked)
        self.counts(code, "discard", hour, 0, Act(kind, at(hour), target=code))

    @precondition(lambda self: len(self.codes) > 1)
    @rule(pick=PICK, other=PICK, amount=AMOUNTS, water=st.sampled_from([0, 0, 1, 10]), asked=HOURS)
    def fill(self, pick: int, other: int, amount: int, water: int, asked: int | None) -> None:
        source, target, hour = self.bottle(pick), self.bottle(other), self.hour(asked)
        added = amount * (1 + water)
        written = self.does(
            Act("fill", at(hour), source, target, amount=amount, added=added, parts=(1, water))
        )
        if written is None:
            return
        for code, kind, much in ((source, "pour out", amount), (target, "pour in", added)):
            played(self.book.with_one_more(code, Entry(written[-1].seq, hour, kind, much)))
            self.book.write(code, Entry(written[-1].seq, hour, kind, much))

    @precondition(lambda self: self.codes)
    @rule(
        pick=PICK,
        asked=HOURS,
        kind=CHANGES,
    )
    def change(self, pick: int, asked: int | None, kind: str) -> None:
        code, hour = self.bottle(pick), self.hour(asked)
        facts: dict[str, object] = {"until": "2027-08-31"} if kind == "retest" else {}
        place = self.world.bay_1.code if kind == "move" else None
        self.counts(code, "change", hour, 0, Act(kind, at(hour), target=code, place=place, facts=facts))

    @precondition(lambda self: self.codes)
    @rule(pick=PICK)
    def take_back(self, pick: int) -> None:
        seq = pick % Movement.objects.count() + 1
        written = self.does(Act("reverse", at(self.hour(None)), reverses=seq))
        if written is not None:
            for entries in self.book.without(seq).values():
                played(entries) if entries else None
            self.book.take_back(seq)

    @precondition(lambda self: self.codes)
    @rule(pick=PICK, amount=AMOUNTS)
    def use_and_take_back(self, pick: int, amount: int) -> None:
        code, hour = self.bottle(pick), self.hour(None)
        before = Container.objects.filter(code=code).values().get()
        written = self.does(Act("use", at(hour), source=code, amount=amount))
        for line in reversed(written or []):
            assert self.does(Act("reverse", at(hour), reverses=line.seq)) is not None
        assert Container.objects.filter(code=code).values().get() == before

    @precondition(lambda self: self.codes)
    @rule(pick=PICK, amount=AMOUNTS, key=st.integers(0, 5))
    def answer_under_a_key(self, pick: int, amount: int, key: int) -> None:
        code, hour = self.bottle(pick), self.hour(None)
        body = {"use": code, "amount": amount, "hour": hour}

        def do(request: Request) -> requests.Answer:
            act = Act("use", at(hour), source=code, amount=amount)
            written = self.counts(code, "use", hour, amount, act)
            return {"seq": written[-1].seq} if written else {"says": self.refused.says}

        first = requests.answer_once(self.world.shop, f"key-{self.clock}-{key}", body, NOON, do)
        lines = Movement.objects.count()
        again = requests.answer_once(self.world.shop, f"key-{self.clock}-{key}", body, NOON, do)
        type(self).operations += 1
        assert (again, Movement.objects.count()) == (first, lines)

    # What must hold after each of them

    @invariant()
    def what_the_last_act_touched_is_right(self) -> None:
        rows = Container.objects.filter(code__in=self.touched).select_related("product", "place")
        for container in rows.prefetch_related("lots"):
            totals = self.book.total(container.code)
            assert container.content == totals.content >= 0
            assert totals.came + totals.counted == container.content + totals.went + totals.discarded
            folded = fold(container.code, queries.lines_of(container))
            assert queries.held_of(container, container.lots.all()) == folded
            assert container.use_by_on == least(container)
        self.touched.clear()


def least(container: Container) -> date | None:
    """The least of a bottle's days, worked out apart from the product: all lives here are in days."""
    if container.product is None:
        return None
    days: list[date] = []
    if container.retest_on:
        days.append(container.retest_on)
    else:
        days += [lot.expires_on for lot in container.lots.all() if lot.expires_on]
    if container.product.name == "Tidewall coating" and container.opened_at:
        days.append(local(container.opened_at) + timedelta(days=90))
    if container.mixed_at:
        days.append(local(container.mixed_at) + timedelta(days=3))
    return min(days, default=None)


def local(instant: datetime) -> date:
    return instant.astimezone(LONDON).date()


@pytest.mark.django_db
@pytest.mark.timeout(600)
def test_the_shelf_stays_right_through_ten_thousand_acts_in_any_order() -> None:
    wanted = OPERATIONS[connection.vendor]
    Shelf.operations = Shelf.refusals = 0
    run_state_machine_as_test(
        Shelf,
        settings=settings(
            max_examples=int(wanted * SLACK / STEPS),
            stateful_step_count=STEPS,
            deadline=None,
            phases=[Phase.explicit, Phase.generate],  # shrinking fifty steps takes longer than reading them
            suppress_health_check=list(HealthCheck),
        ),
    )
    assert Shelf.operations >= wanted
    assert Shelf.refusals < Shelf.operations / 2, "an act that is refused shows little"
