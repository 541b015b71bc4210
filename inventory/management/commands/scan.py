"""`scan`: what a station does, a line at a time on standard input."""

import sys
import uuid
from argparse import ArgumentParser
from collections.abc import Iterable
from typing import Any

from django.utils import timezone

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Shop, Station
from inventory.scan import actions
from inventory.scan.queries.stations import station_by
from inventory.stock.requests import KeyReused

# What a script is told: a note is no grade of its own, it rides on what was heard.
GRADES = {"tell": "recorded"}


class Command(ScriptedCommand):
    """Reads lines (an optional key and a tab before each) and answers each; a badge's code says who."""

    help = "Scan from a script: one line a scan (code, command or amount), one answer a line."
    domain_errors = (KeyReused,)

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the shop and the station; the defaults are the only shop and a station of the command line."""
        parser.add_argument("--shop", help="the shop's short name, where there are several")
        parser.add_argument("--station", help="the station's code or name")

    def answers(self, **options: Any) -> Iterable[Answer]:
        """Yield an answer for each line that is not empty."""
        station = station_for(options["shop"], options["station"])
        told = False
        for number, row in enumerate(sys.stdin, 1):
            key, line = _parted(row)
            if not line:
                continue
            if len(key) > 64:
                raise BadInput(f"line {number}: a key has at most 64 characters, this one has {len(key)}.")
            if not key and not told:
                told = True
                self.stderr.write("Lines without a key get a new one each; it stands in the answer.")
            now = timezone.now()
            spoken = actions.say(station, line, key or str(uuid.uuid4()), now, now=now)
            yield _said(spoken), document(spoken)


def station_for(shop_named: str | None, station_named: str | None) -> Station:
    """Return the station meant, or refuse with what was expected."""
    shops = list(Shop.objects.filter(slug=shop_named) if shop_named else Shop.objects.all()[:2])
    if not shops:
        named = f"--shop {shop_named}: no shop has this name."
        raise BadInput(named if shop_named else "There is no shop yet: set one up first.")
    if len(shops) > 1:
        raise BadInput("--shop: there are several shops, name one.")
    if station_named is None:
        return actions.desk(shops[0])
    station = station_by(shops[0], station_named)
    if station is None:
        raise BadInput(f"--station {station_named}: no station of {shops[0]} has this code or name.")
    return station


def _parted(row: str) -> tuple[str, str]:
    row = row.rstrip("\r\n")
    key, tab, line = row.partition("\t")
    return (key.strip(), line.strip(" ")) if tab else ("", row.strip(" "))


def _said(spoken: dict[str, Any]) -> str:
    word = {"tell": "Note"}.get(spoken["grade"], spoken["grade"].capitalize())
    return f"{word}: {spoken['says']}" + (f" {spoken['next']}" if spoken["next"] else "")


def document(spoken: dict[str, Any]) -> dict[str, Any]:
    """Return the JSON line of an answer: what was scanned, the grade, the sentences, the entries, the key."""
    return {
        "scan": spoken["scan"],
        "grade": GRADES.get(spoken["grade"], spoken["grade"]),
        "says": spoken["says"],
        "next": spoken["next"],
        "movements": spoken["movements"],
        "key": spoken["key"],
    }
