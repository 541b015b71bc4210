"""Local exhaust and measured air of a place as its page shows them, each judged as it stands today."""

from dataclasses import dataclass
from datetime import date

from django.db.models import QuerySet

from inventory.models import AirMeasurement, LocalExhaust, Place, Product, Shop
from inventory.precheck.queries.makeups import limits, makeups
from inventory.precheck.queries.measured import sample
from safety.air.evaporating import ONLY_BURNS, released
from safety.air.measured import BELOW, OVER, in_words, judged, not_measured, verdict
from safety.air.values import IN_WORDS, Measured

COATING = "coating"


@dataclass(frozen=True)
class Exhaust:
    """Local exhaust on the page: "gone", "ended" once its examination is over, else "good"."""

    row: LocalExhaust
    state: str


@dataclass(frozen=True)
class Shown:
    """A measurement on the page; `left` names the limits against which nothing was measured."""

    row: AirMeasurement
    results: tuple[Measured, ...]
    left: tuple[str, ...]
    over: bool

    @property
    def counts(self) -> bool:
        """Whether it is neither withdrawn nor out of date."""
        return self.row.withdrawn_on is None and not self.over

    @property
    def sentences(self) -> list[str]:
        """What each substance's results show."""
        return [in_words(one) for one in self.results]

    @property
    def grade(self) -> str:
        """Return "stop" where a limit was reached, "ready" where all are shown to be kept, else "ask"."""
        found = {verdict(one) for one in self.results}
        if OVER in found:
            return "stop"
        return "ready" if found == {BELOW} else "ask"

    @property
    def says(self) -> str:
        """The headline of its judgement."""
        return {
            "stop": "A limit was reached: this work stops.",
            "ready": "What was measured is shown to be below its limits.",
        }.get(self.grade, "The results do not decide it.")

    @property
    def next(self) -> str:
        """What the check makes of it."""
        if not self.counts:
            return "It counts no more."
        if self.grade == "ready" and self.left:
            return "The limits that were not measured are still reckoned."
        if self.grade == "ready":
            return "The check takes these figures while the work keeps to what was measured."
        if self.grade == "stop":
            return "Less product or local exhaust; then have it measured again."
        return "Until it is decided, the larger of these and the reckoning counts."


def exhausts(place: Place, on: date) -> list[Exhaust]:
    """Return the local exhaust of a place, what counts first; of one name the latest examination."""
    found: dict[str, Exhaust] = {}
    for row in place.exhausts.select_related("kept_by").order_by("-until_on", "-id"):
        state = "gone" if row.ended_on else "ended" if row.until_on < on else "good"
        if row.name.casefold() not in found or state == "gone":
            found.setdefault(f"{row.name.casefold()}{row.pk if state == 'gone' else ''}", Exhaust(row, state))
    return sorted(found.values(), key=lambda one: ("good", "ended", "gone").index(one.state))


def exhaust(place: Place, pk: int) -> LocalExhaust | None:
    """Return one exhaust of a place."""
    return place.exhausts.filter(pk=pk).first()


def measurements(place: Place, on: date) -> list[Shown]:
    """Return what was measured in a place, the newest first."""
    return _shown(place.measurements.all(), place.shop, on)


def measurement(place: Place, pk: int, on: date) -> Shown | None:
    """Return one measurement of a place."""
    return next(iter(_shown(place.measurements.filter(pk=pk), place.shop, on)), None)


def _shown(rows: "QuerySet[AirMeasurement]", shop: Shop, on: date) -> list[Shown]:
    asked = rows.select_related("product", "exhaust", "kept_by").prefetch_related("samples")
    typed = limits(shop)
    found = []
    for row in asked.order_by("-measured_on", "-id"):
        samples = [sample(one) for one in sorted(row.samples.all(), key=lambda one: one.pk)]
        results = judged(samples, shop.air_regime, on, typed)
        left = not_measured(results, shop.air_regime, on, typed)
        names = tuple(f"{name} against the {IN_WORDS[kind]}" for name, kind in left)
        found.append(Shown(row, results, names, row.until_on < on))
    return found


def measurable(shop: Shop) -> "QuerySet[Product]":
    """Return the products that can let something go: all that are poured or weighed."""
    rows = Product.objects.filter(shop=shop, archived=False, dimension__in=["volume", "mass"])
    return rows.order_by("name")


def let_go(product: Product) -> list[tuple[str, str]]:
    """Return CAS number and name of what a product lets go by its sheet; nothing where nobody typed it in."""
    made = makeups([product])[product.code]
    release = released(made.ingredients, 1.0, cures=made.kind == COATING)
    named = (*release.weighed, *release.fumes)
    return list(dict.fromkeys((one.cas, one.name) for one in named if one.cas and one.cas not in ONLY_BURNS))
