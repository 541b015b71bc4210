"""What is breathed and what can catch fire: stops first, each with the nearest case that is left in peace."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.precheck.questions.air import breathed, what_is_breathed
from inventory.precheck.questions.evaporation import steps_in_air
from inventory.precheck.questions.topics.air import AirStep, AirUse, Makeup
from inventory.precheck.questions.topics.people import PeopleFacts
from inventory.precheck.rules import check_job, may_answer
from inventory.precheck.views.ways import way_out
from safety.air.evaporating import Ingredient
from safety.air.values import Limit, Place
from tests.inventory.precheck.airs import (
    BAY_2,
    BEFORE,
    BRACK,
    HOLLIN,
    MAKEUPS,
    QUELL,
    TIDEWALL,
    case,
    coating,
    facts,
    finding,
    found,
    makeup,
    said,
    sparks,
    wiping,
)
from tests.inventory.precheck.cases import COAT, FRIDAY, ML, NOON, WIPE
from tests.inventory.precheck.crew import item

TYPED = {"67-63-0": (Limit("national list, 2026", "TWA", 20.0, None, "typed"),)}
YESTERDAY = FRIDAY - timedelta(days=1)


def another(step: AirStep, **facts_: object) -> AirStep:
    """Return a second step like it, an hour later."""
    later = timedelta(hours=1)
    return replace(
        step, code=COAT.code, name="Second wipe",
        starts_at=step.starts_at + later, ends_at=step.ends_at + later, **facts_,
    )  # type: ignore[arg-type]  # fmt: skip


def beside(ml: float, **facts_: object) -> AirStep:
    """Return another car's wipe at the same time."""
    red = replace(wiping(ml), code="SREDKLNB", job="000000000003", name="Red van wipe", person="HINSKLNB")
    return replace(red, **facts_)  # type: ignore[arg-type]


def test_more_than_may_be_breathed_in_a_quarter_of_an_hour_stops_and_says_every_way_out() -> None:
    one = finding("air.exposure", wiping(234), at=BEFORE)
    assert one.grade == "stop"
    assert one.says == (
        "Panel wipe, Bay 2: who works here breathes 119 % of the 15-minute limit (isopropanol)."
    )
    assert one.do == (
        "Change the plan: less product, local exhaust with the air measured under it or a half mask; "
        "then ask again. As planned here, 186 ml in fifteen minutes stays below: take less, or split the "
        "step and let the air clear between."
    )
    assert one.because == (
        "Counted: 144 g of isopropanol in 15 minutes, from 234 ml of Hollin panel wipe. Bay 2 has 160 m³ and "
        "960 m³/h, K 3. The shift's average against the 8-hour limit: isopropanol 4.61 % of 400 ppm (UK WEL, "
        "read in a copy). The worst 15 minutes against the 15-minute limit: isopropanol 119 % of 500 ppm (UK "
        "WEL, read in a copy). Not judged, no ceiling is listed: isopropanol. All limits of isopropanol: "
        "UK WEL 8-hour limit 400 ppm / 999 mg/m³; UK WEL 15-minute limit 500 ppm / 1250 mg/m³. No "
        "air flow is enough for who works here; the figure for the room serves only the others. Screening "
        "arithmetic for a workshop: it never replaces a competent person's assessment."
    )
    assert one.about == ("PBAYTWOX", "SWPXKLNB")


@pytest.mark.parametrize(
    ("step", "grade", "because"),
    [
        (wiping(198), "stop", "100.3 % of the 15-minute value"),
        (wiping(196), "ask", "99.3 % of it: asked from a tenth"),
        (wiping(186), "ask", "the way out that the stop names"),
        (wiping(234, respirator="half"), "ask", "a half mask is enough, so it is worn instead of stopped"),
        (wiping(234, respirator="ffp3"), "stop", "a dust mask does not filter a solvent"),
        (wiping(20), "ask", "10.1 % asks"),
        (wiping(19), None, "9.6 % is told in the note"),
    ],
)
def test_the_grades_of_an_exposure(step: AirStep, grade: str | None, because: str) -> None:
    assert dict(said(step)).get("air.exposure") == grade, because


def test_two_steps_of_one_cause_are_one_finding_and_the_gravest_leads() -> None:
    one = finding("air.exposure", wiping(100), coating(80))
    assert one.says.startswith("Coating, Bay 2: who works here breathes 175 % of the 15-minute limit")
    assert "Panel wipe: Who works here breathes 50.7 % of the 15-minute limit (isopropanol)." in one.because
    assert one.about == ("PBAYTWOX", COAT.code)


