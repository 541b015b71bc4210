"""What booked jobs want of each product, after what mixed bottles and the kind's other products serve.

Who gets which bottle is the rule of reservations (stock.rules.reserve), which the pre-job check uses too; but
every date counts as firm here: an order does not rely on a bottle that somebody has yet to test.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import astuple, dataclass, replace
from datetime import date, tzinfo

from inventory.reorder.rules.facts import Booked
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.reserve import Need, OnShelf, reserve


@dataclass
class _Sums:
    """Concentrate that one job wants of one product on one day, and the parts of it as Booked has them."""

    amount: int = 0
    mixed: int = 0
    instead: int = 0


# By product code, then by job and day.
Wanted = dict[str, dict[tuple[str, date], _Sums]]


@dataclass(frozen=True)
class Demand:
    """What open jobs want, by product code, one value a job and day, in base units.

    `elsewhere` is what they want of the kind of which this product is the usual one, and get out of other
    products on hand.
    """

    booked: dict[str, tuple[Booked, ...]]
    elsewhere: dict[str, tuple[Booked, ...]]


def demand_of(
    needs: Sequence[Need], shelf: Iterable[OnShelf], usual: Mapping[str, str], zone: tzinfo
) -> Demand:
    """Return what open jobs still need of each product.

    A mix serves needs of its own parts only, until its use by. A need of a kind is wanted of the products of
    that kind on the shelf, first expired first, and what it lacks then of the `usual` one, by kind. `shelf`
    holds what may be used: the mixed bottles, and all of every kind that a need names.
    """
    bottles = {bottle.code: bottle for bottle in map(_firm, shelf)}
    by_id = {need.id: need for need in needs}
    wanted, elsewhere = _nothing(), _nothing()
    left = list(needs)
    for mixed in (True, False):
        served = reserve(left, [each for each in bottles.values() if (each.parts != NEAT) == mixed], zone)
        for taken in served.taken:
            need, product = by_id[taken.need], bottles[taken.container].product
            asked = need.product or usual.get(need.kind, product)
            job_and_day = need.job, need.starts_at.astimezone(zone).date()
            sums = wanted[product][job_and_day]
            sums.amount += taken.amount
            sums.mixed += taken.amount * mixed
            if product != asked:
                sums.instead += taken.amount
                elsewhere[asked][job_and_day].amount += taken.amount
        left = [replace(need, amount=served.short[need.id]) for need in left if need.id in served.short]
    for need in left:
        if code := need.product or usual.get(need.kind):
            wanted[code][need.job, need.starts_at.astimezone(zone).date()].amount += need.amount
    return Demand(_in_order(wanted), _in_order(elsewhere))


def _nothing() -> Wanted:
    return defaultdict(lambda: defaultdict(_Sums))


def _firm(bottle: OnShelf) -> OnShelf:
    return replace(bottle, dates=replace(bottle.dates, guards=True))


def _in_order(wanted: Wanted) -> dict[str, tuple[Booked, ...]]:
    return {
        code: tuple(Booked(day, *astuple(sums)) for (_, day), sums in sorted(jobs.items(), key=_job_and_day))
        for code, jobs in wanted.items()
    }


def _job_and_day(each: tuple[tuple[str, date], _Sums]) -> tuple[str, date]:
    return each[0]
