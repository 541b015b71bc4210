"""`poster PLACE --out F`: the sheets of a place's poster, printed as its next version."""

from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser
from django.urls import reverse
from django.utils import timezone

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Place
from inventory.posters import actions, queries
from safety.print.poster import DistanceOutOfRange, PaperTooSmall
from safety.print.pen import UnknownPaper


class Command(ScriptedCommand):
    """Write a place's poster as a PDF and keep it as a version."""

    help = "Print a place's poster. PLACE is its code or its name."
    domain_errors = (actions.NothingToSay, UnknownPaper, PaperTooSmall, DistanceOutOfRange)

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the place, the file, the paper and the distance."""
        parser.add_argument("place")
        parser.add_argument("--out", required=True, type=Path)
        parser.add_argument("--paper", default="A3", help="A3, A4, Letter or Tabloid")
        parser.add_argument("--read-at", type=float, default=None, help="metres; else the place's own distance")

    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it."""
        place = place_called(options["place"])
        wall = queries.walls(place.shop, place)[0]
        url = (place.shop.site_url or "http://localhost:8000").rstrip("/") + reverse("posters:place", args=[place.code])
        today = timezone.now().astimezone(place.shop.zone).date()
        pdf, said = actions.issue_poster(wall, url, today, options["paper"], options["read_at"])
        options["out"].write_bytes(pdf)
        says = f"{place.name}, version {wall.next_version}: {len(wall.products)} products, written to {options['out']}."
        return says, {"place": place.code, "file": str(options["out"]), **said}


def place_called(text: str) -> Place:
    """Return the one place with this code or name, or refuse."""
    rows = list(Place.objects.filter(code=text.replace(" ", "").upper()).select_related("shop"))
    rows = rows or list(Place.objects.filter(name__iexact=text).select_related("shop"))
    if len(rows) != 1:
        what = "several places are called so; give the code" if rows else "no place has this code or name"
        raise BadInput(f"PLACE “{text}”: {what}.")
    return rows[0]
