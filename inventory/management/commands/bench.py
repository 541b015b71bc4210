"""`bench`: the figures of speed, measured on a database made for it and dropped afterwards."""

import json
from argparse import ArgumentParser
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand
from django.db import connection
from tqdm import tqdm

from inventory.management.bench.checking import whole_check
from inventory.management.bench.drawing import TIMES, drawings
from inventory.management.bench.figures import Figure
from inventory.management.bench.filling import Filler
from inventory.management.bench.ground import Ground, lay
from inventory.management.bench.mixtures import mixtures_classified
from inventory.management.bench.others import check_of_a_job, import_of, reorder_report
from inventory.management.bench.scanning import Scanned, scan_out

FULL = {
    "short": 1_000, "long": 1_000_000, "products": 500, "times": 100, "rows": 20_000, "mixtures": 10_000,
    "jobs": 365,
}  # fmt: skip
QUICK = {
    "short": 200, "long": 2_000, "products": 20, "times": 5, "rows": 200, "mixtures": 60, "jobs": 12,
}  # fmt: skip


class Command(BaseCommand):
    """Scan-out behind a short and a long ledger, the check, the reorder report, an import, mixtures."""

    help = "Measure scan-out, check, reorder report, import and classifying, on a database of its own."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take --quick, --only and --json."""
        parser.add_argument(
            "--quick", action="store_true", help="small numbers: shows that it runs, not how fast"
        )
        parser.add_argument(
            "--only", choices=PARTS, action="append",
            help="measure this part alone, or several; what others would have filled is not there then",
        )  # fmt: skip
        parser.add_argument("--json", action="store_true", help="print one JSON document")
        parser.add_argument("--lines", type=int, help="how long the long ledger is (default 1 000 000)")

    def handle(self, *args: Any, **options: Any) -> None:
        """Measure everything, or the parts that were named, and print it."""
        size = dict(QUICK if options["quick"] else FULL)
        size["long"] = options["lines"] or size["long"]
        with own_database():
            figures = list(_measured(size, options["only"] or list(PARTS)))
        if options["json"]:
            document = {"engine": connection.vendor, "figures": [figure.as_json() for figure in figures]}
            self.stdout.write(json.dumps(document, ensure_ascii=False))
            return
        self.stdout.write(f"On {connection.vendor}:")
        for figure in figures:
            self.stdout.write(f"  {figure}")


@contextmanager
def own_database() -> Iterator[None]:
    """Make a database beside the shop's, and drop it at the end: the shop's own is never touched."""
    kept = connection.settings_dict["NAME"]
    sqlite = connection.vendor == "sqlite"
    connection.settings_dict["TEST"]["NAME"] = (
        str(Path(settings.DATA_DIR) / "bench.sqlite3") if sqlite else f"{kept}_bench"
    )
    connection.creation.create_test_db(verbosity=0, autoclobber=True, serialize=False)
    try:
        yield
    finally:
        connection.creation.destroy_test_db(kept, verbosity=0)


def _measured(size: dict[str, int], parts: list[str]) -> Iterator[Figure]:
    ground = lay(size["products"])
    _analyse()
    for name, part in PARTS.items():
        if name in parts:
            yield from part(ground, size)


def _scanning(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    filler = Filler(ground, size["long"])
    short = _scanned(ground, filler, size["short"], size["times"])
    yield from _figures(short, size["short"])
    long = _scanned(ground, filler, size["long"], size["times"])
    yield from _figures(long, size["long"])
    yield Figure("scan-out, long ledger to short", long.view_ms / short.view_ms, "times", "≤ 1.2")


def _checking(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    yield check_of_a_job(ground, size["times"])
    with tqdm(total=size["jobs"], desc="a year of jobs checked anew", unit=" jobs", disable=None) as bar:
        yield from whole_check(ground, size["times"], size["jobs"], bar.update)


def _reorder(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    with tqdm(total=1, desc="reorder report", disable=None) as bar:
        yield reorder_report(ground)
        bar.update()


def _import(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    with tqdm(total=1, desc=f"import of {size['rows']} rows", disable=None) as bar:
        yield from import_of(ground, size["rows"])
        bar.update()


def _mixtures(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    with tqdm(total=size["mixtures"], desc="classifying mixtures", unit=" mixtures", disable=None) as bar:
        yield from mixtures_classified(size["mixtures"], bar.update)


def _drawing(ground: Ground, size: dict[str, int]) -> Iterator[Figure]:
    with tqdm(total=2 * TIMES, desc="drawing a poster and labels", disable=None) as bar:
        yield from drawings(bar.update)


# In this order: what one part fills, the next ones find.
PARTS: dict[str, Callable[[Ground, dict[str, int]], Iterator[Figure]]] = {
    "scanning": _scanning,
    "checking": _checking,
    "reorder": _reorder,
    "import": _import,
    "mixtures": _mixtures,
    "drawing": _drawing,
}


def _analyse() -> None:
    if connection.vendor == "postgresql":  # which does it by itself in a shop; SQLite never does
        with connection.cursor() as cursor:
            cursor.execute("ANALYZE")


def _scanned(ground: Ground, filler: Filler, lines: int, times: int) -> Scanned:
    filler.head.refresh_from_db()
    with tqdm(
        total=lines, initial=filler.head.seq, desc="filling the ledger", unit=" lines", disable=None
    ) as bar:
        filler.up_to(lines, bar.update)
    _analyse()
    with tqdm(total=times, desc=f"scan-out behind {lines} lines", disable=None) as bar:
        return scan_out(ground, times, bar.update)


def _figures(scanned: Scanned, lines: int) -> Iterator[Figure]:
    behind = f"behind {lines:,} lines".replace(",", " ")
    yield Figure(f"scan-out {behind}: the view", scanned.view_ms, "ms")
    yield Figure(f"scan-out {behind}: the whole request", scanned.request_ms, "ms")
    yield Figure(f"scan-out {behind}: the same rows by the bare driver", scanned.bare_ms, "ms")
    yield Figure(f"scan-out {behind}: view to bare driver", scanned.view_ms / scanned.bare_ms, "times", "≤ 8")
    yield Figure(
        f"scan-out {behind}: whole request to bare driver", scanned.request_ms / scanned.bare_ms, "times"
    )
    yield Figure(f"scan-out {behind}: queries", scanned.queries, "", "≤ 20")
