"""`poster PLACE --out F`: the sheets of a place's poster, printed as its next version."""

from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser
from django.db import transaction
from django.urls import reverse

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.management.written import write_whole
from inventory.models import Place
from inventory.posters import actions, queries
from inventory.posters.rules import only_here
from safety.print.pen import UnknownPaper
from safety.print.poster import DistanceOutOfRange, PaperTooSmall

NO_SITE = "http://localhost:8000"


class Command(ScriptedCommand):
    """Write a place's poster as a PDF and keep it as a version."""

    help = "Print a place's poster. PLACE is its code or its name."
    domain_errors = (actions.NothingToSay, UnknownPaper, PaperTooSmall, DistanceOutOfRange)

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the place, the file, the paper and the distance."""
        parser.add_argument("place", help="its code or its name")
        parser.add_argument("--out", required=True, type=Path, help="the PDF to write")
        parser.add_argument("--paper", default="A3", help="A3, A4, Letter or Tabloid")
        parser.add_argument("--read-at", type=float, metavar="M", help="metres; else the place's own")

    @transaction.atomic
    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it; without the file, there is no new version."""
        place, out = place_called(options["place"]), options["out"]
        url = f"{(place.shop.site_url or NO_SITE).rstrip('/')}{reverse('posters:place', args=[place.code])}"
        on = queries.today(place.shop)
        issued = actions.issue_poster(place, url, on, options["paper"], options["read_at"])
        write_whole(out, issued.pdf)
        count = "1 product" if issued.products == 1 else f"{issued.products} products"
        says = f"{place.name}, version {issued.version}: {count}, written to {out}."
        if only_here(url):
            says += f" Its code opens {url}, which no phone can: set the site's address in Settings."
        return says, {"code": place.code, "file": str(out), **issued.said}


def place_called(text: str) -> Place:
    """Return the one place with this code or name, or refuse."""
    rows = queries.place_called(text)
    if len(rows) != 1:
        what = "several places are called so, their code" if rows else "a place's code or name"
        raise BadInput(f"PLACE “{text}”: {what} was expected.")
    return rows[0]
