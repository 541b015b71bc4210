"""Posters, printed, read back and decoded."""

from dataclasses import replace
from datetime import date

import pytest

from safety.hazards.facts import SheetFacts
from safety.poster_content import poster_content
from safety.print.pen import UnknownPaper
from safety.print.poster import DistanceOutOfRange, PaperTooSmall, print_poster
from safety.print.values import PlaceFacts, PosterContent
from tests.safety.cast import BAY, IRON, SHELF, URL
from tests.safety.print.paper import boxes, codes, outside, overlaps, pages, picture, size_mm, text

MANY = [
    (f"{name} {which}", facts)
    for which in ("one", "two", "three", "four with a rather long name of its own")
    for name, facts in SHELF
] + [("Quill glaze", None), ("Stott rinse", None)]


def content(products: object = SHELF, place: PlaceFacts = BAY, read_at_m: float = 2.0) -> PosterContent:
    return poster_content(
        place,
        products,  # type: ignore[arg-type]
        regime="EU",
        url=URL,
        version=7,
        printed_on=date(2026, 11, 25),
        read_at_m=read_at_m,
    )


def test_paper_that_we_do_not_print_on_is_refused() -> None:
    with pytest.raises(UnknownPaper, match="A4, A3, Letter, Tabloid"):
        print_poster(content(), "A0")


def test_a_distance_beyond_reason_is_refused() -> None:
    with pytest.raises(DistanceOutOfRange, match="not from 40 m"):
        print_poster(content(read_at_m=40))


def test_words_wider_than_the_paper_are_refused_never_shrunk() -> None:
    with pytest.raises(PaperTooSmall, match="Take larger paper than A4, or a shorter distance than 6 m"):
        print_poster(content(read_at_m=6), "A4")


GALLERY = [
    # paper, width and height in mm, products, metres
    ("A3", (297.0, 420.0), SHELF, 2.0),
    ("A4", (210.0, 297.0), SHELF, 2.0),
    ("Letter", (215.9, 279.4), SHELF, 1.0),
    ("Tabloid", (279.4, 431.8), SHELF, 3.0),
    ("A3", (297.0, 420.0), MANY, 2.0),
    ("A4", (210.0, 297.0), [], 1.0),
]


@pytest.mark.parametrize(("paper", "size", "products", "metres"), GALLERY)
def test_every_sheet_decodes_and_nothing_overflows_or_overlaps(
    paper: str, size: tuple[float, float], products: object, metres: float
) -> None:
    pdf, said = print_poster(content(products, read_at_m=metres), paper)
    assert pages(pdf) == len(said["sheets"])  # type: ignore[arg-type]
    for page in range(pages(pdf)):
        assert size_mm(pdf, page) == size
        assert codes(pdf, page) == [URL]
        assert outside(pdf, page, edge=5.0) == []
        assert overlaps(pdf, page) == []


def test_the_set_has_its_single_purpose_sheets_in_order() -> None:
    _, said = print_poster(content(), "A3")
    assert said["sheets"] == ["Bay 2", "Bay 2: never together", "Bay 2: if it happens", "Bay 2: products"]


def test_what_fits_on_fewer_sheets_is_printed_on_fewer() -> None:
    pdf, said = print_poster(content([("Marl cutting compound", SHELF[0][1])]), "A3")
    assert said["sheets"] == ["Bay 2", "Bay 2: if it happens"]
    assert "Products Marl cutting compound" in text(pdf, 1)


def test_every_sheet_says_version_dates_distances_binder_and_caution() -> None:
    pdf, _ = print_poster(content(), "A3")
    for page in range(pages(pdf)):
        words = text(pdf, page)
        assert "Bay 2, version 7, 25 November 2026 · replace after 25 November 2027" in words
        assert "Large text legible to 2 m, small text to 1 m" in words
        assert "The code works on this shop's Wi-Fi; binder at the office shelf." in words
        assert f"sheet {page + 1} of {pages(pdf)}" in words
        assert (
            "The product's own label and data sheet, local codes and licensed practice come first." in words
        )


def test_letters_are_as_high_as_the_distance_asks() -> None:
    """D/200 at 2 m is 10 mm; D/300 at 1 m is 3.33 mm. Read from the page, not from the plan."""
    pdf, _ = print_poster(content(), "A3")
    name = next(box for box in boxes(pdf, 3) if box.text == "Hollin panel wipe")
    # Tight boxes reach from the descender of p to the ascender of l: 0.93 em; capitals are 0.668 em.
    assert (name.top - name.bottom) * 0.668 / 0.93 >= 9.7
    assert min(box.top - box.bottom for box in boxes(pdf, 3) if "H225" in box.text) >= 3.33


def test_the_place_says_its_dangers_in_plain_words_gravest_first() -> None:
    words = text(print_poster(content(), "A3")[0], 0)
    assert words.index("Danger") < words.index("Burns skin") < words.index("Toxic on")
    assert words.index("Toxic on") < words.index("Catches") < words.index("Harms")
    assert "Brack wheel acid: face shield." in words
    assert "fan on, both doors open" in words


def test_what_must_never_meet_is_said_once_a_pair() -> None:
    """Acid and iron remover name each other on their own sheets; bleach is not admitted here."""
    pairs = [(pair.one, pair.other) for pair in content().never]
    assert pairs == [
        ("Brack wheel acid", "Fenmoor iron remover"),
        ("Brack wheel acid", "Bleach cleaner"),
        ("Tidewall coating", "Water, alcohol"),
    ]


