"""What protects people here: every item with its date and place, the gloves' minutes, the eyewash runs."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.db.models import Max, Q, QuerySet

from inventory.models import (
    Container,
    Equipment,
    GloveMinutes,
    Kind,
    Place,
    PlaceCheck,
    Product,
    Serves,
    Shop,
)
from inventory.models.product import GUARDING_KINDS
from inventory.people.rules.dues import WORDS, state

MASKS = (
    Serves.HALF_MASK, Serves.FULL_MASK, Serves.POWERED_HALF_MASK, Serves.POWERED_FULL_MASK, Serves.AIR_FED,
    Serves.DUST_MASK,
)  # fmt: skip
WEEK = timedelta(days=7)


@dataclass(frozen=True)
class Item:
    """One thing on the shelf and how it stands: "ended", "soon", "good", "open" (no date) or "worn"."""

    container: Container
    state: str

    @property
    def words(self) -> str:
        """How it stands, in words."""
        return {"worn": "worn out", "ended": "out of date", "open": "no date"}.get(
            self.state, WORDS.get(self.state, "")
        )


@dataclass(frozen=True)
class Group:
    """A product that serves something, and what of it is on the shelf."""

    equipment: Equipment
    items: list[Item]


@dataclass(frozen=True)
class Run:
    """A bay, where its eyewash is, and when it was last run."""

    place: Place
    run_at: datetime | None
    this_week: bool


def groups(shop: Shop, on: date) -> list[Group]:
    """Return the products that serve, in the order of what they serve, each with its items."""
    rows = Equipment.objects.filter(product__shop=shop, product__archived=False).select_related("product")
    order = list(Serves.values)
    items: dict[int, list[Item]] = {}
    here = Container.objects.filter(shop=shop, state__in=["sealed", "open"], content__gt=0)
    wanted = here.filter(product__equipment__isnull=False).select_related("product", "place")
    for row in wanted.order_by("use_by_on", "code"):
        items.setdefault(row.product_id or 0, []).append(Item(row, _state(row, on)))
    found = [Group(row, items.get(row.product_id, [])) for row in rows]
    return sorted(found, key=lambda one: (order.index(one.equipment.serves), one.equipment.product.name))


def _state(row: Container, on: date) -> str:
    worn = row.product.wear_minutes if row.product else None
    if worn is not None and row.minutes >= worn:
        return "worn"
    return state(row.use_by_on, on)


def unsaid(shop: Shop) -> "QuerySet[Product]":
    """Return protective, first-aid and rescue products of which nobody has said what they serve."""
    rows = Product.objects.filter(shop=shop, kind__in=GUARDING_KINDS, archived=False)
    return rows.filter(equipment__isnull=True).order_by("name")


def could_serve(shop: Shop) -> "QuerySet[Product]":
    """Return the products of which somebody may say what they serve."""
    return Product.objects.filter(
        Q(kind__in=GUARDING_KINDS) | Q(kind=Kind.OTHER), shop=shop, archived=False
    ).order_by("name")


def minutes(shop: Shop) -> "QuerySet[GloveMinutes]":
    """Return what is known of how long gloves stand what is here."""
    rows = GloveMinutes.objects.filter(glove__shop=shop).select_related("glove", "against")
    return rows.order_by("glove__name", "minutes", "against__name")


def runs(shop: Shop, at: datetime) -> list[Run]:
    """Return the bays that say where their eyewash is, each with its last run."""
    bays = Place.objects.filter(shop=shop, kind=Place.Kind.BAY).exclude(eyewash_at="").order_by("name")
    last = dict(
        PlaceCheck.objects.filter(place__in=bays, what=PlaceCheck.What.EYEWASH)
        .order_by()
        .values("place")
        .annotate(last=Max("done_at"))
        .values_list("place", "last")
    )
    return [Run(bay, last.get(bay.pk), bay.pk in last and at - last[bay.pk] <= WEEK) for bay in bays]


def masks(shop: Shop) -> "QuerySet[Product]":
    """Return the masks that are fitted to a face."""
    return Product.objects.filter(shop=shop, equipment__serves__in=MASKS, archived=False).order_by("name")


def product_coded(shop: Shop, code: str) -> Product | None:
    """Return a product of the shop by its code."""
    return Product.objects.filter(shop=shop, code=code.upper()).select_related("equipment").first()
