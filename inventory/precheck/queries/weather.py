"""The weather topic: what the bays of the jobs' steps measure, and what their coats want."""

from collections import defaultdict

from inventory.models import Kind, Product, Profile, StepNeed
from inventory.precheck.questions.topics.weather import Coat, WeatherFacts
from safety.weather import ProductWindow, window

from .loading import Loading
from .values import KIND_WORDS

LAID = (Kind.COATING, Kind.TOPPER, Kind.WAX)
BOUNDS = ("air_from_c", "air_to_c", "humidity_from", "humidity_to")


def load(loading: Loading) -> dict[int, WeatherFacts]:
    """Return by job the newest reading of its bays and its coats, in two queries beside the shared rows."""
    laid = [row for row in loading.work_rows if kind_of(row) in LAID]
    named = {row.product_id for row in laid if row.product_id}
    rows = {row.product_id: row for row in Profile.objects.filter(product__in=named)} if named else {}
    coats: dict[int, list[Coat]] = defaultdict(list)
    for row in laid:
        coats[row.step.job_id].append(coat(row, rows.get(row.product_id or 0)))
    return {job.pk: WeatherFacts(loading.readings, tuple(coats[job.pk])) for job in loading.jobs}


def kind_of(row: StepNeed) -> str:
    """Return the kind of product that a step takes, named or not."""
    return row.product.kind if row.product else row.kind


def coat(row: StepNeed, profile: Profile | None) -> Coat:
    """Return one need as the coat that it lays."""
    product, kind = row.product, kind_of(row)
    wants, own = window_of(product, profile)
    name = product.name if product else f"any {KIND_WORDS[kind]}"
    return Coat(row.step.code, product.code if product else kind, name, kind, wants, own)


def window_of(product: Product | None, profile: Profile | None) -> tuple[ProductWindow, str]:
    """Return the window that a product wants and whose word it is, "" where it is the trade's own."""
    bounds = [getattr(profile, name) for name in BOUNDS] if profile else []
    if product is None or profile is None or all(bound is None for bound in bounds):
        return ProductWindow(), ""
    return window(*bounds), profile.source or f"{product.name}'s window as this shop typed it"
