"""Pads and towels: what they carried before; common practice, no source."""

from dataclasses import replace

import pytest

from inventory.trade.small_goods import SmallGood, Use, judge
from safety.findings import Finding

POLISHING, COATING, COMPOUNDING = Use("polish"), Use(""), Use("compound")


def pad(last: str = "", *, washed: bool = False, known: bool = True, name: str = "foam pad 3") -> SmallGood:
    return SmallGood("BKTRVNXH", name, "pad", last, washed, known)


def towel(last: str = "", *, washed: bool = False, known: bool = True) -> SmallGood:
    return SmallGood("CLDNRSTV", "grey towel", "towel", last, washed, known)


def only(goods: list[SmallGood], use: Use) -> Finding:
    [found] = judge(goods, use)
    return found


def test_a_towel_that_levelled_a_coating_never_touches_paint_again() -> None:
    assert only([towel("coating")], COATING) == Finding(
        "towel.coating",
        "stop",
        "Grey towel levelled a coating, and is to touch paint again.",
        "A coating cures hard in the cloth and scratches; washing does not take it out.",
        "Take a fresh towel, and throw this one away.",
        "Common practice, no source",
        ("CLDNRSTV",),
    )


def test_washing_does_not_save_a_towel_that_levelled_a_coating() -> None:
    assert only([towel("coating", washed=True)], POLISHING).grade == "stop"


def test_a_pad_that_carried_a_coarser_abrasive_and_was_not_washed_asks() -> None:
    assert only([pad("compound")], POLISHING) == Finding(
        "pad.coarser",
        "ask",
        "Foam pad 3 carried compound, coarser than this step, and was not washed.",
        "What stays in the pad cuts deeper than the abrasive of this step, and leaves its marks.",
        "Take a clean pad, or wash this one before the step and say so.",
        "Common practice, no source",
        ("BKTRVNXH",),
    )


def test_two_coarser_pads_are_one_finding() -> None:
    found = only([pad("compound"), pad("polish", name="foam pad 4")], COATING)
    assert found.says == (
        "Foam pad 3 and foam pad 4 carried compound and polish, coarser than this step, and were not washed."
    )


@pytest.mark.parametrize(
    ("last", "surface", "sentence"),
    [
        ("single-stage", "clear_coat", "Foam pad 3 was used on single-stage paint before."),
        ("bare metal", "clear_coat", "Foam pad 3 was used on bare metal before."),
        ("bare metal", "single_stage", "Foam pad 3 was used on bare metal before."),
    ],
)
def test_a_pad_from_single_stage_or_bare_metal_asks_even_if_washed(
    last: str, surface: str, sentence: str
) -> None:
    assert only([pad(last, washed=True)], Use("polish", surface)) == Finding(
        "pad.foreign",
        "ask",
        sentence,
        "Pigment and metal stay in the foam; they stain and scratch, and washing leaves some.",
        "Take a pad that has only seen this kind of surface.",
        "Common practice, no source",
        ("BKTRVNXH",),
    )


@pytest.mark.parametrize(
    ("surface", "washed", "expected", "because"),
    [
        ("single_stage", False, ["pad.coarser"], "its own kind of paint, and compound is still in it"),
        ("single_stage", True, [], "washed: pigment stays, and it is the same pigment"),
        ("clear_coat", False, ["pad.foreign"], "one question: another pad answers both"),
        ("clear_coat", True, ["pad.foreign"], "washing leaves the pigment"),
    ],
)
def test_a_pad_that_saw_single_stage_carries_an_abrasive_besides(
    surface: str, washed: bool, expected: list[str], because: str
) -> None:
    kept = replace(pad("single-stage", washed=washed), abrasive="compound")
    assert [one.code for one in judge([kept], Use("polish", surface))] == expected, because


def test_unknown_history_is_one_tell_for_all_pads_and_towels_together() -> None:
    assert only([pad(known=False), towel(known=False)], POLISHING) == Finding(
        "pad.unknown",
        "tell",
        "Nobody has recorded what foam pad 3 and grey towel carried before.",
        "Keeping small goods by set or bin is allowed; then the eye must judge.",
        "Look at the face, and wash it where in doubt.",
        "Common practice, no source",
        ("BKTRVNXH", "CLDNRSTV"),
    )


@pytest.mark.parametrize("last", ["compound", "single-stage"])
def test_what_nobody_knows_is_told_and_not_asked_as_well(last: str) -> None:
    assert only([pad(last, known=False)], POLISHING).code == "pad.unknown"


@pytest.mark.parametrize(
    ("good", "use", "because"),
    [
        (towel("coating"), Use("", "glass", on_paint=False), "glass is not paint"),
        (towel("polish"), COATING, "a towel is no pad: it carries no cut"),
        (pad("compound", washed=True), POLISHING, "it was washed"),
        (pad("compound"), COMPOUNDING, "as coarse as the step is not coarser"),
        (pad("polish"), COMPOUNDING, "finer than the step"),
        (pad("coating"), COATING, "an applicator is no abrasive"),
        (pad("single-stage"), Use("polish", "single_stage"), "the same kind of paint"),
        (pad("bare metal"), Use("polish", "aluminium"), "metal again"),
        (pad("bare metal"), Use("polish", "stainless"), "another metal"),
        (towel("bare metal"), POLISHING, "a towel is no pad"),
        (pad(), POLISHING, "a new pad has a known history: none"),
    ],
)
def test_the_nearest_clean_case_is_silent(good: SmallGood, use: Use, because: str) -> None:
    assert judge([good], use) == (), because


def test_the_gravest_is_said_first() -> None:
    found = judge([pad(known=False), pad("compound"), towel("coating")], POLISHING)
    assert [one.grade for one in found] == ["stop", "ask", "tell"]
