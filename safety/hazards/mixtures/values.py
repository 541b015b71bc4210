"""What goes into a classification and what comes out of it, as plain values.

Percentages are by weight, 0 to 100; of a range the upper end counts (SOR/2015-17 s. 2.6). None means unknown.
"""

from dataclasses import dataclass, field

from safety.hazards.classes import Hazard

FORMS = ("liquid", "spray", "solid", "aerosol", "gas")
# oral and dermal in mg/kg, vapour and dust_mist in mg/l over 4 h, gas in ppmV
ATE_KINDS = ("oral", "dermal", "vapour", "dust_mist", "gas")
ROUTES = ("oral", "dermal", "inhalation")


@dataclass(frozen=True)
class Limit:
    """A specific concentration limit of one ingredient: from (included) to (excluded) percent, this hazard.

    `hazard` is a class with its code ("Skin Corr. 1A H314") or a supplemental statement alone ("EUH031");
    it may be one that the ingredient's own list lacks.
    """

    hazard: str
    from_percent: float
    to_percent: float | None = None


@dataclass(frozen=True)
class Ingredient:
    """One substance of a mixture.

    `hazards` None: nobody looked; (): looked at and not classified. `percent` is the end of a range that
    counts, `least` its lower end. `unknown` names routes without usable acute data.
    """

    name: str
    percent: float
    least: float = 0.0
    cas: str = ""
    hazards: tuple[Hazard, ...] | None = None
    supplemental: tuple[str, ...] = ()
    limits: tuple[Limit, ...] = ()
    ate: dict[str, float] = field(default_factory=dict)
    unknown: frozenset[str] = frozenset()
    m_acute: float | None = None
    m_chronic: float | None = None
    ph: float | None = None
    additive: bool | None = None
    no_acute_toxicity: bool = False


@dataclass(frozen=True)
class Mixture:
    """Ingredients with what was measured on the whole. Temperatures in °C, viscosity in mm²/s at 40 °C."""

    form: str
    ingredients: tuple[Ingredient, ...]
    ph: float | None = None
    flash_point_c: float | None = None
    boiling_point_c: float | None = None
    viscosity_mm2_s_40c: float | None = None


@dataclass(frozen=True)
class Because:
    """Why a class stands: the rule in words, where it is written, its mark, and the numbers that went in.

    mark: S the source was read, S2 a faithful copy was read, M from memory.
    """

    hazard: str
    rule: str
    source: str
    mark: str
    numbers: dict[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class Found:
    """What one family of rules found. Hazards as written text, "Skin Irrit. 2 H315", uncombined.

    `needs_review` says what the data could not carry, a whole sentence each; `supplemental` are EUH
    statements or label sentences beside the classes; `ate` and `unknown_percent` by route or inhaled form.
    """

    hazards: tuple[str, ...] = ()
    because: tuple[Because, ...] = ()
    needs_review: tuple[str, ...] = ()
    supplemental: tuple[str, ...] = ()
    ate: dict[str, float] = field(default_factory=dict)
    unknown_percent: dict[str, float] = field(default_factory=dict)
