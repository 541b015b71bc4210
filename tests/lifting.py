"""Lift the ledger's guards: for the teardown of a test, and to play the intruder whom `verify` must find.

The product has no such switch. Guards go back as they stood, by the product's own statements.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import wraps

from django.db import connection
from django.test import TransactionTestCase

from inventory.models import guards


@contextmanager
def lifted() -> Iterator[None]:
    """Take the guards off inside the block."""
    lift()
    try:
        yield
    finally:
        put_back()


def lift() -> None:
    """Take the guards off."""
    _settle_keys()
    with connection.cursor() as cursor:
        for name in guards.EXPECTED[connection.vendor]:
            on = "" if connection.vendor == "sqlite" else f" ON {guards.TABLE}"
            cursor.execute(f"DROP TRIGGER IF EXISTS {name}{on}")


def put_back() -> None:
    """Put every guard back."""
    _settle_keys()
    with connection.cursor() as cursor:
        for sql in guards.statements(connection.vendor):
            cursor.execute(sql)


def _settle_keys() -> None:
    # PostgreSQL alters no table that has checks of keys to come; outside a transaction there are none.
    if connection.in_atomic_block:
        connection.check_constraints()


def lift_in_teardown() -> None:
    """Let a test that commits empty its tables at its end: a flush deletes the ledger's lines too."""
    flush = TransactionTestCase._fixture_teardown

    @wraps(flush)
    def lifted_flush(*args: object) -> None:
        with lifted():
            flush(*args)

    TransactionTestCase._fixture_teardown = lifted_flush
