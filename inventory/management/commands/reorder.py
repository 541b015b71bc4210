"""`reorder --month YYYY-MM --out F`: the month's report as a file, whole or not at all."""

import os
import tempfile
from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser

from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Shop
from inventory.reorder import queries
from inventory.reorder.pdf import PAPERS
from inventory.reorder.rules import MonthIsOver, WrongFacts
from inventory.reorder.rules.months import NoMonth, month_called
from inventory.reorder.sheets import report_document


class Command(ScriptedCommand):
    """Write the reorder report of a month; nothing is ordered by it."""

    help = "Write what to order for a month, from whom and why, as pdf, xlsx, csv or json."
    domain_errors = (NoMonth, MonthIsOver, WrongFacts)

    def add_arguments(self, parser: CommandParser) -> None:
        """Take the month, the file and, where they are not plain, the shop and the paper."""
        parser.add_argument("--month", required=True, help="YYYY-MM")
        parser.add_argument(
            "--out", required=True, type=Path, help="a file ending in .pdf, .xlsx, .csv or .json"
        )
        parser.add_argument("--shop", help="the shop's short name, where there are several")
        parser.add_argument(
            "--paper", choices=list(PAPERS), help="for pdf; else as the shop's country prints"
        )

    def answer(self, **options: Any) -> Answer:
        """Write the file, and say what is on it."""
        out: Path = options["out"]
        extension = extension_of(out)
        shop = shop_called(options["shop"])
        on = queries.today(shop)
        report = queries.report(shop, month_called(options["month"], on), on)
        paper = options["paper"] or queries.paper_of(shop)
        write_whole(out, queries.file_of(report, extension, paper))
        return f"{report.says} Written to {out}.", {"file": str(out), **report_document(report)}


def extension_of(out: Path) -> str:
    """Return the kind of file that a name asks for, or refuse it."""
    extension = out.suffix.lower().removeprefix(".")
    if extension not in queries.CONTENT_TYPES:
        raise BadInput(f"--out {out}: a name ending in .pdf, .xlsx, .csv or .json was expected.")
    return extension


def shop_called(slug: str | None) -> Shop:
    """Return the shop meant, or refuse with what was expected."""
    shops = list(Shop.objects.filter(slug=slug) if slug else Shop.objects.order_by("id")[:2])
    if len(shops) == 1:
        return shops[0]
    if slug:
        raise BadInput(f"--shop {slug}: no shop has this short name.")
    if not shops:
        raise BadInput("There is no shop yet: set one up first.")
    raise BadInput("--shop: there are several shops, name one.")


def write_whole(out: Path, data: bytes) -> None:
    """Write a file so that its name never stands for half of it; what stood there stays until then."""
    try:
        handle, name = tempfile.mkstemp(dir=out.parent, prefix=f".{out.name}.")
    except OSError as error:
        raise _not_writable(out, error) from error
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        os.chmod(name, _usual_mode())
        os.replace(name, out)
    except OSError as error:
        Path(name).unlink(missing_ok=True)
        raise _not_writable(out, error) from error


def _usual_mode() -> int:
    """A temporary file is its owner's alone; the report is for whoever may read files made here."""
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _not_writable(out: Path, error: OSError) -> BadInput:
    return BadInput(f"--out {out}: a file that can be written was expected ({error.strerror}).")
