"""The table of fixed words: nothing unsaid in any language, no blank lost, no row that nobody says."""

import ast
import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from string import Formatter

import pytest

from safety.hazards import facts, plain
from safety.hazards.tables import header, rows
from safety.print import words
from safety.print.words import (
    UnknownLanguage,
    UnknownWords,
    from_memory,
    languages,
    said_or_same,
    say,
    table,
    written,
)

ROOT = Path(__file__).resolve().parents[3]
IN_TEMPLATES = re.compile(r'{% said "([^"]+)"')


def blanks(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name}


def literals() -> Iterator[str]:
    """Every text that stands in the code or in a template's `said`."""
    for file in [*(ROOT / "safety").rglob("*.py"), *(ROOT / "inventory").rglob("*.py")]:
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield node.value
    for file in (ROOT / "templates").rglob("*.html"):
        yield from IN_TEMPLATES.findall(file.read_text("utf-8"))


def asked_for() -> Iterator[tuple[str, str]]:
    """Yield every text that code hands to `say` of the table as it stands, with the file that does."""
    for file in [*(ROOT / "safety").rglob("*.py"), *(ROOT / "inventory").rglob("*.py")]:
        nodes = list(ast.walk(ast.parse(file.read_text("utf-8"))))
        if any(isinstance(one, ast.ImportFrom) and one.module == "safety.print.words" for one in nodes):
            yield from ((text, file.name) for text in map(said_as_it_stands, nodes) if text)


def said_as_it_stands(node: ast.AST) -> str:
    """Return the text of a call of `say`, "" of all else."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "say":
        return str(node.args[0].value) if isinstance(node.args[0], ast.Constant) else ""
    return ""


def test_words_that_the_table_does_not_have_are_refused() -> None:
    with pytest.raises(UnknownWords, match="“Quite new” is not in the table"):
        say("Quite new", "en")


def test_a_language_without_a_column_is_refused() -> None:
    with pytest.raises(UnknownLanguage, match="“fr” is not one of en, es"):
        say("Danger", "fr")


@pytest.mark.parametrize("language", languages())
def test_every_sentence_is_said_in_every_language_with_the_same_blanks(language: str) -> None:
    wrong = {
        english: row[language]
        for english, row in table().items()
        if not row[language].strip() or blanks(row[language]) != blanks(english)
    }
    assert wrong == {}


def test_no_row_is_said_twice_and_each_has_a_mark_a_language() -> None:
    read = rows("words")
    assert len({row["en"] for row in read}) == len(read)
    assert {row["en"]: row["mark"] for row in read if len(row["mark"].split()) != len(languages())} == {}


def test_every_row_is_said_somewhere() -> None:
    assert set(table()) - set(literals()) == set()


def test_every_said_of_a_template_is_in_the_table() -> None:
    asked = {
        text
        for file in (ROOT / "templates").rglob("*.html")
        for text in IN_TEMPLATES.findall(file.read_text("utf-8"))
    }
    assert len(asked) > 20
    assert asked - set(table()) == set()


def test_every_text_that_code_says_as_it_stands_is_in_the_table() -> None:
    asked = list(asked_for())
    assert {file for _, file in asked} >= {"card.py", "first_day.py"}
    assert sorted({text for text, _ in asked} - set(table())) == []


@pytest.mark.parametrize(("mark", "is_so"), [("own M", True), ("own own", False)])
def test_a_language_is_from_memory_until_no_row_of_it_is_marked_so(
    monkeypatch: pytest.MonkeyPatch, mark: str, is_so: bool
) -> None:
    assert from_memory("es") is True
    monkeypatch.setattr(words, "table", lambda: {"Body": {"en": "Body", "es": "Cuerpo", "mark": mark}})
    assert from_memory("es") is is_so


def test_every_heading_of_a_danger_and_every_notice_is_in_the_table() -> None:
    headings = {heading for heading, _, _ in plain.GROUPS}
    notices = {facts.NO_SHEET, facts.NOT_TYPED, facts.NOT_CLASSIFIED}
    assert (headings | notices) - set(table()) == set()


def test_the_head_says_where_the_words_come_from() -> None:
    head = " ".join(header("words"))
    assert "source:" in head
    assert "mark:" in head


# Signal words: Spanish edition of Regulation (EC) 1272/2008, from memory.
@pytest.mark.parametrize(("english", "spanish"), [("Danger", "Peligro"), ("Warning", "Atención")])
def test_the_signal_words_are_the_regulations(english: str, spanish: str) -> None:
    assert say(english, "es") == spanish


def test_what_a_person_wrote_stays_as_it_is() -> None:
    assert said_or_same("left of the door", "es") == "left of the door"


@pytest.mark.parametrize(
    ("language", "says"), [("en", "25 November 2026"), ("es", "25 de noviembre de 2026")]
)
def test_a_day_is_written_out(language: str, says: str) -> None:
    assert written(date(2026, 11, 25), language) == says
