"""What the check is told: frozen values by topic. A topic that no question declares stays empty.

Amounts are base units of the product's dimension, instants aware.
What is told beyond the shelf lies in `topics`, a file each.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, tzinfo

from inventory.stock.rules.reserve import Need, OnShelf
from inventory.trade.profile import Profile

from .topics import AirFacts, PaintFacts, PeopleFacts, RagFacts, ReactionFacts, SurfaceFacts, WeatherFacts

TOPICS = (
    "steps", "needs", "shelf", "products", "sheets", "labels",
    "surfaces", "paint", "weather", "air", "reactions", "people", "rags",
)  # fmt: skip


@dataclass(frozen=True)
class JobFacts:
    """A booked job; `key` orders jobs that start and were booked at the same instant."""

    key: str
    code: str
    title: str
    starts_at: datetime
    ends_at: datetime


@dataclass(frozen=True)
class StepFacts:
    """A step of the job under check; `bay` is the place's code."""

    code: str
    stage: str
    name: str
    starts_at: datetime
    ends_at: datetime
    bay: str | None = None
    bay_name: str = ""
    person: str = ""
    signed_at: datetime | None = None
    signed_by: str = ""
    rinses: bool = False


@dataclass(frozen=True)
class ProductFacts:
    """A product as sentences need it; `lead_days` and `supplier` say how long an order takes.

    `does`: what it does on a car, as its kind and what its owner typed say; None where that is not loaded.
    """

    code: str
    name: str
    kind: str
    kind_words: str
    dimension: str
    noun: str = "bottle"
    lead_days: int | None = None
    supplier: str = ""
    does: Profile | None = None


@dataclass(frozen=True)
class SheetFacts:
    """What is known of a product's data sheet; the flags count from the newest version, confirmed or not."""

    needed: bool = True
    attached: bool = False
    confirmed: bool = False
    fluoride: bool = False
    isocyanate: bool = False


@dataclass(frozen=True)
class LabelFacts:
    """When our label was last printed for a container, and when it was last mixed."""

    labelled_at: datetime | None = None
    mixed_at: datetime | None = None


@dataclass(frozen=True)
class Answer:
    """What was said about a finding: an answer to an ask, or an owner's override; `says` is what was read."""

    code: str
    about: tuple[str, ...]
    says: str
    reason: str
    by: str
    given_at: datetime
    by_owner: bool = False


@dataclass(frozen=True)
class Facts:
    """Everything that one check may look at."""

    job: JobFacts
    zone: tzinfo = UTC
    system: str = "metric"
    steps: tuple[StepFacts, ...] = ()
    needs: tuple[Need, ...] = ()
    step_of: Mapping[str, str] = field(default_factory=dict, hash=False)
    jobs: Mapping[str, JobFacts] = field(default_factory=dict, hash=False)
    shelf: tuple[OnShelf, ...] = ()
    recalled: frozenset[str] = frozenset()
    places: Mapping[str, str] = field(default_factory=dict, hash=False)
    products: Mapping[str, ProductFacts] = field(default_factory=dict, hash=False)
    sheets: Mapping[str, SheetFacts] = field(default_factory=dict, hash=False)
    labels: Mapping[str, LabelFacts] = field(default_factory=dict, hash=False)
    answers: tuple[Answer, ...] = ()
    grades: Mapping[str, str] = field(default_factory=dict, hash=False)
    surfaces: SurfaceFacts = field(default_factory=SurfaceFacts)
    paint: PaintFacts = field(default_factory=PaintFacts)
    weather: WeatherFacts = field(default_factory=WeatherFacts)
    air: AirFacts = field(default_factory=AirFacts)
    reactions: ReactionFacts = field(default_factory=ReactionFacts)
    people: PeopleFacts = field(default_factory=PeopleFacts)
    rags: RagFacts = field(default_factory=RagFacts)
