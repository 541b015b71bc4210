"""What meets on a car and in a bay: stopped where it harms, silent about ordinary work in the right order."""

from dataclasses import replace
from datetime import timedelta

import pytest

from inventory.precheck.questions import Facts
from inventory.precheck.questions.reactions import in_the_bay, one_after_the_other
from inventory.precheck.questions.topics.reactions import InBay, ReactionFacts, Used, Wetted
from inventory.precheck.rules import Check, check_job, may_answer
from safety.reactions.values import Substance
from tests.inventory.precheck.cases import FRIDAY, NOON, facts

ACID = Substance("Brack wheel acid", frozenset({"1", "15"}), frozenset({"H314"}), water_based=True)
IRON = Substance("Fenmoor iron remover", frozenset({"20", "ammonium"}), water_based=True)
BLEACH = Substance("Brack bleach cleaner", frozenset({"104", "10", "hypochlorite"}), water_based=True)
SOAP = Substance("Fenmoor alkaline wash", frozenset({"10"}), water_based=True)
WIPE = Substance("Hollin panel wipe", frozenset({"4"}))
LIME = Substance("Brack lime remover", frozenset({"3"}), water_based=True)
KNOWN = {"XACD": ACID, "XRON": IRON, "XBLE": BLEACH, "XSAP": SOAP, "XWPE": WIPE, "XLME": LIME}
HOUR = timedelta(hours=1)
BAY = "PBAYTWOX"


def step(name: str, hour: int, *products: str, **more: object) -> Wetted:
    starts = FRIDAY + hour * HOUR
    given: dict[str, object] = {"bay": BAY, "products": products, **more}
    return Wetted(f"S{name[:3].upper()}{hour}", name, starts, starts + HOUR, **given)  # type: ignore[arg-type]


def job(*steps: Wetted, bay: tuple[InBay, ...] = (), used: tuple[Used, ...] = ()) -> Facts:
    return replace(facts(), reactions=ReactionFacts(steps, bay, used, KNOWN))


def check(of: Facts, at=NOON) -> Check:
    return check_job(of, at, questions=[one_after_the_other, in_the_bay])


def test_iron_remover_after_acid_without_a_rinse_stops() -> None:
    [found] = check(job(step("Wheel acid", 0, "XACD"), step("Iron", 1, "XRON"))).findings

    assert (found.code, found.grade, found.about) == ("reaction.car", "stop", ("XACD", "XRON", "SIRO1"))
    assert found.says.startswith(
        "Brack wheel acid and Fenmoor iron remover follow one another on this car without a rinse."
    )
    assert found.do == "Rinse car and floor with water to a clear drain, and sign the rinse."


def test_the_same_with_a_rinse_signed_after_the_acid_is_ordinary_work() -> None:
    acid = step("Wheel acid", 0, "XACD")
    rinse = step("Rinse", 1, rinses=True, signed_at=FRIDAY + 1.5 * HOUR)
    iron = step("Iron", 2, "XRON")

    assert check(job(acid, rinse, iron, used=(Used("XACD", FRIDAY),))).findings == ()


def test_a_rinse_signed_before_the_acid_was_poured_rinsed_nothing() -> None:
    acid = step("Wheel acid", 0, "XACD")
    rinse = step("Rinse", 1, rinses=True, signed_at=FRIDAY - HOUR)
    iron = step("Iron", 2, "XRON")

    for used in ((), (Used("XACD", FRIDAY),)):
        [found] = check(job(acid, rinse, iron, used=used)).findings
        assert (found.code, found.grade) == ("reaction.car", "stop")


def test_what_was_used_unplanned_counts_as_well() -> None:
    iron = step("Iron", 2, "XRON")

    assert check(job(iron)).findings == ()
    [found] = check(job(iron, used=(Used("XACD", FRIDAY),))).findings
    assert (found.code, found.grade, found.about[:2]) == ("reaction.car", "stop", ("XACD", "XRON"))


def test_iron_remover_that_was_done_first_stops_the_acid_that_is_left() -> None:
    acid, iron = step("Wheel acid", 0, "XACD"), step("Iron", 2, "XRON", signed_at=FRIDAY)

    [found] = check(job(acid, iron)).findings

    assert found.about == ("XRON", "XACD", acid.step)


def test_a_rinse_that_is_planned_in_the_right_place_is_no_trouble_before_the_day() -> None:
    rinse = step("Rinse", 1, rinses=True)

    assert check(job(step("Wheel acid", 0, "XACD"), rinse, step("Iron", 2, "XRON"))).findings == ()


@pytest.mark.parametrize(
    ("acid_signed", "at", "grades", "because"),
    [
        (True, FRIDAY, ["stop"], "the acid is done: the rinse is what comes next, and it is not signed"),
        (False, FRIDAY, [], "the acid is still under way"),
        (False, FRIDAY + 2 * HOUR, ["stop"], "the hour of the iron remover has come"),
    ],
)
def test_an_unsigned_rinse_stops_what_comes_after_it_once_that_is_at_hand(
    acid_signed, at, grades, because
) -> None:
    acid = step("Wheel acid", 0, "XACD", signed_at=FRIDAY if acid_signed else None)
    of = job(acid, step("Rinse wheels", 1, rinses=True), step("Iron", 2, "XRON"))

    found = check(of, at).findings

    assert [one.grade for one in found] == grades, because
    if found:
        assert found[0].says == "Iron waits for the rinse: Rinse wheels is not signed."
        assert found[0].do == "Rinse car and floor with water to a clear drain, then sign Rinse wheels."