def test_products_that_must_not_meet_the_same_things_share_a_line() -> None:
    coatings = [(f"Tidewall {kind} coating", SHELF[3][1]) for kind in ("trim", "wheel")]
    assert [(pair.one, pair.other) for pair in content(coatings).never] == [
        ("Tidewall trim coating, Tidewall wheel coating", "Water, alcohol")
    ]


def test_many_names_are_cut_short_where_each_has_its_own_line_below() -> None:
    wipes = [(f"Hollin wipe {number}", SHELF[2][1]) for number in range(9)]
    fire = content(wipes).dangers[0]
    names = "Hollin wipe 0, Hollin wipe 1, Hollin wipe 2, Hollin wipe 3, Hollin wipe 4 and 4 more"
    assert fire.lines == (f"{names}. H225",)
    assert len(fire.products) == 9


def test_no_product_is_named_under_a_danger_that_it_does_not_have() -> None:
    """One diamond covers several dangers: each line names whose it is."""
    soap, foam = SheetFacts(hazards=("Eye Irrit. 2 H319",)), "Fenmoor snow foam"
    found = content([("Fenmoor iron remover", IRON), (foam, soap)]).dangers
    (mild,) = (danger for danger in found if danger.pictogram == "GHS07")
    assert (mild.heading, mild.lines) == (
        "Skin allergy",
        (
            "Fenmoor iron remover. H317",
            "Harmful: Fenmoor iron remover. H302",
            f"Irritates eyes: {foam}. H319",
        ),
    )


def test_products_of_one_danger_keep_their_own_codes() -> None:
    fire = next(danger for danger in content().dangers if danger.pictogram == "GHS02")
    assert fire.lines == ("Hollin panel wipe. H225; Tidewall coating. H226",)


def test_first_aid_names_gel_eyewash_extinguisher_and_numbers() -> None:
    words = text(print_poster(content(), "A3")[0], 2)
    assert "calcium gluconate gel" in words
    assert "Eyewash left of the door, 6 m" in words
    assert "Extinguisher right wall" in words
    assert "112" in words
    assert "0800 555 0100" in words
    assert "Larkmoor Works, 3 Mill Lane, Bay 2" in words


def test_gel_is_named_only_where_a_fluoride_is() -> None:
    without = [one for one in SHELF if one[0] != "Brack wheel acid"]
    assert "gluconate" not in text(print_poster(content(without), "A3")[0])


def test_a_number_that_nobody_entered_is_asked_for_not_invented() -> None:
    words = text(print_poster(content(place=replace(BAY, emergency_number="")), "A3")[0], 2)
    assert "number not entered yet: ask the owner" in words
    assert "112" not in words


def test_a_word_without_a_diamond_has_a_column_of_its_own() -> None:
    """Flam. Liq. 4 and the endocrine classes carry a signal word and no pictogram."""
    pdf, _ = print_poster(content([("Stott rinse", SheetFacts(hazards=("ED ENV 1 EUH430",)))]), "A3")
    assert "Danger" in text(pdf, pages(pdf) - 1)
    assert all(overlaps(pdf, page) == [] for page in range(pages(pdf)))


def test_products_stand_gravest_first_with_full_texts_and_what_to_wear() -> None:
    words = text(print_poster(content(), "A3")[0], 3)
    order = ["Brack wheel acid", "Hollin panel wipe", "Tidewall coating", "Fenmoor", "Marl"]
    assert [words.index(name) for name in order] == sorted(words.index(name) for name in order)
    assert "H314 Causes severe skin burns and eye damage." in words
    assert "EUH204 Contains isocyanates. May produce an allergic reaction." in words
    assert "Wear: face shield, nitrile 0.4 mm, new after 30 min, apron." in words


def test_a_product_without_a_sheet_stands_there_as_hazardous() -> None:
    made = content([*SHELF, ("Quill glaze", None)])
    assert made.unknown == ("Quill glaze",)
    pdf, said = print_poster(made, "A3")
    assert "Quill glaze No data sheet yet: treat as hazardous, ask the owner." in text(pdf, 0)
    assert said["no_data_sheet"] == ["Quill glaze"]


def test_many_products_reflow_over_sheets_and_none_is_lost() -> None:
    pdf, said = print_poster(content(MANY), "A3")
    words = text(pdf)
    assert said["large_text_mm"] == 10.0
    assert all(name in words for name, _ in MANY)


def test_it_reads_in_black_and_white() -> None:
    """White on green and on red keeps 4.5:1 in grey (WCAG 2.2, 1.4.3)."""
    for colour in ((0x23, 0x7F, 0x52), (0x9B, 0x24, 0x23), (0x00, 0x53, 0x87)):
        parts = [value / 255 for value in colour]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        light = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
        assert 1.05 / (light + 0.05) >= 4.5
    grey = picture(print_poster(content(), "A3")[0], 2, grey=True)
    assert (grey < 130).mean() > 0.1, "the bars stay dark"


def test_the_us_spelling_and_elements_follow_the_regime() -> None:
    made = poster_content(
        BAY, SHELF, regime="US", url=URL, version=1, printed_on=date(2026, 11, 25), read_at_m=2.0
    )
    wipe = next(one for one in made.products if one.name == "Hollin panel wipe")
    assert wipe.statements[0] == "H225 Highly flammable liquid and vapor."


def test_a_leap_day_is_replaced_a_year_later() -> None:
    made = poster_content(BAY, [], regime="EU", url=URL, version=1, printed_on=date(2028, 2, 29))
    assert made.replace_after == "28 February 2029"


def test_the_same_content_gives_the_same_file() -> None:
    assert print_poster(content(), "A3")[0] == print_poster(content(), "A3")[0]
