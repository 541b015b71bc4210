"""Drawing a poster of 25 products and a sheet of 24 labels; the twin: the same strokes on a bare canvas.

What is drawn is noted call by call, then replayed on a canvas of the library's own: the ratio is what
deciding, measuring and wrapping cost beside putting the same objects on paper.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from io import BytesIO
from typing import Any
from unittest.mock import patch

from reportlab.pdfgen.canvas import Canvas

from inventory.management.bench.figures import Figure, milliseconds, typical
from safety.hazards.facts import SheetFacts
from safety.label_content import label_content
from safety.poster_content import poster_content
from safety.print import pen
from safety.print.label import SIZES, arranged
from safety.print.label_sheets import print_labels
from safety.print.poster import print_poster
from safety.print.values import PlaceFacts

PRODUCTS, LABELS = 25, 24
TIMES = 15
SHEETS = (
    SheetFacts(
        hazards=("Skin Corr. 1B H314", "Acute Tox. 3 H311", "Met. Corr. 1 H290"),
        wear_eyes="face shield", wear_hands="nitrile 0.4 mm", wear_body="apron",
        aid_skin="rinse long, then hospital", never_with=(("Bleach", "chlorine gas"),),
    ),
    SheetFacts(
        hazards=("Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"),
        wear_eyes="sealed glasses", wear_hands="nitrile", fire="foam or powder",
    ),
    SheetFacts(
        hazards=("Flam. Liq. 3 H226", "Skin Sens. 1 H317"), wear_breath="half mask A2", ventilation="fan on"
    ),
    SheetFacts(hazards=("Acute Tox. 4 H302", "Skin Irrit. 2 H315"), aid_swallowed="rinse the mouth"),
    SheetFacts(not_classified=True),
)  # fmt: skip
NAMES = ("wheel acid", "panel wipe", "coating", "iron remover", "cutting compound")

OPENED = "opened"
Call = tuple[str, tuple[Any, ...], dict[str, Any]]


@dataclass(frozen=True)
class Drawn:
    """Typical milliseconds to make a PDF, and to draw the same objects on a bare canvas."""

    ours_ms: float
    bare_ms: float
    strokes: int


def drawings(progress: Callable[[int], object]) -> list[Figure]:
    """Measure both; `progress` hears of each drawing that is done."""
    figures = []
    for name, make in ((f"poster of {PRODUCTS} products", poster), (f"sheet of {LABELS} labels", sheet)):
        drawn = _measured(make, progress)
        figures += [
            Figure(name, drawn.ours_ms, "ms"),
            Figure(f"{name}: {drawn.strokes} strokes on a bare canvas", drawn.bare_ms, "ms"),
            Figure(f"{name}: ours to the bare canvas", drawn.ours_ms / drawn.bare_ms, "times"),
        ]
    return figures


def poster() -> bytes:
    """Return a poster on A3."""
    bay = PlaceFacts(
        name="Bay 2", task="Correction and coating", shop="Larkmoor Works", address="3 Mill Lane",
        emergency_number="112", eyewash="left of the door", ventilation="fan on",
    )  # fmt: skip
    products: list[tuple[str, SheetFacts | None]] = [
        (f"{NAMES[number % 5].capitalize()} {number}", SHEETS[number % 5]) for number in range(PRODUCTS)
    ]
    content = poster_content(
        bay, products, regime="EU", url="http://shop.local/p", version=1, printed_on=date(2026, 1, 5)
    )
    return print_poster(content, "A3")[0]


def sheet() -> bytes:
    """Return labels on A4, arranged anew: what one turn found out would spare the next its work."""
    arranged.cache_clear()
    contents = [
        label_content(
            f"{NAMES[number % 5].capitalize()} {number}", "BKTRVNXH", SHEETS[number % 5], "EU",
            use_by="26 Nov 2026", because="opened + 90 days", more=("lot TW-2291",),
        )
        for number in range(LABELS)
    ]  # fmt: skip
    return print_labels(contents, SIZES["tall"], "A4")[0]


def _measured(make: Callable[[], bytes], progress: Callable[[int], object]) -> Drawn:
    calls = strokes_of(make)
    ours, bare = [], []
    for _ in range(TIMES):
        ours.append(milliseconds(make))
        bare.append(milliseconds(lambda: replay(calls)))
        progress(1)
    return Drawn(typical(ours), typical(bare), len(calls) - 1)


def strokes_of(make: Callable[[], bytes]) -> list[Call]:
    """Return how a canvas was opened and its calls that make one PDF, the library's own left out."""
    noted: list[Call] = []

    class Noting(Canvas):  # type: ignore[misc]
        def __init__(self, file: object, **kwargs: Any) -> None:
            self.__dict__["inside"] = True
            noted.append((OPENED, (), kwargs))
            super().__init__(file, **kwargs)
            self.__dict__["inside"] = False

        def __getattribute__(self, name: str) -> Any:
            found = super().__getattribute__(name)
            if name.startswith("_") or not callable(found) or self.__dict__.get("inside"):
                return found

            def noting(*args: Any, **kwargs: Any) -> Any:
                noted.append((name, args, kwargs))
                self.__dict__["inside"] = True
                try:
                    return found(*args, **kwargs)
                finally:
                    self.__dict__["inside"] = False

            return noting

    with patch.object(pen, "Canvas", Noting):
        make()
    return noted


def replay(calls: list[Call]) -> bytes:
    """Return the PDF that the same calls make on a canvas of the library's own."""
    buffer = BytesIO()
    (_, _, how), *strokes = calls
    canvas = Canvas(buffer, **how)
    for name, args, kwargs in strokes:
        getattr(canvas, name)(*args, **kwargs)
    return buffer.getvalue()
