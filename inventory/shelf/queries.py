"""The rows of the shelf and the life of a bottle, read in a constant number of queries."""

from collections import Counter
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from django.db.models import F, Q, QuerySet
from django.utils import timezone

from inventory.models import Container, Movement, Person, Place, Shop
from inventory.precheck.queries import putting_away
from inventory.precheck.rules.put_away import JUDGED
from inventory.shelf.rules import SOON_DAYS, Bottle, cap_style, is_low, life_left, mix, pack, time_left
from inventory.stock.queries import containers, why_held
from inventory.stock.washing import may_take_back, washes
from inventory.units import show
from safety import queries as sheets
from safety.findings import Finding
from safety.hazards.facts import LabelParts, SheetFacts, label_parts
from safety.hazards.mix import mixed
from safety.hazards.mixtures.values import Because

MOST_ROWS = 500


@dataclass(frozen=True)
class Wanted:
    """What the filters of the shelf ask for."""

    only: str = ""
    place: str = ""
    kind: str = ""
    text: str = ""


def bottles(shop: Shop, wanted: Wanted, at: datetime) -> list[Bottle]:
    """Return the rows that the filters ask for, what dies first on top; at most MOST_ROWS."""
    rows = _chosen(shop, wanted, at).order_by(F("use_by_at").asc(nulls_last=True), "product__name", "code")
    found = [bottle(shop, container, at) for container in rows[:MOST_ROWS]]
    if wanted.only == "low":
        return low(shop, at)
    return found


def _chosen(shop: Shop, wanted: Wanted, at: datetime) -> "QuerySet[Container]":
    rows = containers(shop.pk)
    if wanted.only == "open":
        rows = rows.filter(state=Container.State.OPEN)
    elif wanted.only == "dying":
        rows = rows.filter(content__gt=0, use_by_at__lte=at + timedelta(days=SOON_DAYS))
    elif wanted.only == "held":
        rows = rows.filter(~Q(held="") | ~Q(lots__held="") & Q(lots__isnull=False)).distinct()
    if wanted.place:
        rows = rows.filter(place__code=wanted.place)
    if wanted.kind:
        rows = rows.filter(product__kind=wanted.kind)
    if text := wanted.text.strip():
        rows = rows.filter(
            Q(code__istartswith=text.replace(" ", ""))
            | Q(product__name__icontains=text)
            | Q(lots__number__iexact=text)
        ).distinct()
    return rows


def bottle(shop: Shop, container: Container, at: datetime) -> Bottle:
    """Return one container as a row; its product, place, pack and lots must be loaded."""
    held = why_held(container, container.lots.all())
    product = container.product
    dimension = product.dimension if product else "volume"
    return Bottle(
        code=container.code,
        product=product.name if product else f"Empty {container.noun}",
        product_code=product.code if product else "",
        noun=container.noun,
        pack=pack(show(container.full, dimension, shop.system), container.noun, dimension),
        content=container.content,
        full=container.full,
        dimension=dimension,
        mix=mix(container.parts_product, container.parts_water),
        place=container.place.name if container.place else "",
        state=container.state,
        cap=cap_style(container.state, held, container.use_by_at, at),
        use_by_on=container.use_by_on,
        left=life_left(container.opened_at, container.use_by_at, at),
        time_left=time_left(
            container.state,
            held,
            container.use_by_on,
            container.use_by_at,
            at,
            at.astimezone(shop.zone).date(),
        ),
        held=held,
    )


def low(shop: Shop, at: datetime) -> list[Bottle]:
    """Return the bottles that are nearly empty and the last usable one of their product."""
    rows = [
        bottle(shop, container, at)
        for container in containers(shop.pk).filter(content__gt=0, refillable=False)
    ]
    usable = [row for row in rows if row.cap in {"open", "sealed"}]
    count = Counter(row.product_code for row in usable)
    return [
        replace(row, low=True)
        for row in usable
        if row.dimension != "pieces" and is_low(row.content, row.full, count[row.product_code] - 1)
    ]


def container(shop: Shop, code: str) -> Container | None:
    """Return one container of a shop, gone ones included, with everything its page shows."""
    rows = Container.objects.filter(shop=shop, code=code).select_related("product__sheet", "place", "pack")
    return rows.prefetch_related("lots").first()


@dataclass(frozen=True)
class Entry:
    """A line of a bottle's life: what changed in this bottle (base unit), and what was left after it."""

    seq: int
    at: datetime
    what: str
    note: str
    who: str
    change: int | None
    left: int
    job: str
    other: str
    taken_back: bool
    may_take_back: bool
    is_wash: bool = False


