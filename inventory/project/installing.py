"""How packages get into an environment: by pip, ensurepip or uv. Standard library alone."""

import collections
import importlib.util
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from importlib import metadata
from pathlib import Path
from typing import Literal

Tool = Literal["pip", "ensurepip", "uv"]


class CannotInstall(Exception):
    """The set-up cannot go on; the message says what to do."""


@dataclass(frozen=True)
class Here:
    """What this machine has: Python's venv, ensurepip and pip (its version); uv on the PATH."""

    venv: bool
    ensurepip: bool
    pip: tuple[int, ...] | None
    uv: bool


def base_python() -> str:
    """Return the interpreter that made the present environment, or the present one."""
    return str(getattr(sys, "_base_executable", "") or sys.executable)


def what_is_here() -> Here:
    """Look at this machine."""

    def has(module: str) -> bool:
        return importlib.util.find_spec(module) is not None

    return Here(has("venv"), has("ensurepip"), pip_version(), shutil.which("uv") is not None)


def pip_version() -> tuple[int, ...] | None:
    """Return the version of the base interpreter's pip, None where it has none or we look from elsewhere."""
    if sys.prefix != sys.base_prefix:  # the packages seen in an environment are its own, not the base's
        return None
    try:
        return tuple(int(part) for part in metadata.version("pip").split(".")[:2])
    except (metadata.PackageNotFoundError, ValueError):
        return None


def choose_tool(here: Here) -> Tool:
    """Return the quickest way in; refuse with the name of the package to install where there is none.

    A pip that installs into another environment (22.3 and later) saves the 8 seconds of giving .venv its own.
    """
    if here.venv and here.pip and here.pip >= (22, 3):
        return "pip"
    if here.venv and here.ensurepip:
        return "ensurepip"
    if here.uv:
        return "uv"
    raise CannotInstall(
        "Set-up stopped: this Python cannot make an environment; install the package python3-venv "
        "(Debian, Ubuntu: sudo apt install python3-venv python3-pip) and start again."
    )


def creation(tool: Tool, venv: Path) -> list[str]:
    """Return the command that makes an empty environment, clearing what stands there."""
    if tool == "uv":
        return ["uv", "venv", "--quiet", "--clear", "--python", base_python(), str(venv)]
    bare = ["--without-pip"] if tool == "pip" else []
    return [base_python(), "-m", "venv", "--clear", *bare, str(venv)]


def installation(
    tool: Tool, python: Path, constraints: Path, wanted: Iterable[str], compiled: bool
) -> list[str]:
    """Return the command that installs the wanted packages, held to the pinned versions.

    Compiling every module takes as long as all the rest, and Python compiles those it uses as it goes;
    `compiled` is for a Python that was told to write nothing, and would read slowly at every start.
    """
    pinned = ["--constraint", str(constraints), *wanted]
    if tool == "uv":
        compiling = ["--compile-bytecode"] if compiled else []
        return ["uv", "pip", "install", *compiling, "--python", str(python), *pinned]
    install = ["install", "--no-input", "--disable-pip-version-check", "--progress-bar", "off"]
    install += [] if compiled else ["--no-compile"]
    if tool == "pip":
        return [base_python(), "-m", "pip", "--python", str(python), *install, *pinned]
    return [str(python), "-m", "pip", *install, *pinned]


def run(command: list[str]) -> None:
    """Run a command that says nothing when all is well."""
    done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, text=True)
    if done.returncode:
        raise CannotInstall(f"{done.stdout}{done.stderr}\nSet-up stopped: `{' '.join(command[:4])}` failed.")


def progress_of(line: str, fetched: int) -> tuple[str | None, int]:
    """Return what an installer's line tells a person, if anything, and the packages counted so far."""
    words = line.split()
    if words[:1] == ["Collecting"] and len(words) > 1:
        return f"{fetched + 1} fetched ({words[1]})", fetched + 1
    if line.startswith("Installing collected packages"):
        return f"unpacking {line.count(',') + 1} packages", fetched
    return None, fetched


def show(text: str) -> None:
    """Show progress: on a terminal in one line, elsewhere (a log) every tenth package."""
    if sys.stderr.isatty():
        print(f"\r\033[K  {text}", end="", file=sys.stderr, flush=True)
    elif "0 fetched" in text or "unpacking" in text:
        print(f"  {text}", file=sys.stderr, flush=True)


def run_showing_progress(command: list[str], tell: Callable[[str], None] = show) -> None:
    """Run an installer, tell how far it is, and keep its last lines for the case that it fails."""
    last: collections.deque[str] = collections.deque(maxlen=15)
    fetched = 0
    with subprocess.Popen(
        command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as child:
        for line in child.stdout or ():
            last.append(line.rstrip())
            text, fetched = progress_of(line, fetched)
            if text:
                tell(text)
    if sys.stderr.isatty():
        print(file=sys.stderr)
    if child.returncode:
        raise CannotInstall(
            "\n".join(last)
            + "\n\nSet-up stopped: the packages could not be installed (above: the last lines). "
            "Mend the cause, often the network, and start the same command again."
        )
