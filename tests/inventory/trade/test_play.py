"""Steps played over a car: one cause is one clash, told with its numbers, its origin and the way out."""

from datetime import datetime, timedelta

import pytest

from inventory.trade.play import Act, Surface, play, play_service
from tests.inventory.trade.played import MONDAY, ZONE, act, only, panel, said

CLEAR = [panel()]
PANELS = [panel(name=name) for name in ("bonnet", "roof", "boot", "left door", "right door")]
FULL_WORK = (
    act("foam", 0, minutes=20),
    act("wheel", 0.5, minutes=20, family="neutral"),
    act("shampoo", 1, minutes=20),
    act("iron", 1.5, minutes=20),
    act("tar", 2, minutes=20),
    act("lubricant", 2.5, minutes=20),
    act("clay", 2.5, minutes=20),
    act("compound", 4),
    act("polish", 6),
    act("solvent", 8, minutes=30),
    act("coating", 9),
    act("coating", 11, step="Coat 2", layer=2),
    act("dressing", 13),
    act("interior", 14),
)


@pytest.mark.parametrize("key", ["clear_coat", "single_stage", "gel_coat", "painted_plastic", "carbon"])
def test_a_whole_job_in_the_order_of_work_runs_into_nothing(key: str) -> None:
    assert play([panel(key), panel("powder_coat", "wheel"), panel("rubber", "tyre")], FULL_WORK, ZONE) == ()


def test_ordinary_work_on_an_ordinary_car_asks_for_its_bare_plastic_to_be_masked_once_and_no_more() -> None:
    outside = ["clear_coat", "painted_plastic", "glass", "lamp", "chrome", "stainless", "black_trim"]
    others = ["lacquered_wheel", "rubber", "top_vinyl", "leather", "textile", "bare_plastic"]
    car = [panel(key, key) for key in (*outside, *others)]
    found = play(car, FULL_WORK, ZONE)
    assert [(one.code, one.step, one.surfaces) for one in found] == [
        ("surface.ask", "Cut 4", ("bare_plastic",))
    ]


def test_one_cause_on_many_panels_is_one_clash_that_counts_them() -> None:
    found = only("residue.oils", PANELS, act("polish", 0), act("coating", 4))
    assert found.says == "Coat: Tidewall coating would go over oils, fillers or soap film on 5 panels."
    assert found.surfaces == ("bonnet", "boot", "left door", "right door", "roof")
    assert (found.step, found.product) == ("Coat 4", "coating")


def test_two_panels_are_named() -> None:
    found = only("residue.oils", PANELS[:2], act("polish", 0), act("coating", 4))
    assert found.says == (
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet and the roof."
    )


def test_a_clash_says_who_left_it_and_when_and_what_to_do_first() -> None:
    found = only("residue.oils", CLEAR, act("polish", 0), act("coating", 4))
    assert found.because == (
        "What goes over oils does not hold. "
        "It is there from Lunet polish (Refine, until Monday 2 March 2026, 09:00)."
    )
    assert found.do == "Put a solvent wipe before this step, after the last polish, clay, wash or dressing."


def test_what_the_car_arrives_with_says_since_when() -> None:
    since = datetime(2025, 5, 3, 12, tzinfo=ZONE)
    on = [panel(arrives={"wax": since}), panel(name="roof", arrives={"wax": None})]
    assert only("residue.wax", on, act("coating")).because == (
        "What goes over wax holds on the wax and not on the paint. "
        "The car arrives with it since Saturday 3 May 2025. The car arrives with it."
    )


def test_a_residue_that_no_table_has_is_refused() -> None:
    with pytest.raises(KeyError, match="mud"):
        play([panel(arrives={"mud": None})], [], ZONE)


def test_one_missing_wipe_is_told_at_the_first_layer_and_not_at_the_second() -> None:
    acts = (act("polish", 0), act("coating", 4), act("coating", 6, step="Coat 2"))
    assert [one.step for one in play(CLEAR, acts, ZONE)] == ["Coat 4"]


