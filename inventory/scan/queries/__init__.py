"""What the conversation must know for one line: a constant number of queries, whatever the shop holds."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from django.db.models import Model

from inventory.models import Container, Job, Person, Shop, Station, Step
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Finding
from inventory.stock.conversation import Heard, Said, State
from inventory.stock.conversation.facts import Facts, PersonFacts, ShopFacts
from inventory.stock.signing import load_stage

from .before_the_coat import unsigned_before
from .beyond import Beyond, beyond_the_shelf, keeping
from .bottles import beside, bottle_of, named, places_for
from .jobs import (
    Booked,
    booked,
    job_for,
    wanted_kinds,
    with_bookings,
    with_car,
    with_check,
    with_word_on_lots,
)
from .on_the_car import on_the_car, unrinsed
from .packs import orders_for, packs_for
from .pouring import in_hand, more_than_planned
from .put_away import bonded, poured_on, put_away
from .tipped import with_cans

# Entered this much after it happened, an entry is marked late; a queue that was sent again is not.
LATE = timedelta(minutes=2)
# Where a delivery goes unless somebody says otherwise; a station in a bay receives nothing by itself.
STORING = {"store", "cabinet", "shelf", "van"}


@dataclass
class Loaded:
    """The facts, and the rows that writing needs again."""

    facts: Facts
    people: dict[str, Person] = field(default_factory=dict)
    job: Job | None = None
    known: tuple[Model, ...] = ()
    judging: "Judging | None" = None
    beyond: tuple[Beyond, ...] = ()

    def judged_with(self, state: State, heard: Heard) -> "Loaded":
        """Return it judged with what an answer would write beyond the plan; itself where that is nothing."""
        more = more_than_planned(state, heard, self.facts, self.judging.rows) if self.judging else None
        if self.judging is None or more is None or more.product.code not in self.beyond[0].weighed:
            return self
        beyond = self.judging.beyond(self.beyond, more)
        facts = self.judging.checked(self.facts, beyond, more)
        return replace(self, facts=facts, beyond=keeping(self.beyond, beyond))

    @property
    def kept(self) -> tuple[Beyond, ...]:
        """What was judged last is what is so, once it is written."""
        return tuple(one.as_recorded() for one in self.beyond[:1])


@dataclass(frozen=True)
class Judging:
    """What the check of the car in hand is asked with."""

    job: Job
    steps: Sequence[Step]
    found: Booked
    rows: Sequence[Container]
    by: Person | None
    at: datetime
    about: frozenset[str] | None
    unsigned: tuple[Finding, ...] = ()

    def beyond(self, kept: Iterable[Beyond], pouring: precheck.Pouring | None) -> Beyond:
        """Return what is found beyond the shelf with what is in hand."""
        return beyond_the_shelf(self.job, self.by, self.at, kept, pouring)

    def checked(self, facts: Facts, beyond: Beyond, pouring: precheck.Pouring | None) -> Facts:
        """Add what the check finds; what is poured without a plan asks about its whole step."""
        about = self.about
        if about is not None and pouring:
            about |= {pouring.step}
        found = (*beyond.findings, *self.unsigned)
        return with_check(facts, self.job, self.steps, self.found, self.rows, about=about, beyond=found)


def load(
    station: Station, state: State, said: Said, at: datetime, now: datetime, kept: Iterable[Beyond] = ()
) -> Loaded:
    """Return what one line needs: only what the line and the state name is asked for."""
    shop = station.shop
    people = {row.code: row for row in _people(shop, {said.code if said.kind == "person" else "", state.who})}
    job, steps = job_for(shop, state, said)
    meant = named(shop, _bottle_codes(state, said))
    whole = job is not None and (said.kind in {"job", "vehicle"} or said.command == "sign")
    found, rows = _pool(shop, meant, job, whole)
    facts = Facts(
        at=at,
        zone=shop.zone,
        shop=ShopFacts(shop.system, shop.decimal_mark or None, shop.date_order or None),
        people={code: PersonFacts(code, row.name, row.role) for code, row in people.items()},
        bottles={row.code: bottle_of(row) for row in rows},
        places=places_for(shop, state, said, station),
        packs=packs_for(shop, state, said),
        orders=orders_for(shop, said),
        station_place=station.place.code if station.place and station.place.kind in STORING else "",
        station_at=station.place.code if station.place else "",
        late=now - at > LATE,
        stage=load_stage(job) if job and said.command == "sign" else None,
    )
    if found is not None:
        facts = with_bookings(facts, found)
    if job is not None:
        facts = with_word_on_lots(with_car(facts, job, steps), job, meant, steps)
    judging, kept = None, () if whole else tuple(kept)
    if job is not None and found is not None:
        about = _asked_about(state, said, rows)
        unsigned = () if whole else unsigned_before(job, steps, state, said, facts, meant)
        judging = Judging(job, steps, found, rows, people.get(state.who), at, about, unsigned)
        pouring = None if whole else in_hand(state, said, facts, steps, meant)
        beyond = judging.beyond(kept, pouring)
        facts, kept = judging.checked(facts, beyond, pouring), keeping(kept, beyond)
    facts = _with_meetings(facts, station, state, said, job, steps, meant)
    known = tuple(row for row in (job, *steps, *meant) if row)
    return Loaded(facts, people, job, known, judging, kept)


def _with_meetings(
    facts: Facts,
    station: Station,
    state: State,
    said: Said,
    job: Job | None,
    steps: list[Step],
    meant: list[Container],
) -> Facts:
    """Add what the bottle in hand would meet: where it goes, in what it is poured into, on the car."""
    return replace(
        with_cans(facts, station.shop, state, said, meant),
        put_away=put_away(station.shop, state, said, facts, meant),
        poured_on=(*bonded(state, said, meant), *poured_on(state, said, meant)),
        on_the_car=on_the_car(job, steps, meant) if job else (),
        unrinsed=job is not None and said.command == "rinse" and unrinsed(job, steps),
    )


def _pool(
    shop: Shop, meant: list[Container], job: Job | None, whole: bool
) -> tuple[Booked | None, list[Container]]:
    """Return what a bottle in hand competes for, and with which: its product, or its kind if a need says so.

    For the `whole` job in hand, everything that it competes for. Nothing where no product is meant.
    """
    products = {row.product.code for row in meant if row.product}
    kinds = {row.product.kind for row in meant if row.product} | (
        wanted_kinds(job) if job and whole else set()
    )
    if not kinds:
        return None, beside(shop, meant, set(), set())
    found = booked(shop, kinds, job)
    asked = kinds if whole else {need.kind for need in found.needs if need.product is None}
    return found if whole else found.of(products, asked), beside(shop, meant, products, asked)


def _bottle_codes(state: State, said: Said) -> set[str]:
    named = {
        said.code,
        state.bottle,
        *(str(state.slots.get(name, "")) for name in ("bottle", "source", "target")),
    }
    return {code for code in named if code.startswith("B")}


def _asked_about(state: State, said: Said, rows: Iterable[Container]) -> frozenset[str] | None:
    """Return whose answers to the check count: all at a car's code, else those about bottle and person."""
    if said.kind in {"job", "vehicle"}:
        return None
    codes = _bottle_codes(state, said)
    products = {row.product.code for row in rows if row.code in codes and row.product}
    return frozenset(codes | products | {state.who})


def _people(shop: Shop, codes: Iterable[str]) -> list[Person]:
    named = set(codes) - {""}
    return list(Person.objects.filter(shop=shop, is_active=True, code__in=named)) if named else []
