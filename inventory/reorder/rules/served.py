"""What booked jobs want of each product, after what mixed bottles serve.

Who gets which bottle is the rule of reservations (stock.rules.reserve), which the pre-job check uses too; but
every date counts as firm here: an order does not rely on a bottle that somebody has yet to test.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date, tzinfo

from inventory.reorder.rules.facts import Booked
from inventory.stock.rules.lines import NEAT
from inventory.stock.rules.reserve import Need, OnShelf, Reserved, reserve

# By product code, then by job and day: concentrate wanted, and the part of it that mixed bottles serve.
Wanted = dict[str, dict[tuple[str, date], list[int]]]


def booked_of(
    needs: Sequence[Need], shelf: Iterable[OnShelf], usual: Mapping[str, str], zone: tzinfo
) -> dict[str, tuple[Booked, ...]]:
    """Return by product code what open jobs still need, one value a job and day, in base units.

    `shelf` holds the mixed bottles that may be used; a mix serves needs of its own parts only, until its use
    by. What a need of a kind lacks then is wanted of the `usual` product of that kind, by kind.
    """
    bottles = {bottle.code: bottle for bottle in map(_firm, shelf)}
    by_mix = reserve(needs, [bottle for bottle in bottles.values() if bottle.parts != NEAT], zone)
    by_id = {need.id: need for need in needs}
    wanted: Wanted = defaultdict(lambda: defaultdict(lambda: [0, 0]))
    for taken in by_mix.taken:
        _count(wanted, bottles[taken.container].product, by_id[taken.need], taken.amount, zone, mixed=True)
    for need in lacking(needs, by_mix):
        _count(wanted, need.product or usual.get(need.kind), need, need.amount, zone)
    return {
        code: tuple(Booked(day, amount, mixed) for (_, day), (amount, mixed) in sorted(jobs.items()))
        for code, jobs in wanted.items()
    }


def lacking(needs: Iterable[Need], served: Reserved) -> list[Need]:
    """Return needs less what they got."""
    return [replace(need, amount=served.short[need.id]) for need in needs if need.id in served.short]


def _firm(bottle: OnShelf) -> OnShelf:
    return replace(bottle, dates=replace(bottle.dates, guards=True))


def _count(
    wanted: Wanted, product: str | None, need: Need, amount: int, zone: tzinfo, *, mixed: bool = False
) -> None:
    if product:
        sums = wanted[product][need.job, need.starts_at.astimezone(zone).date()]
        sums[0] += amount
        sums[1] += amount if mixed else 0
