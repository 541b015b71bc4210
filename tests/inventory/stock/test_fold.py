"""What a bottle is after its entries: refusals first, each with its whole sentence."""

from datetime import date, timedelta

import pytest

from inventory.stock.rules.fold import fold
from inventory.stock.rules.lines import Held, Line, NotHereYet, Refused, TooLittle
from tests.lines import BKTR, KTRV, at, counted, filled, line, opened, received, taken_back, used
from tests.world import LITRE, ML

SPRAY = {"content": 0, "product": None, "lots": [], "sealed": False}


def folded(*lines: Line) -> Held:
    return fold(KTRV, lines)


def refusal(*lines: Line) -> Refused:
    with pytest.raises(Refused) as caught:
        folded(*lines)
    return caught.value


@pytest.mark.parametrize(
    ("lines", "says", "because"),
    [
        (
            [used(ML, -1), received(0)],
            "KTRV NXHB had not been received by then. Receive it first.",
            "nothing happens to a bottle before it is here, whichever entry was written first",
        ),
        (
            [received(0), received(1)],
            "KTRV NXHB is here already. Scan what you want to do with it.",
            "a bottle arrives once",
        ),
        (
            [received(0), used(ML, 1)],
            "KTRV NXHB is still sealed. Open it first.",
            "the open is an entry of its own, which starts the open life",
        ),
        (
            [received(0), opened(1), opened(2)],
            "KTRV NXHB is open already; only a sealed one is opened.",
            "a second opening would restart the open life",
        ),
        (
            [received(0), counted(0, 1), opened(2)],
            "KTRV NXHB is empty already; only a sealed one is opened.",
            "an empty bottle is not opened",
        ),
        (
            [received(0), opened(1), used(LITRE + 1, 2)],
            "KTRV NXHB holds less than that.",
            "content is never negative",
        ),
        (
            [received(0), opened(1), used(-5, 2)],
            "Less than nothing cannot be taken. Say how much came out.",
            "taking a negative amount would fill the bottle",
        ),
        (
            [received(0), line("discard", 1), line("move", 2, place="PBAY")],
            "KTRV NXHB left the shelf before that. Undo that first.",
            "what is gone cannot be moved",
        ),
        (
            [received(0), filled(ML, 1)],
            "KTRV NXHB is a sealed bottle of its maker. Nothing goes into it.",
            "a sealed bottle stays what its maker put in",
        ),
        (
            [received(0), filled(ML, 1, product="HOLLIN")],
            "KTRV NXHB is a sealed bottle of its maker. Nothing goes into it.",
            "rinsing it, the other advice, would be wrong",
        ),
        (
            [received(0), opened(1), filled(ML, 2, product="HOLLIN")],
            "KTRV NXHB last held something else. Rinse it and scan RINSE, then fill it.",
            "two products never meet in one bottle",
        ),
        (
            [received(0), opened(1), used(LITRE, 2), filled(ML, 3, product="HOLLIN")],
            "KTRV NXHB last held something else. Rinse it and scan RINSE, then fill it.",
            "an empty bottle still has a rest of its last content",
        ),
        (
            [received(0), opened(1), filled(ML, 2, parts=[1, 10])],
            "KTRV NXHB last held something else. Rinse it and scan RINSE, then fill it.",
            "another mix of the same product is something else",
        ),
        (
            [
                received(0),
                opened(1),
                line("fill", 2, source=KTRV, amount=ML, added=ML, product="TIDE", parts=[1, 0]),
            ],
            "KTRV NXHB cannot be filled from itself. Scan the other bottle.",
            "what is poured into itself would vanish from the book",
        ),
        (
            [received(0), opened(1), line("rinse", 2)],
            "KTRV NXHB still holds something. Use it, or empty it, then rinse.",
            "a rinse says that nothing is left",
        ),
        (
            [received(0, **SPRAY), counted(ML, 1)],
            "KTRV NXHB has never been filled. Fill it first, then count.",
            "content of what?",
        ),
        (
            [received(0), counted(-1, 1)],
            "A count line says how much: `content`, 0 or more.",
            "an observation is not negative",
        ),
        (
            [received(0), line("retest", 1)],
            "A retest names the day until which it holds: `until`.",
            "a retest without a day would say that it holds for ever",
        ),
        (
            [received(0), line("correct", 1, opened_at=at(0).isoformat())],
            "KTRV NXHB is still sealed. Open it first.",
            "a sealed bottle has no day of opening to correct",
        ),
    ],
)
def test_a_line_that_does_not_fit_is_refused_in_a_sentence(
    lines: list[Line], says: str, because: str
) -> None:
    assert refusal(*lines).says == says, because


