"""The twin of a scan: the rows that it writes, written by the database's driver alone, in one transaction.

A scan is done and rolled back while its writing statements are noted; then the driver writes exactly these.
"""

from collections.abc import Callable, Sequence
from typing import Any

from django.db import connection, transaction

Statement = tuple[str, Sequence[Any]]
WRITING = ("INSERT", "UPDATE", "DELETE")


def statements_of(do: Callable[[], object]) -> list[Statement]:
    """Return what `do` writes, without its having been done."""
    noted: list[Statement] = []

    def note(execute: Callable[..., Any], sql: str, params: Any, many: bool, context: Any) -> Any:
        if sql.startswith(WRITING):
            noted.append((sql, tuple(params or ())))
        return execute(sql, params, many, context)

    with transaction.atomic(), connection.execute_wrapper(note):
        do()
        transaction.set_rollback(True)
    return noted


def queries_of(do: Callable[[], object]) -> int:
    """Return how many statements `do` sends, reading and writing, transactions not counted."""
    sent: list[str] = []

    def note(execute: Callable[..., Any], sql: str, params: Any, many: bool, context: Any) -> Any:
        sent.append(sql)
        return execute(sql, params, many, context)

    with connection.execute_wrapper(note):
        do()
    return sum(not sql.startswith(("SAVEPOINT", "RELEASE")) for sql in sent)


def level_keys(statements: list[Statement]) -> None:
    """Let PostgreSQL hand out the keys again that the rolled back scan had: rows refer to one another."""
    if connection.vendor != "postgresql":
        return
    tables = {sql.split('"')[1] for sql, _ in statements if sql.startswith("INSERT")}
    with connection.cursor() as cursor:
        for table in sorted(tables):
            cursor.execute(
                "SELECT setval(pg_get_serial_sequence(%s, 'id'), "
                f'(SELECT coalesce(max(id), 0) + 1 FROM "{table}"), false)',
                [table],
            )


def write(statements: list[Statement]) -> None:
    """Write statements by the bare driver: begin, each of them, commit."""
    driver = connection.connection
    if connection.vendor == "postgresql":
        with driver.cursor() as cursor:
            cursor.execute("BEGIN")
            for sql, params in statements:
                cursor.execute(sql, params)
            cursor.execute("COMMIT")
        return
    driver.execute("BEGIN IMMEDIATE")
    for sql, params in statements:
        driver.execute(sql.replace("%s", "?"), params)
    driver.execute("COMMIT")
