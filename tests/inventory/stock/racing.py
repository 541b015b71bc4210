"""What the processes of a race do: each has its own connection to a database made for this race alone.

Runs in spawned processes: Django is set up here, after the environment says which database it is.
"""

import json
import os
from multiprocessing.synchronize import Barrier
from pathlib import Path

BOTTLE, TAKE = 30_000, 20_000  # µl: two do not fit
RECEIVED_AT_ONCE = 100


def enter(environ: dict[str, str]) -> None:
    """Set Django up on the race's database."""
    os.environ.update(environ, DJANGO_SETTINGS_MODULE="inventory.project.settings", SECRET_KEY="race")
    import django

    django.setup()


def prepare(environ: dict[str, str], bottles: int) -> None:
    """Make the database, the shop and its open bottles."""
    enter(environ)
    from django.conf import settings
    from django.core.management import call_command

    if url := environ.get("DATABASE_URL"):
        make_database(url)
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    call_command("migrate", verbosity=0)
    from inventory.stock.rules.acts import Act, NewBottle
    from tests.lines import at
    from tests.world import hollin, larkmoor, record

    world = larkmoor()
    new = NewBottle(hollin(world).code, BOTTLE, sealed=False)
    for _ in range(0, bottles, RECEIVED_AT_ONCE):
        record(world, *(Act("receive", at(-5), new=new, amount=BOTTLE) for _ in range(RECEIVED_AT_ONCE)))


def make_database(url: str) -> None:
    """Make a database on the PostgreSQL server anew."""
    import psycopg

    server, _, name = url.rpartition("/")
    with psycopg.connect(f"{server}/postgres", autocommit=True) as connection:
        connection.execute(f'DROP DATABASE IF EXISTS "{name}"')  # type: ignore[call-overload]
        connection.execute(f'CREATE DATABASE "{name}"')  # type: ignore[call-overload]


def run(environ: dict[str, str], barrier: Barrier, number: int, locked: bool) -> None:
    """Take from every bottle at the moment at which the others do; write down what happened to each."""
    enter(environ)
    if not locked:
        without_locks()
    from inventory.models import Container, Shop

    shop = Shop.objects.get()
    codes = list(Container.objects.order_by("id").values_list("code", flat=True))
    outcomes = []
    for code in codes:
        barrier.wait()
        outcomes.append(take(shop, code))
    Path(environ["CAPDATE_DIR"], f"racer-{number}.json").write_text(json.dumps(outcomes))


def take(shop: object, code: str) -> str:
    """Take from one bottle: "took", "too little", or the name of the database's error."""
    from django.db import DatabaseError

    from inventory.stock import ledger
    from inventory.stock.rules.acts import Act
    from inventory.stock.rules.lines import TooLittle
    from tests.world import NOON

    try:
        ledger.record(shop, [Act("use", NOON, source=code, amount=TAKE)], by=None, recorded_at=NOON)  # type: ignore[arg-type]
    except TooLittle:
        return "too little"
    except DatabaseError as error:
        return f"{type(error).__name__}: {str(error).splitlines()[0]}"
    return "took"


def without_locks() -> None:
    """The twin: no row is locked on PostgreSQL, and SQLite's transactions begin as readers."""
    from django.conf import settings
    from django.db.models import QuerySet

    QuerySet.select_for_update = lambda self, **_: self  # type: ignore[assignment, method-assign]
    if "sqlite" in settings.DATABASES["default"]["ENGINE"]:
        settings.DATABASES["default"]["OPTIONS"]["transaction_mode"] = "DEFERRED"


def examine(environ: dict[str, str]) -> None:
    """Write down what stands in the database afterwards."""
    enter(environ)
    from inventory.models import Container, Head, Movement
    from inventory.stock.audit import audit

    seqs = list(Movement.objects.order_by("seq").values_list("seq", flat=True))
    found = {
        "problems": [problem.says for problem in audit()],
        "contents": sorted(set(Container.objects.values_list("content", flat=True))),
        "unforked": seqs == list(range(1, Head.objects.get().seq + 1)),
        "uses": Movement.objects.filter(kind="use").count(),
    }
    Path(environ["CAPDATE_DIR"], "found.json").write_text(json.dumps(found))
