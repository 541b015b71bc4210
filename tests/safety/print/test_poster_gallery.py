"""Six posters as they hang, read at 200 dpi: few and many products, long names, Spanish, every paper, grey.

Whoever changes how paper is laid out looks at each with their own eyes as well: `python -m pytest
tests/safety/print/test_poster_gallery.py --basetemp=DIR` leaves the PDFs in DIR.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

import numpy as np
import pytest
import zxingcpp

from safety.hazards.facts import SheetFacts
from safety.poster_content import poster_content
from safety.print.poster import print_poster
from safety.print.values import PosterContent
from safety.print.words import say
from tests.safety.cast import ACID, BAY, COATING, IRON, SHELF, URL, WIPE
from tests.safety.print.paper import codes, faults, letters_mm, pages, picture, size_mm, text

Named = tuple[str, SheetFacts | None]
PLACE = replace(BAY, first_aid="office", volume_m3=160, air_m3_h=960)
LONG = (
    "Brack wheel acid, ready to use, for lacquered alloy wheels and for the wells behind them",
    "Tidewall two-part ceramic coating for plastic trim, wheels and glass, winter setting",
    "Hollin panel wipe for the last wipe before coating, slow evaporating, low in odour",
)
BLEACH = SheetFacts(
    hazards=("Skin Corr. 1A H314", "Aquatic Acute 1 H400"),
    wear_eyes="sealed glasses",
    wear_hands="nitrile 0.4 mm, new after 30 min",
    never_with=(("Acids", "chlorine gas"),),
)
TOPPER = SheetFacts(hazards=("Aerosol 1 H222", "Aerosol 1 H229", "STOT SE 3 H336"), ventilation="fan on")


def many() -> list[Named]:
    """25 products: the shelf five times over, in the words of an ordinary shop."""
    kinds = ("Brack wheel acid", ACID), ("Tidewall coating", COATING), ("Hollin wipe", WIPE)
    more = (("Fenmoor iron remover", IRON), ("Stott bleach cleaner", BLEACH))
    return [(f"{name} {number}", facts) for number in range(1, 6) for name, facts in (*kinds, *more)]


@dataclass(frozen=True)
class Hung:
    """One poster of the gallery and what is expected of it."""

    paper: str
    size: tuple[float, float]
    products: list[Named]
    sheets: int
    language: str = "en"
    read_at_m: float = 2.0

    def content(self) -> PosterContent:
        """Return what it says."""
        return poster_content(
            PLACE, self.products, regime="EU", url=URL, version=7, printed_on=date(2026, 11, 25),
            read_at_m=self.read_at_m, language=self.language,
        )  # fmt: skip


LONG_NAMES: list[Named] = list(zip(LONG, (ACID, COATING, WIPE), strict=True))
GALLERY = {
    "few products, A3": Hung("A3", (297.0, 420.0), list(SHELF), 4),
    "25 products, A3": Hung("A3", (297.0, 420.0), many(), 8),
    "long names, Tabloid": Hung("Tabloid", (279.4, 431.8), LONG_NAMES, 6),
    "Spanish, A3": Hung("A3", (297.0, 420.0), [*SHELF, ("Stott bleach cleaner", BLEACH)], 4, "es"),
    "Letter, read at 1 m": Hung("Letter", (215.9, 279.4), [*SHELF, ("Quill topper", TOPPER)], 7, "en", 1.0),
    "A4, read at 2 m": Hung("A4", (210.0, 297.0), list(SHELF), 9),
}


@pytest.fixture(scope="module")
def gallery(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], bytes]:
    """Return each poster's PDF by name, printed once and left where it can be looked at."""
    folder: Path = tmp_path_factory.mktemp("gallery")
    made: dict[str, bytes] = {}

    def printed(name: str) -> bytes:
        if name not in made:
            made[name] = print_poster(GALLERY[name].content(), GALLERY[name].paper)[0]
            (folder / f"{name}.pdf").write_bytes(made[name])
        return made[name]

    return printed


@pytest.mark.parametrize("name", GALLERY)
def test_each_is_whole_decodes_and_is_as_large_as_its_paper(
    gallery: Callable[[str], bytes], name: str
) -> None:
    pdf, hung = gallery(name), GALLERY[name]
    assert pages(pdf) == hung.sheets
    assert faults(pdf, edge=5.0) == []
    for page in range(pages(pdf)):
        assert size_mm(pdf, page) == hung.size
        assert codes(pdf, page) == [URL]