def test_every_step_that_the_cause_stops_has_its_way_out_in_the_act() -> None:
    one = finding("air.exposure", wiping(234), coating(50))
    assert one.do == (
        "Change the plan: less product, local exhaust with the air measured under it or a half mask; "
        "then ask again. As planned here, 186 ml in fifteen minutes stays below: take less, or split the "
        "step and let the air clear between. Coating stops too: as planned here, 43 ml in fifteen minutes "
        "stays below: take less, or split the step and let the air clear between."
    )
    assert said(wiping(186), coating(43))[0] == ("air.exposure", "ask")


def test_what_a_coating_gives_off_while_it_cures_is_counted_and_a_resin_that_stays_is_not() -> None:
    one = finding("air.exposure", coating(40))
    assert (
        "22.8 g of n-butyl acetate in 15 minutes, 5.05 g of ammonia and 1.18 g of hydrogen in 60"
        in one.because
    )
    inert = replace(MAKEUPS["XTDWKLNB"], kind="topper")
    told = finding("air.exposure", coating(40), makeups={inert.code: inert})
    assert "ammonia" not in told.because


@pytest.mark.parametrize(
    ("place", "at", "grade", "because"),
    [
        (sparks(("Heater", "on", BEFORE)), BEFORE, "stop", "it is on"),
        (sparks(("Heater", "unknown", None)), BEFORE, "stop", "nobody confirmed it off"),
        (sparks(("Heater", "off", YESTERDAY)), BEFORE, "stop", "yesterday's word is not today's"),
        (sparks(("Heater", "off", BEFORE)), BEFORE, "tell", "confirmed off today"),
        (sparks(("Heater", "on", BEFORE)), NOON, "tell", "what stops on Friday is told on Wednesday"),
        (BAY_2, BEFORE, "tell", "the bay lists nothing"),
    ],
)
def test_an_ignition_source_stops_on_the_day_until_it_is_confirmed_off(
    place: object, at: object, grade: str, because: str
) -> None:
    told = dict(said(wiping(10), place=place, at=at))  # type: ignore[arg-type]
    assert ("stop" if told.get("air.ignition") == "stop" else told.get("air.note")) == grade, because


def test_a_source_is_named_with_what_it_could_light() -> None:
    place = sparks(("Heater", "unknown", None), ("Lamp", "off", BEFORE), ("Charger", "on", BEFORE))
    one = finding("air.ignition", wiping(10), place=place, at=BEFORE)
    assert one.says == (
        "Panel wipe, Bay 2: Heater and Charger are not confirmed off, and isopropanol can catch fire."
    )
    assert one.do == "Switch off Heater and Charger, then say so on the bay's page."


def test_a_product_whose_flash_point_lies_far_above_lights_nothing() -> None:
    """A glass cleaner of 5 % isopropanol, flash point 60 °C: 20 + 15 K are below it."""
    weak = replace(HOLLIN, flash_point_c=60.0)
    place = sparks(("Heater", "on", BEFORE))
    assert "air.ignition" not in dict(said(wiping(10), place=place, at=BEFORE, makeups={weak.code: weak}))
    near = replace(HOLLIN, flash_point_c=35.0)
    assert dict(said(wiping(10), place=place, at=BEFORE, makeups={near.code: near}))["air.ignition"] == "stop"


def test_something_flammable_in_the_closed_cabin_is_one_stop_with_all_that_follows_from_it() -> None:
    stops = [one for one in found(wiping(60, inside=True)) if one.grade == "stop"]
    assert [one.code for one in stops] == ["air.closed_space"]
    assert stops[0].says == (
        "Panel wipe, the car's cabin in Bay 2: something flammable is used in 3 m³ without air flow."
    )
    assert stops[0].do == (
        "Take a product without flammables, or do this work outside the car; open doors alone are not "
        "enough. Ignition off."
    )
    assert "The room's average reaches 24.7 % of the lower explosive limit." in stops[0].because


def test_a_small_bay_without_air_flow_keeps_the_field_that_it_has() -> None:
    pit = replace(BAY_2, place=Place(3.0, 0.0, 1.0))
    one = finding("air.closed_space", wiping(60), place=pit)
    assert one.do == "Doors open, ignition off, and say the air flow that was measured."


