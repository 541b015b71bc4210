"""Set-up: two starts do not collide, and a dead one holds nobody up."""

import os
import platform
import subprocess
import sys
import time
from pathlib import Path

import pytest

from inventory.project import lock

HERE = "bench-pc"


def dead_pid() -> int:
    """The number of a process that has ended."""
    child = subprocess.Popen([sys.executable, "-c", ""])
    child.wait()
    return child.pid


def test_a_lock_that_a_living_process_holds_is_not_taken(tmp_path: Path) -> None:
    file = tmp_path / "lock"
    file.write_text(lock.owner())
    assert (lock.try_to_take(file), lock.try_to_take(file), file.read_text()) == (False, False, lock.owner())


@pytest.mark.parametrize(
    ("text", "age_s", "alive", "abandoned", "because"),
    [
        ("12 bench-pc", 1, True, False, "its process runs"),
        ("12 bench-pc", 1, False, True, "its process has died"),
        ("12 bench-pc\n", 1, False, True, "a line end, written by hand, changes nothing"),
        ("12 office-pc", 1, False, False, "another machine's process cannot be asked"),
        ("12 office-pc", 901, False, True, "no set-up takes a quarter of an hour"),
        ("12 bench-pc", 901, True, True, "the number belongs to another program by now"),
        ("", 1, False, False, "the holder is about to write its number"),
        ("", 6, False, True, "the holder died before it wrote its number"),
    ],
)
def test_a_lock_is_abandoned_only_when_its_holder_is_surely_gone(
    text: str, age_s: float, alive: bool, abandoned: bool, because: str
) -> None:
    assert lock.is_abandoned(text, age_s, HERE, lambda pid: alive) is abandoned, because


def test_a_living_process_is_told_from_a_dead_one() -> None:
    assert (lock.is_alive(os.getpid()), lock.is_alive(dead_pid())) == (True, False)


def test_a_dead_processs_lock_is_taken_over(tmp_path: Path) -> None:
    file = tmp_path / "lock"
    file.write_text(f"{dead_pid()} {platform.node()}")
    said: list[str] = []
    with lock.held(file, said.append, pause_s=0.01):
        assert file.read_text() == lock.owner()
    assert sorted(tmp_path.iterdir()) == []


def test_taking_away_spares_a_lock_that_another_start_has_just_made(tmp_path: Path) -> None:
    file = tmp_path / "lock"
    file.write_text("77 bench-pc")
    lock.take_away(file, seen="12 bench-pc")
    assert (file.read_text(), list(tmp_path.iterdir())) == ("77 bench-pc", [file])


def test_the_lock_is_given_back_when_the_work_fails(tmp_path: Path) -> None:
    file = tmp_path / "lock"
    with pytest.raises(ZeroDivisionError), lock.held(file, print):
        raise ZeroDivisionError
    assert not file.exists()


WORKER = """
import pathlib, sys, time
from inventory.project import lock
work, log = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
with lock.held(work, lambda text: None, pause_s=0.01):
    for word in ("in", "out"):
        with log.open("a") as file:
            file.write(word + "\\n")
        time.sleep(0.05)
"""


def race(tmp_path: Path, code: str) -> list[str]:
    """Five processes do the same work at once; what they logged."""
    log = tmp_path / "log"
    command = [sys.executable, "-c", code, str(tmp_path / "lock"), str(log)]
    children = [subprocess.Popen(command, cwd=Path(lock.__file__).parents[2]) for _ in range(5)]
    assert [child.wait(30) for child in children] == [0] * 5
    return log.read_text().split()


def test_five_starts_at_once_work_one_after_another(tmp_path: Path) -> None:
    (tmp_path / "lock").write_text(f"{dead_pid()} {platform.node()}")
    assert race(tmp_path, WORKER) == ["in", "out"] * 5


def test_without_the_lock_the_five_would_work_at_once(tmp_path: Path) -> None:
    start = time.time() + 1.5  # all are up by then
    unlocked = WORKER.replace(
        "with lock.held(work, lambda text: None, pause_s=0.01):",
        f"time.sleep(max(0, {start} - time.time()))\nif True:",
    )
    assert race(tmp_path, unlocked) != ["in", "out"] * 5
