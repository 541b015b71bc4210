"""What a measurement changes in a task, and what it never lifts: a wipe of 300 g of isopropanol in an hour.

US lists: OSHA PEL and NIOSH REL 400 ppm in 8 hours, REL 500 ppm in 15 minutes, IDLH 2000
(exposure.md section 2).
"""

from safety.air.answer import Air, air
from safety.air.facts import facts_of
from safety.air.measured import judged
from safety.air.task import read_task
from safety.air.values import Measured, Task
from safety.findings import Finding
from tests.safety.air.results import ON, SHORT, TWA, samples
from tests.safety.air.tasks import ISOPROPANOL, QUARTZ, XYLENE, document

WIPE = ISOPROPANOL | {"grams": 300}


def breathed(*emissions: dict[str, object], measured: tuple[Measured, ...] = (), **more: object) -> Air:
    """Return the air of a task with what was measured of it."""
    task = read_task(document(*emissions, **more))
    whole = Task(**{**vars(task), "measured": measured})
    return air(whole, ON)


def exposure(*emissions: dict[str, object], **more: object) -> Finding:
    """Return what is found of its exposure."""
    [found] = [one for one in breathed(*emissions, **more).findings if one.code == "air.exposure"]  # type: ignore[arg-type]
    return found


def results(*values: float, regime: str = "US", **more: str) -> tuple[Measured, ...]:
    """Return results against the 8-hour and the 15-minute limit of isopropanol (500 ppm), alike."""
    return (
        *judged(samples(*values, kind=TWA, **more), regime, ON, {}),
        *judged(samples(*values, kind=SHORT, **more), regime, ON, {}),
    )


def test_a_result_at_the_limit_stops_what_the_model_would_only_ask() -> None:
    small = ISOPROPANOL | {"grams": 10}
    assert exposure(small).grade == "tell"
    found = exposure(small, measured=results(400, 20, 20))
    assert found.grade == "stop"
    assert found.says == "Who works here breathes 100 % of the 8-hour limit (isopropanol), as measured."
    assert found.do.startswith("Change the plan: less product with a new measurement, local exhaust with ")


def test_results_that_decide_nothing_leave_the_larger_of_both() -> None:
    """300 g an hour reckon to 91 % of 500 ppm at the nose (N2); two results of 39 decide nothing."""
    assert exposure(WIPE, measured=results(39, 38)).says == exposure(WIPE).says
    small = ISOPROPANOL | {"grams": 10}
    found = exposure(small, measured=results(60, 60))
    assert (found.grade, found.says) == (
        "ask", "Who works here breathes 15 % of the 8-hour limit (isopropanol), as measured."
    )  # fmt: skip


def test_results_shown_to_be_below_end_the_ask_and_say_who_measured() -> None:
    assert exposure(WIPE).grade == "ask"
    said = tuple(
        Measured(**{**vars(one), "by": "on 2 June 2026 by A. Finch", "within": "at most 300 ml"})
        for one in results(39, 38, 35)
    )
    found = exposure(WIPE, measured=said)
    assert found.grade == "tell"
    assert found.says == "Who works here breathes 9.75 % of the 8-hour limit (isopropanol), as measured."
    assert (
        "Measured on 2 June 2026 by A. Finch: at most 300 ml. Isopropanol against the 8-hour limit: 3 "
        "results, the largest 39 ppm, 9.75 % of 400 ppm (OSHA PEL, read)" in found.because
    )
    assert found.do == "Keep to what was measured: at most 300 ml."
    assert found.source.endswith("; EN 689:2018, 5.5.2 (from memory: check it)")


def test_what_only_one_kind_was_measured_of_leaves_the_other_to_the_model() -> None:
    found = exposure(WIPE, measured=results(39, 38, 35)[:1])
    assert found.grade == "ask"
    assert "Not measured, so reckoned: isopropanol against the 15-minute limit." in found.because


def test_a_measured_share_counts_into_the_sum_with_what_is_reckoned() -> None:
    """Trap 6: what was not measured asks from a tenth by itself, however well the other was measured."""
    beside = XYLENE | {"grams": 100}
    alone = exposure(beside)
    assert alone.grade == "ask"
    assert exposure(WIPE, beside, measured=results(1, 1, 1, 1, 1)).grade == "ask"


