"""The database itself refuses to change the ledger, on both engines; each guard has a twin without it."""

from collections.abc import Callable
from io import StringIO

import pytest
from django.core.checks import run_checks
from django.core.exceptions import ImproperlyConfigured
from django.core.management import call_command
from django.db import DatabaseError, connection, models, transaction

from inventory.checks import refuse_without_guards
from inventory.models import Movement, guards
from inventory.stock.rules.acts import Act
from tests import lifting
from tests.world import LITRE, NOON, bottle, hollin, larkmoor, record

pytestmark = pytest.mark.django_db
SAYS = "The ledger is append-only: take an entry back with a reverse."
COLUMNS = ", ".join(f'"{field.column}"' for field in Movement._meta.concrete_fields)
OTHERS = ", ".join(f'"{field.column}"' for field in Movement._meta.concrete_fields if field.column != "id")


def discarded(columns: str) -> str:
    """The columns of a line that reads as a discard."""
    return columns.replace('"kind"', "'discard'")


def two_lines() -> None:
    """A bottle arrives and is moved: entries 1 and 2."""
    world = larkmoor()
    ktrv = bottle(world, hollin(world), LITRE)
    record(world, Act("move", NOON, target=ktrv.code, place=world.bay_1.code))
    connection.check_constraints()  # PostgreSQL truncates no table that has checks of keys to come


def run(sql: str) -> None:
    with connection.cursor() as cursor:
        cursor.execute(sql)


def stored() -> list[tuple[int, str]]:
    return list(Movement.objects.order_by("seq").values_list("seq", "kind"))


ATTACKS = {
    "update": f"UPDATE {guards.TABLE} SET kind = 'discard' WHERE seq = 2",
    "delete": f"DELETE FROM {guards.TABLE} WHERE seq = 2",
    "a change that looks like none": f"UPDATE {guards.TABLE} SET amount = amount",
}
ON_ONE_ENGINE = {
    "insert or replace by id": (
        "sqlite",
        f"INSERT OR REPLACE INTO {guards.TABLE} ({COLUMNS}) "
        f"SELECT {discarded(COLUMNS)} FROM {guards.TABLE} WHERE seq = 2",
    ),
    "insert or replace by number": (
        "sqlite",
        f"INSERT OR REPLACE INTO {guards.TABLE} ({OTHERS}) "
        f"SELECT {discarded(OTHERS)} FROM {guards.TABLE} WHERE seq = 2",
    ),
    "update or replace": ("sqlite", f"UPDATE OR REPLACE {guards.TABLE} SET seq = 1 WHERE seq = 2"),
    "insert on conflict update": (
        "both",
        f"INSERT INTO {guards.TABLE} ({COLUMNS}) SELECT {COLUMNS} FROM {guards.TABLE} WHERE seq = 2 "
        "ON CONFLICT (id) DO UPDATE SET kind = 'discard'",
    ),
    "truncate": ("postgresql", f"TRUNCATE {guards.TABLE}"),
    "a session that says it is a replica": (
        "postgresql",
        "SET LOCAL session_replication_role = replica; "
        f"UPDATE {guards.TABLE} SET kind = 'discard' WHERE seq = 2",
    ),
}


def attacks() -> dict[str, str]:
    here = {
        name: sql for name, (vendor, sql) in ON_ONE_ENGINE.items() if vendor in ("both", connection.vendor)
    }
    return ATTACKS | here


def test_every_way_of_changing_a_line_is_refused_in_words() -> None:
    two_lines()
    for name, sql in attacks().items():
        with pytest.raises(DatabaseError, match=SAYS), transaction.atomic():
            run(sql)
        assert stored() == [(1, "receive"), (2, "move")], name


def test_twin_without_the_guards_every_one_of_them_changes_the_ledger() -> None:
    two_lines()
    lifting.lift()
    for name, sql in attacks().items():
        if name == "a change that looks like none":
            continue
        before = transaction.savepoint()
        run(sql)
        assert stored() != [(1, "receive"), (2, "move")], name
        transaction.savepoint_rollback(before)