def test_a_step_that_rinses_after_itself_counts_as_the_rinse() -> None:
    acid = step("Wheel acid", 0, "XACD", rinses=True, signed_at=FRIDAY + HOUR)

    assert check(job(acid, step("Iron", 1, "XRON")), FRIDAY).findings == ()
    unsigned = replace(acid, signed_at=None)
    assert [one.grade for one in check(job(unsigned, step("Iron", 1, "XRON")), FRIDAY + HOUR).findings] == [
        "stop"
    ]


def test_a_rinse_before_both_parts_nothing() -> None:
    rinse = step("Rinse", 0, rinses=True, signed_at=FRIDAY - HOUR)

    found = check(job(rinse, step("Wheel acid", 1, "XACD"), step("Iron", 2, "XRON"))).findings

    assert [one.code for one in found] == ["reaction.car"]


def test_two_products_of_one_step_meet_as_well() -> None:
    [found] = check(job(step("Wheels", 0, "XACD", "XRON"))).findings

    assert (found.code, found.grade) == ("reaction.car", "stop")


def test_alkaline_wash_then_iron_then_wipe_is_ordinary_work() -> None:
    of = job(step("Wash", 0, "XSAP"), step("Iron", 1, "XRON"), step("Wipe", 2, "XWPE"))

    assert check(of).findings == ()


def test_what_is_signed_is_over() -> None:
    of = job(step("Wheel acid", 0, "XACD", signed_at=FRIDAY), step("Iron", 1, "XRON", signed_at=FRIDAY))

    assert check(of).findings == ()


def test_bleach_at_another_car_while_acid_is_used_here_stops() -> None:
    other = InBay(BAY, "XBLE", FRIDAY, FRIDAY + HOUR, "Red van")

    [found] = check(job(step("Lime", 0, "XLME"), bay=(other,))).findings

    assert (found.code, found.grade) == ("reaction.bay", "stop")
    assert found.says.startswith(
        "Brack bleach cleaner and Brack lime remover are both in use in one bay: bleach and acid never are."
    )
    assert found.says.endswith("Red van is in the bay then.")


@pytest.mark.parametrize(
    ("bay", "hours", "because"),
    [
        ("PBAYNEXX", 0, "in another bay"),
        (BAY, 1, "an hour later, when the acid is done"),
    ],
)
def test_bleach_elsewhere_or_later_is_silent(bay: str, hours: int, because: str) -> None:
    starts = FRIDAY + hours * HOUR
    other = InBay(bay, "XBLE", starts, starts + HOUR, "Red van")

    assert check(job(step("Lime", 0, "XLME"), bay=(other,))).findings == (), because


def test_an_iron_remover_at_another_car_while_acid_is_used_here_asks_apart_from_the_note() -> None:
    bay = (InBay(BAY, "XBLE"), InBay(BAY, "XRON", FRIDAY, FRIDAY + HOUR, "Red van"))

    asks, note = check(job(step("Lime", 0, "XLME"), bay=bay)).findings

    assert (asks.code, asks.grade, asks.about) == ("reaction.bay", "ask", ("XLME", "XRON", "SLIM0"))
    assert asks.says == (
        "Brack lime remover and Fenmoor iron remover are both in use in one bay, and a rinse must part them. "
        "Red van is in the bay then."
    )
    assert asks.do == "Finish one, rinse car and floor to a clear drain, air the bay, then take the other."
    assert (note.code, note.grade) == ("reaction.bay_closed", "tell")


@pytest.mark.parametrize(
    ("product", "bay", "hours", "because"),
    [
        ("XLME", "PBAYNEXX", 0, "in another bay"),
        ("XLME", BAY, 1, "an hour later, when the acid is done"),
        ("XSAP", BAY, 0, "an alkaline wash needs no rinse before an iron remover"),
    ],
)
def test_an_iron_remover_elsewhere_or_later_or_beside_a_wash_never_asks(
    product: str, bay: str, hours: int, because: str
) -> None:
    starts = FRIDAY + hours * HOUR
    other = InBay(bay, "XRON", starts, starts + HOUR, "Red van")

    found = check(job(step("Wash", 0, product), bay=(other,))).findings

    assert [one.code for one in found if one.grade != "tell"] == [], because


def test_closed_bottles_that_share_the_bay_are_one_note_however_many() -> None:
    standing = (InBay(BAY, "XBLE"), InBay(BAY, "XACD"))

    of = job(step("Lime", 0, "XLME"), step("Iron", 0, "XRON"), bay=standing)

    [found] = check_job(of, NOON, questions=[in_the_bay]).findings

    assert (found.code, found.grade) == ("reaction.bay_closed", "tell")
    assert found.do == "Keep them closed, and never let one into the other's bucket or drain."


def test_no_owner_lifts_what_harms_people() -> None:
    [found] = check(job(step("Wheel acid", 0, "XACD"), step("Iron", 1, "XRON"))).findings

    assert not may_answer(found, by_owner=True)
