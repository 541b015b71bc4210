"""Is there enough paint left to cut, and what do pads bring: where the check stops, asks, and is silent.

Thresholds and words: common practice, no source, and the shop's own floor; what a cut takes: trade pages.
"""

from dataclasses import replace
from datetime import timedelta

import pytest

from inventory.precheck.questions import Facts, Finding
from inventory.precheck.questions.topics import PaintFacts
from inventory.precheck.rules import may_answer
from inventory.trade.paint import Cut, Floor, Measured, Panel, Reading
from inventory.trade.small_goods import SmallGood, Use
from tests.inventory.precheck.cases import COAT, NOON, WIPE, ProductFacts, bottle, facts, found, need

BONNET = Panel("panel1", "bonnet", "steel", "clear_coat")
ROOF = Panel("panel2", "roof", "aluminium", "clear_coat")
EARLIER = NOON - timedelta(hours=2)
COMMON = "Common practice, no source; the shop's own floor"


def read(um: int | None, panel: Panel = BONNET, at=EARLIER, when: str = "before") -> Reading:
    return Reading(panel.code, panel.name, at, when, um, readable=um is not None)


def cut(grade: str, step: str = WIPE.code) -> Cut:
    return Cut(step, None, grade, 2, "XMRL", "XPAD")


TWO_STEPS = (cut("two_step"),)


def paint(*readings: Reading, cuts=TWO_STEPS, panels=(BONNET,), steps=(WIPE, COAT), **more: object) -> Facts:
    """A job whose first step cuts a car with one bonnet."""
    return facts(steps=steps, paint=PaintFacts(panels, readings, cuts, **more))


def only(of: Facts) -> Finding:
    [one] = found(of)
    return one


def test_a_job_that_cuts_nothing_is_asked_nothing_about_paint() -> None:
    assert found(paint(cuts=())) == ()


def test_a_car_without_panels_asks_once_and_says_where_to_add_them() -> None:
    two = (cut("two_step"), cut("finish", COAT.code))
    assert only(paint(panels=(), cuts=two)) == Finding(
        "paint.no_reading",
        "ask",
        "Paint is to be cut, and no panel of this car is listed.",
        "Without a reading nobody knows what is left. Under 80 µm of whole film this shop does not cut, "
        "and the eye cannot tell.",
        "Add the panels on the page “Paint and panels” of this job, and read the gauge there.",
        COMMON,
        ("SWPXKLNB",),
    )


def test_a_shop_that_thinks_in_mils_is_told_in_mils() -> None:
    asked = only(paint(panels=(), unit="mil", floor=Floor(whole_um=100)))
    assert "Under 3.94 mil of whole film this shop does not cut" in asked.because


def test_an_unread_car_asks_once_however_many_steps_cut_it() -> None:
    two = (cut("one_step"), cut("finish", COAT.code))
    asked = only(paint(panels=(BONNET, ROOF), cuts=two))
    assert (asked.code, asked.grade) == ("paint.no_reading", "ask")
    assert asked.says == "Bonnet and roof are to be cut, and their paint was not read."
    assert asked.about == ("panel1", "panel2", "SWPXKLNB")


@pytest.mark.parametrize(
    ("panel", "um", "because"),
    [
        (BONNET, 140, "it was read, and there is enough"),
        (replace(BONNET, substrate="plastic"), None, "the gauge reads nothing on plastic"),
        (replace(BONNET, substrate="carbon"), None, "nor on carbon"),
        (BONNET, 100, "a hundred is what this shop still cuts"),
    ],
)
def test_a_panel_that_may_be_cut_says_nothing(panel: Panel, um: int | None, because: str) -> None:
    readings = [read(um, panel)] if um else []
    assert found(paint(*readings, panels=(panel,))) == (), because


def test_a_thin_bonnet_asks_before_two_steps() -> None:
    asked = only(paint(read(92)))
    assert (asked.code, asked.grade) == ("paint.thin", "ask")
    assert asked.says == "Thin paint: bonnet 92 µm of whole film."
    assert asked.do.startswith("Plan a finishing grade alone there.")
    assert may_answer(asked, by_owner=False)


def test_a_cut_through_the_floor_stops_until_an_owner_says_otherwise() -> None:
    stopped = only(paint(read(84)))
    assert (stopped.code, stopped.grade) == ("paint.planned_below_floor", "stop")
    assert stopped.says == (
        "The planned cut goes below the shop's floor: bonnet 84 µm of whole film less 5 µm is 79 µm."
    )
    assert stopped.about == ("panel1", "SWPXKLNB")
    assert not may_answer(stopped, by_owner=False)
    assert may_answer(stopped, by_owner=True)


def test_the_floor_is_the_shop_s_own() -> None:
    assert only(paint(read(115), floor=Floor(whole_um=120))).code == "paint.below_floor"


