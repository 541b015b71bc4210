"""Cars and steps of an invented shop, as plain values: Monday 2 March 2026, 08:00 in Vienna is hour 0."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from inventory.trade.play import Act, Clash, Surface, play
from inventory.trade.profile import Edits, profile

ZONE = ZoneInfo("Europe/Vienna")
HOUR_0 = datetime(2026, 3, 2, 8, tzinfo=ZONE)
MONDAY = date(2026, 3, 2)

# kind: (step, product)
NAMES = {
    "shampoo": ("Wash", "Mildrel shampoo"),
    "foam": ("Foam", "Schaumel foam"),
    "alkaline": ("Degrease", "Basrel cleaner"),
    "cleaner": ("Clean", "Allrel cleaner"),
    "wheel": ("Wheels", "Radine cleaner"),
    "acid": ("Minerals", "Saurel acid"),
    "iron": ("Iron", "Ferrun remover"),
    "tar": ("Tar", "Teerol remover"),
    "clay": ("Clay", "Kelm clay"),
    "lubricant": ("Clay", "Glidel lubricant"),
    "compound": ("Cut", "Grindel compound"),
    "polish": ("Refine", "Lunet polish"),
    "abrasive": ("Sand", "Korn paper"),
    "solvent": ("Wipe", "Parn wipe"),
    "coating": ("Coat", "Tidewall coating"),
    "topper": ("Top", "Brinlo topper"),
    "wax": ("Wax", "Ambrel wax"),
    "dressing": ("Dress", "Rubrin dressing"),
    "glass": ("Glass", "Vitrel cleaner"),
    "interior": ("Inside", "Polstrel cleaner"),
    "tape": ("Mask", "Bandel tape"),
    "pad": ("Cut", "Weiss pad"),
    "towel": ("Wipe", "Flaum towel"),
    "spill": ("Spill", "Bindol binder"),
    "other": ("Spray", "Nebrel paint"),
}
EDITS = frozenset(Edits.__dataclass_fields__)


def act(kind: str, at: float = 0, *groups: str, minutes: int = 60, step: str = "", **said: Any) -> Act:
    """A product of a kind `at` hours after hour 0; what is said is an edit of it, or a word of the step."""
    edits = Edits(**{name: value for name, value in said.items() if name in EDITS - {"touches"}})
    flags = {name: value for name, value in said.items() if name not in EDITS - {"touches"}}
    name = step or NAMES[kind][0]
    starts = HOUR_0 + timedelta(hours=at)
    return Act(
        step=f"{name} {at:g}",
        step_name=name,
        product=kind,
        name=NAMES[kind][1],
        kind=kind,
        profile=profile(kind, frozenset(groups), edits),
        starts_at=starts,
        ends_at=starts + timedelta(minutes=minutes),
        **flags,
    )


def panel(key: str = "clear_coat", name: str = "bonnet", **said: Any) -> Surface:
    return Surface(name, key, **said)


def said(code: str, surfaces: Iterable[Surface], *acts: Act) -> list[tuple[str, str]]:
    """Grade and sentence of every clash of a code."""
    return [(one.grade, one.says) for one in play(surfaces, acts, ZONE) if one.code == code]


def only(code: str, surfaces: Iterable[Surface], *acts: Act) -> Clash:
    """The one clash of a code."""
    [found] = [one for one in play(surfaces, acts, ZONE) if one.code == code]
    return found
