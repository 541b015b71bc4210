"""One loader a topic: what all jobs of a shop share, and what each job under check has of its own."""

from collections import defaultdict
from collections.abc import Callable
from typing import Any

from inventory.precheck.questions import LabelFacts
from safety.models import SheetVersion

from . import air, paint, people, rags, reactions, surfaces, weather
from .loading import Loading
from .profiles import does
from .values import bay_or_place, job_facts, key, on_shelf, product_facts, sheet_facts


def _needs_topic(loading: Loading) -> dict[str, Any]:
    jobs = {key(row.step.job_id): job_facts(row.step.job) for row in loading.need_rows}
    return {"needs": loading.needs, "step_of": loading.step_of, "jobs": jobs}


def _shelf_topic(loading: Loading) -> dict[str, Any]:
    rows = loading.containers
    recalled = frozenset(row.code for row in rows if any(lot.recalled for lot in row.lots.all()))
    places = {place.code: place.name for row in rows if (place := bay_or_place(row.place))}
    return {"shelf": tuple(on_shelf(row) for row in rows), "recalled": recalled, "places": places}


def _products_topic(loading: Loading) -> dict[str, Any]:
    return {"products": {row.code: product_facts(row, does(row)) for row in loading.product_rows}}


def _sheets_topic(loading: Loading) -> dict[str, Any]:
    versions: dict[int, list[SheetVersion]] = defaultdict(list)
    sheets = {row.sheet_id for row in loading.product_rows if row.sheet_id}
    for version in SheetVersion.objects.filter(sheet__in=sheets).order_by("-revision_on", "-id"):
        versions[version.sheet_id].append(version)
    return {
        "sheets": {
            row.code: sheet_facts(row, versions.get(row.sheet_id or 0, [])) for row in loading.product_rows
        }
    }


def _labels_topic(loading: Loading) -> dict[str, Any]:
    return {"labels": {row.code: LabelFacts(row.labelled_at, row.mixed_at) for row in loading.containers}}


SHARED: dict[str, Callable[[Loading], dict[str, Any]]] = {
    "needs": _needs_topic,
    "shelf": _shelf_topic,
    "products": _products_topic,
    "sheets": _sheets_topic,
    "labels": _labels_topic,
}

# By topic, the facts of each job under check by its id.
PER_JOB: dict[str, Callable[[Loading], dict[int, Any]]] = {
    "air": air.load,
    "paint": paint.load,
    "people": people.load,
    "rags": rags.load,
    "reactions": reactions.load,
    "surfaces": surfaces.load,
    "weather": weather.load,
}
