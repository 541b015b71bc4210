"""The check's own turns of phrase: days, amounts, bottles and the last day to order."""

from datetime import date, datetime, timedelta, tzinfo

from inventory.codes import pair
from inventory.stock.rules.reserve import Need, OnShelf, ends_before
from inventory.stock.rules.use_by import Term, end_of, use_by
from inventory.units import show

from .case import Case, Supply
from .facts import ProductFacts

WEEK = timedelta(days=6)
NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def number(count: int) -> str:
    """Return a small number as a word, "two"; from eleven on in figures."""
    return NUMBERS[count] if count < len(NUMBERS) else str(count)


def plural(count: int, noun: str) -> str:
    """Return "1 bottle", "3 boxes"."""
    many = noun + ("es" if noun.endswith(("x", "s", "ch", "sh")) else "s")
    return f"{count} {noun if count == 1 else many}"


def day(on: date) -> str:
    """Return "Thursday 26 November"."""
    return f"{on:%A} {on.day} {on:%B}"


def moment(instant: datetime, zone: tzinfo, now: datetime) -> str:
    """Return "Friday 09:00" within a week of now, else with its date."""
    local = instant.astimezone(zone)
    near = abs(local.date() - now.astimezone(zone).date()) <= WEEK
    return f"{local:%A %H:%M}" if near else f"{day(local.date())}, {local:%H:%M}"


def until(term: Term, zone: tzinfo) -> str:
    """Return the last usable day of a term, or its minute where the life is shorter than a day."""
    if term.at == end_of(term.on, zone):
        return day(term.on)
    return f"{day(term.on)} {term.at.astimezone(zone):%H:%M}"


def amount(base: int, product: ProductFacts, system: str) -> str:
    """Return an amount of a product in the shop's units."""
    return show(base, product.dimension, system)


def named(case: Case, bottle: OnShelf) -> str:
    """Return "Tidewall coating BKTR VNXH"."""
    return f"{case.facts.products[bottle.product].name} {pair(bottle.code)}"


def wanted(case: Case, need: Need) -> ProductFacts | None:
    """Return the product that a need asks for, or one of its kind that stands for the others."""
    if need.product:
        return case.facts.products.get(need.product)
    alike = [product for product in case.facts.products.values() if product.kind == need.kind]
    return min(alike, key=lambda p: (p.lead_days is None, p.lead_days or 0, p.code), default=None)


def good_to(case: Case, bottle: OnShelf) -> str:
    """Return "sealed, good to 30 June" as someone at the shelf would say it."""
    term = use_by(bottle.dates, case.facts.zone)
    state = "sealed" if bottle.sealed else "open"
    return f"{state}, good to {term.on.day} {term.on:%B}" if term else f"{state}, does not go out of date"


def instead(case: Case, supply: Supply) -> OnShelf | None:
    """Return the first bottle that the step takes and that is past no date then, if there is enough."""
    need, fine = supply.need, (bottle for bottle, _ in supply.taken if not supply.lacks)
    ends = (one for one in fine if not ends_before(one, need.starts_at, need.ends_at, case.facts.zone))
    return next(ends, None)


def offered(case: Case, supply: Supply, other: OnShelf) -> str:
    """Return "BNRX VHKL (sealed, good to 30 June)", and of one that holds too little how much it holds."""
    needs, product = supply.need.amount, case.facts.products[other.product]
    said = [amount(each, product, case.facts.system) for each in (other.concentrate, needs)]
    part = f"; it holds {said[0]} of the {said[1]}" if other.concentrate < needs else ""
    return f"{pair(other.code)} ({good_to(case, other)}{part})"


def order_by(case: Case, supply: Supply) -> str:
    """Return the last day on which an order still arrives, as a sentence; empty without a lead time."""
    product = wanted(case, supply.need)
    if product is None or product.lead_days is None:
        return ""
    zone = case.facts.zone
    last = supply.need.starts_at.astimezone(zone).date() - timedelta(days=product.lead_days)
    takes = f"{product.supplier or 'an order'} needs {plural(product.lead_days, 'day')}"
    if last < case.at.astimezone(zone).date():
        return f"An order comes too late for this step: {takes}."
    return f"Order by {day(last)}: {takes}."


def joined(*sentences: str) -> str:
    """Return the sentences that are not empty, one after the other."""
    return " ".join(sentence for sentence in sentences if sentence)
