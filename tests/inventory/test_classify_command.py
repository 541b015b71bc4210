"""`classify` and `label_elements`: a mixture or a list of hazards, at a prompt, without a database."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

ROOT = Path(__file__).parents[2]
WIPE = {
    "form": "spray",
    "flash_point_c": 24,
    "ingredients": [
        {
            "name": "propan-2-ol",
            "cas": "67-63-0",
            "percent": [20, 30],
            "hazards": ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336"],
        }
    ],
}


def run(tmp_path: Path, command: str, document: object, *words: str) -> str:
    file, out = tmp_path / "in.json", io.StringIO()
    file.write_text(json.dumps(document), encoding="utf-8")
    call_command(command, str(file), *words, stdout=out)
    return out.getvalue()


def refused(tmp_path: Path, command: str, document: object, *words: str) -> tuple[str, int]:
    with pytest.raises(CommandError) as ended:
        run(tmp_path, command, document, *words)
    return str(ended.value), ended.value.returncode


REFUSED = [
    # command, document, sentence
    ("classify", {}, "The mixture: “ingredients” is missing; a list was expected."),
    (
        "classify",
        {"ingredients": [{"name": "acid", "percent": 120}]},
        "Ingredient 1 (acid), percent: a number from 0 to 100 was expected, not 120.",
    ),
    ("label_elements", [], 'The document: {"hazards": ["Flam. Liq. 2 H225", …]} was expected.'),
    (
        "label_elements",
        {"hazards": [], "regime": "EU"},
        'The document: {"hazards": ["Flam. Liq. 2 H225", …]} was expected.',
    ),
    (
        "label_elements",
        {"hazards": "Flam. Liq. 2 H225"},
        'The document, hazards: {"hazards": ["Flam. Liq. 2 H225", …]} was expected.',
    ),
    ("label_elements", {"hazards": ["EUH066", 5]}, "Hazard 2: a text like “Flam. Liq. 2 H225” was expected."),
    (
        "label_elements",
        {"hazards": ["Flam. Liq. 2 H226"]},
        "“Flam. Liq. 2 H226”: Flam. Liq. 2 carries H225, not H226.",
    ),
    ("label_elements", {"hazards": ["EUH999"]}, "The statement EUH999 is not in the table."),
]


@pytest.mark.parametrize(("command", "document", "sentence"), REFUSED)
def test_bad_input_is_refused_by_its_place(
    tmp_path: Path, command: str, document: object, sentence: str
) -> None:
    assert refused(tmp_path, command, document, "--regime", "EU") == (sentence, 2)


@pytest.mark.parametrize("command", ["classify", "label_elements"])
def test_a_command_needs_one_of_four_regimes(tmp_path: Path, command: str) -> None:
    sentence, status = refused(tmp_path, command, {}, "--regime", "UK")
    assert (status, "invalid choice: 'UK'" in sentence) == (2, True)
    sentence, status = refused(tmp_path, command, {})
    assert (status, "required: --regime" in sentence) == (2, True)


def test_a_mixture_is_one_json_document(tmp_path: Path) -> None:
    document: dict[str, Any] = json.loads(run(tmp_path, "classify", WIPE, "--regime", "EU", "--json"))
    reasons = document.pop("because")
    assert document == {
        "hazards": ["Flam. Liq. 3 H226", "Eye Irrit. 2 H319", "STOT SE 3 H336"],
        "pictograms": ["GHS02", "GHS07"],
        "signal_word": "Warning",
        "statements": ["H226", "H319", "H336"],
        "supplemental": [],
        "ate": {},
        "unknown_percent": {},
        "needs_review": [],
    }
    assert reasons[0] == {
        "class": "Flam. Liq. 3 H226",
        "rule": "flash point from 23 to 60 °C",
        "source": "CLP Annex I Table 2.6.1",
        "mark": "S",
        "numbers": {"flash_point_c": 24, "boiling_point_c": None},
    }


def test_a_person_reads_the_label_and_why(tmp_path: Path) -> None:
    lines = run(tmp_path, "classify", WIPE, "--regime", "EU").splitlines()
    assert lines[:7] == [
        "Warning",
        "Pictograms: GHS02, GHS07",
        "  H226 Flammable liquid and vapour.",
        "  H319 Causes serious eye irritation.",
        "  H336 May cause drowsiness or dizziness.",
        "Flam. Liq. 3 H226, because",
        "  flash point from 23 to 60 °C (flash point 24 °C; boiling point not known). "
        "CLP Annex I Table 2.6.1 (read)",
    ]


def test_a_person_reads_what_is_open_and_what_is_unknown(tmp_path: Path) -> None:
    resin = {"form": "liquid", "ingredients": [{"name": "resin", "percent": 30}]}
    answer = run(tmp_path, "classify", resin, "--regime", "UN")
    assert answer.startswith("No signal word\n")
    assert "No class was found.\n" in answer
    assert "Of unknown acute toxicity, oral: 30 %\n" in answer
    assert "Needs review: The classes of resin (30 %) are not known" in answer


def test_not_classified_is_said_only_where_nothing_is_open(tmp_path: Path) -> None:
    sugar = {"form": "liquid", "ingredients": [{"name": "sugar", "percent": 30, "hazards": []}]}
    assert run(tmp_path, "classify", sugar, "--regime", "US") == (
        "No signal word\nNot classified: every family of rules was asked.\n"
    )


LABELS = [
    # hazards, regime, document
    (
        ["Acute Tox. 4 H302", "Flam. Liq. 2 H225", "Acute Tox. 4 H312"],
        "EU",
        {"pictograms": ["GHS02", "GHS07"], "signal_word": "Danger", "statements": ["H225", "H302+H312"]},
    ),
    (
        ["Flam. Liq. 2 H225", "EUH066"],
        "EU",
        {"pictograms": ["GHS02"], "signal_word": "Danger", "statements": ["H225", "EUH066"]},
    ),
    ([], "CA", {"pictograms": [], "signal_word": None, "statements": []}),
]


@pytest.mark.parametrize(("hazards", "regime", "document"), LABELS)
def test_a_label_is_one_json_document(
    tmp_path: Path, hazards: list[str], regime: str, document: dict[str, Any]
) -> None:
    given = {"hazards": hazards}
    assert json.loads(run(tmp_path, "label_elements", given, "--regime", regime, "--json")) == document


def test_a_person_reads_what_a_regime_has_no_class_for(tmp_path: Path) -> None:
    given = {"hazards": ["Aquatic Chronic 1 H410", "Flam. Liq. 4 H227"]}
    assert run(tmp_path, "label_elements", given, "--regime", "CA") == (
        "Warning\nNo class in CA: Aquatic Chronic 1 H410\nH227 Combustible liquid.\n"
    )


def shell(command: str, text: str, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "django", command, *words, "--settings", "inventory.project.settings"],
        input=text, capture_output=True, text=True, cwd=ROOT, check=False,
        env=os.environ | {"PYTHONPATH": str(ROOT), "DATABASE_URL": "postgres://nobody@127.0.0.1:1/nowhere"},
    )  # fmt: skip


@pytest.mark.parametrize(
    ("command", "text", "status", "key"),
    [
        ("classify", json.dumps(WIPE), 0, "hazards"),
        ("classify", '{"ingredients": [{"name": "x", "percent": NaN}]}', 2, "error"),
        ("classify", '{"ingredients": [{"name": "x", "percent": 1e999}]}', 2, "error"),
        ("classify", '{"ingredients": [', 2, "error"),
        ("label_elements", '{"hazards": []}', 0, "statements"),
        ("label_elements", "", 2, "error"),
    ],
)
def test_standard_input_gives_one_line_of_json_and_a_status_where_no_database_answers(
    command: str, text: str, status: int, key: str
) -> None:
    ran = shell(command, text, "--regime", "EU", "--json")
    assert (ran.returncode, len(ran.stdout.splitlines())) == (status, 1)
    assert key in json.loads(ran.stdout)
