"""What becomes of a bottle that dies soon: will the booked cars finish it, or what is lost. Pure."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime

from inventory.money import show_money
from inventory.units import show

SOON_DAYS = 14


@dataclass(frozen=True)
class Dying:
    """A bottle with its last usable day; `wanted` is what booked cars take before then, `cars` how many.

    Amounts in base units; `worth_minor` is what is in it in the minor unit of money, None without a price.
    `guards`: it stands between a person and harm, so it is replaced, never used up. `unlike`: how many cars
    want what is in it before then, but not at its own `mix`.
    """

    code: str
    product: str
    pack: str
    dimension: str
    content: int
    use_by_on: date
    wanted: int
    cars: int
    worth_minor: int | None
    guards: bool = False
    unlike: int = 0
    mix: str = ""


def fate(bottle: Dying, on: date, currency: str, system: str) -> str:
    """Return in one sentence whether a dying bottle gets finished, and what is lost if not."""
    left = show(bottle.content, bottle.dimension, system)
    if bottle.guards:
        return f"People lean on it: have another here before {_day(bottle.use_by_on, on)} ends."
    if bottle.wanted >= bottle.content:
        return f"{left} left, {_cars(bottle.cars)} will finish it."
    if not bottle.cars and bottle.unlike:
        wants, their = ("wants", "its step") if bottle.unlike == 1 else ("want", "their steps")
        cars = f"{_cars(bottle.unlike).capitalize()} {wants} it, but not at {bottle.mix}"
        return f"{left} left. {cars}: plan {their} at {bottle.mix}, or empty it."
    if not bottle.cars:
        until, lost = _day(bottle.use_by_on, on), _or_lose(bottle, currency, 1)
        return f"{left} left. No car before {until} ends wants it: use it today{lost}."
    rest = show(bottle.content - bottle.wanted, bottle.dimension, system)
    share = (bottle.content - bottle.wanted) / bottle.content
    takes = "takes" if bottle.cars == 1 else "take"
    wanted = show(bottle.wanted, bottle.dimension, system)
    took = f"{_cars(bottle.cars).capitalize()} {takes} {wanted}"
    return f"{left} left. {took}, {rest} stays over: use it{_or_lose(bottle, currency, share)}."


def _or_lose(bottle: Dying, currency: str, share: float) -> str:
    if not bottle.worth_minor:
        return " or empty it"
    return f" or lose {show_money(round(bottle.worth_minor * share), currency)}"


def _cars(count: int) -> str:
    numbers = {1: "one booked car", 2: "two booked cars", 3: "three booked cars", 4: "four booked cars"}
    return numbers.get(count, f"{count} booked cars")


def _day(day: date, on: date) -> str:
    return {0: "today", 1: "tomorrow"}.get(
        (day - on).days, f"{day:%A}" if (day - on).days < 7 else f"{day.day} {day:%B}"
    )


def worth(content: int, full: int, price_minor: int | None) -> int | None:
    """Return what a content is worth at the price of a full pack, in the minor unit."""
    return None if price_minor is None or not full else round(price_minor * content / full)


def stands_by(place: str, bays: frozenset[str], others: Iterable[tuple[str, frozenset[str]]]) -> bool:
    """Say whether one of the others is in reach of a place: beside it, in or around it, in the same bay.

    `bays` are the bays that the place is or is in; each other comes with its place and all that is around it.
    """
    return any(place == at or place in reach or bool(bays & reach) for at, reach in others if place)


@dataclass(frozen=True)
class Hand:
    """One thing that needs a hand: how grave, what is so, where to put it right."""

    grade: str
    says: str
    action: str
    url_name: str
    argument: str = ""
    query: str = ""


def gravest_first(hands: Iterable[Hand]) -> list[Hand]:
    """Return stops before asks before notes, in their given order otherwise."""
    order = {"stop": 0, "ask": 1, "tell": 2}
    return sorted(hands, key=lambda hand: order[hand.grade])


def when(starts_at: datetime, on: date) -> str:
    """Return when a car starts, said from today: "08:00", "Tomorrow 08:30", "Friday 09:00"."""
    days = (starts_at.date() - on).days
    clock = f"{starts_at:%H:%M}"
    if days == 0:
        return clock
    if days < 0:
        return f"since {starts_at:%A} {clock}"
    return f"{'Tomorrow' if days == 1 else f'{starts_at:%A}'} {clock}"