def life(container: Container, who: Person, at: datetime) -> list[Entry]:
    """Return a bottle's entries and washes, the newest first; entries taken back stay in the list, marked."""
    touching = Movement.objects.filter(Q(source=container) | Q(target=container)).select_related(
        "person", "source", "target", "job", "place", "reverses"
    )
    rows = list(touching.order_by("happened_at", "seq"))
    undone = {row.reverses_id for row in rows if row.reverses_id}
    entries, left = [], 0
    for row in rows:
        change = None if row.id in undone or row.reverses_id else _change(row, container, left)
        left += change or 0
        entries.append(_entry(row, container, change, left, row.id in undone))
    washed = _washed(container, entries, who, at)
    return sorted([*washed, *entries], key=lambda one: one.at)[::-1]


def _washed(container: Container, entries: list[Entry], who: Person, at: datetime) -> list[Entry]:
    rows, zone = washes(container), container.shop.zone
    return [
        Entry(
            seq=0, at=row.washed_at, what="washed", note="", who=row.by.name, change=None,
            left=next((one.left for one in reversed(entries) if one.at <= row.washed_at), 0),
            job="", other="", taken_back=False, is_wash=True,
            may_take_back=may_take_back(row, rows[0], who, at, zone),
        )
        for row in rows
    ]  # fmt: skip


def _change(row: Movement, container: Container, left: int) -> int | None:
    facts, amount = row.facts, row.amount or 0
    if row.kind in {"receive", "count"}:
        return int(facts.get("content", 0)) - left
    if row.kind == "fill" and row.target_id == container.pk:
        return int(facts.get("added", 0))
    if row.kind in {"use", "fill"}:
        return -amount
    return -left if row.kind in {"discard", "return"} else None


def _entry(row: Movement, container: Container, change: int | None, left: int, undone: bool) -> Entry:
    other = row.target if row.source_id == container.pk else row.source
    return Entry(
        seq=row.seq,
        at=row.happened_at,
        what=_what(row, container),
        note=_note(row),
        who=row.person.name if row.person else "",
        change=change,
        left=left,
        job=row.job.code if row.job else "",
        other=other.code if other and other.pk != container.pk else "",
        taken_back=undone,
        may_take_back=not undone and row.kind != "reverse",
    )


def _what(row: Movement, container: Container) -> str:
    if row.kind == "fill":
        return "filled from" if row.target_id == container.pk else "filled into"
    if row.kind in {"move", "discard"} and row.place:
        return f"{'moved to' if row.kind == 'move' else 'tipped into'} {row.place.name}"
    if row.kind == "reverse" and row.reverses:
        return f"took back “{row.reverses.get_kind_display()}”"
    return str(row.get_kind_display())


def _note(row: Movement) -> str:
    notes = [str(row.facts["reason"])] if row.facts.get("reason") else []
    notes += [word for word in ("assumed", "measured", "late", "estimated") if row.facts.get(word)]
    return ", ".join(notes)


@dataclass(frozen=True)
class Hazards:
    """What a bottle's label says of its hazards, its facts, and of a mix why and what is not settled."""

    parts: LabelParts
    facts: SheetFacts | None
    because: tuple[Because, ...] = ()
    needs_review: tuple[str, ...] = ()


def hazards(shop: Shop, container: Container) -> Hazards | None:
    """Return what a bottle's content does to people; None where nobody needs to know. One query at most."""
    product = container.product
    if product is None or not (product.needs_sheet or product.sheet_id):
        return None
    facts = sheets.facts_or_none(sheets.current(product.sheet) if product.sheet else None)
    if facts is None:
        return Hazards(label_parts(None, shop.regime), None)
    parts = (container.parts_product, container.parts_water)
    content = mixed(facts, shop.regime, parts, product.density_in_mixes)
    return Hazards(
        label_parts(content.facts, shop.regime), content.facts, content.because, content.needs_review
    )


def places(shop: Shop) -> list[Place]:
    """Return a shop's places by name, for the filters and the move form."""
    return list(Place.objects.filter(shop=shop).order_by("name"))


def beside(container: Container, place: Place) -> tuple[Finding, ...]:
    """Return what is said of putting a bottle there, gravest first; nothing found is not safe."""
    if container.product is None or container.place_id == place.pk or place.kind not in JUDGED:
        return ()
    return putting_away(place, container.product, container.content, container)


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()
