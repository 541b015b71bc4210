"""`verify`: recompute the ledger's chain and everything that stands beside it, and name what differs."""

import json
from argparse import ArgumentParser
from typing import Any

from django.core.management.base import BaseCommand
from django.db import connection
from tqdm import tqdm

from inventory.models import Movement, guards
from inventory.stock.audit import Problem, audit, size

SHOWN = 20


class Command(BaseCommand):
    """Exit status 0 where everything is as the ledger says, 1 where it is not."""

    help = "Recompute the ledger's chain, states, use-by dates and guards; name the first bad entry."
    requires_system_checks = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take --json and --install-guards."""
        parser.add_argument("--json", action="store_true", help="print one JSON document")
        parser.add_argument(
            "--install-guards", action="store_true", help="put the database's guards back before looking"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Audit every shop."""
        if options["install_guards"]:
            self._install()
        with tqdm(total=size(), unit=" rows", desc="verify", disable=None) as bar:
            problems = list(audit(bar.update))
        if options["json"]:
            self.stdout.write(json.dumps(_document(problems), ensure_ascii=False))
        else:
            self._say(problems)
        if problems:
            raise SystemExit(1)

    def _install(self) -> None:
        with connection.cursor() as cursor:
            for sql in guards.statements(connection.vendor):
                cursor.execute(sql)

    def _say(self, problems: list[Problem]) -> None:
        for problem in problems[:SHOWN]:
            self.stdout.write(f"{problem.shop}: {problem.says}" if problem.shop else problem.says)
        if len(problems) > SHOWN:
            self.stdout.write(f"and {len(problems) - SHOWN} more; --json lists them all.")
        if not problems:
            count = Movement.objects.count()
            self.stdout.write(
                f"All {count} entries stand as they were written, and the shelf is what they say."
            )


def _document(problems: list[Problem]) -> dict[str, object]:
    return {
        "ok": not problems,
        "entries": Movement.objects.count(),
        "problems": [{"shop": each.shop, "entry": each.entry, "says": each.says} for each in problems],
    }
