"""What stands on a bottle's label: its product, its mix, until when and why, its sheet's elements."""

from collections.abc import Iterable, Sequence
from datetime import datetime, time, tzinfo

from inventory.codes import tidy
from inventory.models import Container, Product, Shop
from inventory.stock.queries import dates_of_container
from inventory.stock.rules.use_by import Term, use_by
from safety import queries as sheets
from safety.hazards.facts import SheetFacts
from safety.label_content import label_content
from safety.print.label import SIZES, arranged, fact_lines, smallest_for
from safety.print.values import LabelContent

MOST = 200
EMPTY = "Nothing in it. Label it when it is filled."


def in_order(shop: Shop, codes: Iterable[str]) -> list[Container]:
    """Return containers by code, in the order asked for, with all that their labels say; in two queries."""
    wanted = list(dict.fromkeys(tidy(code) or code for code in codes))[:MOST]
    rows = Container.objects.filter(shop=shop, code__in=wanted).exclude(state=Container.State.GONE)
    loaded = rows.select_related("product", "place").prefetch_related("lots")
    return sorted(loaded, key=lambda row: wanted.index(row.code))


def missing(codes: Iterable[str], found: Iterable[Container]) -> list[str]:
    """Return the codes asked for that are on no bottle here."""
    here = {row.code for row in found}
    return [code for code in codes if (tidy(code) or code) not in here]


def labels(shop: Shop, containers: Iterable[Container]) -> list[LabelContent]:
    """Return the labels of containers, in their order; in one query."""
    rows = list(containers)
    facts = sheets.current_by_sheet({row.product.sheet_id for row in rows if row.product})
    return [_label(shop, row, facts) for row in rows]


def stock_for(contents: Sequence[LabelContent], first: str = "medium", whole: bool = True) -> str:
    """Return the smallest label stock, from `first` on, that carries every one. Raises LabelTooSmall.

    `whole`: with its line of facts (lot, mixed on, why until then) uncut, where any stock holds it.
    """
    order = list(SIZES)
    return max((_smallest(one, first, whole) for one in contents), key=order.index)


def _smallest(content: LabelContent, first: str, whole: bool) -> str:
    least = smallest_for(content, first).name
    order = list(SIZES)
    larger = order[order.index(least) :] if whole else []
    uncut = (name for name in larger if arranged(content, SIZES[name]).facts == fact_lines(content)[0])
    return next(uncut, least)


def _label(shop: Shop, row: Container, facts: sheets.Current) -> LabelContent:
    product = row.product
    if product is None:
        return LabelContent(name=f"Empty {row.noun}", code=row.code, notice=EMPTY)
    term = use_by(dates_of_container(row), shop.zone)
    mix = f", {row.parts_product}:{row.parts_water}" if row.parts_water else ""
    says = label_content(
        f"{product.name}{mix}",
        row.code,
        _facts(product, facts),
        shop.regime,
        use_by=until(term, shop.zone) if term else "",
        use_by_says="Best before" if term and term.name == "best before" else "Use by",
        because=term.why if term else "",
        more=_more(row, shop.zone, term.name if term else ""),
    )
    return says if product.needs_sheet or product.sheet_id else _without_hazards(says)


def _facts(product: Product, facts: sheets.Current) -> SheetFacts | None:
    return sheets.facts_or_none(facts.get(product.sheet_id or 0))


def _without_hazards(says: LabelContent) -> LabelContent:
    return LabelContent(
        name=says.name,
        code=says.code,
        use_by=says.use_by,
        use_by_says=says.use_by_says,
        because=says.because,
        facts=says.facts,
    )


def _more(row: Container, zone: tzinfo, ends: str) -> tuple[str, ...]:
    """Return what else is worth a place; the day from which its use by counts stands in the reason."""
    facts = [f"lot {lot.number}" for lot in row.lots.all() if lot.number]
    if row.mixed_at:
        # "1:10" is one part in ten to some and one part and ten to others: say which.
        water = f"{row.parts_water} water" if row.parts_water else "no water"
        if row.parts_water and row.product and row.product.dimension == Product.Dimension.MASS:
            water += " by weight"
        mixed = [] if ends == "mixed" else [f"mixed {written(row.mixed_at, zone)}"]
        facts = [f"{row.parts_product} part + {water}", *mixed, *facts]
    elif row.opened_at and ends != "opened":
        facts.append(f"opened {written(row.opened_at, zone)}")
    if row.product and row.product.maker:
        facts.append(row.product.maker)
    return tuple(facts)


def until(term: Term, zone: tzinfo) -> str:
    """Return the last usable day as on the cap, with the time where it ends within the day."""
    ends = term.at.astimezone(zone)
    hour = "" if ends.time() == time() else f" {ends:%H:%M}"
    return f"{term.on.day} {term.on:%b %Y}{hour}"


def written(at: datetime, zone: tzinfo) -> str:
    """Return an instant's local day as on the cap: 26 Nov 2026."""
    day = at.astimezone(zone)
    return f"{day.day} {day:%b %Y}"
