"""No start without the ledger's guards: one check for `manage.py check --database default`, one for servers.

A database that has no ledger yet (before the first `migrate`) lacks nothing.
"""

from collections.abc import Sequence
from typing import Any

from django.apps import AppConfig
from django.core.checks import CheckMessage, Error, Tags, register
from django.core.exceptions import ImproperlyConfigured
from django.db import connections

from inventory.models import guards

HINT = "python3 manage.py verify --install-guards puts them back; then read what verify says."


def guards_missing(alias: str = "default") -> list[str]:
    """Return the names of the guards that a database lacks; none where it has no ledger yet."""
    connection = connections[alias]
    with connection.cursor() as cursor:
        if guards.TABLE not in connection.introspection.table_names(cursor):
            return []
        return sorted(guards.missing(cursor, connection.vendor))


def says(names: Sequence[str]) -> str:
    """Return one sentence about guards that are missing."""
    return f"The ledger can be changed behind the program's back: its guards {', '.join(names)} are missing."


@register(Tags.database)
def ledger_is_guarded(
    app_configs: Sequence[AppConfig] | None, databases: Sequence[str] | None = None, **_: Any
) -> list[CheckMessage]:
    """Report each database whose ledger lacks a guard."""
    found = {alias: guards_missing(alias) for alias in databases or []}
    return [Error(says(names), hint=HINT, id="inventory.E001") for names in found.values() if names]


def refuse_without_guards() -> None:
    """Raise ImproperlyConfigured where a guard is missing: a server that starts calls this first."""
    if names := guards_missing():
        raise ImproperlyConfigured(f"{says(names)} {HINT}")
