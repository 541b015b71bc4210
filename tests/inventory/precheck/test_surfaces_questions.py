"""What the check says of surfaces, residues and waits: one finding a cause, none about what is signed."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.precheck.questions import QUESTIONS, Facts
from inventory.precheck.rules import check_job
from inventory.trade.acts import Act, Surface
from inventory.trade.edits import Edits
from tests.inventory.precheck.cases import COAT, FRIDAY, NOON, TIDEWALL, WIPE, facts, found, said
from tests.inventory.precheck.surfaces import act, of

WAXED = Surface("paint", "clear_coat", arrives={"wax": None})
HOUR = timedelta(hours=1)
WIPED = act(WIPE, "hollin", "solvent")
COATED = act(COAT, TIDEWALL.code, "coating", name="Tidewall coating")


# The ordinary job


def test_a_wash_a_correction_a_wipe_and_a_coating_are_nothing_to_talk_about() -> None:
    earlier = {"starts_at": FRIDAY - 6 * HOUR, "ends_at": FRIDAY - 2 * HOUR}
    before = [act(WIPE, kind, kind, **earlier) for kind in ("alkaline", "iron", "clay", "compound", "polish")]

    assert said(of(*before, WIPED, COATED, described=False)) == [
        (
            "tell",
            "Panel wipe: Alkaline (strong alkali) is not for polycarbonate lamp, anodised aluminium and bare "
            "or polished aluminium.",
        )
    ]


def test_a_job_of_which_nothing_is_known_is_nothing_to_talk_about() -> None:
    assert said(facts()) == []


# Residues


def test_a_coating_over_wax_is_a_stop_with_the_way_out() -> None:
    (one,) = found(of(WIPED, COATED, surfaces=(WAXED,)))

    assert (one.code, one.grade) == ("residue.wax", "stop")
    assert one.says == "Coating: Tidewall coating would go over wax on the paint."
    assert one.because == "What goes over wax holds on the wax and not on the paint. The car arrives with it."
    assert one.do == "Strip it first: decontaminate, polish, then wipe."
    assert one.source == "trade pages, no authority"
    assert one.about == (TIDEWALL.code, COAT.code)


def test_the_same_coating_after_a_polish_and_a_wipe_is_silent() -> None:
    polish = act(WIPE, "marl", "polish", starts_at=FRIDAY - 3 * HOUR, ends_at=FRIDAY - HOUR)

    assert said(of(polish, WIPED, COATED, surfaces=(WAXED,))) == []


def test_wax_on_eight_panels_is_one_finding() -> None:
    panels = tuple(replace(WAXED, name=f"panel {n}") for n in range(8))

    assert said(of(WIPED, COATED, surfaces=panels)) == [
        ("stop", "Coating: Tidewall coating would go over wax on 8 panels.")
    ]


def test_surfaces_that_refuse_one_product_each_for_its_own_reason_are_one_finding() -> None:
    acid = act(WIPE, "brack", "acid", edits=Edits(touches=("metal", "glass")), name="Brack wheel acid")
    fluoride = replace(acid, profile=replace(acid.profile, traits=acid.profile.traits | {"fluoride acid"}))
    fluoride = replace(fluoride, profile=replace(fluoride.profile, never=frozenset({"anodised", "glass"})))

    (one,) = found(of(fluoride, surfaces=(Surface("trim", "anodised"), Surface("screen", "glass"))))

    assert (one.code, one.grade) == ("surface.never", "stop")
    assert "trim" in f"{one.says} {one.because}"
    assert "screen" in f"{one.says} {one.because}"


# Signed steps


def test_what_is_signed_is_over_and_is_not_talked_about() -> None:
    signed = replace(COAT, signed_at=FRIDAY + 3 * HOUR)

    assert said(of(WIPED, COATED, surfaces=(WAXED,), steps=(WIPE, signed))) == []


def test_what_a_signed_step_left_still_counts() -> None:
    wax = act(WIPE, "sallow", "wax", edits=Edits(family="wax"))
    signed = replace(WIPE, signed_at=FRIDAY)

    assert said(of(wax, COATED, steps=(signed, COAT))) == [
        ("stop", "Coating: Tidewall coating would go over wax on the paint.")
    ]


# A late step happens now


def further(minutes_after: int) -> Facts:
    """Return a coating that was signed at 11:00 on Friday, and a further layer so long after it."""
    first = replace(
        COAT, code="SFRSTLYR", starts_at=FRIDAY, ends_at=FRIDAY + 2 * HOUR, signed_at=FRIDAY + 2 * HOUR
    )
    starts = first.ends_at + timedelta(minutes=minutes_after)
    second = replace(COAT, name="Second layer", starts_at=starts, ends_at=starts + HOUR)
    layers = [
        act(step, TIDEWALL.code, "coating", name="Tidewall coating", layer=n + 1)
        for n, step in enumerate((first, second))
    ]
    return of(*layers, steps=(first, second))


@pytest.mark.parametrize(
    ("at", "grades", "because"),
    [
        (FRIDAY + 2 * HOUR, [], "two hours after the first layer lies within 60 to 180 minutes"),
        (FRIDAY + 4 * HOUR, [], "late, at 120 minutes, it is still in time"),
        (FRIDAY + 6 * HOUR, ["ask"], "at 240 minutes the window is over, whatever was planned"),
    ],
)
def test_a_layer_that_is_late_is_judged_by_the_clock_and_not_by_the_plan(
    at: datetime, grades: list[str], because: str
) -> None:
    assert [grade for grade, _ in said(further(120), at)] == grades, because


def test_a_late_layer_says_the_same_for_a_quarter_of_an_hour_so_that_an_answer_holds() -> None:
    late = FRIDAY + 6 * HOUR

    (first,), (later,) = said(further(120), late), said(further(120), late + timedelta(minutes=14))

    assert first == later
    assert "4 h after Tidewall coating" in first[1]


# What the car arrives with


def test_a_coating_on_a_car_that_nobody_described_is_told_once() -> None:
    (one,) = found(of(WIPED, COATED, described=False))

    assert (one.code, one.grade) == ("residue.unknown", "tell")
    assert one.says == "Nobody said what this car arrives with."
    assert one.because == (
        "Coating puts Tidewall coating on, and no step before it takes old wax or sealant off."
    )
    assert one.do == "Say on the job what is on the paint, or put an alkaline wash or a polish before it."


@pytest.mark.parametrize(
    ("kind", "because"),
    [("alkaline", "a strong wash takes wax off"), ("polish", "and so does a polish")],
)
def test_a_step_that_strips_answers_for_the_car(kind: str, because: str) -> None:
    before = act(WIPE, kind, kind, starts_at=FRIDAY - 2 * HOUR, ends_at=FRIDAY - HOUR)

    assert "residue.unknown" not in {one.code for one in found(of(before, WIPED, COATED, described=False))}, (
        because
    )


@pytest.mark.parametrize(
    ("one", "because"),
    [
        (act(COAT, "sallow", "wax"), "a wax may go over wax"),
        (act(COAT, "t50", "coating", edits=Edits(touches=("plastic",))), "trim has no wax to lose"),
    ],
)
def test_only_a_coating_of_the_paint_asks_what_is_on_it(one: Act, because: str) -> None:
    assert said(of(one, described=False)) == [], because


# Properties

KINDS = (
    "shampoo", "alkaline", "iron", "tar", "clay", "compound", "polish", "solvent", "coating", "wax", "topper",
    "dressing",
)  # fmt: skip
JOBS = st.lists(st.sampled_from(KINDS), min_size=1, max_size=6)


def job(kinds: list[str], clean_after: int = -1) -> Facts:
    """Return a job of one step a kind; after one of them, something that never touches paint."""
    steps = [
        replace(
            COAT, code=f"STEP{n}", name=kind, starts_at=FRIDAY + n * HOUR, ends_at=FRIDAY + (n + 0.5) * HOUR
        )
        for n, kind in enumerate(kinds)
    ]
    acts = [act(step, step.name, step.name) for step in steps]
    if clean_after >= 0:
        where = steps[clean_after % len(steps)]
        acts.append(act(where, "tape", "tape"))
    return of(*acts, surfaces=(WAXED,), steps=tuple(steps))


@given(kinds=JOBS, where=st.integers(0, 5))
def test_a_clean_product_more_never_takes_a_finding_away(kinds: list[str], where: int) -> None:
    without = {(one.code, one.about) for one in found(job(kinds))}
    with_it = {(one.code, one.about) for one in found(job(kinds, where))}

    assert without <= with_it


@given(kinds=JOBS, order=st.permutations(QUESTIONS))
def test_the_order_of_the_questions_changes_nothing(kinds: list[str], order: list[object]) -> None:
    facts_ = job(kinds)

    asked = check_job(facts_, NOON, questions=order)  # type: ignore[arg-type]

    assert asked.findings == check_job(facts_, NOON).findings


def test_a_respray_without_its_day_is_one_stop_however_many_steps_wait_for_it() -> None:
    fresh = (Surface("bonnet", "fresh_refinish"), Surface("roof", "fresh_refinish"))
    job = of(act(WIPE, "XSOP", "shampoo"), act(COAT, "XTDW", "coating"), surfaces=fresh)

    [no_day] = [one for one in found(job) if one.code.startswith("wait.")]

    assert (no_day.code, no_day.grade, no_day.about) == ("wait.no_day", "stop", ("XSOP", WIPE.code))
    assert no_day.says == "Nobody said when the bonnet and roof were resprayed or covered."
    assert no_day.do == "Type the day on the page of its paint and panels; the waits are counted from it."
    assert "it must be 3 d old" in no_day.because
    assert "it must be 7 d old" in no_day.because


def test_with_its_day_each_step_is_judged_by_it_again() -> None:
    fresh = (Surface("bonnet", "fresh_refinish", since_on=(COAT.starts_at - timedelta(days=5)).date()),)
    job = of(act(WIPE, "XSOP", "shampoo"), act(COAT, "XTDW", "coating"), surfaces=fresh)

    assert [(one.code, one.about[1]) for one in found(job) if one.code.startswith("wait.")] == [
        ("wait.fresh_refinish", COAT.code)
    ]
