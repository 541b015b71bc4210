"""The check of a job, the reorder report, an import: each through its feature's own front door."""

from hashlib import sha256

from inventory.management.bench.figures import Figure, milliseconds, typical
from inventory.management.bench.ground import STEPS, Ground
from inventory.models import Pack
from inventory.precheck.queries import check
from inventory.reorder.queries.report import report
from inventory.spreadsheets.actions import bring_in
from inventory.spreadsheets.queries import preview
from inventory.spreadsheets.sheets.reading import read_table
from inventory.spreadsheets.sheets.writing import write_csv

HEADS = ("product", "called", "holds (in unit)", "unit")


def check_of_a_job(ground: Ground, times: int) -> Figure:
    """Measure the pre-job check."""
    taken = [milliseconds(lambda: check(ground.job, ground.now)) for _ in range(times)]
    return Figure(f"check of a job of {STEPS} steps", typical(taken), "ms")


def reorder_report(ground: Ground) -> Figure:
    """Measure the month's report over all products."""
    today = ground.now.date()
    name = f"reorder report, {len(ground.products)} products, three years of entries"
    return Figure(name, milliseconds(lambda: report(ground.shop, today.replace(day=1), today)) / 1000, "s")


def import_of(ground: Ground, rows: int) -> list[Figure]:
    """Measure an import of new packs: reading and preview, then bringing in."""
    names = [product.name for product in ground.products]
    data = write_csv(
        HEADS,
        ([names[row % len(names)], f"size {row}", str(row // len(names) + 2), "l"] for row in range(rows)),
    )
    shown = []
    seen = milliseconds(lambda: shown.append(preview(ground.shop, "packs", read_table(data), ground.now)))
    if shown[0].wrong:
        refused = next(outcome for outcome in shown[0].outcomes if outcome.problems)
        raise RuntimeError(f"The import is refused: {refused}")
    before = Pack.objects.count()

    def bring() -> None:
        bring_in(
            ground.shop, "packs", read_table(data), seen=shown[0].fingerprint, token="bench",
            sha256=sha256(data).hexdigest(), by=ground.person, at=ground.now,
        )  # fmt: skip

    brought = milliseconds(bring)
    if Pack.objects.count() != before + rows:
        raise RuntimeError("The import did not bring in what it showed.")
    return [
        Figure(f"import of {rows} rows: preview", seen / 1000, "s"),
        Figure(f"import of {rows} rows: brought in", brought / 1000, "s"),
    ]
