"""Bringing in: refused whole where one row is wrong or the shop moved, and nobody waits for a preview."""

import pytest
from django.db import connection, transaction

from inventory.models import Container, Head, Lot, Movement, Supplier
from inventory.spreadsheets.actions import Moved, bring_in
from inventory.stock import ledger
from inventory.stock.requests import KeyReused
from inventory.stock.rules.lines import Refused
from tests import world as cast
from tests.world import NOON

from .shop import bring, judged, stocked, table

pytestmark = pytest.mark.django_db
STOCK = (
    "product | content (in unit) | unit | place | sealed | opened on | lot | use by (printed)"
    " | how many alike | code"
)


def test_one_wrong_row_keeps_every_row_out() -> None:
    world = cast.larkmoor()
    given = table("name | lead time (days)", ["Fell Trading", 4], ["Other", "soon"])
    with pytest.raises(Moved):
        bring(world, "suppliers", given)
    assert [supplier.name for supplier in Supplier.objects.all()] == ["Orlo Supply"]


def test_what_changed_since_the_preview_keeps_the_file_out_and_is_said() -> None:
    world = cast.larkmoor()
    given = table("name | lead time (days)", ["Orlo Supply", 9])
    seen = judged(world, "suppliers", given).fingerprint
    Supplier.objects.update(lead_days=7)
    with pytest.raises(Moved) as moved:
        bring_in(world.shop, "suppliers", given, seen=seen, token="t", sha256="", by=world.ines, at=NOON)
    assert moved.value.says.startswith("Something changed here since you looked. Nothing came in")
    assert moved.value.now.outcomes[0].changes[0].before == "7"
    assert Supplier.objects.get().lead_days == 7


def test_what_is_refused_at_the_very_end_undoes_all_of_it(monkeypatch) -> None:
    world, before = stocked(), Movement.objects.count()
    row = ["Tidewall coating", 30, "ml", "Store", "yes", None, "T-3", None, 1, None]

    def records_and_breaks(*args, **kwargs) -> None:
        assert len(record(*args, **kwargs)) == 3
        raise Refused("The last one does not fit.")

    record = ledger.record
    monkeypatch.setattr(ledger, "record", records_and_breaks)
    with pytest.raises(Refused):
        bring(world, "stock", table(STOCK, *[row] * 3))
    assert (Movement.objects.count(), Head.objects.get().seq) == (before, before)
    assert not Lot.objects.filter(number="T-3").exists()


def test_the_same_confirmation_twice_writes_once() -> None:
    world = stocked()
    given = table(STOCK, ["Tidewall coating", 30, "ml", "Store", "yes", None, "", None, 2, None])
    seen, before = judged(world, "stock", given).fingerprint, Container.objects.count()
    says = [
        bring_in(world.shop, "stock", given, seen=seen, token="one", sha256="a", by=world.ines, at=NOON)
        for _ in range(2)
    ]
    assert says == ["Stock on the shelf: 1 new and 0 changed rows are in."] * 2
    assert Container.objects.count() == before + 2
    with pytest.raises(KeyReused):
        bring_in(world.shop, "stock", given, seen=seen, token="one", sha256="b", by=world.ines, at=NOON)


@pytest.mark.engine
@pytest.mark.django_db(transaction=True)
def test_a_preview_opens_no_transaction_and_another_connection_writes_meanwhile() -> None:
    world = stocked()
    given = table(STOCK, ["Tidewall coating", 30, "ml", "Store", "yes", None, "", None, 1, None])
    statements: list[str] = []

    def watched(execute, sql, params, many, context):
        statements.append(sql.split()[0].upper())
        if len(statements) == 3:
            _write_from_elsewhere(world)
        return execute(sql, params, many, context)

    with connection.execute_wrapper(watched):
        judged(world, "stock", given)
    assert set(statements) == {"SELECT"}
    world.orlo.refresh_from_db()
    assert (world.orlo.phone, connection.in_atomic_block) == ("written meanwhile", False)


@pytest.mark.engine
@pytest.mark.django_db(transaction=True)
def test_a_dry_run_that_writes_and_rolls_back_would_keep_that_writer_out() -> None:
    world = stocked()
    with transaction.atomic():
        Supplier.objects.update(lead_days=7)
        with pytest.raises(Exception, match="lock"):
            _write_from_elsewhere(world, patience=0)
        transaction.set_rollback(True)


def _write_from_elsewhere(world, patience: int = 5) -> None:
    """Write by a connection of another thread, as another visitor would."""
    from concurrent.futures import ThreadPoolExecutor

    def write() -> None:
        wait = {
            "sqlite": f"PRAGMA busy_timeout = {patience * 1000 + 50}",
            "postgresql": f"SET lock_timeout = '{patience * 1000 + 50}ms'",
        }
        connection.cursor().execute(wait[connection.vendor])
        try:
            Supplier.objects.filter(pk=world.orlo.pk).update(phone="written meanwhile")
        finally:
            connection.close()

    with ThreadPoolExecutor(1) as pool:
        pool.submit(write).result()
