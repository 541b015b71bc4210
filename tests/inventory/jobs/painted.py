"""What tests of a car's paint share: addresses, panels, readings, and what a form sends."""

import re

from django.urls import reverse
from django.utils import timezone

from inventory.models import Job, Panel, Reading
from tests import world as w


def at(name: str, job: Job, *more: object) -> str:
    return reverse(f"jobs:{name}", args=[job.code, *more])


def text(page) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", page.content.decode()).split())


def panel(job: Job, name: str = "bonnet", **facts: object) -> Panel:
    count = Panel.objects.filter(vehicle=job.vehicle).count()
    return Panel.objects.create(vehicle=job.vehicle, position=count + 1, name=name, **facts)


def reading(shop: w.World, of: Panel, job: Job, um: int | None, when: str = "before", **facts) -> Reading:
    known = {"taken_at": timezone.now(), "by": shop.tomas, **facts}
    return Reading.objects.create(panel=of, job=job, when=when, um=um, **known)


def sent(key: str = "one", **typed: object) -> dict[str, object]:
    return {"key": key, "when": "before", "film": "whole", **typed}


def rows(prefix: str, *typed: dict[str, object], initial: int = 0) -> dict[str, object]:
    sent: dict[str, object] = {f"{prefix}-TOTAL_FORMS": len(typed), f"{prefix}-INITIAL_FORMS": initial}
    return sent | {
        f"{prefix}-{n}-{name}": value for n, row in enumerate(typed) for name, value in row.items()
    }
