"""How much is wanted until a day, with bookings counted once, and the level to order up to.

Periodic review (R,S): Stevenson, Operations Management, 14th ed., chapter on inventory. Unbooked part: jobs
are Poisson and booked ahead by a time with mean m, taken as exponential; checked by simulation.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from math import exp, sqrt
from statistics import NormalDist

from inventory.reorder.rules.facts import ProductFacts

CYCLE_SERVICE = 0.95
BOOKINGS_FOR_A_PATTERN = 20


@dataclass(frozen=True)
class Want:
    """What is wanted from `from_on` through `until_on`, in base units.

    `booked` is after cancellations; `booked_in_full` is what the jobs on the book need if all of them come.
    `overdue` is the part of it whose day has passed. What mixed bottles serve is in none of them.
    """

    from_on: date
    until_on: date
    booked: float
    booked_in_full: int
    overdue: float
    unbooked: float
    safety: float

    @property
    def expected(self) -> float:
        """Booked and unbooked use, each counted once."""
        return self.booked + self.unbooked

    @property
    def order_up_to(self) -> float:
        """The level S that stock and orders together should reach."""
        return self.expected + self.safety

    @property
    def days(self) -> int:
        """Length of the protection interval, both days counted."""
        return (self.until_on - self.from_on).days + 1


def z_of(service: float) -> float:
    """Return the standard normal deviate of a cycle service level, 0.95 → 1.645."""
    return NormalDist().inv_cdf(service)


def reorder_point(demand_in_lead: float, spread_in_lead: float, service: float = CYCLE_SERVICE) -> float:
    """Return the level at which to order when stock is watched all the time (Stevenson, ROP model)."""
    return demand_in_lead + z_of(service) * spread_in_lead


def fill_rate(mean: float, spread: float, review_days: float, lead_days: float, order_up_to: float) -> float:
    """Return the share of demand met from the shelf under (R,S), normal demand of `mean`, `spread` a day.

    Not the cycle service: the two differ by up to 30 points, so a page names the one it shows.
    """

    def missing(days: float) -> float:
        sigma = spread * sqrt(days)
        z = (order_up_to - mean * days) / sigma
        return sigma * (NormalDist().pdf(z) - z * (1 - NormalDist().cdf(z)))

    return 1 - (missing(review_days + lead_days) - missing(lead_days)) / (mean * review_days)


def still_to_book(mean_per_day: float, days: float, days_booked_ahead: float) -> float:
    """Return the use within `days` that nobody has booked yet: λ(H − m(1 − e^(−H/m)))."""
    if days_booked_ahead <= 0:
        return mean_per_day * days
    return mean_per_day * (days - days_booked_ahead * (1 - exp(-days / days_booked_ahead)))


def has_pattern(product: ProductFacts) -> bool:
    """Say whether enough bookings were seen to know how far ahead customers book."""
    return product.bookings_seen >= BOOKINGS_FOR_A_PATTERN and product.days_booked_ahead is not None


def cancelled_share(product: ProductFacts) -> float:
    """Return the share of bookings to leave out: none until enough bookings were seen."""
    return product.cancelled if product.bookings_seen >= BOOKINGS_FOR_A_PATTERN else 0.0


def unbooked_until(product: ProductFacts, days: int, booked_in_it: float) -> float:
    """Return the use within `days` that is expected beside the bookings."""
    if has_pattern(product):
        return still_to_book(product.mean_per_day, days, product.days_booked_ahead or 0.0)
    return max(0.0, product.mean_per_day * days - booked_in_it)


def want(product: ProductFacts, from_on: date, until_on: date, service: float = CYCLE_SERVICE) -> Want:
    """Return what is wanted through `until_on`: bookings, the part nobody booked yet, and safety on it.

    Bookings whose day has passed are still wanted, but say nothing about the unbooked part of days to come;
    bookings that a mixed bottle or another product serves want nothing more, but are bookings all the same.
    """
    days = (until_on - from_on).days + 1
    comes = 1 - cancelled_share(product)
    due = [job for job in product.booked if job.on <= until_on]
    overdue = sum(job.unmixed for job in due if job.on < from_on)
    booked = sum(job.unmixed for job in due)
    mine = sum(job.amount - job.instead for job in due if job.on >= from_on)
    others = sum(job.amount for job in product.elsewhere if from_on <= job.on <= until_on)
    unbooked = unbooked_until(product, days, (mine + others) * comes)
    safety = z_of(service) * spread_of(product, days, unbooked, len(due))
    return Want(from_on, until_on, booked * comes, booked, overdue * comes, unbooked, safety)


def spread_of(product: ProductFacts, days: int, unbooked: float, bookings: int) -> float:
    """Return the standard deviation of what is wanted: bookings are certain but for the use of each job.

    Variance of compound Poisson demand goes with its mean: the unbooked share of one is that of the other.
    """
    whole = product.mean_per_day * days
    share = unbooked / whole if whole else 0.0
    of_use = product.spread_per_day**2 * days * share
    of_lead = (product.mean_per_day * share * product.lead_spread_days) ** 2
    return sqrt(of_use + of_lead + bookings * product.spread_per_booking**2)


def use_by_day(product: ProductFacts, from_on: date, until_on: date) -> list[float]:
    """Return the expected use of each day; what is overdue is wanted on the first."""
    wanted = want(product, from_on, until_on)
    use = unbooked_by_day(product, wanted)
    comes = 1 - cancelled_share(product)
    for job in product.booked:
        if job.on <= until_on:
            use[max(0, (job.on - from_on).days)] += job.unmixed * comes
    return use


def unbooked_by_day(product: ProductFacts, wanted: Want) -> list[float]:
    """Spread the unbooked part over the days: by the booking pattern where it is known, evenly otherwise."""
    if not has_pattern(product):
        return [wanted.unbooked / wanted.days] * wanted.days

    def through(days: int) -> float:
        return still_to_book(product.mean_per_day, days, product.days_booked_ahead or 0.0)

    return [through(day + 1) - through(day) for day in range(wanted.days)]


def last_day_of_month(year: int, month: int) -> date:
    """Return the last day of a month, 29 February in a leap year."""
    return date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)
