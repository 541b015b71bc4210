"""What printing writes: a poster's version with what stood on it, a label's day, what a place admits."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from django.db import transaction

from inventory.models import Admission, Container, Place, PosterIssue, Product, Shop
from inventory.posters import queries
from inventory.posters.queries.prints import marks
from safety.print.label import Choice, size_called
from safety.print.label_sheets import ROLL, print_labels
from safety.print.poster import print_poster
from safety.print.words import say

Said = dict[str, object]


class NothingToSay(Exception):
    """A poster of a place that admits nothing."""

    def __init__(self, place: Place) -> None:
        self.says = f"{place.name} admits no product yet. Admit what is used there, then print its poster."
        super().__init__(self.says)


@dataclass(frozen=True)
class Issued:
    """A poster's PDF, what is on it, and the version it is kept as."""

    pdf: bytes
    said: Said
    version: int
    products: int


@transaction.atomic
def issue_poster(
    place: Place, url: str, on: date, paper: str, read_at_m: float | None = None, language: str = ""
) -> Issued:
    """Print a place's poster as its next version and keep what stood on it.

    Without a distance or a language, the place's and the shop's own. Raises NothingToSay, UnknownPaper,
    DistanceOutOfRange, PaperTooSmall, UnknownLanguage; then nothing is kept.
    """
    # Two people who print at once get two versions, one after the other.
    Place.objects.select_for_update(of=("self",)).get(pk=place.pk)
    wall = queries.walls(place.shop, place, on)[0]
    if not wall.products:
        raise NothingToSay(place)
    issue = PosterIssue.objects.create(
        place=place, version=wall.next_version, printed_on=on, snapshot=wall.snapshot
    )
    printed = queries.walls(place.shop, place, on)[0]
    pdf, said = print_poster(queries.content(printed, url, on, read_at_m, language), paper)
    return Issued(pdf, said, issue.version, len(wall.products))


def sheets(
    wall: queries.Wall, url: str, on: date, paper: str, read_at_m: float | None = None, language: str = ""
) -> bytes:
    """Return a place's sheets without making a version: as they hang, or marked as a preview.

    Raises NothingToSay, UnknownPaper, DistanceOutOfRange, PaperTooSmall, UnknownLanguage.
    """
    if not wall.products:
        raise NothingToSay(wall.place)
    says = queries.content(wall, url, on, read_at_m, language)
    if not wall.as_issued:
        marked = say("{day} (preview, not issued)", says.language, day=says.printed_on)
        says = replace(says, printed_on=marked)
    return print_poster(says, paper)[0]


def admit(place: Place, products: Iterable[Product], on: date) -> int:
    """Admit products to a place; return how many were new."""
    made = [
        Admission.objects.get_or_create(place=place, product=product, defaults={"admitted_on": on})[1]
        for product in products
    ]
    return sum(made)


def withdraw(place: Place, code: str) -> Product | None:
    """Take a product off a place's list; return it, or None where it was not on it."""
    row = Admission.objects.filter(place=place, product__code=code).select_related("product").first()
    if row is None:
        return None
    row.delete()
    return row.product


@transaction.atomic
def print_strip(
    shop: Shop,
    containers: Sequence[Container],
    at: datetime,
    size: str = "",
    paper: str = ROLL,
    first: int = 1,
    form: str = "",
    language: str = "",
) -> tuple[bytes, Said]:
    """Print the labels of containers in their order and keep that they were printed.

    Without a form each gets its own; without a language, the shop's; without a size, the smallest that
    carries them all. Raises UnknownForm, NotSmall, UnknownLanguage, LabelTooSmall, UnknownSize, NoSuchPlace,
    UnknownPaper; then nothing is kept.
    """
    contents = queries.labels(shop, containers, form, language)
    chosen = size_called(size) if size else None
    choice = (
        Choice(chosen, f"{chosen}, as asked for.") if chosen else queries.stock_for(contents, paper=paper)
    )
    pdf, said = print_labels(contents, choice.size, paper, first)
    # The maker's bottle says its hazards itself: ours stays true whatever its sheet says later.
    telling = [row for row, says in zip(containers, contents, strict=True) if says.form != "maker"]
    _labelled(containers, at, marks(shop, telling))
    return pdf, said | {"why": choice.says}


def _labelled(containers: Sequence[Container], at: datetime, marked: Mapping[int, str]) -> None:
    for row in containers:
        row.labelled_at, row.label_says = at, label_says(row, marked.get(row.pk, ""))
    Container.objects.bulk_update(containers, ["labelled_at", "label_says"])


def label_says(row: Container, mark: str = "") -> str:
    """Return in short what a label says: product, mix, use by, the mark of its hazards if it tells them."""
    product = row.product.code if row.product else "empty"
    return " ".join(f"{product} {row.parts_product}:{row.parts_water} {row.use_by_on or ''} {mark}".split())
