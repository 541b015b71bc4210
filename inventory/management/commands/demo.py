"""`demo`: an invented shop, the four jobs done on it, then the site to try it in."""

import socket
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError
from django.utils import timezone
from tqdm import tqdm

from inventory.management.demo import make
from inventory.management.demo.nouns import PASSWORD, SLUG
from inventory.management.demo.tour import Tour
from inventory.models import Shop


class Command(BaseCommand):
    """Sets up the demo shop, runs the four jobs, prints what it did, and serves the site."""

    help = "Try Capdate on an invented shop. --once ends after the four jobs instead of serving the site."
    requires_system_checks = []

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take where the demo lives and whether it serves."""
        parser.add_argument("--once", action="store_true", help="end after the four jobs")
        parser.add_argument("--dir", help="the demo's own folder (.demo beside manage.py)")
        parser.add_argument(
            "--json", action="store_true", help="print one JSON document and nothing else; ends"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        """Do it in the order of the help text."""
        as_json = options["json"]
        call_command("migrate", verbosity=0, skip_checks=True)
        self._shop(as_json)
        tour = Tour(Path(settings.DATA_DIR), self.stderr.write if as_json else self.stdout.write)
        done = tour.run(timezone.now())
        if as_json:
            import json

            self.stdout.write(json.dumps(done))
            return
        if not options["once"]:
            self._serve()

    def _shop(self, quiet: bool) -> None:
        shop = Shop.objects.first()
        if shop is not None and shop.slug != SLUG:
            raise CommandError(
                f"This database holds {shop.name}. The demo never touches a shop that is not its own."
            )
        if shop is not None:
            made = shop.movements.order_by("-recorded_at").first()
            when = f"{made.recorded_at:%d %B}" if made else "before"
            self._say(
                quiet, f"The demo shop of {when} is here already. To start anew, delete {settings.DATA_DIR}."
            )
            return
        self._say(quiet, "Telling the demo shop's half year, day by day, through the ledger …")
        with tqdm(unit=" days", disable=None) as bar:
            make(timezone.now(), lambda done, of: _move(bar, done, of))

    def _say(self, quiet: bool, text: str) -> None:
        (self.stderr if quiet else self.stdout).write(text)

    def _serve(self) -> None:
        port = _free_port(8000)
        self.stdout.write(
            f"\nThe site: http://127.0.0.1:{port}  Sign in as ines (owner), tomas (technician) "
            f"or wren (viewer); the password is “{PASSWORD}”, Ines's PIN is 2580. Stop it with Ctrl-C.\n"
        )
        call_command("runserver", f"127.0.0.1:{port}", use_reloader=False, skip_checks=True, verbosity=0)


def _move(bar: "tqdm[Any]", done: int, of: int) -> None:
    bar.total = of
    bar.update(done - bar.n)


def _free_port(first: int) -> int:
    """Return the first port from `first` on that nothing listens at."""
    for port in range(first, first + 50):
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)):
                return port
    raise CommandError(f"Every port from {first} to {first + 49} is taken. Stop a server and start again.")