def test_one_coating_in_the_way_is_told_once_however_many_polishes_follow() -> None:
    on = [panel(coating="Ostwall coating")]
    found = play(on, (act("compound", 0), act("polish", 2)), ZONE)
    assert [(one.code, one.step) for one in found] == [("residue.coating", "Cut 0")]


def test_a_layer_buries_what_lay_below_it() -> None:
    acts = (act("polish", 0), act("solvent", 2), act("coating", 4))
    assert play(CLEAR, (*acts, act("clay", 30 * 24)), ZONE) == ()
    assert [one.code for one in play(CLEAR, (*acts[:2], act("clay", 4)), ZONE)] == ["order.clay_after_polish"]


def test_what_is_done_counts_for_what_it_left_and_its_cause_is_said_of_the_next_step() -> None:
    on, acts = [panel(coating="Ostwall coating")], (act("compound", 0), act("polish", 2))
    assert [one.step for one in play(on, acts, ZONE, done={"Cut 0"})] == ["Refine 2"]
    assert play(CLEAR, (act("polish", 0), act("coating", 4)), ZONE, done={"Refine 0", "Coat 4"}) == ()
    assert [one.code for one in play(CLEAR, (act("polish", 0), act("coating", 4)), ZONE, {"Refine 0"})] == [
        "residue.oils"
    ]


def test_a_wheel_that_was_hot_at_a_step_that_is_done_has_cooled() -> None:
    wheel = [panel("powder_coat", "wheel", hot=True)]
    assert play(wheel, (act("shampoo", 1), act("iron", 2)), ZONE, done={"Wash 1"}) == ()


def test_foam_and_shampoo_of_one_wash_are_one_clash_and_a_later_wash_another() -> None:
    def wash(at: float, kind: str) -> Act:
        return act(kind, at, step="Wash")

    acts = (act("coating"), wash(5, "foam"), wash(5, "shampoo"), wash(9, "shampoo"))
    assert [one.step for one in play(CLEAR, acts, ZONE)] == ["Wash 5", "Wash 9"]
    young = [panel("fresh_refinish", "wing", since_on=MONDAY)]
    assert [one.step for one in play(young, acts[1:], ZONE)] == ["Wash 5", "Wash 9"]


def test_two_waxes_of_one_step_are_one_clash() -> None:
    acts = (act("coating"), act("wax", 5), act("wax", 5, family="wax"))
    assert [one.code for one in play(CLEAR, acts, ZONE)] == ["wait.cure"]


def test_silicone_and_oils_of_one_dressing_are_one_clash_that_one_wipe_mends() -> None:
    sill = [panel("bare_plastic", "sill")]
    acts = (act("dressing", 0), act("coating", 2, touches=frozenset({"plastic"})))
    assert [one.code for one in play(sill, acts, ZONE)] == ["residue.oils"]


def test_the_gravest_come_first_and_within_a_grade_the_earliest() -> None:
    acts = (act("compound", 0), act("coating", 2), act("topper", 3.5), act("wax", 4), act("shampoo", 5))
    assert [(one.grade, one.code) for one in play(CLEAR, acts, ZONE)] == [
        ("stop", "residue.oils"),
        ("stop", "wait.cure"),
        ("stop", "wait.keep_dry"),
        ("ask", "wait.topper"),
        ("tell", "order.no_refining"),
    ]


def test_a_service_asks_once_about_a_cut_that_nothing_refines_and_its_jobs_tell() -> None:
    acts = (act("compound", 0), act("solvent", 2), act("coating", 4))
    assert [(one.code, one.grade) for one in play_service(acts)] == [("order.no_refining", "ask")]
    assert [(one.code, one.grade) for one in play(CLEAR, acts, ZONE)] == [("order.no_refining", "tell")]


