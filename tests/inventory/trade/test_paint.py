"""The paint budget: where it stops, asks, tells and is silent, and the figures by which it does.

Thresholds: common practice, no source, and the shop's own floor; what a cut takes: trade pages, no authority.
"""

from datetime import UTC, datetime

import pytest

from inventory.trade.paint import Cut, Floor, PaintBudget, Panel, Reading, budget
from safety.findings import Finding

BONNET = Panel("panel1", "bonnet", "steel", "clear_coat")
ROOF = Panel("panel2", "roof", "aluminium", "clear_coat")
FLOORS = "The floor is 80 µm of whole film, 40 µm of clear coat."


def read(um: int | None, film: str = "whole", panel: Panel = BONNET) -> Reading:
    at = datetime(2026, 11, 2, 9, 0, tzinfo=UTC)
    return Reading(panel.code, panel.name, at, "before", um, film, um is not None)


def cut(grade: str, panel: str | None = None) -> Cut:
    return Cut("cut", panel, grade, 2, "Rask compound", "wool pad")


def one_panel(um: int | None, *grades: str, film: str = "whole", panel: Panel = BONNET) -> PaintBudget:
    """The bonnet, read once, cut so."""
    return budget([panel], [read(um, film, panel)], [cut(grade) for grade in grades])


def only(answer: PaintBudget) -> Finding:
    [found] = answer.findings
    return found


def told(answer: PaintBudget) -> list[tuple[str, str]]:
    return [(one.code, one.grade) for one in answer.findings]


def test_a_cut_on_a_panel_under_the_floor_stops() -> None:
    assert only(one_panel(79, "one_step")) == Finding(
        "paint.below_floor",
        "stop",
        "Under the shop's floor: bonnet 79 µm of whole film.",
        f"{FLOORS} A cutting grade is planned, and takes up to 2 µm more.",
        "Take the cut off there, or plan finishing alone. Read again if the figure looks wrong.",
        "Common practice, no source; the shop's own floor",
        ("panel1",),
    )


def test_clear_coat_has_a_floor_of_its_own() -> None:
    found = only(one_panel(39, "one_step", film="clear"))
    assert (found.code, found.grade) == ("paint.below_floor", "stop")
    assert found.says == "Under the shop's floor: bonnet 39 µm of clear coat."


def test_a_planned_cut_through_the_floor_stops() -> None:
    assert only(one_panel(84, "two_step")) == Finding(
        "paint.planned_below_floor",
        "stop",
        "The planned cut goes below the shop's floor: bonnet 84 µm of whole film less 5 µm is 79 µm.",
        f"{FLOORS} What the cut takes is the upper end of the trade's range, "
        "until the shop has measured three times.",
        "Plan a gentler cut or fewer steps there. A test spot, read before and after, gives the real figure.",
        "Trade pages, no authority; the shop's own floor",
        ("panel1",),
    )


def test_clear_coat_that_a_cut_would_take_through_its_floor_stops() -> None:
    found = only(one_panel(44, "two_step", film="clear"))
    assert found.says == (
        "The planned cut goes below the shop's floor: bonnet 44 µm of clear coat less 5 µm is 39 µm."
    )


def test_a_cut_on_thin_film_asks() -> None:
    assert only(one_panel(99, "one_step")) == Finding(
        "paint.thin",
        "ask",
        "Thin paint: bonnet 99 µm of whole film.",
        "Under 100 µm of whole film this shop only finishes. Finishing takes up to 1 µm too, and the floor "
        "is 80 µm of whole film, 40 µm of clear coat.",
        "Plan a finishing grade alone there. Where that too ends below the floor, leave the panel as it is.",
        "Common practice, no source; the shop's own floor",
        ("panel1",),
    )


def test_a_panel_to_be_cut_that_nobody_read_asks_once_a_car() -> None:
    assert only(budget([BONNET, ROOF], [], [cut("one_step")])) == Finding(
        "paint.no_reading",
        "ask",
        "Bonnet and roof are to be cut, and their paint was not read.",
        "Whole film is usually 80 µm to 180 µm. Under 80 µm this shop does not cut, and the eye cannot tell.",
        "Read the gauge there, on clean and dry paint. "
        "Where it cannot read, as on plastic or carbon, record “not readable”.",
        "Common practice, no source; the shop's own floor",
        ("panel1", "panel2"),
    )


def test_a_panel_of_which_nobody_said_what_it_is_made_of_asks_too() -> None:
    found = only(budget([Panel("panel1", "bonnet")], [], [cut("finish")]))
    assert found.says == "Bonnet is to be cut, and its paint was not read."


def test_more_than_a_refinish_guide_allows_asks() -> None:
    assert only(one_panel(150, "two_step", "three_step")) == Finding(
        "paint.total_cut",
        "ask",
        "More than 12.7 µm would be gone: bonnet 0 µm gone so far, 13 µm planned.",
        "A refinish guide keeps 50 µm of clear coat, and has it sprayed again when more than 12.7 µm goes.",
        "Plan a gentler cut there, or agree with the customer that this was the last.",
        "A refinish guide, read on trade pages, no authority",
        ("panel1",),
    )


def test_thick_film_tells_of_a_repaint() -> None:
    assert only(one_panel(201, "one_step")) == Finding(
        "paint.repaint",
        "tell",
        "Probably painted again: bonnet 201 µm of whole film.",
        "Over 200 µm a repaint is likely. How much of it is clear coat, whole film does not say.",
        "Ask the customer what was done, and test a spot before the cut.",
        "Common practice, no source; the shop's own floor",
        ("panel1",),
    )


