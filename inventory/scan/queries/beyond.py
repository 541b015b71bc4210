"""What the check finds beyond the shelf, kept at a station for the lines that follow within two minutes.

People, air, surfaces and reactions do not change between a planned bottle and its amount; asking for them
costs more than all the rest of a scan. What nobody planned, or more than was planned, is judged by itself:
those findings are kept beside the plan's and never mixed with them, since a bottle that was put away again
harms nobody. The car's code, a signature or an answer asks anew.
"""

from collections.abc import Iterable
from dataclasses import asdict, dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from inventory.models import Job, Person
from inventory.precheck import queries as precheck
from inventory.precheck.questions import Finding

FRESH = timedelta(minutes=2)
KEPT = 4


@dataclass(frozen=True)
class Beyond:
    """The findings on a job beyond the shelf, when they were found, and what was in hand then.

    `product` is the code of what was in hand, "" where the plan and the ledger alone were judged; `amount` is
    None before one was said. `knows` says of which products, in which steps, the ledger's use is counted;
    `weighed` of which products an amount can change what is found.
    """

    job: str
    who: str
    at: datetime
    findings: tuple[Finding, ...]
    product: str = ""
    amount: int | None = None
    step: str = ""
    knows: tuple[str, ...] = ()
    weighed: tuple[str, ...] = ()

    def as_json(self) -> dict[str, Any]:
        """Return plain JSON values; `from_json` gives an equal value back."""
        return asdict(self) | {"at": self.at.isoformat()}

    @classmethod
    def from_json(cls, kept: dict[str, Any]) -> "Beyond":
        """Return what was kept."""
        found = tuple(
            Finding(**{**one, "about": tuple(one["about"]), "of": tuple(one.get("of", ()))})
            for one in kept["findings"]
        )
        at = datetime.fromisoformat(kept["at"])
        codes = {name: tuple(kept[name]) for name in ("knows", "weighed")}
        return cls(**{**kept, **codes, "at": at, "findings": found})

    def serves(self, job: str, who: str, at: datetime) -> bool:
        """Say whether it is about this job and person, and fresh; an earlier instant asks anew."""
        return (self.job, self.who) == (job, who) and self.at <= at < self.at + FRESH

    def answers(self, pouring: precheck.Pouring | None) -> bool:
        """Say whether it holds for what is in hand.

        Less than was judged is asked anew only where the larger amount raised something.
        """
        if pouring is None:
            return not self.product
        known = named(pouring)
        if not self.product and pouring.amount is None:
            return known in self.knows
        if named_as(self.product, self.step) != known:
            return False
        if self.amount == pouring.amount:
            return True
        more = None not in (self.amount, pouring.amount) and (self.amount or 0) > (pouring.amount or 0)
        return more and not any(one.grade in {"stop", "ask"} for one in self.findings)

    def as_recorded(self) -> "Beyond":
        """Return it as what the ledger and the plan say from now on: what was in hand is on the car."""
        if not self.product:
            return self
        knows = (*self.knows, named_as(self.product, self.step))
        return replace(self, product="", amount=None, step="", knows=knows)


def named(pouring: precheck.Pouring) -> str:
    """Return which product goes into which step."""
    return named_as(pouring.product.code, pouring.step)


def named_as(product: str, step: str) -> str:
    """Return the two codes as one word."""
    return f"{product}/{step}"


def beyond_the_shelf(
    job: Job,
    by: Person | None,
    at: datetime,
    kept: Iterable[Beyond],
    pouring: precheck.Pouring | None = None,
) -> Beyond:
    """Return what was kept while it serves, else what is found now with who scans and what is poured."""
    who = by.code if by else ""
    fresh = [one for one in kept if one.serves(job.code, who, at)]
    if served := next((one for one in fresh if one.answers(pouring)), None):
        return served
    found = precheck.beyond_the_shelf(job, at, by, pouring)
    known = next((one.knows for one in fresh if not one.product), ())
    one = Beyond(job.code, who, at, found.findings, weighed=found.weighed)
    if pouring is None:
        return one
    return replace(one, product=pouring.product.code, amount=pouring.amount, step=pouring.step, knows=known)


def keeping(kept: Iterable[Beyond], *found: Beyond) -> tuple[Beyond, ...]:
    """Return what a station keeps: the newest first, no more than four."""
    return tuple(dict.fromkeys((*reversed(found), *kept)))[:KEPT]
