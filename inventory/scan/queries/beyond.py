"""What the check finds beyond the shelf, kept at a station for the lines that follow within two minutes.

People, air, surfaces and reactions do not change between a bottle and its amount; asking for them costs more
than all the rest of a scan. The car's code, a signature or an answer asks anew.
"""

from dataclasses import asdict, dataclass
from datetime import datetime, timedelta
from typing import Any

from inventory.models import Job, Person
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Finding

FRESH = timedelta(minutes=2)


@dataclass(frozen=True)
class Beyond:
    """The findings on a job beyond the shelf, and when they were found."""

    job: str
    who: str
    at: datetime
    findings: tuple[Finding, ...]

    def as_json(self) -> dict[str, Any]:
        """Return plain JSON values; `from_json` gives an equal value back."""
        return {
            "job": self.job,
            "who": self.who,
            "at": self.at.isoformat(),
            "findings": [asdict(one) for one in self.findings],
        }

    @classmethod
    def from_json(cls, kept: dict[str, Any]) -> "Beyond":
        """Return what was kept."""
        found = tuple(Finding(**{**one, "about": tuple(one["about"])}) for one in kept["findings"])
        return cls(kept["job"], kept["who"], datetime.fromisoformat(kept["at"]), found)

    def serves(self, job: str, who: str, at: datetime) -> bool:
        """Say whether it is about this job and person, and fresh; an earlier instant asks anew."""
        return (self.job, self.who) == (job, who) and self.at <= at < self.at + FRESH


def beyond_the_shelf(job: Job, by: Person | None, at: datetime, kept: Beyond | None) -> Beyond:
    """Return what was kept while it serves, else what is found now; judged is who scans."""
    who = by.code if by else ""
    if kept is not None and kept.serves(job.code, who, at):
        return kept
    return Beyond(job.code, who, at, precheck.beyond_the_shelf(job, at, by))
