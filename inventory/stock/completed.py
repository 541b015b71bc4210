"""Acts made whole: what a receive and a fill must say so that the line can be folded alone for ever."""

from dataclasses import replace
from datetime import date, datetime, tzinfo

from inventory.models import Lot, Product
from inventory.stock import queries
from inventory.stock.rules.acts import Act, NewBottle
from inventory.stock.rules.lines import Held
from inventory.stock.rules.lots import DATES
from inventory.stock.rules.mixes import diluted
from inventory.stock.rules.use_by import Dates, use_by

Facts = dict[str, object]


def received(act: Act, new: NewBottle, code: str, lot: Lot | None) -> Act:
    """Return a receive with its container, its lot and everything that was printed on the bottle."""
    facts: Facts = {
        "content": act.amount or 0, "product": new.product, "parts": list(new.parts),
        "lots": [lot.code] if lot else [], "sealed": new.sealed, "full": new.full,
    }  # fmt: skip
    facts |= _instants(new.opened_at, new.mixed_at, new.estimated)
    facts |= {name: day.isoformat() for name in DATES if (day := getattr(new.lot, name))}
    return replace(act, target=code, lot=lot.code if lot else None, amount=None, facts=facts | act.facts)


def filled(act: Act, source: Held, limit: date | None) -> Act:
    """Return a fill with what flows over: product, mix, lots, dates, a hold on the bottle it comes from.

    `limit` is the last day of both bottles' printed dates, where one of them lives on a retest.
    """
    facts: Facts = {
        "added": act.added, "product": source.product, "parts": list(diluted(source.parts, act.parts)),
        "lots": sorted(source.lots),
    }  # fmt: skip
    facts |= _instants(source.opened_at, source.mixed_at, source.estimated)
    if source.held:
        facts["held"] = source.held
    if limit:
        facts["retest_on"] = limit.isoformat()
    return replace(act, facts=facts | act.facts)


def limit_of(pours: list[tuple[Held, Product | None, list[Lot]]], zone: tzinfo) -> date | None:
    """Return the earliest of what is printed on, or was retested of, several bottles; None without a retest.

    A retest speaks for the one bottle that was tested: poured together, the earliest date wins.
    """
    if not any(state.retest_on for state, _, _ in pours):
        return None
    ends = [use_by(_printed(state, product, lots), zone) for state, product, lots in pours]
    return min((term.on for term in ends if term), default=None)


def _printed(state: Held, product: Product | None, lots: list[Lot]) -> Dates:
    return queries.dates_of(product, lots, opened_at=None, mixed_at=None, retest_on=state.retest_on)


def _instants(opened_at: datetime | None, mixed_at: datetime | None, estimated: bool) -> Facts:
    given = {"opened_at": opened_at, "mixed_at": mixed_at}
    facts: Facts = {name: instant.isoformat() for name, instant in given.items() if instant}
    return facts | ({"estimated": True} if estimated else {})
