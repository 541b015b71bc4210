"""Twelve labels as a shop prints them: decoded, read back, nothing over the edge, nothing over another."""

from dataclasses import dataclass, replace

import pytest

from safety.hazards.facts import SheetFacts
from safety.label_content import Bottle, label_for
from safety.print.fonts import printable
from safety.print.label import choose
from safety.print.label_sheets import ROLL, on_paper, print_labels
from safety.print.values import LabelContent
from tests.safety.cast import ACID, COATING, COMPOUND, WIPE
from tests.safety.print.paper import codes, diamonds, faults, is_black, letters_mm, picture, size_mm, text

CODE = "BKTRVNXH"
LONG = "Brack wheel acid, ready to use, for lacquered alloy wheels and for the wells behind them"
MANY = SheetFacts(
    hazards=(
        "Flam. Liq. 2 H225",
        "Acute Tox. 3 H301",
        "Acute Tox. 3 H311",
        "Skin Corr. 1B H314",
        "Skin Sens. 1 H317",
        "Carc. 2 H351",
        "STOT RE 2 H373",
        "Aquatic Chronic 2 H411",
    ),
    statements=("EUH066", "P210", "P260", "P280", "P303+P361+P353", "P305+P351+P338", "P310"),
)
WIPED = Bottle(
    "Hollin panel wipe",
    CODE,
    replace(WIPE, statements=("P210", "P280")),
    capacity_ml=500,
    size="500 ml",
    lots=("HO-2405",),
    opened_on="28 Aug 2026",
    use_by="26 Nov 2026",
    because="opened 28 August + 90 days, given by the maker",
    maker="Orlo Surface Care",
    telephone="0800 555 0142",
)
MIXED = replace(
    WIPED, name="Brack wheel acid", facts=ACID, parts=(1, 10), filled=True, mixed_by="Tomas", opened_on="",
    because="mixed 27 October + 30 days, given by this shop", lots=("BR-88",),
)  # fmt: skip
VIAL = replace(WIPED, name="Tidewall coating", facts=COATING, capacity_ml=30, size="30 ml", lots=("TW-2291",))
SPANISH = replace(
    MIXED, language="es", use_by="26 nov 2026", use_by_says="Usar antes del",
    because="mezclado 27 oct 2026 + 30 días (este taller)",
)  # fmt: skip


@dataclass(frozen=True)
class Hung:
    """One picture of the gallery: bottle, form, the size it gets, what must be read on it, the paper."""

    name: str
    bottle: Bottle
    form: str
    gets: str
    reads: tuple[str, ...]
    paper: str = ROLL


AMERICAN = replace(WIPED, regime="US")
CANADIAN = replace(WIPED, regime="CA", sheet_name="Hollin Wipe RTU")
CANISTER = replace(WIPED, capacity_ml=25_000, size="25 l")
STRIPPER = replace(MIXED, facts=MANY, name="Quill stripper")
GALLERY = [
    Hung("few words", replace(WIPED, facts=COMPOUND), "maker", "medium", ("Stick it clear of the maker's",)),
    Hung("mix", MIXED, "secondary", "tall", ("1 part + 10 water · lot BR-88 · mixed by Tomas",)),
    Hung("many statements", STRIPPER, "secondary", "extra", ("Toxic if swallowed or in contact with skin.",)),
    Hung("long name", replace(MIXED, name=LONG, regime="US"), "secondary", "wide", ("metals.",), "Letter"),
    Hung("Spanish", SPANISH, "secondary", "tall", ("Peligro", "Provoca quemaduras graves en la piel")),
    Hung("Spanish on A4", replace(SPANISH, facts=MANY), "secondary", "extra", ("Peligro",), "A4"),
    Hung("US workplace", AMERICAN, "us_workplace", "tall", ("Catches fire.", "See the data sheet.")),
    Hung("Canada", CANADIAN, "ca_workplace", "tall", ("Hollin Wipe RTU", "Wear: sealed glasses, nitrile.")),
    Hung("US vial", replace(VIAL, regime="US"), "small", "tall", ("Full label on the outer package.",)),
    Hung("EU vial's tag", VIAL, "tag", "large", ("Tie it to the neck.", "Flammable liquid and vapour.")),
    Hung("lasting", MIXED, "lasting", "tall", ("holds 500 ml · 1 part + 10 water", "Filled on")),
    Hung("25 l canister", CANISTER, "secondary", "extra", ("Danger",)),
]


def hung(one: Hung) -> tuple[LabelContent, bytes]:
    content = label_for(one.bottle, one.form)
    size = choose(content, printed=lambda size: on_paper(size, one.paper)).size
    assert size.name == one.gets
    return content, print_labels([content], size, one.paper)[0]


@pytest.mark.parametrize("one", GALLERY, ids=lambda one: one.name)
def test_a_label_is_whole_decodes_and_reads_back(one: Hung) -> None:
    content, pdf = hung(one)
    assert faults(pdf, edge=1.0 if one.paper == ROLL else 4.0) == []
    assert codes(pdf) == [CODE]
    words = text(pdf).replace("’", "'")
    for said in (
        *one.reads,
        content.name,
        content.use_by,
        *content.statements,
        *content.precautions,
        *content.facts,
    ):
        assert printable(said).replace("’", "'") in words
    assert len(diamonds(pdf)) == len(content.pictograms)


@pytest.mark.parametrize("one", GALLERY, ids=lambda one: one.name)
def test_a_label_reads_in_black_and_white(one: Hung) -> None:
    """Nothing but the diamonds carries colour, and printed grey their frames and symbols stay dark."""
    content, pdf = hung(one)
    grey = picture(pdf, grey=True)
    assert is_black(pdf) is (not content.pictograms)
    # Red of the frame in grey (BT.601): 0.299 × 255 = 76, well below the 127 of half.
    high, wide = grey.shape[:2]
    width_mm, _ = size_mm(pdf)
    for box in diamonds(pdf):
        per_mm = wide / width_mm
        cut = grey[
            int(high - box.top * per_mm) : int(high - box.bottom * per_mm),
            int(box.left * per_mm) : int(box.right * per_mm),
        ]
        assert 0.08 < (cut < 127).mean() < 0.6


def test_no_text_of_the_gallery_is_below_the_least_height() -> None:
    """x-height 1.2 mm (Regulation 2024/2865) is a capital of 1.62 mm in this face."""
    for one in GALLERY:
        _, pdf = hung(one)
        assert min(capital for _, capital in letters_mm(pdf)) >= 1.62, one.name


def test_a_tag_is_punched_where_nothing_stands() -> None:
    _, pdf = hung(next(one for one in GALLERY if one.form == "tag"))
    assert min(box.left for box in (*diamonds(pdf),)) >= 4.0 + 9.0


def test_every_form_of_the_gallery_and_every_regime_is_there() -> None:
    assert {one.form for one in GALLERY} == {
        "maker", "secondary", "us_workplace", "ca_workplace", "small", "tag", "lasting",
    }  # fmt: skip
    assert {one.bottle.regime for one in GALLERY} == {"EU", "US", "CA"}
    assert {one.paper for one in GALLERY} == {ROLL, "A4", "Letter"}
    assert len(GALLERY) == 12