def test_the_same_on_the_paint_or_a_cleaner_in_the_cabin_is_left_in_peace() -> None:
    assert "stop" not in dict(said(wiping(60))).values()
    assert found(wiping(60, QUELL, inside=True)) == ()


def test_a_cabin_of_which_the_air_was_measured_gives_its_own_figures() -> None:
    aired = replace(BAY_2, place=Place(3.0, 600.0, 1.0), cabin=True)
    told = said(wiping(5, inside=True), place=aired)
    assert ("air.closed_space", "stop") not in told
    assert "has 3 m³ and 600 m³/h" in found(wiping(5, inside=True), place=aired)[0].because


def test_a_bay_that_nobody_measured_is_one_question_for_all_its_steps() -> None:
    unknown = replace(BAY_2, place=Place(160.0, None, 3.0))
    one = finding("air.unknown", wiping(60), coating(20), place=unknown)
    assert (one.grade, one.says) == (
        "ask", "What is breathed at Panel wipe is not known: the air flow of Bay 2 is missing."
    )  # fmt: skip
    assert one.do == "Measure the room, read the fan's plate, and type both in on the bay's page."
    assert [code for code, _ in said(wiping(60), coating(20), place=unknown)] == ["air.unknown", "air.note"]
    assert "air.unknown" not in dict(said(wiping(60)))


def test_what_goes_into_the_air_of_no_bay_asks_for_it_and_no_word_ends_that() -> None:
    one = finding("air.no_bay", wiping(60, bay=None))
    assert (one.grade, one.says) == ("ask", "Nobody named the bay of Panel wipe.")
    assert one.do == (
        "Name the bay of Panel wipe: change the step on the job's page. That ends this question."
    )
    assert one.because.startswith("Isopropanol goes into the air there. Counted: ")
    assert one.about == ("SWPXKLNB", HOLLIN.code)
    assert not may_answer(one, by_owner=True)
    way = way_out(one, "JDPXKLNB")
    assert way is not None
    assert (way.label, way.to) == ("Name its bay", "/jobs/JDPXKLNB/steps/SWPXKLNB/")


@pytest.mark.parametrize(
    ("step", "asked", "because"),
    [
        (wiping(60, bay=None), True, "of 60 ml somebody breathes some"),
        (wiping(0, bay=None), True, "before an amount is known"),
        (wiping(60, BRACK, bay=None), True, "an acid fumes, though nobody can say how much"),
        (wiping(60), False, "its bay is named"),
        (wiping(60, QUELL, bay=None), False, "soap in water lets nothing go"),
        (wiping(60, inside=True, bay=None), False, "the car's cabin is a place of its own"),
    ],
)
def test_a_bay_is_asked_for_where_something_goes_into_the_air(
    step: AirStep, asked: bool, because: str
) -> None:
    codes = dict(said(step))
    assert ("air.no_bay" in codes) == asked, because
    assert "air.unknown" not in codes, because


def test_several_steps_without_a_bay_are_one_question() -> None:
    one = finding("air.no_bay", wiping(60, bay=None), coating(20, bay=None))
    assert one.says == "Nobody named the bay of Panel wipe and Coating."
    assert one.about == (WIPE.code, COAT.code, HOLLIN.code, TIDEWALL.code)


@pytest.mark.parametrize(
    ("product", "asked", "because"),
    [
        (
            makeup("XBARKLNB", "Sallow paste wax", "wax", volatile=True),
            True,
            "its sheet says it is flammable",
        ),
        (makeup("XBARKLNB", "Sallow paste wax", "wax"), False, "nothing says that anything evaporates"),
        (replace(HOLLIN, code="XBARKLNB", volatile=True), False, "somebody typed in what it is made of"),
    ],
)
def test_what_a_volatile_product_is_made_of_is_asked_for_once(
    product: Makeup, asked: bool, because: str
) -> None:
    steps = wiping(10, product), another(wiping(10, product))
    told = [one for one in found(*steps, makeups={product.code: product}) if one.code == "air.no_composition"]
    assert [one.says for one in told] == (
        ["Nobody typed in what Sallow paste wax is made of, so what is breathed is not known."]
        if asked
        else []
    ), because