def test_a_service_that_refines_its_cut_is_asked_nothing() -> None:
    assert play_service(FULL_WORK) == ()


def test_a_step_that_does_not_say_in_which_order_is_played_in_the_order_of_work() -> None:
    acts = (act("coating", 0, step="All"), act("solvent", 0, step="All"), act("polish", 0, step="All"))
    assert play(CLEAR, acts, ZONE) == ()


def test_the_maker_s_primer_polish_of_one_step_goes_before_its_coat() -> None:
    coat, primer = act("coating", 2, step="All"), act("coating", 2, step="All", family="primer")
    assert play(CLEAR, (act("compound", 0), coat, primer), ZONE) == ()


def test_only_what_the_product_touches_is_played() -> None:
    assert play([panel("glass", "windscreen")], (act("polish", 0), act("coating", 4)), ZONE) == ()
    everywhere = act("coating", 4, touches=frozenset({"glass"}))
    wax = panel("glass", "windscreen", arrives={"wax": None})
    assert said("residue.wax", [wax], everywhere) == [
        ("stop", "Coat: Tidewall coating would go over wax on the windscreen.")
    ]


def test_a_coating_among_what_arrives_is_a_coating_without_a_name() -> None:
    on = [panel(arrives={"coating": None})]
    assert [one.code for one in play(on, [act("polish")], ZONE)] == ["residue.coating"]


def test_a_stripped_coating_is_gone_for_all_that_follows() -> None:
    on = [panel(coating="Ostwall coating")]
    acts = (act("compound", 0, strips_coating=True), act("polish", 2), act("solvent", 4), act("coating", 6))
    assert play(on, acts, ZONE) == ()


def test_spot_cleaning_is_right_on_a_fresh_refinish_and_its_product_is_still_looked_at() -> None:
    young = panel("fresh_refinish", "wing", since_on=MONDAY)
    assert play([young], [act("shampoo", spot=True)], ZONE) == ()
    acid = act("acid", spot=True)
    assert [one.code for one in play([panel("anodised", "rail")], [acid], ZONE)] == ["surface.never"]


def test_spot_cleaning_leaves_nothing_that_a_coat_minds() -> None:
    acts = (act("solvent", 0), act("shampoo", 2, spot=True), act("coating", 4))
    assert play(CLEAR, acts, ZONE) == ()


def test_the_shop_s_word_on_a_surface_is_its_source_and_stops_or_asks() -> None:
    never, asks = act("glass", never=("glass",)), act("glass", asks=("glass",))
    on = [panel("glass", "windscreen")]
    found = only("surface.never", on, never)
    assert (found.grade, found.source) == ("stop", "this shop")
    assert (
        found.says == "Glass: Vitrel cleaner would harm glass on the windscreen, as the product's page says."
    )
    assert found.because == "The page of Vitrel cleaner names glass."
    assert only("surface.ask", on, asks).grade == "ask"


def test_only_the_first_product_meets_a_hot_wheel() -> None:
    wheel = [panel("powder_coat", "wheel", hot=True)]
    acts = (act("tape", 0, touches=frozenset({"wheels"})), act("shampoo", 1), act("iron", 2))
    assert [(one.code, one.step) for one in play(wheel, acts, ZONE)] == [("surface.hot", "Wash 1")]


def test_two_panels_of_one_name_are_one_place_and_the_gravest_numbers_are_said() -> None:
    young, younger = (panel("fresh_refinish", "wing", since_on=MONDAY - timedelta(days=d)) for d in (5, 2))
    found = only("wait.fresh_refinish", [young, younger], act("coating"))
    assert found.surfaces == ("wing",)
    assert found.do.startswith("Wait until the end of Saturday 7 March 2026.")


def test_nothing_on_no_car_and_no_steps() -> None:
    nobody: list[Surface] = []
    assert play(nobody, FULL_WORK, ZONE) == play(CLEAR, [], ZONE) == ()
