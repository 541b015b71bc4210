"""The test command: which engines are tried, and what is said where one is missing."""

import subprocess
import sys
from pathlib import Path

import pytest

from inventory.project import engines
from inventory.project.engines import POSTGRES, EngineMissing, Run

NOBODY = "connection refused"


def test_in_ci_a_missing_engine_fails_loudly() -> None:
    with pytest.raises(
        EngineMissing, match=r"PostgreSQL does not answer .*connection refused.* start one there"
    ):
        engines.plan("", must_have_all=True, postgres_trouble=NOBODY)


def test_at_a_desk_a_missing_engine_is_left_out() -> None:
    assert engines.plan("", must_have_all=False, postgres_trouble=NOBODY) == [Run("SQLite (a file, WAL)", "")]


def test_where_both_answer_the_second_runs_only_what_uses_the_database() -> None:
    runs = engines.plan("", must_have_all=True, postgres_trouble="")
    assert [(run.url, run.only_database) for run in runs] == [("", False), (POSTGRES, True)]


def test_a_named_engine_is_the_only_one_and_runs_everything() -> None:
    url = "postgres://wren@shelf:5432/capdate"
    assert engines.plan(url, must_have_all=True, postgres_trouble="") == [
        Run("postgres, named by DATABASE_URL", url)
    ]


def test_nobody_answers_where_no_server_listens() -> None:
    assert "refused" in engines.postgres_trouble("postgres://postgres@127.0.0.1:9/capdate")


@pytest.mark.parametrize(
    ("environ", "expected"),
    [({}, engines.ROOT / ".capdate" / "tests"), ({"CAPDATE_DIR": "shop"}, Path("shop/tests"))],
)
def test_tests_never_use_the_shops_own_folder(environ: dict[str, str], expected: Path) -> None:
    assert engines.test_data(environ) == str(expected)


def test_pytest_gets_the_arguments_as_they_were_given() -> None:
    command = engines.command(Run("x", "", only_database=True), ["tests/inventory", "-k", "two words"])
    assert command[1:] == ["-m", "pytest", "--only-database", "tests/inventory", "-k", "two words"]


@pytest.mark.parametrize(
    ("statuses", "expected", "because"),
    [
        ([1, 0], 1, "the first engine failed"),
        ([0, 1], 1, "the second engine failed"),
        ([5], 5, "no test ran at all"),
        ([5, 5], 5, "no test ran at all, twice"),
        ([0, 2], 2, "interrupted"),
        ([0, 5], 0, "the tests named use no database"),
        ([0, 0], 0, "all is well"),
    ],
)
def test_the_exit_status_is_the_first_that_is_no_success(
    statuses: list[int], expected: int, because: str
) -> None:
    assert engines.verdict(statuses) == expected, because


SUITE = """
import pytest

def test_pure(): pass

@pytest.mark.django_db
def test_marked(): pass

def test_by_fixture(db): pass

@pytest.mark.engine
def test_other_processes(): pass

def test_in_browser(browser, db): pass
"""


def test_the_second_engine_leaves_out_what_the_engine_cannot_change(tmp_path: Path) -> None:
    tests = engines.ROOT / "tests"
    (tmp_path / "conftest.py").write_text((tests / "conftest.py").read_text())
    (tmp_path / "test_suite.py").write_text(SUITE)
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "--collect-only",
        "--only-database",
        "-p",
        "no:cacheprovider",
    ]
    command += ["-c", str(engines.ROOT / "pyproject.toml"), "--rootdir", str(tmp_path), str(tmp_path)]
    shown = subprocess.run(command, cwd=engines.ROOT, capture_output=True, text=True).stdout
    assert [name for name in shown.split() if "::" in name] == [
        "test_suite.py::test_marked",
        "test_suite.py::test_by_fixture",
        "test_suite.py::test_other_processes",
    ]


def test_both_engines_run_at_once_and_the_second_one_speaks_last(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    told = "import os, sys; print(os.environ['CAPDATE_DIR'][-6:], sys.argv[1:]); sys.exit(len(sys.argv) - 1)"

    def command(run: Run, arguments: list[str]) -> list[str]:
        return [sys.executable, "-c", told, *(["only"] if run.only_database else []), *arguments]

    monkeypatch.setattr(engines, "command", command)
    runs = engines.plan("", must_have_all=True, postgres_trouble="")

    assert engines._both(runs, ["tests"]) == [1, 2]
    lines = [line for line in capfd.readouterr().out.splitlines() if line]
    assert lines[1] == "/first ['tests']"
    assert lines[-1] == "second ['only', 'tests']"
