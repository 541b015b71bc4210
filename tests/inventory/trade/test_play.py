"""Steps played over a car: one cause is one clash, told with its numbers, its origin and the way out."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from inventory.trade.play import Act, Surface, play, play_service
from inventory.trade.profile import Edits, profile
from tests.inventory.trade.played import HOUR_0, MONDAY, ZONE, act, only, panel, said

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


def test_foam_and_shampoo_of_one_wash_are_one_clash_and_a_later_wash_another() -> None:
    def wash(at: float, kind: str) -> Act:
        return act(kind, at, step="Wash")

    acts = (act("coating"), wash(5, "foam"), wash(5, "shampoo"), wash(9, "shampoo"))
    assert [one.step for one in play(CLEAR, acts, ZONE)] == ["Wash 5", "Wash 9"]


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


def test_a_wait_says_when_the_layer_was_put_on_and_until_when_to_wait() -> None:
    found = only("wait.keep_dry", CLEAR, act("coating", keep_dry_h=12), act("shampoo", 5))
    assert found.says == (
        "Wash: Mildrel shampoo brings water 4 h after Tidewall coating on the bonnet; "
        "it must stay dry for 12 h."
    )
    assert found.because.endswith("Tidewall coating was put on until Monday 2 March 2026, 09:00.")
    assert found.do == "Wait until Monday 2 March 2026, 21:00."
    assert found.source == "this shop"


def test_waits_run_on_the_clock_of_the_world_when_the_shop_s_clock_is_put_forward() -> None:
    """Vienna, 29 March 2026: 02:00 becomes 03:00; from 20:00 to 08:00 are 11 hours."""
    coat_ends, wash = datetime(2026, 3, 28, 20, tzinfo=ZONE), datetime(2026, 3, 29, 8, tzinfo=ZONE)
    hours = (coat_ends - HOUR_0).total_seconds() / 3600 - 1
    coat = act("coating", hours, keep_dry_h=12, wash_hold_d=0)
    later = act("shampoo", (wash - HOUR_0).total_seconds() / 3600)
    assert (coat.ends_at, later.starts_at) == (coat_ends, wash)
    found = only("wait.keep_dry", CLEAR, coat, later)
    assert "brings water 11 h after" in found.says
    assert found.do == "Wait until Sunday 29 March 2026, 09:00."


def test_the_longest_wait_of_several_layers_is_the_one_that_is_said() -> None:
    acts = (act("coating", 0, keep_dry_h=24), act("coating", 2, keep_dry_h=1, step="Coat 2"))
    found = only("wait.keep_dry", CLEAR, *acts, act("shampoo", 9))
    assert found.do == "Wait until Tuesday 3 March 2026, 09:00."


def test_a_coating_that_the_car_arrives_with_goes_on_curing() -> None:
    fresh = profile("coating", edits=Edits(wash_hold_d=10))
    on = [panel(coating="Ostwall coating", coated_at=HOUR_0 - timedelta(days=9), coating_profile=fresh)]
    assert said("wait.wash_hold", on, act("shampoo")) == [
        (
            "stop",
            "Wash: Mildrel shampoo washes 9 d after Ostwall coating on the bonnet; "
            "it must not be washed for 10 d.",
        )
    ]
    assert said("wait.wash_hold", on, act("shampoo", 24)) == []


def test_an_old_coating_of_unknown_day_is_washed_freely_and_asked_about_before_a_layer() -> None:
    on = [panel(coating="Ostwall coating")]
    assert play(on, [act("shampoo")], ZONE) == ()
    assert said("wait.recoat", on, act("coating")) == [
        ("ask", "Coat: Tidewall coating would go over Ostwall coating on the bonnet, and its day is unknown.")
    ]


def test_a_coating_among_what_arrives_is_a_coating_without_a_name() -> None:
    on = [panel(arrives={"coating": None})]
    assert [one.code for one in play(on, [act("polish")], ZONE)] == ["residue.coating"]


def test_a_stripped_coating_is_gone_for_all_that_follows() -> None:
    on = [panel(coating="Ostwall coating")]
    acts = (act("compound", 0, strips_coating=True), act("polish", 2), act("solvent", 4), act("coating", 6))
    assert play(on, acts, ZONE) == ()


@pytest.mark.parametrize(
    ("minutes", "expected", "because"),
    [
        (
            45,
            ["Coat: two layers go on within 45 min on the bonnet; the re-coat window is 60 to 180 min."],
            "",
        ),
        (90, [], "when the second starts nobody knows, but the step can hold both"),
    ],
)
def test_two_layers_of_one_step_ask_only_where_it_cannot_hold_them(
    minutes: int, expected: list[str], because: str
) -> None:
    acts = [act("coating", 0, minutes=minutes, layer=layer) for layer in (1, 2)]
    assert [says for _, says in said("wait.recoat", CLEAR, *acts)] == expected, because


def test_spot_cleaning_is_right_on_a_fresh_refinish_and_its_product_is_still_looked_at() -> None:
    young = panel("fresh_refinish", "wing", since_on=MONDAY)
    assert play([young], [act("shampoo", spot=True)], ZONE) == ()
    acid = act("acid", spot=True)
    assert [one.code for one in play([panel("anodised", "rail")], [acid], ZONE)] == ["surface.never"]


def test_spot_cleaning_leaves_nothing_that_a_coat_minds() -> None:
    acts = (act("solvent", 0), act("shampoo", 2, spot=True), act("coating", 4))
    assert play(CLEAR, acts, ZONE) == ()


def test_a_refinish_of_unknown_day_counts_as_new_until_its_day_is_typed() -> None:
    found = only("wait.fresh_refinish", [panel("fresh_refinish", "wing")], act("coating"))
    assert found.grade == "stop"
    assert found.says == (
        "Coat: Tidewall coating would go on fresh refinish, its day unknown, on the wing; it must be 7 d old."
    )
    assert found.do == "Type the day on the panel's page. The paint maker's sheet comes first."


def test_a_young_surface_says_when_it_will_be_old_enough() -> None:
    wing = panel("fresh_refinish", "wing", since_on=MONDAY)
    found = only("wait.fresh_refinish", [wing], act("coating"))
    assert found.do == "Wait until the end of Monday 9 March 2026. The paint maker's sheet comes first."
    assert found.because.endswith("Counted from the end of Monday 2 March 2026.")


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


def test_instants_are_shown_on_the_shop_s_own_clock() -> None:
    found = [
        play(CLEAR, (act("coating"), act("wax", 5)), zone)[0].do for zone in (UTC, ZoneInfo("Asia/Tokyo"))
    ]
    assert found == ["Wait until Wednesday 4 March 2026, 08:00.", "Wait until Wednesday 4 March 2026, 17:00."]


def test_nothing_on_no_car_and_no_steps() -> None:
    nobody: list[Surface] = []
    assert play(nobody, FULL_WORK, ZONE) == play(CLEAR, [], ZONE) == ()
