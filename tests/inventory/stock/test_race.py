"""Separate processes take the last millilitres at the same moment: nobody gets what another one has taken.

Twenty of a bottle's thirty millilitres are wanted by four processes at once, a thousand bottles one after the
other. The twin has no locks and shows what each engine does then.
"""

import json
import os
from collections import Counter
from multiprocessing import get_context
from pathlib import Path
from typing import Any

import pytest

from tests.inventory.stock import racing

pytestmark = [pytest.mark.engine, pytest.mark.timeout(900)]
PROCESSES = 4
CONTESTED = 1_000
TWIN = 50
spawned = get_context("spawn")


def environ_of(folder: Path) -> dict[str, str]:
    """Return the environment of a race's own database, on the engine of this run."""
    url = os.environ.get("DATABASE_URL", "")
    postgres = "postgres" in url
    return {"CAPDATE_DIR": str(folder), "DATABASE_URL": f"{url}_race_{os.getpid()}" if postgres else ""}


def in_process(target: Any, *args: object) -> None:
    process = spawned.Process(target=target, args=args)
    process.start()
    process.join()
    assert process.exitcode == 0


def race(folder: Path, bottles: int, *, locked: bool) -> tuple[list[tuple[str, ...]], dict[str, Any]]:
    """Run a race; return what each process got of every bottle, and what stands in the database then."""
    environ = environ_of(folder)
    in_process(racing.prepare, environ, bottles)
    barrier = spawned.Barrier(PROCESSES)
    racers = [
        spawned.Process(target=racing.run, args=(environ, barrier, number, locked))
        for number in range(PROCESSES)
    ]
    for racer in racers:
        racer.start()
    for racer in racers:
        racer.join()
    assert [racer.exitcode for racer in racers] == [0] * PROCESSES
    in_process(racing.examine, environ)
    each = [json.loads((folder / f"racer-{number}.json").read_text()) for number in range(PROCESSES)]
    return list(zip(*each, strict=True)), json.loads((folder / "found.json").read_text())


def test_of_four_who_want_the_last_millilitres_one_gets_them_a_thousand_times(tmp_path: Path) -> None:
    outcomes, found = race(tmp_path, CONTESTED, locked=True)
    assert len(outcomes) == CONTESTED
    wrong = [outcome for outcome in outcomes if Counter(outcome) != {"took": 1, "too little": PROCESSES - 1}]
    assert wrong == []
    assert found == {
        "problems": [],
        "contents": [racing.BOTTLE - racing.TAKE],
        "unforked": True,
        "uses": CONTESTED,
    }


def test_twin_without_the_locks_people_are_turned_away_by_errors_of_the_database(tmp_path: Path) -> None:
    outcomes, found = race(tmp_path, TWIN, locked=False)
    errors = Counter(each for outcome in outcomes for each in outcome if each not in ("took", "too little"))
    says = "database is locked" if not environ_of(tmp_path)["DATABASE_URL"] else "movement_seq_once_a_shop"
    assert any(says in error for error in errors), errors
    assert found["unforked"], "the unique number and the guards still hold what the lock no longer does"
