"""What needs a hand today: dates that are over, papers to print, sheets that lack, scans set aside."""

from collections import defaultdict
from datetime import date, datetime

from inventory.models import Container, Equipment, Heard, Place, Product, Shop
from inventory.posters import queries as posters
from inventory.posters.queries.prints import to_print_again
from inventory.posters.rules import in_one_sentence
from inventory.precheck import queries as precheck
from inventory.precheck.queries import protection
from inventory.precheck.questions.topics.people import ItemFacts
from inventory.stock.queries import containers
from inventory.today.rules import Hand, gravest_first, stands_by
from safety import queries as sheets


def hands(shop: Shop, at: datetime) -> list[Hand]:
    """Return what needs a hand, the gravest first."""
    on = at.astimezone(shop.zone).date()
    return gravest_first(
        [
            *_over(shop, at),
            *_rags(shop, at),
            *_held(shop),
            *_posters(shop),
            *_labels(shop),
            *_sheets(shop, on),
            *_set_aside(shop),
        ]
    )


def _over(shop: Shop, at: datetime) -> list[Hand]:
    rows = (
        containers(shop.pk).filter(content__gt=0, use_by_at__lte=at, use_by_firm=True).order_by("use_by_at")
    )
    found = list(rows.select_related("product__equipment", "place__within__within"))
    guarding = [row for row in found if row.product and row.product.guards_people]
    good = _good(shop, at) if guarding else {}
    hands = [_guard(row, good) for row in guarding]
    if rest := len(found) - len(guarding):
        says = (
            "1 bottle is out of date: empty it."
            if rest == 1
            else f"{rest} bottles are out of date: empty them."
        )
        hands.append(Hand("ask", says, "See which", "shelf:list", query="?only=dying"))
    return hands


def _good(shop: Shop, at: datetime) -> dict[tuple[str, str], list[ItemFacts]]:
    """Return what protects people and is in date, by what it serves and what it filters."""
    found: dict[tuple[str, str], list[ItemFacts]] = defaultdict(list)
    for item in protection.items(shop, protection.serves(shop)):
        if item.lasts(at):
            found[item.serves, item.filters].append(item)
    return found


def _guard(row: Container, good: dict[tuple[str, str], list[ItemFacts]]) -> Hand:
    """Stop over what people lean on, unless a good one for the same stands in reach: then it is told."""
    place, says = row.place, f"{row.product} in {row.place or 'no place'} is out of date"
    around = [one for one in (place, place and place.within) if one]
    bays = frozenset(one.code for one in around if one.kind == Place.Kind.BAY)
    said: Equipment | None = getattr(row.product, "equipment", None)
    alike = good.get((said.serves, said.filters), ()) if said else ()
    near = stands_by(place.code if place else "", bays, [(one.place, one.reach) for one in alike])
    if near:
        says = f"{says}, and another that is good stands in reach: throw this one away."
        return Hand("tell", says, "See it", "shelf:container", row.code)
    return Hand("stop", f"{says}: replace it.", "See it", "shelf:container", row.code)


def _rags(shop: Shop, at: datetime) -> list[Hand]:
    full = [can for can in precheck.rag_cans(shop) if can.full(at, shop.zone)]
    return [
        Hand("ask", f"The rag can of {can.name} still holds rags of a day before.", "Empty it", "people:cans")
        for can in full
    ]


def _held(shop: Shop) -> list[Hand]:
    count = containers(shop.pk).exclude(held="").count()
    says = "1 bottle is held." if count == 1 else f"{count} bottles are held."
    return [Hand("tell", says, "See which", "shelf:list", query="?only=held")] if count else []


def _posters(shop: Shop) -> list[Hand]:
    walls = [(wall, in_one_sentence(wall.place.name, wall.reasons)) for wall in posters.walls(shop)]
    return [
        Hand("ask", says, f"Print version {wall.next_version}", "posters:place", wall.place.code)
        for wall, says in walls
        if says
    ]


def _labels(shop: Shop) -> list[Hand]:
    rows = to_print_again(shop)
    says = (
        f"The label of {rows[0].product} says other hazards than it would now: print it again."
        if len(rows) == 1
        else f"{len(rows)} labels say other hazards than they would now: print them again."
    )
    codes = ",".join(row.code for row in rows)
    return [Hand("ask", says, "Labels", "posters:labels_pdf", query=f"?codes={codes}")] if rows else []


def _sheets(shop: Shop, on: date) -> list[Hand]:
    missing = Product.objects.filter(shop=shop, archived=False, needs_sheet=True, sheet__isnull=True).count()
    old = len(sheets.older_than(on))
    found = []
    if missing:
        says = "1 product has no data sheet." if missing == 1 else f"{missing} products have no data sheet."
        found.append(Hand("ask", says, "See which", "products:list", query="?only=no_sheet"))
    if old:
        says = "1 data sheet is" if old == 1 else f"{old} data sheets are"
        found.append(Hand("tell", f"{says} older than three years.", "List", "safety:sheets"))
    return found


def _set_aside(shop: Shop) -> list[Hand]:
    count = Heard.objects.filter(station__shop=shop, set_aside=True).count()
    says = "1 scan was set aside." if count == 1 else f"{count} scans were set aside."
    return [Hand("ask", says, "Sort them out", "scan:stations")] if count else []
