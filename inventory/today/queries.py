"""What the first page shows, read from the features' own queries; a constant number of them."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.utils import timezone

from inventory.models import Container, Heard, Job, Product, Shop
from inventory.posters import queries as posters
from inventory.posters.queries.prints import to_print_again
from inventory.posters.rules import in_one_sentence
from inventory.precheck import queries as precheck
from inventory.reorder import queries as reorder
from inventory.shelf.queries import bottle
from inventory.shelf.rules import Bottle
from inventory.stock.queries import containers, on_shelf
from inventory.stock.rules.reserve import reserve
from inventory.today.rules import SOON_DAYS, Dying, Hand, fate, gravest_first, when, worth
from safety import queries as sheets

DAYS_AHEAD = 2


@dataclass(frozen=True)
class Car:
    """A booked car with its verdict and the one sentence that says what is the matter."""

    job: Job
    when: str
    bays: str
    verdict: str
    says: str
    action: str


def now() -> datetime:
    """Return the instant of a request, the only clock in this feature."""
    return timezone.now()


def cars(shop: Shop, at: datetime) -> list[Car]:
    """Return the cars of today and the next days, and those that are being worked on, in order of time."""
    on = at.astimezone(shop.zone).date()
    until = timezone.make_aware(
        datetime.combine(on + timedelta(days=DAYS_AHEAD + 1), datetime.min.time()), shop.zone
    )
    jobs = list(
        Job.objects.filter(shop=shop, state=Job.State.OPEN, starts_at__lt=until)
        .select_related("vehicle", "shop")
        .prefetch_related("steps__bay")
        .order_by("starts_at", "booked_at", "id")
    )
    verdicts = precheck.verdicts(shop, at, jobs)
    return [_car(job, verdicts[job.code], shop, on) for job in jobs]


def _car(job: Job, verdict: precheck.Verdict, shop: Shop, on: date) -> Car:
    bays = dict.fromkeys(step.bay.name for step in job.steps.all() if step.bay)
    grave = [finding for finding in verdict.check.findings if finding.grade == verdict.verdict]
    return Car(
        job=job,
        when=when(job.starts_at.astimezone(shop.zone), on),
        bays=", ".join(bays),
        verdict=verdict.verdict,
        says=grave[0].says if grave else "",
        action={"ready": "Open", "ask": "Answer", "stop": "Look"}[verdict.verdict],
    )


def dying(shop: Shop, at: datetime) -> list[tuple[Bottle, str]]:
    """Return the bottles that die within a fortnight, each with what becomes of it."""
    rows = list(containers(shop.pk).filter(content__gt=0, held="").order_by("use_by_at", "code"))
    soon = at + timedelta(days=SOON_DAYS)
    doomed = [row for row in rows if row.use_by_at and at < row.use_by_at <= soon]
    if not doomed:
        return []
    wanted, cars_of = _wanted(shop, rows)
    on = at.astimezone(shop.zone).date()
    return [
        (
            bottle(shop, row, at),
            fate(_dying(row, wanted[row.code], len(cars_of[row.code])), on, shop.currency, shop.system),
        )
        for row in doomed
    ]


def _wanted(shop: Shop, rows: list[Container]) -> tuple[dict[str, int], dict[str, set[str]]]:
    needs = precheck.open_needs(shop)
    job_of = {need.id: need.job for need in needs}
    amounts: dict[str, int] = defaultdict(int)
    jobs: dict[str, set[str]] = defaultdict(set)
    for taken in reserve(needs, [on_shelf(row) for row in rows], shop.zone).taken:
        amounts[taken.container] += taken.amount
        jobs[taken.container].add(job_of[taken.need])
    return amounts, jobs


def _dying(row: Container, wanted: int, cars: int) -> Dying:
    assert row.product is not None
    assert row.use_by_on is not None
    price = row.pack.price_minor if row.pack else None
    return Dying(
        code=row.code,
        product=row.product.name,
        pack="",
        dimension=row.product.dimension,
        content=row.content,
        use_by_on=row.use_by_on,
        wanted=wanted,
        cars=cars,
        worth_minor=worth(row.content, row.full, price),
        guards=row.product.guards_people,
    )


def orders(shop: Shop, at: datetime) -> list[reorder.ToOrder]:
    """Return what to order within a week, the soonest first."""
    return reorder.to_order(shop, at)


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
    found = list(rows.select_related("product", "place"))
    guarding = [row for row in found if row.product and row.product.guards_people]
    hands = [
        Hand(
            "stop",
            f"{row.product} in {row.place or 'no place'} is out of date: replace it.",
            "See it",
            "shelf:container",
            row.code,
        )
        for row in guarding
    ]
    if rest := len(found) - len(guarding):
        says = (
            "1 bottle is out of date: empty it."
            if rest == 1
            else f"{rest} bottles are out of date: empty them."
        )
        hands.append(Hand("ask", says, "See which", "shelf:list", query="?only=dying"))
    return hands


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