@pytest.mark.parametrize(
    ("step", "stopped", "because"),
    [
        (wiping(60, BRACK), True, "a fluoride fumes"),
        (wiping(60, BRACK, respirator="half"), True, "a half mask leaves the eyes bare"),
        (wiping(60, BRACK, respirator="full"), False, "a full-face mask is named for it"),
        (wiping(60, QUELL, sprayed=True), True, "a mist is breathed deep"),
        (wiping(60, QUELL, sprayed=True, respirator="ffp3"), False, "a dust mask is named for a mist"),
        (wiping(60, QUELL), False, "wiped, it stays on the cloth"),
    ],
)
def test_fluoride_and_mist_stop_without_the_protection_named_for_them(
    step: AirStep, stopped: bool, because: str
) -> None:
    assert (("air.named_protection", "stop") in said(step)) == stopped, because


def test_a_mask_against_a_mist_is_never_read_as_one_against_another_step_s_fluoride() -> None:
    sprayed = replace(wiping(60, QUELL, sprayed=True), code=COAT.code, name="Foam", starts_at=COAT.starts_at)
    one = finding("air.named_protection", wiping(60, BRACK), sprayed)
    assert one.do == (
        "Wear one of: a full-face mask, a loose powered hood and an air-fed mask; or do without it. "
        "Foam, Alcohol ethoxylate C9-11: wear one of: an FFP3 mask, a half mask, a full-face mask, a loose "
        "powered hood and an air-fed mask; or catch it where it arises with examined local exhaust; "
        "or do without it."
    )


NAMED = "Wear one of: a full-face mask, a loose powered hood and an air-fed mask; or do without it."
FULL = item("BFLLKLNB", "full", "Ossen full-face mask")


@pytest.mark.parametrize(
    ("people", "first", "because"),
    [
        (PeopleFacts(kept=True, items=(FULL,)), "Here: BFLL KLNB Ossen full-face mask. ", "it is in date"),
        (
            PeopleFacts(kept=True, items=(replace(FULL, ends_at=NOON),)),
            "None of the masks named for it is on the shelf in date: order one. ",
            "it died before the step",
        ),
        (
            PeopleFacts(kept=True, items=(item("BHLFKLNB", "half", "Ossen half mask"),)),
            "None of the masks named for it is on the shelf in date: order one. ",
            "a half mask is not named for a fluoride",
        ),
        (
            PeopleFacts(kept=True, items=(item("BPWDKLNB", "powered_full", "Ossen powered mask"),)),
            "None of the masks named for it is on the shelf in date: order one. ",
            "no factor is known for it in the UK",
        ),
        (PeopleFacts(), "", "nobody said which products protect people here"),
    ],
)
def test_a_stop_for_a_named_mask_says_first_which_of_them_is_here(
    people: PeopleFacts, first: str, because: str
) -> None:
    of = replace(facts(wiping(60, BRACK)), people=people)
    [one] = [one for one in check_job(of, NOON, questions=[what_is_breathed]).findings if one.grade == "stop"]
    assert one.do == f"{first}{NAMED}", because


def test_the_fumes_of_an_acid_are_told_without_a_figure() -> None:
    note = finding("air.note", wiping(60, BRACK, respirator="full"))
    assert note.says == "Panel wipe, Bay 2: how much hydrogen fluoride fumes from it is not known."


def test_the_propellant_of_an_aerosol_counts_as_what_burns() -> None:
    butane = Ingredient("Butane", "106-97-8", 0.5)
    can = makeup("XCANKLNB", "Orlo spray", "tar", butane, aerosol=True, density_kg_l=0.6)
    told = dict(said(wiping(40, can, inside=True), makeups={can.code: can}))
    assert told["air.closed_space"] == "stop"


def test_steps_that_reach_the_eight_hour_limit_together_stop_the_day() -> None:
    one = finding("air.shift", wiping(150), another(wiping(150)), regime="EU", limits=TYPED)
    assert (one.grade, one.says) == (
        "stop", "Over the day, who does Panel wipe breathes 118 % of the 8-hour limits."
    )  # fmt: skip
    assert "Panel wipe 59 %, Second wipe 59 %." in one.because
    assert one.do == "Give one of these steps to somebody else or to another day, or take less product."


@pytest.mark.parametrize(
    ("steps", "because"),
    [
        ((wiping(150),), "one step alone is judged by its own finding"),
        ((wiping(150), another(wiping(150), person="HINSKLNB")), "two people share the day"),
        ((wiping(100), another(wiping(50))), "together below"),
    ],
)
def test_the_day_goes_on_where(steps: tuple[AirStep, ...], because: str) -> None:
    assert "air.shift" not in dict(said(*steps, regime="EU", limits=TYPED)), because


