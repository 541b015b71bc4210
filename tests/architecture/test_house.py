"""The house: what stands where, how large a room may be, and what may not be written on its walls."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.source import LEFT_BEHIND, PACKAGES, ROOT, files, modules

TOP = {
    "README.md",
    "DEVELOPERS.md",
    "manage.py",
    "pyproject.toml",
    "safety",
    "inventory",
    "templates",
    "tests",
    "demo_fixtures",
}
FEATURES = (
    "today products scan shelf bays jobs reorder posters people settings spreadsheets precheck".split()  # noqa: SIM905
)
KINDS = {"__init__", "rules", "queries", "actions", "forms", "pdf", "sheets", "resources", "views", "urls"}
OWN_KINDS = {"reorder": {"charts"}, "bays": {"charts"}, "precheck": {"questions"}}

LONGEST_MODULE = 250
LONGEST_FUNCTION = 40
# Longer than that only with a reason.
LONG: dict[str, str] = {
    "tests/inventory/test_units.py": "the tables of spellings and refusals belong beside one another",
    "tests/inventory/test_read_code.py": "the table of symbols and their readings is one specification",
    "tests/inventory/precheck/test_questions.py": "every question, and where it is silent",
    "tests/inventory/stock/test_fold.py": "one table of what may follow what in a container's life",
    "tests/inventory/stock/test_ledger.py": "all that the only writer promises, in one place",
    "tests/inventory/stock/test_stateful.py": "one machine: its rules and invariants cannot be parted",
    "tests/browser/test_station_screen.py": "one screen against one played server",
    "tests/browser/test_every_page.py": "every page of the site is one list, held against the addresses",
    "tests/browser/test_journeys.py": "the journeys share one shop and one way of scanning",
    "tests/browser/test_journeys.py:test_from_signing_in_to_taking_a_use_back_by_keyboard_and_scanner": (
        "one walk through a day, in order"
    ),
    "tests/inventory/jobs/test_job_actions.py": "one job from its booking to its closing",
    "tests/inventory/precheck/test_check_rules.py": "one matrix: each question where it speaks and is silent",
    "tests/inventory/stock/test_verify.py": "every way to harm the ledger, and the line that is named",
    "tests/journeys/test_job_from_service_to_closing.py:"
    "test_a_service_is_written_once_booked_edited_signed_and_closed": "one job's whole life, in order",
    "tests/inventory/posters/test_poster_papers.py": "card, cabinet, list: one shop, one way of reading",
    "tests/inventory/posters/test_label_pages.py": "one page, from what it shows to what it prints",
    "tests/safety/hazards/mixtures/test_acute.py": "cut-offs from both sides, regime by regime, in one table",
    "tests/safety/hazards/mixtures/test_rules.py": "what all families together make of a mixture",
    "tests/safety/air/test_traps.py": "every trap of exposure arithmetic, in the order of its list",
    "tests/inventory/trade/test_matrix_of_practice.py": "every rule of the trade, and where it is silent",
    "tests/inventory/precheck/test_air_questions.py": "every rule of air, and where it is silent",
    "tests/inventory/reorder/test_lines.py": "one line of a report, number by number",
    "tests/inventory/reorder/shelf.py:december_report": "a month of one shop as plain values, top to bottom",
}

# Paths of somebody's machine, and hosts that packages come from: a clone must work where neither is known.
FOREIGN = re.compile(
    r"(?<![\w.:/-])/(?:work|root|home/\w+|Users/\w+)/|py"
    + r"pi\.org|python"
    + r"hosted|npm"
    + r"js\.|deb\.deb"
    + "ian"
)


def strangers(feature: Path) -> list[str]:
    """What lies in a feature's folder and is no known kind."""
    known = KINDS | OWN_KINDS.get(feature.name, set())
    found = (path for path in feature.iterdir() if path.name not in LEFT_BEHIND)
    return [
        path.name for path in found if path.stem not in known or (path.is_file() and path.suffix != ".py")
    ]


