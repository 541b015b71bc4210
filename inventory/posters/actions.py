"""What printing writes: a poster's version with what stood on it, a label's day, a list of admitted products."""

from collections.abc import Iterable
from datetime import date, datetime

from django.db import transaction

from inventory.models import Admission, Container, Place, PosterIssue, Product
from inventory.posters import queries
from inventory.posters.queries import Wall
from safety.print.poster import print_poster


class NothingToSay(Exception):
    """A poster of a place that admits nothing."""

    def __init__(self, place: Place) -> None:
        self.says = f"{place.name} admits no product yet. Admit what is used there, then print its poster."
        super().__init__(self.says)


@transaction.atomic
def issue_poster(
    wall: Wall, url: str, on: date, paper: str, read_at_m: float | None = None
) -> tuple[bytes, dict[str, object]]:
    """Print a place's poster as its next version and keep what stood on it; return the PDF and what is on it."""
    if not wall.products:
        raise NothingToSay(wall.place)
    pdf, said = print_poster(queries.content(wall, url, on, read_at_m), paper)
    PosterIssue.objects.create(
        place=wall.place, version=wall.next_version, printed_on=on, snapshot=wall.snapshot
    )
    return pdf, said


def admit(place: Place, products: Iterable[Product], on: date) -> int:
    """Admit products to a place; return how many were new."""
    made = [
        Admission.objects.get_or_create(place=place, product=product, defaults={"admitted_on": on})[1]
        for product in products
    ]
    return sum(made)


def withdraw(place: Place, product: Product) -> None:
    """Take a product off a place's list."""
    Admission.objects.filter(place=place, product=product).delete()


def labelled(containers: Iterable[Container], at: datetime) -> None:
    """Keep that our labels were printed, and what they say of the content."""
    rows = list(containers)
    for row in rows:
        row.labelled_at, row.label_says = at, label_says(row)
    Container.objects.bulk_update(rows, ["labelled_at", "label_says"])


def label_says(row: Container) -> str:
    """Return in short what a label says: product, mix and use by."""
    product = row.product.code if row.product else "empty"
    return f"{product} {row.parts_product}:{row.parts_water} {row.use_by_on or ''}"
