"""Whatever the shop types: a label or poster is printed whole, or refused with the way out."""

from datetime import date

from hypothesis import event, given, settings
from hypothesis import strategies as st

from safety.hazards.classes import classes
from safety.hazards.elements import elements
from safety.hazards.facts import SheetFacts
from safety.label_content import label_content
from safety.poster_content import poster_content
from safety.print.fonts import printable
from safety.print.label import SIZES, LabelTooSmall, smallest_for
from safety.print.label_sheets import print_labels
from safety.print.poster import PaperTooSmall, print_poster
from tests.safety.cast import BAY, URL
from tests.safety.print.paper import codes, faults, outside, overlaps, pages, text

LETTERS = st.text("abcdefghijklmnoprstuvyzÄÉßłğ0123456789-/().,", min_size=1, max_size=14)
NAMES = st.lists(LETTERS, min_size=1, max_size=8).map(" ".join)
HAZARDS = st.lists(
    st.sampled_from(sorted(f"{one.name} {one.category} {one.codes[0]}" for one in classes().values())),
    max_size=7,
    unique=True,
)
SENTENCES = st.lists(LETTERS, max_size=25).map(" ".join)
FACTS = st.builds(
    SheetFacts,
    hazards=HAZARDS.map(tuple),
    not_classified=st.booleans(),
    holds_fluoride=st.booleans(),
    wear_eyes=SENTENCES,
    wear_hands=SENTENCES,
    aid_eyes=SENTENCES,
    aid_skin=SENTENCES,
    fire=SENTENCES,
    ventilation=SENTENCES,
    never_with=st.lists(st.tuples(NAMES, NAMES), max_size=3).map(tuple),
)


@given(hazards=HAZARDS, regime=st.sampled_from(["EU", "US", "CA", "UN"]), shuffled=st.randoms())
def test_the_order_of_hazards_changes_nothing(hazards: list[str], regime: str, shuffled) -> None:  # type: ignore[no-untyped-def]
    other = hazards.copy()
    shuffled.shuffle(other)
    assert elements(hazards, regime) == elements(other, regime)


@given(hazards=HAZARDS, regime=st.sampled_from(["EU", "US", "CA", "UN"]))
def test_danger_is_never_lost_by_adding_a_hazard(hazards: list[str], regime: str) -> None:
    more = [*hazards, "Skin Corr. 1B H314"]
    assert elements(more, regime).signal_word == "Danger"
    assert "GHS05" in elements(more, regime).pictograms


@settings(max_examples=60)
@given(
    name=NAMES,
    facts=st.none() | FACTS,
    first=st.sampled_from(sorted(SIZES)),
    more=st.lists(NAMES, max_size=3),
)
def test_any_label_is_whole_or_refused(
    name: str, facts: SheetFacts | None, first: str, more: list[str]
) -> None:
    content = label_content(name, "BKTRVNXH", facts, "EU", use_by="26 Nov 2026", more=tuple(more))
    try:
        size = smallest_for(content, first)
    except LabelTooSmall:
        event("refused")
        return
    event(f"printed {size.name}")
    pdf, _ = print_labels([content], size)
    assert codes(pdf) == ["BKTRVNXH"]
    assert faults(pdf, edge=1.0) == []
    assert all(printable(one) in text(pdf) for one in content.statements)


@settings(max_examples=20)
@given(products=st.lists(st.tuples(NAMES, st.none() | FACTS), max_size=6), metres=st.sampled_from([1.0, 2.0]))
def test_any_poster_is_whole_or_refused(products: list[tuple[str, SheetFacts | None]], metres: float) -> None:
    made = poster_content(
        BAY, products, regime="EU", url=URL, version=1, printed_on=date(2026, 11, 25), read_at_m=metres
    )
    try:
        pdf, _ = print_poster(made, "A3")
    except PaperTooSmall:
        event("refused")
        return
    event("printed")
    for page in range(pages(pdf)):
        assert outside(pdf, page, edge=5.0) == []
        assert overlaps(pdf, page) == []
