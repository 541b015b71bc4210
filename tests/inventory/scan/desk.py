"""A station under test: say a line, read the sentence."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from itertools import count
from typing import Any

from inventory.models import Container, Person, Place, Station
from inventory.scan import actions
from tests.world import NOON, World

_lines = count(1)


@dataclass
class Desk:
    """A station; every line said anywhere gets a key of its own and happens a second after the one before."""

    station: Station
    heard: list[dict[str, Any]] = field(default_factory=list)

    def say(self, line: str, key: str = "", at: datetime | None = None) -> dict[str, Any]:
        """Return the whole answer to one line."""
        number = next(_lines)
        now = NOON + timedelta(seconds=number)
        spoken = actions.say(self.station, line, key or f"key {number}", at or now, now=now)
        self.heard.append(spoken)
        return spoken

    def hears(self, *lines: str) -> str:
        """Say lines, and return the last answer as "grade: sentence"."""
        spoken = [self.say(line) for line in lines][-1]
        return f"{spoken['grade']}: {spoken['says']}"


def desk(
    world: World, who: Person | None = None, place: Place | None = None, name: str = "Bay screen"
) -> Desk:
    """Return a station at which somebody (Tomas) has scanned a badge already."""
    made = Desk(Station.objects.create(shop=world.shop, name=name, place=place))
    made.say((who or world.tomas).code)
    made.heard.clear()
    return made


def kinds(spoken: dict[str, Any]) -> list[str]:
    """Return the kinds of entries that an answer wrote."""
    return [entry["kind"] for entry in spoken["movements"]]


def content(container: Container) -> int:
    """Return what the shelf says is in a container now."""
    container.refresh_from_db()
    return container.content