def too_long(root: Path) -> Iterator[str]:
    """Modules over 250 lines, and functions over 40, as `path` or `path:function`."""
    for file in modules(root):
        text, name = file.read_text("utf-8"), file.relative_to(root).as_posix()
        if text.count("\n") > LONGEST_MODULE:
            yield name
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.FunctionDef) and node.end_lineno - node.lineno >= LONGEST_FUNCTION:
                yield f"{name}:{node.name}"


def foreign(root: Path) -> Iterator[str]:
    """Lines that name a machine's paths or a package registry's host."""
    for file in files(root):
        try:
            lines = file.read_text("utf-8").splitlines()
        except UnicodeDecodeError:
            continue  # pictures and fonts
        for number, line in enumerate(lines, 1):
            if FOREIGN.search(line):
                yield f"{file.relative_to(root)}:{number}: {line.strip()[:100]}"


def hidden_from_contracts(root: Path) -> list[str]:
    """Folders with Python in them and no __init__: import contracts would not look inside."""
    folders = {file.parent for package in PACKAGES for file in modules(root / package)}
    return sorted(
        str(folder.relative_to(root)) for folder in folders if not (folder / "__init__.py").exists()
    )


def test_the_visible_top_level_is_the_plan_and_nothing_else() -> None:
    visible = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - LEFT_BEHIND
    assert visible == TOP


@pytest.mark.parametrize("feature", FEATURES)
def test_a_features_files_are_of_known_kinds(feature: str) -> None:
    assert strangers(ROOT / "inventory" / feature) == []


@pytest.mark.parametrize("stranger", ["helpers.py", "utils.py", "charts.py", "data.json"])
def test_a_stranger_in_a_feature_is_noticed(tmp_path: Path, stranger: str) -> None:
    for name in ("__init__.py", "rules.py", stranger):
        (tmp_path / name).touch()
    assert strangers(tmp_path) == [stranger]


def test_no_folder_hides_from_the_import_contracts() -> None:
    assert hidden_from_contracts(ROOT) == []


def test_a_folder_without_init_is_noticed(tmp_path: Path) -> None:
    (tmp_path / "safety").mkdir()
    (tmp_path / "safety" / "loose.py").touch()
    assert hidden_from_contracts(tmp_path) == ["safety"]


def test_rooms_are_small_or_say_why_not() -> None:
    assert sorted(set(too_long(ROOT)) - set(LONG)) == []


def test_no_reason_outlives_its_long_room() -> None:
    assert sorted(set(LONG) - set(too_long(ROOT))) == []


def test_a_room_of_251_lines_and_a_function_of_41_are_noticed(tmp_path: Path) -> None:
    (tmp_path / "large.py").write_text("x = 1\n" * 251)
    (tmp_path / "fits.py").write_text("x = 1\n" * 250)
    (tmp_path / "long.py").write_text(
        "def act():\n" + "    x = 1\n" * 40 + "def fits():\n" + "    x = 1\n" * 39
    )
    assert sorted(too_long(tmp_path)) == ["large.py", "long.py:act"]


def test_no_file_names_a_machine_or_a_registry() -> None:
    assert list(foreign(ROOT)) == []


@pytest.mark.parametrize(
    ("line", "noticed", "because"),
    [
        ("open('/ro" + "ot/capdate')", True, "a path of one machine"),
        ("see /ho" + "me/ines/shelf", True, "a person's folder"),
        ("https://py" + "pi.org/simple", True, "a registry's host"),
        ('path("settings/work/")', False, "an address of ours"),
        ("/usr/bin/chromium", False, "where Debian puts it on every machine"),
    ],
)
def test_a_line_is_foreign_only_where_it_names_one(
    tmp_path: Path, line: str, noticed: bool, because: str
) -> None:
    (tmp_path / "notes.txt").write_text(line)
    assert bool(list(foreign(tmp_path))) is noticed, because
