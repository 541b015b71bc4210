"""Who does what, what they were trained and fitted for, and what is at hand to protect them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime


@dataclass(frozen=True)
class Lasting:
    """Something that began on a day and lasts until the end of another; without one it does not end."""

    on: date
    until: date | None = None

    def holds(self, day: date) -> bool:
        """Say whether it counts on a day."""
        return self.on <= day and (self.until is None or day <= self.until)


@dataclass(frozen=True)
class Trained:
    """What somebody was trained for."""

    topic: str
    when: Lasting


@dataclass(frozen=True)
class Fitted:
    """A fit test of one model of mask, and the day of the evaluation that it leans on."""

    mask: str
    mask_name: str
    serves: str
    when: Lasting
    evaluated_on: date


@dataclass(frozen=True)
class PersonFacts:
    """Somebody who does a step: trained for what, fitted with what, clean-shaven or not.

    face: "shaven", "beard" or "" where nobody said; first_day: when the sheet of the first day was signed.
    """

    code: str
    name: str
    owner: bool = False
    face: str = ""
    trained: tuple[Trained, ...] = ()
    evaluated: tuple[Lasting, ...] = ()
    fitted: tuple[Fitted, ...] = ()
    first_day: datetime | None = None


@dataclass(frozen=True)
class DangerFacts:
    """What a product's newest confirmed sheet says of its hazards; worn: by hands, eyes, body."""

    code: str
    name: str
    kind: str = ""
    hazards: tuple[str, ...] = ()
    fluoride: bool = False
    isocyanate: bool = False
    worn: Mapping[str, str] = field(default_factory=dict, hash=False)

    @property
    def all(self) -> tuple[str, ...]:
        """The classes, with our own words for what has rules of its own."""
        more = (("fluoride", self.fluoride), ("isocyanate", self.isocyanate))
        return (*self.hazards, *(word for word, holds in more if holds))

    @property
    def corrosive(self) -> bool:
        """Whether it burns skin or eyes for good."""
        return any(one.startswith(("Skin Corr. 1", "Eye Dam. 1")) for one in self.hazards)


@dataclass(frozen=True)
class ItemFacts:
    """One protective, first-aid or rescue item on the shelf, with what it serves and when it dies.

    place: where it stands; reach: that place and those around it; minutes: worn so far, of wear_minutes.
    """

    code: str
    product: str
    name: str
    serves: str
    filters: str = ""
    place: str = ""
    place_name: str = ""
    reach: frozenset[str] = frozenset()
    ends_at: datetime | None = None
    ends_on: date | None = None
    sealed: bool = True
    minutes: int = 0
    wear_minutes: int | None = None

    def lasts(self, until: datetime) -> bool:
        """Say whether its date does not end before an instant."""
        return self.ends_at is None or until <= self.ends_at


@dataclass(frozen=True)
class BayFacts:
    """What a bay says of its eyewash and first aid, when it was run, and the fluorides that stand in it."""

    code: str
    name: str
    eyewash_at: str = ""
    first_aid_at: str = ""
    run_at: datetime | None = None
    fluorides: tuple[str, ...] = ()


@dataclass(frozen=True)
class WorkFacts:
    """What a step asks of who does it: its person's code, its respirator, and the products it names."""

    person: str = ""
    respirator: str = "none"
    sprayed: bool = False
    products: tuple[str, ...] = ()


@dataclass(frozen=True)
class GloveFacts:
    """How many minutes a glove stands a product, by its maker's table."""

    glove: str
    glove_name: str
    against: str
    minutes: int
    source: str


@dataclass(frozen=True)
class PeopleFacts:
    """Who does what, what they were trained and fitted for, and what is at hand to protect them.

    kept: whether this shop says of any product what it protects from; trainings_kept: whether it writes any
    training down. work is by step, the other mappings by code.
    """

    country: str = ""
    kept: bool = False
    trainings_kept: bool = False
    work: Mapping[str, WorkFacts] = field(default_factory=dict, hash=False)
    persons: Mapping[str, PersonFacts] = field(default_factory=dict, hash=False)
    dangers: Mapping[str, DangerFacts] = field(default_factory=dict, hash=False)
    items: tuple[ItemFacts, ...] = ()
    bays: Mapping[str, BayFacts] = field(default_factory=dict, hash=False)
    gloves: tuple[GloveFacts, ...] = ()
