"""The database's own refusal to change the ledger, once for each vendor.

SQLite drops the triggers of a table that a migration rebuilds, so every migration that touches Movement ends
with `InstallGuards()`. Decision: triggers, not privileges, since an embedded SQLite knows no users.
"""

from django.db.backends.base.schema import BaseDatabaseSchemaEditor
from django.db.backends.utils import CursorWrapper
from django.db.migrations.operations.base import Operation
from django.db.migrations.state import ProjectState

TABLE = "inventory_movement"
SAYS = "The ledger is append-only: take an entry back with a reverse."

SQLITE = {
    "ledger_no_update": f"BEFORE UPDATE ON {TABLE} BEGIN SELECT RAISE(ABORT, '{SAYS}'); END",
    "ledger_no_delete": f"BEFORE DELETE ON {TABLE} BEGIN SELECT RAISE(ABORT, '{SAYS}'); END",
    # INSERT OR REPLACE deletes without asking the delete trigger, so it is caught before it inserts. One
    # EXISTS a key: with OR inside a single one SQLite reads the whole ledger at every insert.
    "ledger_no_replace": (
        f"BEFORE INSERT ON {TABLE} WHEN EXISTS (SELECT 1 FROM {TABLE} WHERE id = NEW.id) "
        f"OR EXISTS (SELECT 1 FROM {TABLE} WHERE shop_id = NEW.shop_id AND seq = NEW.seq) "
        f"OR EXISTS (SELECT 1 FROM {TABLE} WHERE reverses_id = NEW.reverses_id) "
        f"BEGIN SELECT RAISE(ABORT, '{SAYS}'); END"
    ),
}
POSTGRESQL = {
    "ledger_no_change": f"BEFORE UPDATE OR DELETE ON {TABLE} FOR EACH ROW EXECUTE FUNCTION ledger_refuses()",
    "ledger_no_truncate": f"BEFORE TRUNCATE ON {TABLE} FOR EACH STATEMENT EXECUTE FUNCTION ledger_refuses()",
}
POSTGRESQL_BODY = f" BEGIN RAISE EXCEPTION '{SAYS}' USING ERRCODE = 'integrity_constraint_violation'; END "
POSTGRESQL_FUNCTION = (
    f"CREATE OR REPLACE FUNCTION ledger_refuses() RETURNS trigger LANGUAGE plpgsql AS $${POSTGRESQL_BODY}$$"
)
# What pg_trigger.tgtype adds up to: row 1, before 2, delete 8, update 16, truncate 32.
POSTGRESQL_TYPES = {"ledger_no_change": 1 + 2 + 8 + 16, "ledger_no_truncate": 2 + 32}
EXPECTED = {"sqlite": frozenset(SQLITE), "postgresql": frozenset(POSTGRESQL)}


def statements(vendor: str) -> list[str]:
    """Return the SQL that puts every guard in place, whether or not it stands already."""
    if vendor == "sqlite":
        return [
            sql
            for name, body in SQLITE.items()
            for sql in (f"DROP TRIGGER IF EXISTS {name}", f"CREATE TRIGGER {name} {body}")
        ]
    drop_and_create = [
        sql
        for name, body in POSTGRESQL.items()
        for sql in (f"DROP TRIGGER IF EXISTS {name} ON {TABLE}", f"CREATE TRIGGER {name} {body}")
    ]
    # ALWAYS: a session that claims to be a replica fires them too.
    always = [f"ALTER TABLE {TABLE} ENABLE ALWAYS TRIGGER {name}" for name in POSTGRESQL]
    return [POSTGRESQL_FUNCTION, *drop_and_create, *always]


def missing(cursor: CursorWrapper, vendor: str) -> frozenset[str]:
    """Return the names of the guards that do not stand on the ledger's table: gone, disabled or reworded."""
    standing = _on_sqlite(cursor) if vendor == "sqlite" else _on_postgresql(cursor)
    return EXPECTED[vendor] - standing


def _on_sqlite(cursor: CursorWrapper) -> set[str]:
    cursor.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND tbl_name = %s", [TABLE])
    return {name for name, sql in cursor.fetchall() if sql == f"CREATE TRIGGER {name} {SQLITE.get(name)}"}


def _on_postgresql(cursor: CursorWrapper) -> set[str]:
    cursor.execute(
        "SELECT tgname, tgtype FROM pg_trigger JOIN pg_proc ON pg_proc.oid = tgfoid "
        "WHERE tgrelid = to_regclass(%s) AND tgenabled = 'A' AND tgqual IS NULL AND prosrc = %s",
        [TABLE, POSTGRESQL_BODY],
    )
    return {name for name, kind in cursor.fetchall() if kind == POSTGRESQL_TYPES.get(name)}


class InstallGuards(Operation):
    """A migration's last operation wherever it touches Movement."""

    reversible = True

    def state_forwards(self, app_label: str, state: ProjectState) -> None:
        """Change nothing in the models."""

    def database_forwards(
        self,
        app_label: str,
        schema_editor: BaseDatabaseSchemaEditor,
        from_state: ProjectState,
        to_state: ProjectState,
    ) -> None:
        """Put every guard in place."""
        for sql in statements(schema_editor.connection.vendor):
            schema_editor.execute(sql, params=None)

    def database_backwards(
        self,
        app_label: str,
        schema_editor: BaseDatabaseSchemaEditor,
        from_state: ProjectState,
        to_state: ProjectState,
    ) -> None:
        """Leave the guards: a migration backwards is no reason to open the ledger."""

    def describe(self) -> str:
        """Say what the migration's listing shows."""
        return "Install the ledger's guards"
