"""Commands for scripts: JSON and nothing else, or an exit status of 2."""

import io
import json
import os
import subprocess
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

from inventory.management.scripted import Answer, BadInput, ScriptedCommand, read_json, read_text

ROOT = Path(__file__).parent.parent.parent


@dataclass(frozen=True)
class Fact:
    on: date
    grams: Decimal


class ByLine(ScriptedCommand):
    """Answers twice, then meets what it cannot take."""

    domain_errors = (ZeroDivisionError,)

    def answers(self, **options: Any) -> Iterable[Answer]:
        yield "first", {"fact": Fact(date(2027, 3, 31), Decimal("1.250"))}
        yield "second", {"whole": Decimal("5.00"), "set": {"b", "a"}}
        raise ZeroDivisionError("Line 3: a number other than 0 was expected.")


def run(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "django", *words, "--settings", "inventory.project.settings"],
        capture_output=True, text=True, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}, check=False,
    )  # fmt: skip


def test_a_domain_error_is_exit_status_2_after_the_lines_before_it() -> None:
    out = io.StringIO()
    with pytest.raises(CommandError) as ended:
        call_command(ByLine(stdout=out), json=True)
    assert ended.value.returncode == 2
    assert [json.loads(line) for line in out.getvalue().splitlines()] == [
        {"fact": {"on": "2027-03-31", "grams": 1.25}},
        {"whole": 5, "set": ["a", "b"]},
        {"error": "Line 3: a number other than 0 was expected."},
    ]


def test_without_json_a_person_reads_sentences_and_the_error_stays_off_standard_output() -> None:
    out = io.StringIO()
    with pytest.raises(CommandError, match="Line 3"):
        call_command(ByLine(stdout=out))
    assert out.getvalue() == "first\nsecond\n"


def test_another_error_is_not_passed_off_as_bad_input() -> None:
    class Broken(ByLine):
        domain_errors = ()

    with pytest.raises(ZeroDivisionError):
        call_command(Broken(stdout=io.StringIO()), json=True)


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ('{"a": 1,\n "b" 2}', "line 2, column 6"),
        ('{"a": NaN}', "NaN stands"),
        ("[" * 100_000, "nested"),
        ('{"a": 1, "b": 2, "a": 3}', "The key “a” stands twice"),
        ('{"a": ' + "9" * 5_000 + "}", "shorter numbers"),
    ],
)
def test_bad_json_is_refused_with_its_place(tmp_path: Path, text: str, place: str) -> None:
    file = tmp_path / "task.json"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(BadInput, match=place):
        read_json(str(file))


def test_a_file_that_cannot_be_read_is_refused_by_name(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match=r"gone\.json: a readable file was expected"):
        read_text(str(tmp_path / "gone.json"))
    (tmp_path / "latin").write_bytes(b"\xe9")
    with pytest.raises(BadInput, match="UTF-8 text was expected"):
        read_text(str(tmp_path / "latin"))


def test_standard_input_is_read_where_no_file_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("T-88\n"))
    assert read_text(None) == "T-88\n"


@pytest.mark.parametrize(
    ("words", "error"),
    [
        (["amount", "--json", "1,000 ml"], "two readings"),
        (["amount", "-5 ml", "--json"], "is negative"),
        (["amount", "--json", "5 ml", "--system", "roman"], "invalid choice: 'roman'"),
        (["amount", "--json"], "required: text"),
        (["read_code", "--json"], "required: text"),
    ],
)
def test_bad_input_is_json_on_standard_output_and_exit_status_2(words: list[str], error: str) -> None:
    ran = run(*words)
    assert ran.returncode == 2
    assert error in json.loads(ran.stdout)["error"]


def test_bad_input_without_json_leaves_standard_output_empty() -> None:
    ran = run("amount", "1,000 ml")
    assert (ran.returncode, ran.stdout) == (2, "")
    assert "two readings" in ran.stderr