def test_a_mask_that_is_enough_takes_its_part_of_the_day_and_one_that_is_not_takes_none() -> None:
    """A full-face mask divides by 50 in the US, a half mask by 10; 21 are needed at the end of the wipe."""
    for mask, stopped in (("full", False), ("half", True)):
        told = dict(said(wiping(150, respirator=mask), another(wiping(150)), regime="US", limits=TYPED))
        assert ("air.shift" in told) == stopped, mask


def test_another_job_s_step_of_the_same_person_counts_into_the_day() -> None:
    elsewhere = another(wiping(150), job="000000000003", bay="POTHKLNB")
    places = {"PBAYTWOX": BAY_2, "POTHKLNB": replace(BAY_2, code="POTHKLNB", name="Bay 3")}
    more = {"regime": "EU", "limits": TYPED, "places": places}
    assert "air.shift" in dict(said(wiping(150), others=[elsewhere], **more))
    assert "air.shift" not in dict(said(wiping(150), **more))


@pytest.mark.parametrize(
    ("other", "counts", "because"),
    [
        (beside(100), True, "it is wiped in the same bay at the same time"),
        (beside(100, bay="POTHKLNB"), False, "another bay"),
        (beside(100, inside=True), False, "inside a cabin it is another air"),
        (beside(100, signed=True), False, "a signed step is over"),
        (
            beside(100, starts_at=FRIDAY + timedelta(hours=3), ends_at=FRIDAY + timedelta(hours=4)),
            False,
            "hours later",
        ),
    ],
)
def test_what_others_let_go_in_the_bay_counts_for_the_room(
    other: AirStep, counts: bool, because: str
) -> None:
    one = finding("air.exposure", wiping(100), others=[other])
    assert ("Others let go 61.6 g more there." in one.because) == counts, because
    assert ("breathes 60.8 %" in one.says) == counts, because


def test_a_need_of_a_kind_counts_as_what_lets_most_go_of_that_kind() -> None:
    weak = makeup("XWEKKLNB", "Weak wipe", "solvent", Ingredient("Propan-2-ol", "67-63-0", 0.1))
    step = replace(wiping(100), uses=(AirUse("n", 100 * ML, None, "solvent"),))
    one = finding("air.exposure", step, makeups={weak.code: weak, HOLLIN.code: HOLLIN})
    assert "61.6 g of isopropanol" in one.because


def test_a_density_that_nobody_knows_is_said() -> None:
    bare = replace(HOLLIN, density_kg_l=None)
    one = finding("air.exposure", wiping(100), makeups={bare.code: bare})
    assert "The density of Hollin panel wipe is not known and counts as water's or more." in one.because


def test_signed_steps_are_not_spoken_of() -> None:
    assert found(wiping(234, signed=True), coating(80, signed=True)) == ()


@given(st.floats(1, 500), st.floats(1, 500), st.floats(20, 1000), st.floats(0, 5000), st.floats(1, 20))
@settings(max_examples=100, deadline=None)
def test_a_job_beside_never_lowers_a_figure_and_who_works_breathes_no_less_than_the_room(
    mine: float, theirs: float, volume: float, flow: float, k: float
) -> None:
    place = replace(BAY_2, place=Place(volume, flow, k))
    figures = []
    for others in ((), (beside(theirs),)):
        asked = case(facts(wiping(mine), place=place, others=others))
        [of] = steps_in_air(asked, asked.facts.air.steps)
        [one] = breathed(asked, of).facts.contaminants
        assert one.room is not None
        assert one.nose is not None
        assert one.nose.worst_15 >= one.room.worst_15
        figures.append((one.room.worst_15, one.nose.worst_15, one.room.end, one.nose.end))
    assert all(after >= before * (1 - 1e-9) for before, after in zip(*figures, strict=True))


@pytest.mark.parametrize("step", [wiping(5), wiping(100), wiping(400), coating(20), coating(200)])
def test_every_finding_speaks_in_whole_sentences(step: AirStep) -> None:
    for one in found(step, wiping(60, BRACK), place=sparks(("Heater", "on", BEFORE)), at=BEFORE):
        for text in (one.says, one.because, one.do):
            assert text[:1].isupper(), text
            assert text.endswith((".", "…")), text
            assert "  " not in text, text
        assert " ".join(one.about).count(" ") == len(one.about) - 1
