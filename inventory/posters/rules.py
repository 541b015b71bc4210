"""When a poster is out of date, and why, in sentences. Pure.

A snapshot is what stood on it: {"place": {fact: text}, "products": {code: {"name", "sheet", "typed"}}}, where
`sheet` is the revision day of the sheet that was used (ISO, or empty) and `typed` the number of its typed
version. Amounts are in neither, so they never put a poster out of date.
"""

from collections.abc import Iterable, Mapping
from datetime import date
from ipaddress import ip_address
from typing import Any, NamedTuple
from urllib.parse import urlencode, urlsplit

from safety.poster_content import written, year_after

Snapshot = dict[str, Any]
NEVER_PRINTED = "it was never printed"
TOO_OLD = "it was to be replaced after a year"
FACTS = {
    "name": "the name of the place",
    "task": "what is done here",
    "shop": "the name of the shop",
    "address": "the address",
    "ventilation": "the ventilation",
    "eyewash": "the place of the eyewash",
    "extinguisher": "the place of the extinguisher",
    "spill_kit": "the place of the spill kit",
    "emergency_number": "the emergency number",
    "poison_centre": "the poison centre’s number",
    "binder_at": "the place of the binder",
    "first_aid": "the place of the first-aid kit",
    "volume_m3": "the size of the room",
    "air_m3_h": "the fresh air of the fan",
    "language": "the language of the shop’s posters",
    "regime": "the labelling rules of the country",
}


class Standing(NamedTuple):
    """A product that stands in a place or in a place within it."""

    code: str
    name: str


def changes(printed: Snapshot | None, now: Snapshot, here: Iterable[Standing]) -> list[str]:
    """Return why a printed poster no longer holds, each a clause, the gravest sort first."""
    if printed is None:
        return [NEVER_PRINTED] if now["products"] else []
    return [
        *_arrived(printed, now, here),
        *_products(printed, now),
        *_sheets(printed, now),
        *_facts(printed, now),
    ]


def _arrived(printed: Snapshot, now: Snapshot, here: Iterable[Standing]) -> list[str]:
    known = set(printed["products"]) | set(now["products"])
    return [f"{one.name} stands there and is not on it" for one in here if one.code not in known]


def _products(printed: Snapshot, now: Snapshot) -> list[str]:
    old, new = printed["products"], now["products"]
    added = [f"{new[code]['name']} is admitted now" for code in new if code not in old]
    gone = [f"{old[code]['name']} is no longer admitted" for code in old if code not in new]
    named = [
        f"{old[code]['name']} is called {new[code]['name']} now"
        for code in new
        if code in old and old[code]["name"] != new[code]["name"]
    ]
    return added + gone + named


def _sheets(printed: Snapshot, now: Snapshot) -> list[str]:
    old, new = printed["products"], now["products"]
    both = [(old[code], new[code]) for code in new if code in old]
    return [_another(after) for before, after in both if before["typed"] != after["typed"]]


def _another(product: Mapping[str, Any]) -> str:
    if not product["sheet"]:
        return f"{product['name']} has no confirmed data sheet any more"
    return f"{product['name']} has another data sheet, of {written(date.fromisoformat(product['sheet']))}"


def _facts(printed: Snapshot, now: Snapshot) -> list[str]:
    before, after = printed["place"], now["place"]
    return [f"{says} changed" for fact, says in FACTS.items() if before.get(fact) != after.get(fact)]


def too_old(printed_on: date | None, on: date) -> list[str]:
    """Return the reason where a poster hangs beyond its day: a year (common practice, no source)."""
    return [TOO_OLD] if printed_on and on > year_after(printed_on) else []


def in_one_sentence(place: str, reasons: list[str]) -> str:
    """Return the notice that the site shows, or nothing where the poster holds."""
    if not reasons:
        return ""
    if reasons == [NEVER_PRINTED]:
        return f"{place} has no poster yet."
    more = f", and {len(reasons) - 1} more" if len(reasons) > 1 else ""
    return f"The poster of {place} is out of date: {reasons[0]}{more}."


def by_outer_place(
    standing: Iterable[tuple[int, Standing]], outer: Mapping[int, int | None]
) -> dict[int, list[Standing]]:
    """Return what stands in each place, counting what stands in the places within it, by name."""
    found: dict[int, set[Standing]] = {}
    for start, product in standing:
        place: int | None = start
        seen: set[int] = set()
        # Two places may name each other as the outer one: the round is walked once.
        while place is not None and place not in seen:
            seen.add(place)
            found.setdefault(place, set()).add(product)
            place = outer.get(place)
    return {place: sorted(products, key=lambda one: one.name.lower()) for place, products in found.items()}


class Chosen(NamedTuple):
    """A paper, a language ("" is the shop's), a distance in metres (None is the place's)."""

    paper: str
    language: str
    read_at: float | None

    @property
    def query(self) -> str:
        """The same as it stands in an address."""
        known = {"paper": self.paper, "language": self.language, "read_at": self.read_at}
        return urlencode({name: value for name, value in known.items() if value})


def only_here(url: str) -> bool:
    """Return whether an address works on this computer alone, so that no phone could open it."""
    host = urlsplit(url).hostname or ""
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return host in {"", "localhost"} or host.endswith(".localhost")
