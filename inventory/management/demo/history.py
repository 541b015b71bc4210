"""Half a year of the demo's shop, day by day, through the real ledger: deliveries, jobs, fills, mishaps.

A day's acts are built from what the shelf holds by then and written in one call. Chance comes from a fixed
seed, so that the same day of the year shows the same shop.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from random import Random

from django.db.models import F

from inventory.codes import new_code
from inventory.management.demo.bookings import book
from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import table
from inventory.models import Job, Vehicle
from inventory.stock import ledger
from inventory.stock.rules.acts import Act, LotFacts, NewBottle
from inventory.stock.rules.use_by import add_months

DAYS = 182
# Spray bottles, filled so many days ago: product, bay, parts of product and water. Empty ones have none.
SPRAYS = (
    (97, "hollin", "bay2", 1, 1), (30, "fenmoor_all", "bay1", 1, 10), (20, "hollin", "bay2", 1, 1),
    (16, "fenmoor_soap", "bay1", 1, 200),
    (12, "quell_inside", "bay2", 1, 10), (3, "fenmoor_lube", "bay1", 1, 4),
    (42, "", "store", 1, 0), (41, "", "store", 1, 0), (40, "", "bay2", 1, 0),
)  # fmt: skip
Progress = Callable[[int, int], None]


@dataclass
class Bottle:
    """What the story knows of a bottle: enough to choose an act that the ledger will accept."""

    code: str
    key: str
    content: int
    sealed: bool
    lot: str
    expires_on: date | None


@dataclass
class Story:
    """The shop while its half year is told."""

    cast: Cast
    chance: Random
    bottles: dict[str, list[Bottle]] = field(default_factory=dict)
    acts: list[Act] = field(default_factory=list)
    lots: int = 0

    def receive(self, key: str, at: datetime, *, place: str = "store", many: int = 1) -> list[Bottle]:
        """Deliver so many packs of one lot."""
        product, pack = self.cast.products[key], self.cast.packs[key]
        self.lots += 1
        lot = f"{key[:2].upper()}-{2400 + self.lots}"
        expires = self._expiry(key, at.date())
        new = []
        for _ in range(many):
            code = new_code("B", self.chance.choice)
            arriving = NewBottle(
                product.code, pack.amount, product.noun, code, pack.pk, LotFacts(lot, expires)
            )
            self.acts.append(
                Act("receive", at, new=arriving, amount=pack.amount, place=self.cast.places[place].code)
            )
            new.append(Bottle(code, key, pack.amount, True, lot, expires))
        self.bottles.setdefault(key, []).extend(new)
        return new

    def _expiry(self, key: str, on: date) -> date | None:
        product = self.cast.products[key]
        if not product.sealed_life or not product.dated:
            return None
        return add_months(on, max(2, product.sealed_life - self.chance.randint(1, 3)))

    def open(self, bottle: Bottle, at: datetime) -> None:
        """Open a sealed bottle and stand it where it is used."""
        self.acts.append(Act("open", at, target=bottle.code))
        bottle.sealed = False

    def use(
        self, key: str, amount: int, at: datetime, job: Job | None, step: str | None, measured: bool
    ) -> None:
        """Take an amount, open bottles first, then the next; what is not there is not taken."""
        for bottle in sorted(
            self.bottles.get(key, []), key=lambda one: (one.sealed, one.expires_on or date.max)
        ):
            if not amount:
                break
            if not bottle.content or (bottle.expires_on and bottle.expires_on < at.date()):
                continue
            taken = min(amount, bottle.content)
            if bottle.sealed:
                self.open(bottle, at)
            facts: dict[str, object] = {"measured" if measured else "assumed": True}
            self.acts.append(
                Act(
                    "use",
                    at,
                    source=bottle.code,
                    amount=taken,
                    job=job.code if job else None,
                    step=step,
                    facts=facts,
                )
            )
            bottle.content -= taken
            amount -= taken

    def fill(self, key: str, place: str, parts: tuple[int, int], at: datetime) -> None:
        """Bring a new spray bottle and fill it, or leave it empty where no product is named."""
        code = new_code("B", self.chance.choice)
        empty = NewBottle(None, 1_000_000, "spray bottle", code, sealed=False, refillable=True)
        self.acts.append(Act("receive", at, new=empty, amount=0, place=self.cast.places[place].code))
        total = 800_000
        neat = total * parts[0] // sum(parts)
        source = next((one for one in self.bottles.get(key, []) if one.content > neat), None)
        if source is None:
            return
        source.content, source.sealed = source.content - neat, False
        later = at + timedelta(minutes=2)
        self.acts.append(
            Act("fill", later, source=source.code, target=code, amount=neat, added=total, parts=parts)
        )

    def stock(self, key: str) -> int:
        """Return how much of a product is left."""
        return sum(bottle.content for bottle in self.bottles.get(key, []))


def tell(cast: Cast, now: datetime, progress: Progress) -> Story:
    """Live through the half year before `now` and write it; return what the shelf holds at the end."""
    story = Story(cast, Random(20))
    rows = {row["key"]: row for row in table("products")}
    first = now - timedelta(days=DAYS)
    for day in range(DAYS):
        on = (first + timedelta(days=day)).date()
        _deliver(story, rows, day, _clock(cast, on, 7, 30))
        for ago, key, place, product, water in SPRAYS:
            if ago == DAYS - day:
                story.fill(key, place, (product, water), _clock(cast, on, 8))
        if on.weekday() < 5:
            _work(story, day, on)
        _write(story, _clock(cast, on, 18))
        progress(day + 1, DAYS)
    return story


COATING = {"Correction and two-layer coating", "Wheels off and coated"}
# Cars that are polished this week were never coated; a coating of the last days would stop any booked wash.
UNCOATED = {"hatch", "roadster"}
NOT_WASHED_YET = 10
INSIDE_ONLY = "wagon"


def _clock(cast: Cast, on: date, hour: int, minute: int = 0) -> datetime:
    return datetime.combine(on, time(hour, minute), cast.shop.zone)


def _deliver(story: Story, rows: dict[str, dict[str, str]], day: int, at: datetime) -> None:
    if day % 14:
        return
    for key, row in rows.items():
        target, pack = int(row["bottles"]), story.cast.packs[key].amount
        if day == 0 and target:
            story.receive(key, at, many=target)
        elif target and story.stock(key) < pack * max(1, target // 2) and day < DAYS - 14:
            story.receive(key, at, many=max(1, target // 2))


def _work(story: Story, day: int, on: date) -> None:
    cast, chance = story.cast, story.chance
    names = list(cast.services)
    weights = [5, 2, 2, 3, 1, 0, 2]
    if chance.random() < 0.55:
        service = cast.services[chance.choices(names, weights[: len(names)])[0]]
        vehicle = _car(cast, service.name, chance.choice(list(cast.vehicles)), day)
        starts = _clock(cast, on, 8, 30)
        person = chance.choice([cast.people["ines"], cast.people["tomas"]])
        job = book(
            cast,
            service,
            vehicle,
            starts,
            starts - timedelta(days=chance.randint(2, 20)),
            person,
            cast.places["bay2"],
        )
        _do(story, job)
    if day % 9 == 4:
        story.use("dunnock_towel", chance.randint(1, 4), _clock(cast, on, 17), None, None, True)
        story.use("ossen_glove", chance.randint(6, 14), _clock(cast, on, 17, 5), None, None, True)


def _car(cast: Cast, service: str, drawn: str, day: int) -> Vehicle:
    """Return the car that was drawn; a coating that would be in the way goes on another one."""
    in_the_way = drawn in UNCOATED or day > DAYS - NOT_WASHED_YET
    return cast.vehicles[INSIDE_ONLY if service in COATING and in_the_way else drawn]


def _do(story: Story, job: Job) -> None:
    keys = {product.pk: key for key, product in story.cast.products.items()}
    kinds = {"foam": "fenmoor_foam", "shampoo": "fenmoor_soap"}
    for step in job.steps.prefetch_related("needs"):
        for need in step.needs.all():
            key = keys[need.product_id] if need.product_id else kinds[need.kind]
            measured = story.cast.products[key].traced or story.chance.random() < 0.4
            amount = need.amount * story.chance.randint(85, 118) // 100 if measured else need.amount
            story.use(key, amount, step.starts_at + timedelta(minutes=10), job, step.code, measured)
    job.steps.update(signed_at=F("ends_at"), signed_by=F("person"))
    job.state, job.closed_at = Job.State.CLOSED, job.ends_at
    job.save(update_fields=["state", "closed_at"])


def _write(story: Story, at: datetime) -> None:
    if story.acts:
        acts = sorted(story.acts, key=lambda act: act.at)
        ledger.record(story.cast.shop, acts, by=story.cast.people["tomas"], recorded_at=max(at, acts[-1].at))
        story.acts.clear()
