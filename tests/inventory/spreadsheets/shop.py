"""What the spreadsheet tests start from: Larkmoor Works with one thing of every kind, and files as tables."""

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta

from inventory.models import Place, Service, ServiceNeed, ServiceStep
from inventory.spreadsheets import queries
from inventory.spreadsheets.actions import bring_in
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.rules.table import Cell, Row, Table
from inventory.spreadsheets.sheets import read_table, write_csv, write_xlsx
from inventory.stock.rules.acts import Act, NewBottle
from tests import world as cast
from tests.world import LITRE, ML, NOON, World

EARLIER = NOON - timedelta(days=30)


def stocked() -> World:
    """Return the shop with products, packs, bottles in several states, a service and a booked job."""
    world = cast.larkmoor()
    tidewall, hollin = cast.tidewall(world), cast.hollin(world, maker="Hollin", lead_days=3)
    marl = cast.marl(world, sealed_life=24, density_mg_per_l=1_050_000, density_source="data sheet")
    cast.pack(tidewall, 30 * ML, gtin="05012345678900", price_minor=5550, multiple=6)
    cast.pack(hollin, 5 * LITRE, name="canister", price_minor=2200)
    cast.pack(hollin, 29_574, name="sample")
    cast.bottle(world, tidewall, 30 * ML, lot="T-1", expires_on=date(2027, 6, 30))
    cast.bottle(world, tidewall, 30 * ML, lot="T-1", opened_at=NOON - timedelta(days=9))
    cast.bottle(world, hollin, 29_574, lot="")
    opened = NewBottle(
        marl.code, 1_000_000, sealed=False, opened_at=EARLIER - timedelta(days=40), estimated=True
    )
    cast.record(world, Act("receive", EARLIER, new=opened, amount=800_000, place=world.store.code))
    cast.spray_bottle(world)
    service(world, "One-step polish")
    return world


def service(world: World, name: str) -> Service:
    """Return a service of two steps; the first takes 50 ml of panel wipe on a mid-size car."""
    made = Service.objects.create(shop=world.shop, name=name)
    first = ServiceStep.objects.create(
        service=made, position=1, stage="correct", name="Polish", starts_after=0, minutes=120
    )
    ServiceStep.objects.create(
        service=made, position=2, stage="coat", name="Coat", starts_after=120, minutes=60
    )
    ServiceNeed.objects.create(step=first, kind="solvent", amount=50 * ML)
    return made


def table(heads: str, *rows: Sequence[Cell]) -> Table:
    """Return a table whose heads are written in one text, separated by |; rows count from 2."""
    names = tuple(head.strip() for head in heads.split("|"))
    return Table(names, tuple(Row(number, tuple(cells)) for number, cells in enumerate(rows, 2)))


def judged(world: World, slug: str, given: Table, at: datetime = NOON) -> Preview:
    """Return the preview of a table."""
    return queries.preview(world.shop, slug, given, at)


def complaints(world: World, slug: str, given: Table) -> list[str]:
    """Return every problem of a table, as the page says it."""
    return [problem.says for each in judged(world, slug, given).outcomes for problem in each.problems]


def bring(world: World, slug: str, given: Table, at: datetime = NOON, token: str = "first") -> str:
    """Look at a table and bring it in."""
    seen = judged(world, slug, given, at).fingerprint
    return bring_in(
        world.shop, slug, given, seen=seen, token=token, sha256="of the file", by=world.ines, at=at
    )


def round_trip(world: World, slug: str, form: str, at: datetime = NOON) -> Preview:
    """Take a kind out as a file, read the file again, and return what it would do."""
    sheet, rows = queries.export(world.shop, slug, at)
    data = write_csv(sheet.heads, rows) if form == "csv" else write_xlsx(sheet.heads, rows, sheet.slug)
    return judged(world, slug, read_table(data), at)


def summer(hour: int) -> datetime:
    """Return an hour of a day in summer time, UTC."""
    return datetime(2026, 7, 1, hour, tzinfo=UTC)


def cabinet(world: World) -> Place:
    """Return one more place."""
    return Place.objects.create(shop=world.shop, name="Cabinet", kind="cabinet")
