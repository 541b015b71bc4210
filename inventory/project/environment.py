"""The set-up: an environment of its own beside manage.py, made with the standard library alone.

`enter` returns where the interpreter has what is wanted, and otherwise starts the same command again in
`.venv`, making it first where need be. All it says goes to standard error: standard output is the command's.
`python3 -m inventory.project.environment test` sets up for the tests and prints the interpreter's path.
"""

import hashlib
import os
import re
import subprocess
import sys
import tomllib
from collections.abc import Iterable
from importlib import metadata
from pathlib import Path

from inventory.project import installing, lock

ROOT = Path(__file__).resolve().parent.parent.parent
VENV = ROOT / ".venv"
CONSTRAINTS = ROOT / ".ci" / "constraints.txt"


def requirements(pyproject: str, group: str) -> list[str]:
    """Return the run-time requirements of pyproject.toml's text; for "test" those of the tests too."""
    read = tomllib.loads(pyproject)
    more = read["dependency-groups"]["test"] if group == "test" else []
    return [*read["project"]["dependencies"], *more]


def demo_folder(arguments: list[str], here: str) -> str:
    """Return the absolute folder of `demo [--dir DIR]`; without the option `.demo` in the checkout."""
    for number, argument in enumerate(arguments):
        if argument.startswith("--dir="):
            return str(Path(here, argument.removeprefix("--dir=")).resolve())
        if argument == "--dir" and number + 1 < len(arguments):
            return str(Path(here, arguments[number + 1]).resolve())
    return str(ROOT / ".demo")


def name_of(requirement: str) -> str:
    """Return the package's name alone: "psycopg[binary]~=3.3" is psycopg."""
    return re.split(r"[^A-Za-z0-9._-]", requirement, maxsplit=1)[0]


def satisfies(requirement: str, version: str) -> bool:
    """Return whether the version fits; where `packaging` is not there to judge, being installed is enough."""
    try:
        from packaging.requirements import Requirement
    except ImportError:
        return True
    return Requirement(requirement).specifier.contains(version, prereleases=True)


def missing(wanted: Iterable[str]) -> list[str]:
    """Return the requirements that this interpreter's packages do not meet."""

    def is_met(requirement: str) -> bool:
        try:
            return satisfies(requirement, metadata.version(name_of(requirement)))
        except metadata.PackageNotFoundError:
            return False

    return [requirement for requirement in wanted if not is_met(requirement)]


def stamp(wanted: Iterable[str], constraints: str, python: tuple[int, int]) -> str:
    """Return the text written last into a finished environment: its Python, and a hash of the pinned list."""
    digest = hashlib.sha256("\n".join([*sorted(wanted), constraints]).encode()).hexdigest()
    return f"{python[0]}.{python[1]} {digest}"


def must_start_afresh(stamped: str | None, python: tuple[int, int]) -> bool:
    """Return whether what stands in .venv is to be thrown away: never finished, or another Python's.

    A finished one whose list has changed is brought up to date in place: a server may be running from it.
    """
    return stamped is None or not stamped.startswith(f"{python[0]}.{python[1]} ")


def interpreter(venv: Path, os_name: str) -> Path:
    """Return where an environment keeps its Python; `os_name` as in os.name."""
    return venv / "Scripts" / "python.exe" if os_name == "nt" else venv / "bin" / "python"


def stamp_file(venv: Path, group: str) -> Path:
    """Return the file that says an environment is finished for "run" or for "test"."""
    return venv / f"finished-for-{group}"


def stamped(venv: Path, group: str) -> str | None:
    """Return the stamp of a finished environment, or None."""
    file = stamp_file(venv, group)
    return file.read_text() if file.exists() and interpreter(venv, os.name).exists() else None


def wanted_stamps(pyproject: str, constraints: str, group: str) -> dict[str, str]:
    """Return each stamp to write when a set-up for the group is finished: the tests' packages hold both."""
    groups = ["run", "test"] if group == "test" else ["run"]
    return {each: stamp(requirements(pyproject, each), constraints, sys.version_info[:2]) for each in groups}


def say(text: str) -> None:
    """Tell the person at the terminal what the set-up does."""
    print(f"Set-up: {text}.", file=sys.stderr, flush=True)


def make(venv: Path, wanted: list[str], stamps: dict[str, str]) -> None:
    """Make or complete the environment; the stamps come last, so a broken-off set-up is not trusted."""
    afresh = must_start_afresh(stamped(venv, "run"), sys.version_info[:2])
    tool = installing.choose_tool(installing.what_is_here())
    for group in ("run", "test"):
        stamp_file(venv, group).unlink(missing_ok=True)
    python = interpreter(venv, os.name)
    if afresh:
        say(f"1 of 2, making {venv.name} with {tool}")
        installing.run(installing.creation(tool, venv))
    say(f"2 of 2, fetching {len(wanted)} packages and what they need, about half a minute the first time")
    command = installing.installation(tool, python, CONSTRAINTS, wanted, compiled=sys.dont_write_bytecode)
    installing.run_showing_progress(command)
    for group, text in stamps.items():
        stamp_file(venv, group).write_text(text)
    say("finished")


def hand_over(python: Path, arguments: list[str], os_name: str) -> None:
    """Run the same command with the environment's Python, and never come back.

    On Windows an exec gives the prompt back at once, so there the child is waited for.
    """
    command = [str(python), *arguments]
    if os_name == "nt":
        sys.exit(subprocess.call(command))
    os.execv(command[0], command)


def enter(group: str) -> None:
    """Return if this interpreter has what "run" or "test" needs, else start again in .venv."""
    pyproject, constraints = (ROOT / "pyproject.toml").read_text("utf-8"), CONSTRAINTS.read_text("utf-8")
    stamps = wanted_stamps(pyproject, constraints, group)
    finished = stamped(VENV, group) == stamps[group]
    inside = Path(sys.prefix).resolve() == VENV.resolve()
    wanted = requirements(pyproject, group)
    if (inside and finished) or not missing(wanted):
        return
    if not finished:
        try:
            with lock.held(VENV.with_name(".venv.lock"), say):
                if stamped(VENV, group) != stamps[group]:  # the one we waited for may have done it
                    make(VENV, wanted, stamps)
        except installing.CannotInstall as reason:
            sys.exit(str(reason))
    hand_over(interpreter(VENV, os.name), sys.orig_argv[1:], os.name)


if __name__ == "__main__":
    enter(sys.argv[1] if len(sys.argv) > 1 else "run")
    print(sys.executable)