def test_the_guards_stand_after_a_full_migration() -> None:
    with connection.cursor() as cursor:
        assert guards.missing(cursor, connection.vendor) == frozenset()


def test_the_orm_is_refused_like_anybody_else() -> None:
    two_lines()
    with pytest.raises(DatabaseError, match=SAYS), transaction.atomic():
        Movement.objects.filter(seq=2).update(kind="discard")


def missing() -> frozenset[str]:
    with connection.cursor() as cursor:
        return guards.missing(cursor, connection.vendor)


def reworded() -> None:
    """An intruder leaves triggers of the right names that do nothing."""
    if connection.vendor == "sqlite":
        lifting.lift()
        for name, event in (
            ("ledger_no_update", "UPDATE"),
            ("ledger_no_delete", "DELETE"),
            ("ledger_no_replace", "INSERT"),
        ):
            run(f"CREATE TRIGGER {name} BEFORE {event} ON {guards.TABLE} BEGIN SELECT 1; END")
    else:
        run(
            "CREATE OR REPLACE FUNCTION ledger_refuses() RETURNS trigger LANGUAGE plpgsql "
            "AS $$ BEGIN RETURN NEW; END $$"
        )


@pytest.mark.parametrize("how", [lifting.lift, reworded])
def test_a_guard_that_is_gone_or_does_nothing_counts_as_missing(how: Callable[[], None]) -> None:
    how()
    assert missing() == guards.EXPECTED[connection.vendor]


def test_the_system_check_fails_where_a_guard_is_missing() -> None:
    assert run_checks(databases=["default"]) == []
    lifting.lift()
    errors = [error for error in run_checks(databases=["default"]) if error.id == "inventory.E001"]
    assert [error.msg for error in errors] == [
        "The ledger can be changed behind the program's back: its guards "
        f"{', '.join(sorted(guards.EXPECTED[connection.vendor]))} are missing."
    ]


def test_a_server_does_not_start_without_the_guards() -> None:
    refuse_without_guards()
    lifting.lift()
    with pytest.raises(ImproperlyConfigured, match="verify --install-guards puts them back"):
        refuse_without_guards()


def test_verify_can_put_the_guards_back() -> None:
    lifting.lift()
    call_command("verify", "--install-guards", "--json", stdout=StringIO())
    assert missing() == frozenset()


@pytest.mark.django_db(transaction=True)
def test_a_later_alteration_of_the_table_ends_with_the_guards_in_place() -> None:
    added = models.CharField(max_length=9, default="x", db_default="x")
    added.set_attributes_from_name("later")
    added.model = Movement
    with connection.cursor() as cursor, connection.schema_editor() as editor:
        editor.add_field(Movement, added)
        rebuilt = guards.missing(cursor, connection.vendor)
        guards.InstallGuards().database_forwards("inventory", editor, None, None)  # type: ignore[arg-type]
        assert guards.missing(cursor, connection.vendor) == frozenset()
        editor.remove_field(Movement, added)
        guards.InstallGuards().database_forwards("inventory", editor, None, None)  # type: ignore[arg-type]
    assert missing() == frozenset()
    if connection.vendor == "sqlite":
        assert rebuilt == guards.EXPECTED["sqlite"], "the twin: without the operation a rebuilt table is open"


def test_a_guard_looks_up_keys_and_never_reads_the_whole_ledger() -> None:
    if connection.vendor != "sqlite":
        assert all("SELECT" not in body for body in guards.POSTGRESQL.values()), "these ask nothing at all"
        return
    condition = guards.SQLITE["ledger_no_replace"].partition(" WHEN ")[2].partition(" BEGIN ")[0]
    for column, value in (("shop_id", "1"), ("seq", "2"), ("reverses_id", "3"), ("id", "4")):
        condition = condition.replace(f"NEW.{column}", value)
    with connection.cursor() as cursor:
        cursor.execute(f"EXPLAIN QUERY PLAN SELECT {condition}")
        plan = [row[3] for row in cursor.fetchall()]
    assert [step for step in plan if step.startswith("SCAN inventory_movement")] == []
    assert sum(step.startswith("SEARCH inventory_movement") for step in plan) == 3
