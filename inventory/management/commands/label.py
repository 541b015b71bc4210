"""`label CONTAINER --out F`: the label of one bottle, drum, box or bag."""

from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser
from django.db import transaction

from inventory.codes import pair, tidy
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.management.written import write_whole
from inventory.models import Container
from inventory.posters import actions, queries
from safety.label_content import FORMS, NotSmall, UnknownForm
from safety.print.label import SIZES, LabelTooSmall, UnknownSize
from safety.print.label_sheets import ROLL, NoSuchPlace
from safety.print.pen import UnknownPaper
from safety.print.words import UnknownLanguage, languages


class Command(ScriptedCommand):
    """Write a container's label as a PDF and keep that it was printed."""

    help = "Print the label of a container, by its code."
    domain_errors = (
        LabelTooSmall,
        UnknownSize,
        UnknownForm,
        UnknownLanguage,
        UnknownPaper,
        NotSmall,
        NoSuchPlace,
    )

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the container, the file and the stock."""
        parser.add_argument("container", help="its code")
        parser.add_argument("--out", required=True, type=Path, help="the PDF to write")
        parser.add_argument("--size", default="", help=f"{', '.join(SIZES)}; else the smallest that fits")
        parser.add_argument("--form", default="", help=f"{', '.join(FORMS)}; else the bottle's own")
        parser.add_argument("--language", default="", help=f"{', '.join(languages())}; else the shop's")
        parser.add_argument("--paper", default=ROLL, help="roll (one a page), A4 or Letter")

    @transaction.atomic
    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it; without the file, it does not count as printed."""
        row = container_coded(options["container"])
        asked = (options["size"], options["paper"], 1, options["form"], options["language"])
        pdf, said = actions.print_strip(row.shop, [row], queries.now(), *asked)
        write_whole(options["out"], pdf)
        says = f"The label of {pair(row.code)} is in {options['out']}. {said['why']}"
        return says, {"container": row.code, "file": str(options["out"]), **said}


def container_coded(text: str) -> Container:
    """Return the container with this code, with what its label says, or refuse."""
    found = Container.objects.filter(code=tidy(text) or "").select_related("shop").first()
    rows = queries.in_order(found.shop, [found.code]) if found else []
    if not rows:
        raise BadInput(f"CONTAINER “{text}”: the code of a bottle on the shelf was expected.")
    return rows[0]
