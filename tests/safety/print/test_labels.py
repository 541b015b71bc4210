"""Bottle labels, printed, read back and decoded."""

from datetime import date

import pytest

from safety.hazards.facts import SheetFacts
from safety.label_content import label_content
from safety.print.label import SIZES, LabelTooSmall, UnknownSize, choose, size_called, smallest_for
from safety.print.label_sheets import NoSuchPlace, on_paper, print_labels
from safety.print.pen import UnknownPaper
from tests.safety.cast import ACID, COATING, COMPOUND, IRON, WIPE
from tests.safety.print.paper import codes, faults, outside, pages, size_mm, text

CODE = "BKTRVNXH"
LONG = "Brack wheel acid, ready to use 1 + 10 mix for lacquered alloy wheels and for the wells behind them"
DAY = f"{date(2026, 11, 26):%d %b %Y}"


def of(name: str, facts: SheetFacts | None, **more: object):  # type: ignore[no-untyped-def]
    return label_content(name, CODE, facts, "EU", use_by=DAY, **more)  # type: ignore[arg-type]


def test_a_label_too_small_for_its_content_is_refused_with_the_next_size() -> None:
    with pytest.raises(LabelTooSmall, match=r"take medium \(70 × 37 mm\)") as refused:
        print_labels([of("Hollin panel wipe", WIPE)], SIZES["small"])
    assert refused.value.next_size == "medium"


def test_beyond_the_largest_label_there_is_no_next_size() -> None:
    with pytest.raises(LabelTooSmall, match="shorten its name") as refused:
        smallest_for(of("Unbreakablename" * 12, ACID), "small")
    assert refused.value.next_size is None


def test_a_label_says_which_size_it_got_and_why() -> None:
    choice = choose(of("Hollin panel wipe", WIPE), "small")
    assert choice.size.name == "medium"
    assert (
        choice.says == "medium (70 × 37 mm): small (50 × 25 mm) does not carry it at a size that can be read."
    )


def test_a_size_that_the_sheet_cuts_at_its_edge_is_passed_over_for_one_that_holds() -> None:
    """On stock without margins the printer leaves the paper's edge white, so a label there carries less."""
    content = of("Fenmoor iron remover", IRON, more=("lot FI-0410", "opened 28 Aug 2026", "Bay 2"))
    on_roll, on_sheet = choose(content), choose(content, printed=lambda size: on_paper(size, "A4"))
    assert (on_roll.size.name, on_sheet.size.name) == ("medium", "tall")
    assert faults(print_labels([content], on_sheet.size, "A4")[0], edge=4.0) == []


def test_unknown_sizes_papers_and_places_are_refused() -> None:
    with pytest.raises(UnknownSize, match="small, medium"):
        size_called("huge")
    with pytest.raises(UnknownPaper, match="A4, A3, Letter, Tabloid"):
        print_labels([of("Hollin panel wipe", WIPE)], SIZES["large"], "A5")
    with pytest.raises(NoSuchPlace, match="1 to 10, not 11"):
        print_labels([of("Hollin panel wipe", WIPE)], SIZES["large"], "A4", first=11)


GALLERY = [
    # name, facts, first size tried, size it gets
    ("Marl cutting compound", COMPOUND, "small", "medium"),
    ("Hollin panel wipe", WIPE, "small", "tall"),
    ("Fenmoor iron remover", IRON, "medium", "medium"),
    ("Brack wheel acid", ACID, "medium", "tall"),
    ("Tidewall coating", COATING, "medium", "tall"),
    (LONG, ACID, "medium", "wide"),
    ("Quill glaze", None, "medium", "medium"),
    ("Hollin panel wipe", WIPE, "extra", "extra"),
]


@pytest.mark.parametrize(("name", "facts", "first", "gets"), GALLERY)
def test_labels_decode_and_nothing_overflows(
    name: str, facts: SheetFacts | None, first: str, gets: str
) -> None:
    content = of(name, facts, more=("Lot TW-2291", "Opened 28 Aug 2026"), because="opened + 90 days")
    size = smallest_for(content, first)
    assert size.name == gets
    pdf, said = print_labels([content], size)
    assert codes(pdf) == [CODE]
    assert size_mm(pdf) == (size.width, size.height)
    assert faults(pdf, edge=1.0) == []
    words = text(pdf)
    assert name in words
    assert "26 Nov 2026" in words
    assert "BKTR" in words
    assert "VNXH" in words
    assert all(statement in words for statement in content.statements)
    assert "opened + 90 days" in words, "nothing is dropped to make room"
    assert said["labels"][0]["code"] == CODE  # type: ignore[index]


def test_a_full_label_carries_word_statements_and_supplemental() -> None:
    content = of("Tidewall coating", COATING)
    assert content.pictograms == ("GHS02", "GHS08")
    words = text(print_labels([content], SIZES["large"])[0])
    assert "Danger" in words
    assert "May cause allergy or asthma symptoms or breathing difficulties if inhaled." in words
    assert "Contains isocyanates. May produce an allergic reaction." in words


def test_a_bottle_without_a_sheet_says_so_and_claims_nothing() -> None:
    content = of("Quill glaze", None)
    assert content.pictograms == ()
    assert "No data sheet yet: treat as hazardous, ask the owner." in text(
        print_labels([content], SIZES["medium"])[0]
    )


def test_a_sheet_whose_hazards_are_not_typed_is_not_called_harmless() -> None:
    assert "not typed in yet: treat as hazardous" in of("Quill glaze", SheetFacts()).notice


def test_hazards_that_cannot_be_read_are_never_passed_in_silence() -> None:
    notice = of("Quill glaze", SheetFacts(hazards=("Flam. Liquid 2 H225",))).notice
    assert "Flam. Liquid 2 H225" in notice
    assert "treat as hazardous" in notice.lower()


def test_a_strip_of_twelve_is_one_file_of_twelve_labels() -> None:
    strip = [of("Hollin panel wipe", WIPE)] * 12
    pdf, said = print_labels(strip, SIZES["medium"])
    assert pages(pdf) == 12
    assert len(said["labels"]) == 12  # type: ignore[arg-type]


def test_a_begun_sheet_goes_on_at_its_first_free_label() -> None:
    pdf, said = print_labels([of("Hollin panel wipe", WIPE)] * 3, SIZES["large"], "A4", first=9)
    assert pages(pdf) == 2
    placed = [(one["page"], one["place"]) for one in said["labels"]]  # type: ignore[attr-defined]
    assert placed == [(1, 9), (1, 10), (2, 1)]
    assert codes(pdf, 0) == [CODE, CODE]
    assert outside(pdf, 0, edge=4.0) == []


def test_a_letter_sheet_is_letter() -> None:
    pdf, _ = print_labels([of("Hollin panel wipe", WIPE)], SIZES["large"], "Letter")
    assert size_mm(pdf) == (215.9, 279.4)
