"""What stands on a bottle's label: its product, its mix, until when and why, its sheet's elements."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from inventory.codes import tidy
from inventory.models import Container, Movement, Product, Shop
from inventory.posters.queries.label_days import day, until, why
from inventory.stock.queries import dates_of_container
from inventory.stock.rules.use_by import use_by
from inventory.units import show
from safety import queries as sheets
from safety.label_content import Bottle, forms_of, label_for
from safety.print.label import SIZES, choose
from safety.print.label_sheets import ROLL, on_paper
from safety.print.label_sizes import Choice
from safety.print.values import LabelContent
from safety.print.words import say

MOST = 200
EMPTY = "Nothing in it. Label it when it is filled."
ML = 1000  # µl


def in_order(shop: Shop, codes: Iterable[str]) -> list[Container]:
    """Return containers by code, in the order asked for, with all that their labels say; in two queries."""
    wanted = list(dict.fromkeys(tidy(code) or code for code in codes))[:MOST]
    rows = Container.objects.filter(shop=shop, code__in=wanted).exclude(state=Container.State.GONE)
    loaded = rows.select_related("product__sheet", "product__supplier", "place").prefetch_related("lots")
    return sorted(loaded, key=lambda row: wanted.index(row.code))


def missing(codes: Iterable[str], found: Iterable[Container]) -> list[str]:
    """Return the codes asked for that are on no bottle here."""
    here = {row.code for row in found}
    return [code for code in codes if (tidy(code) or code) not in here]


def labels(
    shop: Shop, containers: Iterable[Container], form: str = "", language: str = ""
) -> list[LabelContent]:
    """Return the labels of containers, in their order; in two queries.

    Without a form each gets its own: the maker's bottle, or the filled one. Raises UnknownForm, NotSmall,
    UnknownLanguage.
    """
    rows = list(containers)
    facts = sheets.current_by_sheet({row.product.sheet_id for row in rows if row.product})
    fillers = _filled_by(rows)
    speaks = language or shop.language
    return [
        label_for(bottle_of(shop, row, facts, fillers.get(row.pk, ""), speaks), form or own_form(row))
        if row.product
        else _empty(shop, row, form, speaks)
        for row in rows
    ]


def own_form(row: Container) -> str:
    """Return the form that a container gets where nobody chose one."""
    return "secondary" if row.refillable or row.parts_water or row.mixed_at else "maker"


def forms_here(shop: Shop) -> dict[str, str]:
    """Return the forms of label that the shop's rules have, with what each is for."""
    return forms_of(shop.regime)


def stock_for(contents: Sequence[LabelContent], first: str = "", paper: str = ROLL) -> Choice:
    """Return the smallest label stock, from `first` on, that carries every one whole, and why that one.

    Raises LabelTooSmall, UnknownSize, UnknownPaper, NoSuchPlace.
    """
    order = list(SIZES)
    choices = [choose(one, _start(one, first), lambda size: on_paper(size, paper)) for one in contents]
    return max(choices, key=lambda choice: order.index(choice.size.name))


def _start(content: LabelContent, first: str) -> str:
    """Return the size to begin with: the one asked for, unless the package's capacity asks for more."""
    order = list(SIZES)
    asks = bool(content.first_why) and first in order and order.index(first) < order.index(content.first)
    return content.first if asks else first


def bottle_of(shop: Shop, row: Container, facts: sheets.Current, filled_by: str, language: str) -> Bottle:
    """Return what goes on a container's label; product, sheet, supplier and lots must be loaded."""
    product = row.product
    assert product is not None
    dates = dates_of_container(row)
    term = use_by(dates, shop.zone)
    starts = term.name if term else ""
    parts = (row.parts_product, row.parts_water)
    by_weight = product.dimension == Product.Dimension.MASS
    density = product.density_in_mixes
    best = term is not None and term.name == "best before"
    return Bottle(
        name=product.name,
        code=row.code,
        facts=sheets.facts_in(facts.get(product.sheet_id or 0), shop.regime, parts, density),
        regime=shop.regime,
        language=language,
        has_hazards=bool(product.needs_sheet or product.sheet_id),
        parts=parts,
        by_weight=by_weight,
        filled=row.mixed_at is not None,
        capacity_ml=row.full / ML if product.dimension == Product.Dimension.VOLUME else None,
        size=show(row.full, product.dimension, shop.system),
        lots=tuple(lot.number for lot in row.lots.all() if lot.number),
        # The day from which its use by counts stands in the reason.
        opened_on="" if row.mixed_at or starts == "opened" else day(row.opened_at, shop.zone, language),
        mixed_on="" if starts == "mixed" else day(row.mixed_at, shop.zone, language),
        mixed_by=filled_by if row.mixed_at else "",
        use_by=until(term, shop.zone, language) if term else "",
        use_by_says=say("Best before" if best else "Use by", language),
        because=why(term, dates, shop.zone, language) if term else "",
        maker=product.maker,
        telephone=_telephone(product),
        sheet_name=product.sheet.title if product.sheet else "",
    )


def _filled_by(rows: Iterable[Container]) -> dict[int, str]:
    """Return by container who filled it last. One query."""
    mixed = [row.pk for row in rows if row.mixed_at]
    fills = Movement.objects.filter(
        kind=Movement.Kind.FILL, target__in=mixed, reversed_by=None, person__isnull=False
    )
    return dict(fills.order_by("seq").values_list("target", "person__name"))


def _telephone(product: Product) -> str:
    """Return the maker's telephone: known where the shop buys from the maker itself."""
    supplier = product.supplier
    same = supplier is not None and supplier.name.strip().casefold() == product.maker.strip().casefold()
    return supplier.phone if supplier and same else ""


def _empty(shop: Shop, row: Container, form: str, language: str) -> LabelContent:
    """Return the label of a bottle with nothing in it; a lasting one is ready for what will be filled in."""
    name = say("Empty {noun}", language, noun=row.noun)
    plain = LabelContent(
        name,
        row.code,
        notice=say(EMPTY, language),
        form=form or own_form(row),
        regime=shop.regime,
        language=language,
    )
    if form != "lasting":
        return plain
    holds = say("holds {size}", language, size=show(row.full, Product.Dimension.VOLUME, shop.system))
    return replace(
        plain, name=row.noun.capitalize(), notice="", facts=(holds,), fill_says=say("Filled on", language)
    )
