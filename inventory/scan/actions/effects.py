"""What a line changes beside the ledger, and how UNDO takes it back."""

from datetime import datetime
from typing import Any

from django.db.models import Max

from inventory.models import Container, Job, Override, Person, Place, PlaceCheck, Shop, WeatherReading
from inventory.precheck.actions import keep_shown
from inventory.scan.queries import Loaded
from inventory.stock.receiving import count_on_line
from inventory.stock.signing import mark_signed
from inventory.stock.washing import wash

Spoken = dict[str, Any]


def _order_line(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    sign = -1 if effect.get("undo") else 1
    counts = {name: sign * effect.get(name, 0) for name in ("received", "damaged", "wrong")}
    short = (not effect.get("undo")) if "closed_short" in effect else None
    count_on_line(shop, effect["id"], **counts, closed_short=short)


def _sign(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    job = Job.objects.get(shop=shop, code=effect["job"])
    mark_signed(
        job, effect["steps"], effect["needs"], by=by, at=None if effect.get("undo") else loaded.facts.at
    )


def _rinsed(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    """Add a rinse that nobody planned to a job, done and signed now; or take just that away again."""
    if by is None:
        return
    job, at = Job.objects.get(shop=shop, code=effect["job"]), datetime.fromisoformat(effect["at"])
    if effect.get("undo"):
        job.steps.filter(rinses=True, name=effect["name"], signed_at=at, signed_by=by).delete()
        return
    last = job.steps.aggregate(last=Max("position"))["last"] or 0
    job.steps.create(
        position=last + 1, stage=effect["stage"], name=effect["name"], rinses=True, starts_at=at, ends_at=at,
        bay=Place.objects.filter(shop=shop, code=effect["place"], kind=Place.Kind.BAY).first(), person=by,
        signed_at=at, signed_by=by,
    )  # fmt: skip


def _answer(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    """Keep who answered the check at the station; taking a use back does not unsay it."""
    if effect.get("undo") or loaded.job is None or by is None:
        return
    about = tuple(effect["about"])
    keep_shown(
        loaded.job,
        [one for one in loaded.facts.findings if (one.code, one.about) == (effect["code"], about)],
        loaded.facts.at,
    )
    Override.objects.create(
        job=loaded.job,
        code=effect["code"],
        about=" ".join(about)[:120],
        grade="ask",
        says=effect["says"],
        reason="Answered at the station.",
        by=by,
        given_at=loaded.facts.at,
    )


def _weather(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    """Keep a reading, or take it away again: it is no entry of the ledger."""
    if by is None:
        return
    rows = WeatherReading.objects.filter(place__shop=shop, place__code=effect["place"])
    at = datetime.fromisoformat(effect["at"])
    if effect.get("undo"):
        rows.filter(taken_at=at, by=by).delete()
        return
    WeatherReading.objects.create(
        place=Place.objects.get(shop=shop, code=effect["place"]), taken_at=at, by=by, air_c=effect["air_c"],
        panel_c=effect["panel_c"], humidity=effect["humidity"],
    )  # fmt: skip


def _wash(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    """Keep that a pad or towel was washed, or take just that back; raises Refused."""
    if by is None:
        return
    container = Container.objects.get(shop=shop, code=effect["container"])
    at = datetime.fromisoformat(effect["at"])
    if effect.get("undo"):
        container.washes.filter(washed_at=at, by=by).delete()
        return
    wash(container, by=by, at=at)


def _emptied(effect: Spoken, *, shop: Shop, loaded: Loaded, by: Person | None) -> None:
    """Keep that a can was emptied and rinsed, or take just that back: it is no entry of the ledger."""
    if by is None:
        return
    place, at = Place.objects.get(shop=shop, code=effect["place"]), datetime.fromisoformat(effect["at"])
    rows = place.checks.filter(what=PlaceCheck.What.EMPTIED, done_at=at, by=by)
    if effect.get("undo"):
        rows.delete()
        return
    PlaceCheck.objects.create(place=place, what=PlaceCheck.What.EMPTIED, done_at=at, by=by)


EFFECTS = {
    "order_line": _order_line, "sign": _sign, "rinsed": _rinsed, "answer": _answer, "weather": _weather,
    "wash": _wash, "emptied": _emptied,
}  # fmt: skip
