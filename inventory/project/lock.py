"""One start at a time: a lock file that a dead process does not leave for ever. Standard library alone."""

import contextlib
import os
import platform
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

# A set-up takes half a minute; a lock this old belongs to nobody, even where its process cannot be asked
# (another machine on a shared folder, or a number that another program has been given since).
TOO_OLD_S = 900
# Between the exclusive create and the writing of the number the file is empty.
EMPTY_FOR_S = 5


def is_alive(pid: int) -> bool:
    """Return whether a process of that number runs on this machine."""
    if sys.platform == "win32":  # there os.kill(pid, 0) is no question: it sends Ctrl-C
        import ctypes

        handle = ctypes.windll.kernel32.OpenProcess(0x1000, False, pid)  # PROCESS_QUERY_LIMITED_INFORMATION
        code = ctypes.c_ulong()
        ctypes.windll.kernel32.GetExitCodeProcess(handle, ctypes.byref(code))
        ctypes.windll.kernel32.CloseHandle(handle)
        return bool(handle) and code.value == 259  # STILL_ACTIVE
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True


def owner() -> str:
    """Return what this process writes into its lock: number and machine."""
    return f"{os.getpid()} {platform.node()}"


def is_abandoned(text: str, age_s: float, here: str, alive: Callable[[int], bool]) -> bool:
    """Return whether the lock with this text, untouched for `age_s` seconds, belongs to nobody any more."""
    number, _, machine = text.strip().partition(" ")
    if age_s > TOO_OLD_S:
        return True
    if not number.isdigit():
        return age_s > EMPTY_FOR_S
    return machine == here and not alive(int(number))


def take_away(lock: Path, seen: str) -> None:
    """Remove the abandoned lock that reads `seen`: by renaming, so that of two starts only one removes it."""
    aside = lock.with_name(f"{lock.name}.{os.getpid()}")
    with contextlib.suppress(FileNotFoundError):
        os.replace(lock, aside)
        if aside.read_text() != seen:  # another start was quicker, and this is its new lock
            os.replace(aside, lock)
        aside.unlink(missing_ok=True)


def try_to_take(lock: Path) -> bool:
    """Create the lock exclusively; False where one is held. An abandoned one is removed first."""
    try:
        with lock.open("x") as file:
            file.write(owner())
        return True
    except FileExistsError:
        with contextlib.suppress(FileNotFoundError):
            text, age_s = lock.read_text(), time.time() - lock.stat().st_mtime
            if is_abandoned(text, age_s, platform.node(), is_alive):
                take_away(lock, text)
                return try_to_take(lock)
        return False


@contextlib.contextmanager
def held(lock: Path, say: Callable[[str], None], pause_s: float = 0.3) -> Iterator[None]:
    """Hold the lock for the block; wait for a living holder, and say once that we do."""
    told = False
    while not try_to_take(lock):
        if not told:
            say(f"another start is setting up; waiting for it (if none is, remove {lock.name})")
        told = True
        time.sleep(pause_s)
    try:
        yield
    finally:
        with contextlib.suppress(FileNotFoundError):
            if lock.read_text() == owner():
                lock.unlink()
