"""`manage.py test`: pytest on file-based SQLite (WAL), then on PostgreSQL. Needs psycopg alone."""

import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

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
    statuses = []
    for number, run in enumerate(runs, 1):
        say(f"engine {number} of {len(runs)}: {run.name}")
        environ = os.environ | {"DATABASE_URL": run.url, "CAPDATE_DIR": test_data(os.environ)}
        statuses.append(subprocess.run(command(run, arguments), cwd=ROOT, env=environ).returncode)
        if any(statuses) and number < len(runs):
            say(f"{run.name}: pytest ended with status {statuses[-1]}; the next engine runs all the same")
    return verdict(statuses)