@pytest.mark.parametrize("name", GALLERY)
def test_every_word_of_the_content_is_read_back(gallery: Callable[[str], bytes], name: str) -> None:
    """Word by word: a sentence may go on overleaf."""
    content, read = GALLERY[name].content(), set(text(gallery(name)).split())
    said = [
        *(one.name for one in content.products),
        *(line for one in content.products for line in (*one.statements, *one.wear)),
        *(word for pair in content.never for word in (pair.one, pair.other, pair.why)),
        *(one.heading for one in content.dangers),
        *(line.text for aid in (*content.first_aid, *content.mishaps) for line in aid.lines),
        *(aid.lead for aid in (*content.first_aid, *content.mishaps)),
    ]
    bare = {word.strip(".,:;+") for word in read}
    assert {word for one in said for word in one.split() if word.strip(".,:;+") not in bare} == set()


@pytest.mark.parametrize("name", GALLERY)
def test_nothing_is_smaller_than_its_distance_asks(gallery: Callable[[str], bytes], name: str) -> None:
    """D/300 at 1 m is 3.33 mm; names, word and leads D/200 at the distance asked for."""
    hung, pdf = GALLERY[name], gallery(name)
    far = 5.0 * hung.read_at_m
    named = {word for one, _ in hung.products for word in one.split()}
    for page in range(pages(pdf)):
        heights = letters_mm(pdf, page)
        assert min(high for _, high in heights) >= 3.33
    rows = [(said, high) for page in range(pages(pdf)) for said, high in letters_mm(pdf, page)]
    large = {word for said, high in rows if high >= far - 0.01 for word in said.split()}
    assert named - large == set()


@pytest.mark.parametrize("name", GALLERY)
def test_each_reads_in_grey(gallery: Callable[[str], bytes], name: str) -> None:
    """A printer without colour: the code is read, each bar's words stand out from it (4.5:1, WCAG 1.4.3)."""
    pdf = gallery(name)
    for page in range(pages(pdf)):
        grey = picture(pdf, page, grey=True)
        assert [found.text for found in zxingcpp.read_barcodes(grey)] == [URL]
    # The green and red bars in grey, as the reader's library weighs colours: dark enough under white.
    shades = {round(float(shade), 1) for shade in np.unique(picture(pdf, 0, grey=True))}
    assert min(shades) < 20
    assert max(shades) > 250


def test_the_spanish_one_speaks_spanish_and_says_what_it_did_not_translate(
    gallery: Callable[[str], bytes],
) -> None:
    words = text(gallery("Spanish, A3"))
    for says in (
        "Peligro",
        "Nunca juntos",
        "Primeros auxilios",
        "25 de noviembre de 2026",
        "H225 Líquido y vapores muy inflamables.",
        "H314 Provoca quemaduras graves en la piel y lesiones oculares graves.",
        "Texto grande legible hasta 2 m",
        say("What data sheets say stands in the language of the sheet.", "es"),
    ):
        assert says in words
    for english in ("Danger", "Never together", "First aid", "Wear:", "sheet 1 of", "Before you start"):
        assert english not in words


def test_many_products_stand_gravest_first_and_none_is_lost(gallery: Callable[[str], bytes]) -> None:
    words = text(gallery("25 products, A3"))
    assert all(name in words for name, _ in many())
    order = ["Brack wheel acid 1", "Stott bleach cleaner 1", "Hollin wipe 1", "Fenmoor iron remover 1"]
    last = [words.rindex(name) for name in order]
    assert last == sorted(last)


def test_what_must_never_meet_names_the_products_on_both_sides() -> None:
    """The bleach's sheet says “Acids”, the acid's “Bleach cleaner”: both stand here under their own names."""
    content = GALLERY["Spanish, A3"].content()
    assert [(pair.one, pair.other, pair.why) for pair in content.never] == [
        ("Brack wheel acid", "Stott bleach cleaner", "chlorine gas, also one after the other in the drain"),
        (
            "Brack wheel acid",
            "Fenmoor iron remover",
            "toxic sulfur gas possible: rinse to a clear drain between",
        ),
        ("Tidewall coating", "Water, alcohol", "gas and pressure in a closed bottle"),
    ]