def test_a_refusal_names_the_entry_that_does_not_fit() -> None:
    move = line("move", 2, place="PBAY", seq=907)
    assert refusal(received(0), line("discard", 1), move).seq == 907


def test_an_early_line_and_too_little_have_types_of_their_own() -> None:
    assert type(refusal(used(ML, -1), received(0))) is NotHereYet
    assert type(refusal(received(0), opened(1), used(2 * LITRE, 2))) is TooLittle


def test_a_bottle_arrives_sealed_with_what_its_line_says() -> None:
    state = folded(received(0, 30 * ML, place="PSTORE"))
    assert (state.state, state.content, state.place, state.lots) == (
        "sealed",
        30 * ML,
        "PSTORE",
        frozenset({"L1"}),
    )
    assert (state.received_at, state.opened_at, state.rinsed) == (at(0), None, False)


def test_opening_stock_arrives_open_with_its_day_and_whether_it_was_estimated() -> None:
    state = folded(received(0, sealed=False, opened_at=at(-48).isoformat(), estimated=True))
    assert (state.state, state.opened_at, state.estimated) == ("open", at(-48), True)


def test_opening_starts_the_open_life_and_use_takes_from_the_content() -> None:
    state = folded(received(0), opened(1), used(200 * ML, 2), used(300 * ML, 3))
    assert (state.state, state.content, state.opened_at, state.uses) == ("open", 500 * ML, at(1), 2)


def test_the_last_drop_leaves_an_empty_bottle() -> None:
    assert folded(received(0), opened(1), used(LITRE, 2)).state == "empty"


def test_uses_and_minutes_of_a_pad_are_wear_and_not_content() -> None:
    pad = received(0, 1, sealed=False)
    state = folded(pad, used(0, 1, minutes=40), used(0, 2, minutes=25, uses=2))
    assert (state.content, state.uses, state.minutes) == (1, 3, 65)


def test_lines_fold_in_the_order_in_which_things_happened_and_not_as_they_were_written() -> None:
    lines = [received(0), opened(1), used(300 * ML, 5), counted(900 * ML, 3)]
    assert folded(*lines).content == 600 * ML
    assert folded(*reversed(lines)) == folded(*lines)


def test_lines_of_one_instant_fold_in_the_order_of_their_numbers() -> None:
    state = folded(received(0), used(100 * ML, 1, seq=9002), opened(1, seq=9001))
    assert state.content == 900 * ML


def test_a_count_sets_what_is_there_whatever_was_booked() -> None:
    assert folded(received(0), opened(1), used(300 * ML, 2), counted(850 * ML, 3)).content == 850 * ML


def test_a_late_use_before_a_count_does_not_change_what_was_counted() -> None:
    before = folded(received(0), opened(1), counted(500 * ML, 4))
    late = folded(received(0), opened(1), counted(500 * ML, 4), used(100 * ML, 2))
    assert (before.content, late.content) == (500 * ML, 500 * ML)


def test_a_count_that_finds_a_sealed_bottle_whole_leaves_it_sealed() -> None:
    assert folded(received(0), counted(LITRE, 1)).state == "sealed"


def test_a_count_that_finds_something_missing_opens_the_bottle() -> None:
    state = folded(received(0), counted(900 * ML, 1))
    assert (state.state, state.opened_at) == ("open", at(1))


def test_a_count_brings_an_empty_bottle_back() -> None:
    state = folded(received(0), opened(1), used(LITRE, 2), counted(5 * ML, 3))
    assert (state.state, state.content, state.opened_at) == ("open", 5 * ML, at(1))


def test_a_rinsed_bottle_takes_another_product_and_forgets_the_dates_of_the_last_one() -> None:
    state = folded(
        received(0, **SPRAY),
        filled(ML, 1, opened_at=at(-9).isoformat()),
        used(ML, 2),
        line("rinse", 3),
        filled(2 * ML, 4, product="HOLLIN", lots=["L9"], opened_at=at(-1).isoformat()),
    )
    assert (state.product, state.lots, state.opened_at, state.content) == (
        "HOLLIN",
        frozenset({"L9"}),
        at(-1),
        2 * ML,
    )


def test_a_bottle_that_arrived_empty_of_something_must_be_rinsed_before_another_product() -> None:
    says = refusal(received(0, 0, sealed=False), filled(ML, 1, product="HOLLIN")).says
    assert says == "KTRV NXHB last held something else. Rinse it and scan RINSE, then fill it."


