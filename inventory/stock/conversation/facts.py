"""What the conversation is told about the shop: frozen values, loaded for one line in constant queries."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import UTC, datetime, tzinfo

from inventory.stock.rules.at_hand import at_hand
from inventory.stock.rules.one_lot import Had
from inventory.stock.rules.reserve import Need, OnShelf
from inventory.stock.rules.signing import StagePlan
from inventory.stock.rules.use_by import Life


@dataclass(frozen=True)
class ShopFacts:
    """The settings that decide how amounts and dates are read and shown."""

    system: str = "metric"
    decimal: str | None = None
    date_order: str | None = None


@dataclass(frozen=True)
class PersonFacts:
    """Who a badge is; a viewer's opens nothing."""

    code: str
    name: str
    role: str = "technician"


@dataclass(frozen=True)
class ProductFacts:
    """A make, as far as a scan needs it; `on_posters`: it has a data sheet or needs one."""

    code: str
    name: str
    kind: str
    dimension: str
    noun: str = "bottle"
    keeping: str = "each"
    traced: bool = False
    mixes_lots: bool = False
    dated: bool = True
    density_mg_per_l: int | None = None
    open: Life | None = None
    mix: Life | None = None
    wear_uses: int | None = None
    wear_minutes: int | None = None
    on_posters: bool = True

    @property
    def wears(self) -> bool:
        """Pads and clay are used, not used up: uses are counted, content is not."""
        return bool(self.wear_uses or self.wear_minutes)


@dataclass(frozen=True)
class Bottle:
    """A container with our code; `shelf` holds its content, dates, lots and place."""

    shelf: OnShelf
    product: ProductFacts | None
    state: str
    full: int
    noun: str = "bottle"
    place_name: str = ""
    refillable: bool = False
    rinsed: bool = True
    labelled_at: datetime | None = None
    filled_at: datetime | None = None
    lot_numbers: tuple[str, ...] = ()
    uses: int = 0

    @property
    def code(self) -> str:
        """Our code."""
        return self.shelf.code

    @property
    def content(self) -> int:
        """What the book says is in it, in the product's base unit."""
        return self.shelf.content


@dataclass(frozen=True)
class PlaceFacts:
    """A place; `admits` lists product codes, and is None where no poster hangs; `holds` what is in a can."""

    code: str
    name: str
    kind: str = "store"
    admits: frozenset[str] | None = None
    holds: tuple[str, ...] = ()

    @property
    def can(self) -> bool:
        """Whether things are tipped into it."""
        return self.kind == "can"


@dataclass(frozen=True)
class OpenLine:
    """A placed order's line that still waits for packs."""

    id: int
    order: str
    supplier: str
    packs: int
    received: int = 0

    @property
    def outstanding(self) -> int:
        """Packs that have not come."""
        return max(0, self.packs - self.received)


@dataclass(frozen=True)
class PackFacts:
    """A size that is bought; a kit brings `parts` besides."""

    id: int
    gtin: str
    product: ProductFacts
    amount: int
    per_case: int = 1
    parts: tuple[tuple[ProductFacts, int], ...] = ()
    orders: tuple[OpenLine, ...] = ()


@dataclass(frozen=True)
class StepFacts:
    """A step of the job in hand."""

    code: str
    stage: str
    name: str
    bay: str | None
    bay_name: str
    starts_at: datetime
    signed: bool = False
    rinses: bool = False
    ends_at: datetime | None = None


@dataclass(frozen=True)
class JobFacts:
    """A job: its car's name, its steps in order."""

    code: str
    name: str
    title: str
    state: str
    starts_at: datetime
    booked_at: datetime
    steps: tuple[StepFacts, ...] = ()

    @property
    def step(self) -> StepFacts | None:
        """The first step that is not signed."""
        return next((step for step in self.steps if not step.signed), None)

    def at_hand(self, at: datetime) -> StepFacts | None:
        """The step whose time is now, else the first that is not signed."""
        return at_hand([step for step in self.steps if not step.signed], at)

    def of_one_stage(self, step: str, about: Iterable[str]) -> bool:
        """Say whether something is about a step, or about another one of its stage."""
        stages = {each.code: each.stage for each in self.steps}
        return step in stages and any(stages.get(code) == stages[step] for code in about)

    @property
    def rinse(self) -> StepFacts | None:
        """The first rinse that is not signed."""
        return next((step for step in self.steps if step.rinses and not step.signed), None)

    def later(self, about: Iterable[str]) -> bool:
        """Say whether something is about steps of a later stage only: it does not stop the work at hand."""
        steps = {step.code: step.stage for step in self.steps}
        stages = {steps[code] for code in about if code in steps}
        return bool(stages) and self.step is not None and self.step.stage not in stages


@dataclass(frozen=True)
class Found:
    """What the pre-job check found about this car, as far as it bears on a scan.

    `of`: the products and steps that raise it, where others beside them do not.
    """

    code: str
    grade: str
    says: str
    do: str = ""
    about: tuple[str, ...] = ()
    of: tuple[str, ...] = ()


@dataclass(frozen=True)
class Facts:
    """Everything that one line needs.

    `needs` are open jobs' remaining needs, `step_of` the step of each, `booked` says whose they are in words;
    `step_had` what a step has had of a product or kind; `two_lots_allowed` (product or kind, step)
    where an owner's word for two lots stands; `findings` the pre-job check's, where it ran; `put_away` what
    is said of putting it where it goes; `poured_on` of pouring it onto what the bottle held; `on_the_car` of
    putting it on what was used since the last signed rinse, `unrinsed`: some of that wants a rinse; `tipped`
    of tipping it into the can that is meant, `cans`: there is one here; `station_place` where deliveries go,
    `station_at` where the station stands; `late`: it is entered well after it happened.
    """

    at: datetime
    zone: tzinfo = UTC
    shop: ShopFacts = ShopFacts()
    people: dict[str, PersonFacts] = field(default_factory=dict, hash=False)
    bottles: dict[str, Bottle] = field(default_factory=dict, hash=False)
    places: dict[str, PlaceFacts] = field(default_factory=dict, hash=False)
    jobs: dict[str, JobFacts] = field(default_factory=dict, hash=False)
    packs: dict[str, tuple[PackFacts, ...]] = field(default_factory=dict, hash=False)
    orders: dict[str, str] = field(default_factory=dict, hash=False)
    needs: tuple[Need, ...] = ()
    step_of: dict[str, str] = field(default_factory=dict, hash=False)
    booked: dict[str, str] = field(default_factory=dict, hash=False)
    step_had: Had = field(default_factory=dict, hash=False)
    two_lots_allowed: frozenset[tuple[str, str]] = frozenset()
    stage: StagePlan | None = None
    findings: tuple[Found, ...] = ()
    put_away: tuple[Found, ...] = ()
    poured_on: tuple[Found, ...] = ()
    on_the_car: tuple[Found, ...] = ()
    unrinsed: bool = False
    tipped: tuple[Found, ...] = ()
    cans: bool = False
    station_place: str = ""
    station_at: str = ""
    late: bool = False