def test_two_shares_below_their_own_bars_that_pass_it_together_still_ask() -> None:
    """9.75 % of isopropanol and 9 % of xylene, three results each: 18.75 % together, three want 10 %."""
    both = (*results(39, 38, 35), *results(9, 9, 9, cas="1330-20-7"))
    found = exposure(WIPE, XYLENE | {"grams": 1}, measured=both)
    assert found.grade == "ask"
    one_alone = exposure(WIPE, measured=results(39, 38, 35))
    assert one_alone.grade == "tell"


def test_a_measurement_lifts_neither_fire_nor_what_is_immediately_dangerous() -> None:
    closed = {"volume_m3": 3, "air_m3_h": 0}
    plain = {one.code for one in breathed(WIPE, place=closed).findings if one.grade == "stop"}
    shown = {
        one.code
        for one in breathed(WIPE, place=closed, measured=results(1, 1, 1)).findings
        if one.grade == "stop"
    }
    assert plain - shown == {"air.exposure"}
    assert {"air.idlh", "air.closed_space", "air.lel"} <= shown


def test_a_result_at_the_idlh_value_is_immediately_dangerous_behind_any_filter() -> None:
    """2000 ppm is isopropanol's IDLH; five times the limit would be within a half mask's ten."""
    small = ISOPROPANOL | {"grams": 10}
    codes = {one.code for one in breathed(small, respirator="half", measured=results(2000)).findings}
    assert "air.idlh" in codes
    under = breathed(small, respirator="half", measured=results(900))
    assert "air.idlh" not in {one.code for one in under.findings}


def test_dust_without_its_mask_is_ended_by_exhaust_that_catches_dust_and_silica_is_not() -> None:
    for emission, ended in ((QUARTZ, False), ({"name": "lacquer dust", "form": "dust"}, True)):
        task = read_task(document(emission | {"grams": 1}))
        for caught in (False, True):
            whole = Task(**{**vars(task), "dust_caught": caught})
            stops = [one for one in air(whole, ON).findings if one.code == "air.named_protection"]
            assert bool(stops) == (not (caught and ended)), (emission, caught)


def test_a_mask_without_a_factor_in_the_regime_protects_against_nothing_and_says_so() -> None:
    """Powered masks have a factor in 29 CFR 1910.134 Table 1; BS EN 529 gives powered hoods alone."""
    fluoride = {"name": "hydrogen fluoride", "cas": "7664-39-3", "grams": 1}
    for regime, stopped in (("US", False), ("UK", True), ("EU", True)):
        found = breathed(fluoride, regime=regime, respirator="powered_full").findings
        stops = [one for one in found if one.code == "air.named_protection"]
        assert bool(stops) == stopped, regime
    assert stops[0].because == (
        "What it does does not follow the average of a room. A powered full-face mask has no protection "
        "factor in the UK table; no factor is known here, so it counts as none."
    )
    assert stops[0].do == (
        "Wear one of: a full-face mask, a loose powered hood and an air-fed mask; or do without it."
    )


def test_the_bar_of_a_sum_is_that_of_the_fewest_results() -> None:
    """59 ppm of four results pass 15 %; beside three results of xylene, 100 ppm, the sum wants a tenth."""
    alone = judged(samples(39, 38, 41, 59), "US", ON, {})
    beside = judged(samples(1, 1, 1, cas="1330-20-7"), "US", ON, {})
    task = read_task(document(WIPE, XYLENE | {"grams": 1}))
    for measured, bar_of_it in ((alone, 0.15), (alone + beside, 0.1)):
        facts = facts_of(Task(**{**vars(task), "measured": measured}), ON)
        assert facts.nose[0].asks_at == bar_of_it


def test_why_no_air_flow_is_named_is_told_until_what_it_is_about_was_measured() -> None:
    """Xylene's lowest limit in any list is 50 ppm, under 100: no figure, but it may be measured."""
    task = XYLENE | {"grams": 100}
    shown = (
        *judged(samples(9, 8, 7, cas="1330-20-7"), "US", ON, {}),
        *judged(samples(9, 8, 7, cas="1330-20-7", kind=SHORT), "US", ON, {}),
    )
    for measured, told in (((), True), (shown[:1], True), (shown, False)):
        codes = {one.code for one in breathed(task, measured=measured).findings}
        assert ("air.no_figure" in codes) == told, measured