def test_a_bottle_that_a_count_found_full_is_not_rinsed_when_it_is_used_up() -> None:
    emptied = [received(0, 0, sealed=False), counted(ML, 1), used(ML, 2)]
    assert folded(*emptied).rinsed is False


def test_a_rinse_keeps_the_wear_the_place_and_the_hold() -> None:
    state = folded(
        received(0, 5 * ML, sealed=False, place="PBAY"),
        used(5 * ML, 1, minutes=30),
        line("quarantine", 2, reason="dropped"),
        line("rinse", 3),
    )
    assert (state.uses, state.minutes, state.place, state.held) == (1, 30, "PBAY", "dropped")


def test_a_top_up_keeps_every_lot_and_the_earliest_dates() -> None:
    state = folded(
        received(0, **SPRAY),
        filled(ML, 1, lots=["L2"], opened_at=at(-48).isoformat()),
        filled(ML, 2, lots=["L3"], opened_at=at(-2).isoformat()),
    )
    assert (state.lots, state.opened_at, state.content) == (frozenset({"L2", "L3"}), at(-48), 2 * ML)


def test_a_refill_without_a_rinse_keeps_the_dates_of_what_was_left_in_it() -> None:
    state = folded(
        received(0, **SPRAY),
        filled(ML, 1, parts=[1, 10]),
        used(ML, 2),
        filled(ML, 3, parts=[1, 10]),
    )
    assert state.mixed_at == at(1)


def test_what_was_mixed_elsewhere_keeps_the_hour_in_which_it_was_mixed() -> None:
    state = folded(received(0, **SPRAY), filled(ML, 5, parts=[1, 10], mixed_at=at(2).isoformat()))
    assert state.mixed_at == at(2)


def test_an_estimated_opening_poured_over_stays_an_estimate_only_where_it_is_the_earliest() -> None:
    known, guessed = at(-48).isoformat(), at(-2).isoformat()
    first = filled(ML, 1, opened_at=known)
    assert folded(received(0, **SPRAY), filled(ML, 1, opened_at=guessed, estimated=True)).estimated is True
    assert (
        folded(received(0, **SPRAY), first, filled(ML, 2, opened_at=guessed, estimated=True)).estimated
        is False
    )


def test_pouring_from_a_held_bottle_holds_the_other_one_too() -> None:
    assert folded(received(0, **SPRAY), filled(ML, 1, held="frozen")).held == "frozen"


def test_a_retest_of_one_bottle_does_not_speak_for_what_is_poured_into_it_later() -> None:
    state = folded(received(0), opened(1), line("retest", 2, until="2027-06-30"), filled(ML, 3))
    assert state.retest_on is None


def test_a_retest_holds_until_its_day() -> None:
    assert folded(received(0), line("retest", 1, until="2027-06-30")).retest_on == date(2027, 6, 30)


def test_a_hold_stays_until_it_is_released() -> None:
    hold = line("quarantine", 1, reason="left open overnight")
    assert folded(received(0), hold).held == "left open overnight"
    assert folded(received(0), hold, line("release", 2)).held == ""


def test_a_held_bottle_can_be_discarded() -> None:
    state = folded(received(0), line("quarantine", 1, reason="recalled"), line("discard", 2))
    assert (state.state, state.content) == ("gone", 0)


def test_a_reverse_restores_what_was_there_before() -> None:
    before = folded(received(0, seq=8001), opened(1, seq=8002))
    lines = [received(0, seq=8001), opened(1, seq=8002), used(200 * ML, 2, seq=8003), taken_back(8003, 3)]
    assert folded(*lines) == before


def test_the_reverse_of_a_receive_leaves_a_bottle_that_never_came() -> None:
    assert folded(received(0, seq=8101), taken_back(8101, 1)).state == "expected"


def test_a_reverse_does_not_fit_where_a_later_line_stands_on_what_it_takes_back() -> None:
    in_the_way = refusal(received(0), opened(1, seq=8202), used(ML, 2, seq=8203), taken_back(8202, 3))
    assert (in_the_way.seq, in_the_way.says) == (8203, "KTRV NXHB is still sealed. Open it first.")


def test_the_source_of_a_fill_gives_what_the_line_says() -> None:
    given = line("fill", 2, target=BKTR, source=KTRV, amount=91 * ML, added=1001 * ML, product="TIDE")
    assert folded(received(0), opened(1), given).content == 909 * ML


def test_a_corrected_opening_is_no_estimate_any_more() -> None:
    state = folded(
        received(0, sealed=False, estimated=True),
        line("correct", 1, opened_at=(at(0) - timedelta(days=3)).isoformat()),
    )
    assert (state.opened_at, state.estimated) == (at(0) - timedelta(days=3), False)
