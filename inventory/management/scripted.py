"""The base of commands for scripts: `--json` prints JSON and nothing else; bad input is exit status 2."""

import json
import sys
from argparse import ArgumentParser
from collections.abc import Iterable
from dataclasses import asdict, is_dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any, ClassVar, NoReturn

from django.core.management.base import BaseCommand, CommandError, CommandParser

Answer = tuple[str, Any]  # what a person reads, and the JSON document


class BadInput(ValueError):
    """Input that cannot be taken; its text names the place and what was expected."""


class ScriptedCommand(BaseCommand):
    """A command that answers: `answer` for one document, or `answers` for one JSON line per input line.

    `domain_errors` are the exceptions whose sentence is the user's to read: they end in exit status 2, and
    with `--json` in `{"error": "…"}` on standard output.
    """

    requires_system_checks = []
    domain_errors: ClassVar[tuple[type[Exception], ...]] = ()

    def create_parser(self, prog_name: str, subcommand: str, **kwargs: Any) -> CommandParser:
        """Add `--json`, and let wrong arguments be refused as wrong input is."""
        parser = super().create_parser(prog_name, subcommand, **kwargs)
        parser.add_argument("--json", action="store_true", help="print JSON and nothing else")
        parser.error = _refusal(parser, self)  # type: ignore[method-assign]
        return parser

    def run_from_argv(self, argv: list[str]) -> None:
        """Remember how the answer is wanted before the arguments are read: they may be what is wrong."""
        self.as_json = "--json" in argv
        super().run_from_argv(argv)

    def handle(self, *args: Any, **options: Any) -> None:
        """Print each answer as soon as it is there; turn a domain error into exit status 2."""
        self.as_json = options["json"]
        refused: tuple[type[Exception], ...] = (BadInput, *self.domain_errors)
        try:
            for says, document in self.answers(**options):
                if self.as_json:
                    self.print_json(document)
                else:
                    self.stdout.write(says)
                self.stdout.flush()
        except refused as error:
            self.refuse(str(error))

    def answers(self, **options: Any) -> Iterable[Answer]:
        """Yield one answer a line of output; a command of a single document leaves this as it is."""
        yield self.answer(**options)

    def answer(self, **options: Any) -> Answer:
        """Return what a person reads, and the JSON document."""
        raise NotImplementedError(f"{type(self).__module__} answers neither once nor by line.")

    def print_json(self, document: Any) -> None:
        """Print one document on one line, in plain letters where the terminal takes them."""
        text = json.dumps(document, ensure_ascii=False, default=_jsonable)
        try:
            text.encode(getattr(self.stdout, "encoding", None) or "utf-8")
        except UnicodeEncodeError:
            text = json.dumps(document, default=_jsonable)
        self.stdout.write(text)

    def refuse(self, sentence: str) -> NoReturn:
        """End with exit status 2 and the sentence, as JSON where JSON was asked for."""
        if self.as_json:
            self.print_json({"error": sentence})
        raise CommandError(sentence, returncode=2)


def read_text(named: str | None) -> str:
    """Return the text of a file, or of standard input where none is named or it is "-"."""
    try:
        if named is None or named == "-":
            return sys.stdin.read()
        return Path(named).read_text(encoding="utf-8")
    except OSError as error:
        raise BadInput(f"{named}: a readable file was expected ({error.strerror}).") from error
    except UnicodeDecodeError as error:
        raise BadInput(f"{_place(named)}: UTF-8 text was expected.") from error


def read_json(named: str | None) -> Any:
    """Return the JSON document of a file or of standard input.

    NaN and Infinity are no JSON numbers, and a key that stands twice says two things: both raise BadInput.
    """
    try:
        return json.loads(read_text(named), parse_constant=_no_number, object_pairs_hook=_once)
    except json.JSONDecodeError as error:
        at = f"{_place(named)}, line {error.lineno}, column {error.colno}"
        raise BadInput(f"{at}: JSON was expected ({error.msg}).") from error
    except RecursionError as error:
        raise BadInput(f"{_place(named)}: JSON nested less deeply was expected.") from error
    except BadInput:
        raise
    except ValueError as error:  # a whole number of thousands of digits
        raise BadInput(f"{_place(named)}: shorter numbers were expected.") from error


def _place(named: str | None) -> str:
    return "standard input" if named in (None, "-") else str(named)


def _no_number(word: str) -> NoReturn:
    raise BadInput(f"{word} stands where a number was expected.")


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    document: dict[str, Any] = {}
    for key, value in pairs:
        if key in document:
            raise BadInput(f"The key “{key}” stands twice in one object; once was expected.")
        document[key] = value
    return document


def _refusal(parser: ArgumentParser, command: ScriptedCommand) -> Any:
    def error(message: str) -> NoReturn:
        sentence = (
            f"{message[:1].upper()}{message[1:]}. See --help; a text that starts with “-” goes after “--”."
        )
        if getattr(command, "as_json", False):
            command.print_json({"error": sentence})
        if not getattr(parser, "called_from_command_line", None):
            raise CommandError(sentence, returncode=2)
        parser.exit(2, f"{sentence}\n")

    return error


def _jsonable(value: Any) -> Any:
    """Return dates as ISO, decimals as numbers, frozen values as their fields."""
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Decimal):
        return int(value) if value == value.to_integral_value() else float(value)
    if is_dataclass(value) and not isinstance(value, type):
        return asdict(value)
    if isinstance(value, set | frozenset):
        return sorted(value)
    raise TypeError(f"{type(value).__name__} has no form in JSON.")
