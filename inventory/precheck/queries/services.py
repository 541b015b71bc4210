"""What a service runs into before a car is booked on it: its steps, played over a clean clear-coated car."""

import re
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from inventory.models import Service, ServiceStep, Step, StepNeed
from inventory.stock.booking import WORK
from inventory.trade.acts import Clash
from inventory.trade.play import play_service
from inventory.trade.saying import span

from .acts import acts_of, rinses
from .profiles import profiles

# Any day without a change of the clocks: a service knows minutes after its start, and no date.
START = datetime(2026, 1, 5, 8, tzinfo=UTC)
MOMENT = re.compile(r"[A-Z]\w+day \d{1,2} [A-Z]\w+ \d{4}, \d\d:\d\d")


@dataclass(frozen=True)
class OfService:
    """A clash and the step of the service in which it happens."""

    clash: Clash
    step: ServiceStep


def clashes_of(service: Service) -> list[OfService]:
    """Return what the steps of a service run into, the gravest first, in a constant number of queries."""
    rows = {row.pk: row for row in service.steps.prefetch_related("needs__product").order_by("starts_after")}
    steps = {row.pk: _as_booked(row) for row in rows.values()}
    needs = [
        StepNeed(step=steps[row.pk], product=need.product, kind=need.kind, amount=need.amount)
        for row in rows.values()
        for need in row.needs.all()
    ]
    known = profiles(need.product for need in needs if need.product)
    of = {step.code: rows[pk] for pk, step in steps.items()}
    found = play_service([*acts_of(needs, known, {}), *rinses(steps.values(), needs)])
    return [OfService(_dateless(clash), of[clash.step]) for clash in found]


def _dateless(clash: Clash) -> Clash:
    """Say instants by how long after the service's start they are: it has no date."""
    says, because, do = (MOMENT.sub(_after, text) for text in (clash.says, clash.because, clash.do))
    return replace(clash, says=says, because=because, do=do)


def _after(found: re.Match[str]) -> str:
    at = datetime.strptime(found[0], "%A %d %B %Y, %H:%M").replace(tzinfo=UTC)
    return f"{span(at - START)} after the start"


def _as_booked(row: ServiceStep) -> Step:
    starts_at = START + timedelta(minutes=row.starts_after)
    return Step(
        pk=row.pk, code=f"step{row.pk}", name=row.name, stage=row.stage, position=row.position,
        starts_at=starts_at, ends_at=starts_at + timedelta(minutes=row.minutes),
        **{name: getattr(row, name) for name in WORK},
    )  # fmt: skip
