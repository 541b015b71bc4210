"""Waits of the played steps: numbers, from when to when, on the clock of the world, shown on the shop's."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from inventory.trade.play import play
from inventory.trade.profile import Edits, profile
from tests.inventory.trade.played import HOUR_0, MONDAY, ZONE, act, only, panel, said

CLEAR = [panel()]


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
    acts = (act("coating", 0, keep_dry_h=24), act("coating", 2, keep_dry_h=10, step="Coat 2"))
    found = only("wait.keep_dry", CLEAR, *acts, act("shampoo", 9))
    assert found.do == "Wait until Tuesday 3 March 2026, 09:00."


def test_wax_waits_for_whichever_of_cure_and_keep_dry_ends_later() -> None:
    for waits in ({"cure_h": 0, "keep_dry_h": 24}, {"cure_h": 24, "keep_dry_h": 0}):
        found = only("wait.cure", CLEAR, act("coating", **waits), act("wax", 5))
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


def test_instants_are_shown_on_the_shop_s_own_clock() -> None:
    found = [
        play(CLEAR, (act("coating"), act("wax", 5)), zone)[0].do for zone in (UTC, ZoneInfo("Asia/Tokyo"))
    ]
    assert found == ["Wait until Wednesday 4 March 2026, 08:00.", "Wait until Wednesday 4 March 2026, 17:00."]


def test_the_window_is_that_of_the_layer_right_below() -> None:
    first, second = (
        act("coating", 0, recoat_from_min=30),
        act("coating", 2, step="Second", recoat_from_min=120),
    )
    assert play(CLEAR, (first, second, act("coating", 5, step="Third")), ZONE) == ()
    assert said("wait.recoat", CLEAR, first, second, act("coating", 4.5, step="Third")) == [
        (
            "ask",
            "Third: Tidewall coating would go on 90 min after Tidewall coating on the bonnet; "
            "the re-coat window is 120 to 180 min.",
        )
    ]


def test_every_product_below_flashes_off_whatever_came_between() -> None:
    acts = (act("solvent", 0, flash_min=600), act("solvent", 2, flash_min=5, step="Again"), act("coating", 4))
    assert said("wait.flash", CLEAR, *acts) == [
        (
            "ask",
            "Again: Parn wipe would go on 60 min after Parn wipe on the bonnet; "
            "it must flash off for 600 min.",
        ),
        (
            "ask",
            "Coat: Tidewall coating would go on 3 h after Parn wipe on the bonnet; "
            "it must flash off for 600 min.",
        ),
    ]
