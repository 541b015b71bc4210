"""`manage.py test`: pytest on file-based SQLite (WAL) and on PostgreSQL. Needs psycopg alone."""

import os
import subprocess
import sys
import tempfile
from collections.abc import Mapping
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from typing import IO

ROOT = Path(__file__).resolve().parent.parent.parent
POSTGRES = "postgres://postgres@127.0.0.1:5432/capdate"
NO_TEST_RAN = 5  # pytest's exit status where a selection holds no test


class EngineMissing(Exception):
    """A run that must show both engines has only one."""


@dataclass(frozen=True)
class Run:
    """One run of pytest: its name for people, DATABASE_URL ("" for SQLite), whether only database tests."""

    name: str
    url: str
    only_database: bool = False


def plan(url: str, must_have_all: bool, postgres_trouble: str) -> list[Run]:
    """Return the runs. `url` is DATABASE_URL: one engine only. `postgres_trouble` is "" where one answers.

    Raises EngineMissing where PostgreSQL does not answer and `must_have_all` (CI=true) says it must.
    """
    if url:
        return [Run(f"{url.partition(':')[0]}, named by DATABASE_URL", url)]
    sqlite = Run("SQLite (a file, WAL)", "")
    if not postgres_trouble:
        # What touches no database gives the same answer twice; browsers are slow and run once.
        return [
            sqlite,
            Run("PostgreSQL (only the tests that use the database)", POSTGRES, only_database=True),
        ]
    if must_have_all:
        raise EngineMissing(
            f"PostgreSQL does not answer at {POSTGRES} ({postgres_trouble}), and CI=true wants both engines: "
            "start one there, or name one engine by DATABASE_URL."
        )
    return [sqlite]


def postgres_trouble(url: str = POSTGRES) -> str:
    """Return "" where a PostgreSQL lets us in, else why not, in its words."""
    import psycopg

    try:
        with psycopg.connect(url.rpartition("/")[0] + "/postgres", connect_timeout=3):
            return ""
    except psycopg.OperationalError as error:
        return str(error).strip().splitlines()[0]


def test_data(environ: Mapping[str, str]) -> str:
    """Return the folder for test databases and files: never where the shop's own data lie."""
    return str(Path(environ.get("CAPDATE_DIR") or ROOT / ".capdate") / "tests")


def command(run: Run, arguments: list[str]) -> list[str]:
    """Return the pytest command of a run."""
    only = ["--only-database"] if run.only_database else []
    return [sys.executable, "-m", "pytest", *only, *arguments]


def verdict(statuses: list[int]) -> int:
    """Return the exit status of several runs: the first that is no success.

    A later run without a test is no failure: the arguments named tests that use no database.
    """
    bad = [status for n, status in enumerate(statuses) if status and not (n and status == NO_TEST_RAN)]
    return bad[0] if bad else 0


def say(text: str) -> None:
    """Tell the person at the terminal which engine runs."""
    print(f"\n=== {text}", flush=True)


def run_tests(arguments: list[str]) -> int:
    """Run pytest on each engine and return the exit status; the last lines are pytest's own."""
    url = os.environ.get("DATABASE_URL", "")
    trouble = "" if url else postgres_trouble()
    try:
        runs = plan(url, os.environ.get("CI") == "true", trouble)
    except EngineMissing as reason:
        say(str(reason))
        return 1
    if trouble:
        say(f"NOT TESTED ON POSTGRESQL: none answers at {POSTGRES} ({trouble}). SQLite alone shows half.")
    return verdict(_both(runs, arguments))


def _both(runs: list[Run], arguments: list[str]) -> list[int]:
    """Run all engines at once and return their statuses; the first speaks while it runs, the others after.

    One after the other they take half as long again, and a second core stands idle.
    """
    first, *others = runs
    with ExitStack() as kept:
        files = [kept.enter_context(_a_file()) for _ in others]
        beside = [
            (_beside(run, arguments, file, kept), file) for run, file in zip(others, files, strict=True)
        ]
        say(f"engine 1 of {len(runs)}: {first.name}{'; the other one runs beside it' if others else ''}")
        statuses = [subprocess.run(command(first, arguments), cwd=ROOT, env=environment(first)).returncode]
        for number, (run, (process, told)) in enumerate(zip(others, beside, strict=True), 2):
            statuses.append(process.wait())
            say(f"engine {number} of {len(runs)}: {run.name}")
            told.seek(0)
            print(told.read(), end="", flush=True)
    return statuses


def _a_file() -> IO[str]:
    return tempfile.TemporaryFile("w+", encoding="utf-8", errors="replace")


def _beside(run: Run, arguments: list[str], told: IO[str], kept: ExitStack) -> "subprocess.Popen[bytes]":
    """Start a run whose lines are kept in a file until its turn; an interrupted test run ends it as well."""
    process = subprocess.Popen(
        command(run, arguments), cwd=ROOT, env=environment(run), stdout=told, stderr=subprocess.STDOUT
    )
    kept.callback(process.kill)
    return process


def environment(run: Run) -> dict[str, str]:
    """Return the environment of a run: its engine, and a folder that the other one never touches."""
    own = Path(test_data(os.environ)) / ("second" if run.only_database else "first")
    return os.environ | {"DATABASE_URL": run.url, "CAPDATE_DIR": str(own)}