@pytest.mark.parametrize(
    ("um", "film", "grades", "because"),
    [
        (100, "whole", ["one_step"], "thin is under 100, not at 100"),
        (200, "whole", ["one_step"], "a repaint is over 200, not at 200"),
        (99, "whole", ["finish"], "finishing is what thin film allows"),
        (81, "whole", ["finish"], "81 less 1 is the floor, and the floor may be reached"),
        (41, "clear", ["finish"], "41 less 1 is the floor of clear coat"),
        (45, "clear", ["two_step"], "45 less 5 is the floor of clear coat"),
        (42, "clear", ["one_step"], "under 100 is no matter of clear coat"),
        (150, "whole", ["two_step", "two_step", "one_step"], "12 µm in all is not more than 12.7"),
        (60, "whole", [], "a panel that nothing cuts is left in peace"),
        (None, "whole", ["one_step"], "not readable is a reading"),
    ],
)
def test_the_nearest_case_within_the_rules_is_silent(
    um: int | None, film: str, grades: list[str], because: str
) -> None:
    assert one_panel(um, *grades, film=film).findings == (), because


@pytest.mark.parametrize(
    ("um", "film", "grades", "expected", "because"),
    [
        (85, "whole", ["two_step"], "paint.thin", "85 less 5 is the floor: thin, not through it"),
        (80, "whole", ["one_step"], "paint.planned_below_floor", "at the floor, and the cut goes through"),
        (
            80,
            "whole",
            ["finish"],
            "paint.thin",
            "even finishing ends below: an ask, as it is no cutting grade",
        ),
        (70, "whole", ["finish"], "paint.thin", "under the floor finishing still asks"),
        (40, "clear", ["finish"], "paint.thin", "the same of clear coat"),
        (70, "whole", ["finish", "one_step"], "paint.below_floor", "one cutting step is enough"),
    ],
)
def test_only_the_gravest_of_floor_and_thin_film_speaks_of_a_panel(
    um: int, film: str, grades: list[str], expected: str, because: str
) -> None:
    assert only(one_panel(um, *grades, film=film)).code == expected, because


@pytest.mark.parametrize(
    ("panel", "because"),
    [
        (Panel("p", "bumper", "plastic", "clear_coat"), "a magnetic gauge reads no plastic"),
        (Panel("p", "bonnet", "carbon", "clear_coat"), "nor carbon"),
        (Panel("p", "bumper", "", "painted_plastic"), "the surface says plastic"),
        (Panel("p", "bonnet", "", "carbon"), "the surface says carbon"),
        (Panel("p", "windscreen", "", "glass"), "glass is no paint"),
        (Panel("p", "bonnet", "steel", "film"), "the gauge would read the film with the paint"),
    ],
)
def test_where_a_gauge_reads_no_paint_nobody_asks_for_a_reading(panel: Panel, because: str) -> None:
    assert budget([panel], [], [cut("one_step")]).findings == (), because


def test_no_rule_infers_clear_coat_from_whole_film() -> None:
    assert one_panel(100, "one_step").findings == ()
    assert [one.film for one in one_panel(100, "one_step").panels[0].films] == ["whole"]


def test_each_film_is_judged_by_its_own_floor_where_both_were_read() -> None:
    answer = budget([BONNET], [read(120), read(41, "clear")], [cut("one_step")])
    assert only(answer).says == (
        "The planned cut goes below the shop's floor: bonnet 41 µm of clear coat less 2 µm is 39 µm."
    )


def test_a_cut_of_one_panel_leaves_the_others_alone() -> None:
    readings = [read(70), read(70, panel=ROOF)]
    assert budget([BONNET, ROOF], readings, [cut("one_step", "panel2")]).findings[0].about == ("panel2",)


def test_panels_with_one_cause_are_one_finding() -> None:
    found = only(budget([BONNET, ROOF], [read(79), read(75, panel=ROOF)], [cut("three_step")]))
    assert found.says == "Under the shop's floor: bonnet 79 µm of whole film; roof 75 µm of whole film."
    assert found.because == f"{FLOORS} A cutting grade is planned, and takes up to 8 µm more."


def test_the_shops_own_floor_decides() -> None:
    low = Floor(whole_um=70, finish_only_um=75)
    assert told(budget([BONNET], [read(79)], [cut("one_step")], low)) == []
    assert told(budget([BONNET], [read(74)], [cut("one_step")], low)) == [("paint.thin", "ask")]
    assert told(budget([BONNET], [read(190)], [cut("one_step")], Floor(repaint_um=180))) == [
        ("paint.repaint", "tell")
    ]


def test_a_shop_that_reads_in_mils_is_told_in_mils() -> None:
    """84, 5, 79, 80 and 40 µm over 25.4 µm a mil."""
    found = only(budget([BONNET], [read(84)], [cut("two_step")], unit="mil"))
    assert found.says == (
        "The planned cut goes below the shop's floor: bonnet 3.31 mil of whole film less 0.2 mil is 3.11 mil."
    )
    assert found.because.startswith("The floor is 3.15 mil of whole film, 1.57 mil of clear coat.")


def test_the_gravest_is_said_first() -> None:
    panels = [BONNET, ROOF, Panel("panel3", "boot lid", "steel")]
    readings = [read(250), read(70, panel=ROOF)]
    assert told(budget(panels, readings, [cut("one_step")])) == [
        ("paint.below_floor", "stop"),
        ("paint.no_reading", "ask"),
        ("paint.repaint", "tell"),
    ]
