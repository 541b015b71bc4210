"""`verify` finds what an intruder with the database's own password did, and names the first bad entry."""

import json
from collections.abc import Callable
from datetime import date
from io import StringIO

import pytest
from django.core.management import call_command
from django.db import connection

from inventory.codes import pair
from inventory.models import Container, Head, Lot, Movement, guards
from inventory.products.actions import keep_product
from inventory.stock.audit import audit
from inventory.stock.bodies import body_of
from inventory.stock.rules.acts import Act
from inventory.stock.rules.chain import hash_line
from tests import lifting
from tests.lines import at
from tests.world import LITRE, ML, World, bottle, hollin, larkmoor, record, spray_bottle, tidewall

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    """Larkmoor Works after nine entries: receives, an open, uses out of order, a count, a use taken back."""
    world = larkmoor()
    ktrv = bottle(world, hollin(world), LITRE, lot="H-1", expires_on=date(2027, 3, 31))
    spray = spray_bottle(world)
    record(world, Act("use", at(-10), source=ktrv.code, amount=100 * ML))
    record(
        world,
        Act(
            "fill",
            at(-8),
            source=ktrv.code,
            target=spray.code,
            amount=91 * ML,
            added=1001 * ML,
            parts=(1, 10),
        ),
    )
    record(world, Act("use", at(-9), source=ktrv.code, amount=50 * ML))
    wrong = record(world, Act("use", at(-7), source=spray.code, amount=20 * ML))[0]
    record(world, Act("reverse", at(-6), reverses=wrong.seq))
    record(world, Act("count", at(-5), target=ktrv.code, amount=700 * ML))
    return world


def found() -> list[str]:
    return [problem.says for problem in audit()]


def run(sql: str) -> None:
    with lifting.lifted(), connection.cursor() as cursor:
        cursor.execute(sql)


def test_an_honest_ledger_has_no_problem_out_of_order_and_reversed_lines_included(world: World) -> None:
    assert Movement.objects.count() == 9
    assert found() == []


CHANGED = "Entry {} was changed: its hash does not fit what it says."
CHANGES: list[tuple[str, str, str]] = [
    (
        "UPDATE {t} SET amount = 99000 WHERE seq = 4",
        CHANGED.format(4),
        "an amount",
    ),
    (
        "UPDATE {t} SET source_id = target_id, target_id = source_id WHERE seq = 5",
        CHANGED.format(5),
        "what was poured into what",
    ),
    (
        "UPDATE {t} SET recorded_at = happened_at WHERE seq = 4",
        CHANGED.format(4),
        "when it was written",
    ),
    (
        "UPDATE {t} SET person_id = NULL WHERE seq = 6",
        CHANGED.format(6),
        "who",
    ),
    (
        "UPDATE {t} SET facts = '{{}}' WHERE seq = 9",
        CHANGED.format(9),
        "facts",
    ),
    (
        "DELETE FROM {t} WHERE seq = 6",
        "Entry 6 is missing: after entry 5 comes entry 7.",
        "a line in the middle",
    ),
    ("DELETE FROM {t} WHERE seq = 1", "Entry 1 is missing: after entry 0 comes entry 2.", "the first line"),
    (
        "DELETE FROM {t} WHERE seq = 9",
        "Entry 9 is missing: the head counts 9 entries, the ledger has 8.",
        "the tail: only the head knows",
    ),
    (
        "UPDATE {t} SET previous_hash = hash WHERE seq = 7",
        "Entry 7 does not follow entry 6: it carries another hash of it.",
        "the link itself",
    ),
    (
        "UPDATE {t} SET format = 9 WHERE seq = 3",
        "Entry 3 is of format 9, which is not known.",
        "a made-up format",
    ),
]


@pytest.mark.parametrize(("sql", "says", "because"), CHANGES)
def test_a_changed_or_deleted_line_is_found_and_named(
    world: World, sql: str, says: str, because: str
) -> None:
    run(sql.format(t=guards.TABLE))
    assert found()[0] == says, because


def forged(after: int, **changes: object) -> Movement:
    """A line copied from entry 4, chained by the book behind entry `after`."""
    copy = Movement.objects.get(seq=4)
    copy.pk, copy.seq = None, after + 1
    for name, value in changes.items():
        setattr(copy, name, value)
    copy.previous_hash = Movement.objects.get(seq=after).hash
    copy.hash = hash_line(copy.previous_hash, body_of(copy))
    return copy


def test_a_line_slipped_in_at_the_end_is_found_by_the_head(world: World) -> None:
    forged(9).save(force_insert=True)
    assert found()[0] == "Entry 10 was slipped in: the head counts 9 entries only."


