"""Where the bays of a job put their rags, and whether that can was emptied since it was last used."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, tzinfo


@dataclass(frozen=True)
class RagCan:
    """A bay: where its can for rags is ("" nobody says), last emptied, and what wets rags last used there."""

    code: str
    name: str
    can_at: str = ""
    emptied_at: datetime | None = None
    used_at: datetime | None = None

    def full(self, at: datetime, zone: tzinfo) -> bool:
        """Say whether rags of a day before an instant's are still in it."""
        if self.used_at is None or self.used_at.astimezone(zone).date() >= at.astimezone(zone).date():
            return False
        return self.emptied_at is None or self.emptied_at < self.used_at


@dataclass(frozen=True)
class RagFacts:
    """The bays of the job's steps by code."""

    bays: Mapping[str, RagCan] = field(default_factory=dict, hash=False)
