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
from safety.print.label import SIZES, LabelTooSmall, UnknownSize


class Command(ScriptedCommand):
    """Write a container's label as a PDF and keep that it was printed."""

    help = "Print the label of a container, by its code."
    domain_errors = (LabelTooSmall, UnknownSize)

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the container, the file and the stock."""
        parser.add_argument("container", help="its code")
        parser.add_argument("--out", required=True, type=Path, help="the PDF to write")
        parser.add_argument("--size", default="", help=f"{', '.join(SIZES)}; else the smallest that fits")

    @transaction.atomic
    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it; without the file, it does not count as printed."""
        row = container_coded(options["container"])
        pdf, said = actions.print_strip(row.shop, [row], queries.now(), options["size"])
        write_whole(options["out"], pdf)
        says = f"The label of {pair(row.code)} is in {options['out']}."
        return says, {"container": row.code, "file": str(options["out"]), **said}


def container_coded(text: str) -> Container:
    """Return the container with this code, with what its label says, or refuse."""
    found = Container.objects.filter(code=tidy(text) or "").select_related("shop").first()
    rows = queries.in_order(found.shop, [found.code]) if found else []
    if not rows:
        raise BadInput(f"CONTAINER “{text}”: the code of a bottle on the shelf was expected.")
    return rows[0]
