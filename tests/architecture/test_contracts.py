"""The import contracts hold, and each would notice."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.architecture.source import PACKAGES, ROOT


def judged(project: Path) -> str:
    """What the import linter says of the project in a folder."""
    code = "from importlinter.cli import lint_imports_command; lint_imports_command(['--no-cache'])"
    environ = os.environ | {"PYTHONPATH": str(project)}
    shown = subprocess.run(
        [sys.executable, "-c", code], cwd=project, env=environ, capture_output=True, text=True
    )
    return shown.stdout + shown.stderr


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """The project's modules alone, to be spoilt."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for file in (file for package in PACKAGES for file in (ROOT / package).rglob("*.py")):
        target = tmp_path / file.relative_to(ROOT)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(file, target)
    return tmp_path


def test_every_contract_is_kept() -> None:
    assert "7 kept, 0 broken" in judged(ROOT)


@pytest.mark.parametrize(
    ("file", "line", "contract"),
    [
        ("safety/apps.py", "import inventory.units", "Safety has never heard of stock"),
        ("inventory/helpers.py", "", "The shelf stands on its ledger, the ledger on its words"),
        (
            "inventory/shelf/rules.py",
            "import inventory.jobs",
            "The shelf stands on its ledger, the ledger on its words",
        ),
        (
            "inventory/models/lot.py",
            "import inventory.stock",
            "The shelf stands on its ledger, the ledger on its words",
        ),
        ("inventory/shelf/helpers.py", "", "In a feature, decisions lie below paper, paper below pages"),
        (
            "inventory/shelf/queries.py",
            "import inventory.shelf.views",
            "In a feature, decisions lie below paper, paper below pages",
        ),
        (
            "inventory/precheck/questions/dates.py",
            "import inventory.precheck.queries",
            "In the pre-job check, a question knows only facts",
        ),
        ("safety/helpers.py", "", "In safety, sheets lie below pages, hazards below everything"),
        ("inventory/shelf/rules.py", "import django.utils", "What decides needs neither Django nor paper"),
        ("inventory/money.py", "import reportlab", "What decides needs neither Django nor paper"),
        ("safety/air/room.py", "import django.conf", "What decides needs neither Django nor paper"),
        ("safety/weather.py", "import django.utils", "What decides needs neither Django nor paper"),
        ("safety/reactions/chart.py", "import reportlab", "What decides needs neither Django nor paper"),
        (
            "safety/reactions/chart.py",
            "import safety.air",
            "In safety, sheets lie below pages, hazards below everything",
        ),
        (
            "safety/hazards/classes.py",
            "import safety.air",
            "In safety, sheets lie below pages, hazards below everything",
        ),
        ("safety/print/pen.py", "import django.conf", "What draws needs no Django"),
    ],
)
def test_a_wrong_import_or_an_unlisted_file_breaks_its_contract(
    copy: Path, file: str, line: str, contract: str
) -> None:
    with (copy / file).open("a") as module:
        module.write(f"\n{line}\n")
    assert f"{contract} BROKEN" in judged(copy)