def test_a_line_slipped_into_the_middle_is_found_by_the_link_of_the_next_one(world: World) -> None:
    with lifting.lifted(), connection.cursor() as cursor:
        for seq in range(9, 4, -1):
            cursor.execute(f"UPDATE {guards.TABLE} SET seq = seq + 1 WHERE seq = %s", [seq])
        forged(4).save(force_insert=True)
    assert found()[0] == "Entry 6 does not follow entry 5: it carries another hash of it."


def test_a_replaced_end_is_found_by_the_head(world: World) -> None:
    with lifting.lifted():
        Movement.objects.filter(seq=9).delete()
        forged(8).save(force_insert=True)
    assert found()[0] == "Entry 9 is not the one that the head knows: the end was replaced."


def ktrv() -> Container:
    return Container.objects.get(full=LITRE, refillable=False)


def more_content() -> str:
    Container.objects.filter(refillable=False).update(content=900 * ML)
    return f"{ktrv().code}: content stands as 900000, the ledger says 700000."


def another_use_by() -> str:
    Container.objects.filter(refillable=False).update(use_by_on=date(2030, 1, 1))
    return f"{ktrv().code}: its use by is another one, 2027-03-31, by its dates."


def another_lot_date() -> str:
    Lot.objects.filter(number="H-1").update(expires_on=None)
    lot = Lot.objects.get(number="H-1")
    return (
        f"Lot {lot.code}: LotState(expires_on=None, best_before_on=None, made_on=None, retest_on=None, "
        "held='', recalled=False) stands there, the ledger says "
        "LotState(expires_on=datetime.date(2027, 3, 31), best_before_on=None, made_on=None, retest_on=None, "
        "held='', recalled=False)."
    )


def no_lot() -> str:
    ktrv().lots.clear()
    lot = Lot.objects.get(number="H-1")
    return f"{ktrv().code}: lots stands as frozenset(), the ledger says frozenset({{'{lot.code}'}})."


def head_is_gone() -> str:
    Head.objects.all().delete()
    return "The ledger has no head: whether its end was cut off cannot be told."


def a_bottle_from_nowhere() -> str:
    made = Container.objects.create(shop=ktrv().shop, code="BXXXXXXX", full=LITRE, state="sealed")
    return f"{made.code}: state stands as sealed, the ledger says expected."


def no_guards() -> str:
    lifting.lift()
    return f"The ledger's guards {', '.join(sorted(guards.EXPECTED[connection.vendor]))} are missing."


@pytest.mark.parametrize(
    "change",
    [more_content, another_use_by, another_lot_date, no_lot, head_is_gone, a_bottle_from_nowhere, no_guards],
)
def test_what_stands_beside_the_ledger_and_differs_is_found(world: World, change: Callable[[], str]) -> None:
    says = change()
    assert says in found()


def test_a_forged_line_that_does_not_fit_is_named_even_where_the_chain_was_made_anew(world: World) -> None:
    line = forged(9, amount=5 * LITRE)
    line.save(force_insert=True)
    Head.objects.update(seq=10, hash=line.hash)
    assert found() == [f"Entry 10 does not fit: {pair(ktrv().code)} holds less than that."]


def test_names_can_be_removed_and_the_lines_still_verify(world: World) -> None:
    world.tomas.name = world.tomas.username = "left the shop"
    world.tomas.save()
    assert found() == []


def test_the_command_prints_one_document_and_ends_with_1_where_something_is_wrong(
    world: World,
) -> None:
    run(f"UPDATE {guards.TABLE} SET amount = 99000 WHERE seq = 4")
    printed = StringIO()
    with pytest.raises(SystemExit) as ended:
        call_command("verify", "--json", stdout=printed)
    document = json.loads(printed.getvalue())
    assert ended.value.code == 1
    assert (document["ok"], document["entries"]) == (False, 9)
    assert document["problems"][0] == {
        "shop": "larkmoor",
        "entry": 4,
        "says": "Entry 4 was changed: its hash does not fit what it says.",
    }


def test_the_command_says_in_words_that_all_is_well(world: World) -> None:
    printed = StringIO()
    call_command("verify", stdout=printed)
    says = "All 9 entries stand as they were written, and the shelf is what they say.\n"
    assert printed.getvalue() == says


def test_two_shops_have_chains_of_their_own(world: World) -> None:
    other = larkmoor("brackside")
    bottle(other, tidewall(other), 30 * ML)
    assert found() == []
    assert list(Head.objects.order_by("id").values_list("seq", flat=True)) == [9, 1]


def test_a_life_that_was_edited_after_a_bottle_left_is_no_problem(world: World) -> None:
    of = tidewall(world)
    gone = bottle(world, of, 30 * ML, opened_at=at(-24))
    record(world, Act("discard", at(-1), target=gone.code))
    of.open_life = 30
    keep_product(of)
    assert found() == []
    record(world, Act("reverse", at(0), reverses=Movement.objects.get(kind="discard").seq))
    assert found() == [], "it comes back with the life that holds now"