def test_three_measurements_of_the_same_cut_take_the_place_of_the_trade_s_range() -> None:
    own = tuple(Measured("XMRL", "XPAD", 2, um) for um in (1, 2, 2))
    assert [one.code for one in found(paint(read(104), floor=Floor(whole_um=100)))] == [
        "paint.planned_below_floor"
    ]
    assert found(paint(read(104), floor=Floor(whole_um=100), history=own)) == ()


def signed(step=WIPE):
    return replace(step, signed_at=NOON - timedelta(hours=1), signed_by="Tomas")


def test_what_is_signed_is_over() -> None:
    assert found(paint(read(70), steps=(signed(), COAT))) == ()


def test_a_second_cut_counts_what_the_first_took_while_no_gauge_has_seen_it() -> None:
    two = (cut("two_step"), cut("two_step", COAT.code))
    found_now = found(paint(read(109), cuts=two, steps=(signed(), COAT), floor=Floor(whole_um=100)))
    assert [one.says for one in found_now] == [
        "The planned cut goes below the shop's floor: bonnet 109 µm of whole film less 10 µm is 99 µm."
    ]


def test_a_reading_after_the_first_cut_speaks_for_it() -> None:
    two = (cut("two_step"), cut("two_step", COAT.code))
    now = read(107, at=NOON - timedelta(minutes=30), when="after")
    assert found(paint(read(109), now, cuts=two, steps=(signed(), COAT), floor=Floor(whole_um=100))) == ()


def test_finishing_after_a_signed_cut_is_not_asked_about_again() -> None:
    two = (cut("two_step"), cut("finish", COAT.code))
    assert found(paint(read(92), cuts=two, steps=(signed(), COAT))) == ()


def test_many_panels_are_all_named_and_the_codes_fit() -> None:
    panels = tuple(Panel(f"panel{n}", f"panel {n}", "steel", "clear_coat") for n in range(100001, 100015))
    asked = only(paint(panels=panels))
    assert asked.says.startswith("Panel 100001, panel 100002")
    assert asked.says.count("panel") + asked.says.count("Panel") == 14
    assert len(" ".join(asked.about)) <= 120
    assert asked.about[-1] == WIPE.code


PAD = ProductFacts("XPADKLNB", "Dunnock pad", "pad", "pad", "pieces", "pad")
TOWEL = ProductFacts("XTWLKLNB", "Brindle towel", "towel", "towel", "pieces", "towel")
ON_THE_SHELF = {"XPADKLNB": PAD, "XTWLKLNB": TOWEL}


def using(
    good: SmallGood, use: Use, product: ProductFacts = PAD, steps=(WIPE, COAT)
) -> list[tuple[str, str]]:
    wanted = replace(need(WIPE, product, 0), amount=1)
    job = facts(
        wanted,
        shelf=(replace(bottle(good.code, product, 0), content=1),),
        steps=steps,
        paint=PaintFacts(goods={good.code: good}, uses={WIPE.code: use, COAT.code: use}),
    )
    job = replace(job, products={**job.products, **ON_THE_SHELF}, sheets={})
    return [(one.grade, one.says) for one in found(job) if one.code.startswith(("pad.", "towel."))]


def good(kind: str = "pad", last: str = "", known: bool = True) -> SmallGood:
    return SmallGood("BPADKLNB", "Dunnock pad", kind, last, known=known)


@pytest.mark.parametrize(
    ("of", "use", "says", "because"),
    [
        (
            good(last="compound"),
            Use("polish"),
            [("ask", "Dunnock pad carried compound, coarser than this step, and was not washed.")],
            "compound in a polishing pad",
        ),
        (good(last="compound"), Use("compound"), [], "the same abrasive"),
        (
            good(last="single-stage"),
            Use("polish"),
            [("ask", "Dunnock pad was used on single-stage paint before.")],
            "pigment stays in the foam",
        ),
        (good(last="single-stage"), Use("polish", "single_stage"), [], "the same surface"),
        (
            good(known=False),
            Use("polish"),
            [("tell", "Nobody has recorded what Dunnock pad carried before.")],
            "unknown is told",
        ),
        (good(), Use("polish"), [], "a fresh pad"),
    ],
)
def test_what_a_pad_brings(of: SmallGood, use: Use, says: list[tuple[str, str]], because: str) -> None:
    assert using(of, use) == says, because


def test_a_towel_that_levelled_a_coating_stops_before_paint_and_not_elsewhere() -> None:
    towel = good("towel", "coating")
    assert using(towel, Use(), TOWEL) == [
        ("stop", "Dunnock pad levelled a coating, and is to touch paint again.")
    ]
    assert using(towel, Use(on_paint=False), TOWEL) == []


def test_a_pad_of_a_signed_step_is_over() -> None:
    assert using(good(last="compound"), Use("polish"), steps=(signed(), COAT)) == []
