"""`label CONTAINER --out F`: the label of one bottle, drum, box or bag."""

from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser
from django.utils import timezone

from inventory.codes import tidy
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Container
from inventory.posters import actions, queries
from safety.print.label import LabelTooSmall, UnknownSize, size_called, smallest_for
from safety.print.label_sheets import print_labels


class Command(ScriptedCommand):
    """Write a container's label as a PDF and keep that it was printed."""

    help = "Print the label of a container, by its code."
    domain_errors = (LabelTooSmall, UnknownSize)

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the container, the file and the stock."""
        parser.add_argument("container")
        parser.add_argument("--out", required=True, type=Path)
        parser.add_argument("--size", default="", help="small, medium, tall, large or extra; else the smallest that fits")

    def answer(self, **options: Any) -> Answer:
        """Print it, and say what is on it."""
        found = Container.objects.filter(code=tidy(options["container"]) or "").select_related("shop").first()
        if found is None:
            raise BadInput(f"CONTAINER “{options['container']}”: no bottle here carries this code.")
        rows = list(queries.to_label(found.shop, [found.code]))
        content = queries.labels(found.shop, rows)[0]
        size = size_called(options["size"]) if options["size"] else smallest_for(content)
        pdf, said = print_labels([content], size)
        options["out"].write_bytes(pdf)
        actions.labelled(rows, timezone.now())
        return f"The label of {found.code} is in {options['out']}.", {"file": str(options["out"]), **said}
