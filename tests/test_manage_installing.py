"""Set-up: which tool installs, and what a person sees of it."""

import sys
from pathlib import Path

import pytest

from inventory.project import installing
from inventory.project.installing import CannotInstall, Here

PYTHON = Path(".venv/bin/python")
PINS = Path(".ci/constraints.txt")


def test_a_failed_installation_shows_its_last_lines_and_the_way_out() -> None:
    command = [sys.executable, "-c", "print('no room left on the disk'); raise SystemExit(1)"]
    with pytest.raises(CannotInstall, match=r"(?s)no room left on the disk.*start the same command again\.$"):
        installing.run_showing_progress(command, lambda text: None)


def test_a_failed_step_is_named() -> None:
    with pytest.raises(CannotInstall, match=r"broken\n\nSet-up stopped: .* failed\.$"):
        installing.run([sys.executable, "-c", "print('broken'); raise SystemExit(1)"])


@pytest.mark.parametrize(
    ("here", "tool", "because"),
    [
        (Here(venv=True, ensurepip=True, pip=(26, 3), uv=True), "pip", "the quickest that is surely there"),
        (
            Here(venv=True, ensurepip=False, pip=(22, 3), uv=False),
            "pip",
            "22.3 installs into another environment",
        ),
        (Here(venv=True, ensurepip=True, pip=(22, 2), uv=False), "ensurepip", "an older pip cannot"),
        (Here(venv=True, ensurepip=True, pip=None, uv=True), "ensurepip", "Python's own comes before uv"),
        (Here(venv=True, ensurepip=False, pip=None, uv=True), "uv", "nothing else is here"),
        (Here(venv=False, ensurepip=False, pip=(26, 3), uv=True), "uv", "pip makes no environment"),
    ],
)
def test_the_quickest_tool_that_is_here_installs(here: Here, tool: str, because: str) -> None:
    assert installing.choose_tool(here) == tool, because


@pytest.mark.parametrize("tool", ["pip", "ensurepip", "uv"])
def test_every_tool_is_held_to_the_pinned_versions(tool: installing.Tool) -> None:
    command = installing.installation(tool, PYTHON, PINS, ["tidewall~=1.2"], compiled=False)
    assert command[-3:] == ["--constraint", str(PINS), "tidewall~=1.2"]


def test_pip_works_from_outside_the_environment_and_ensurepip_from_inside() -> None:
    assert installing.installation("pip", PYTHON, PINS, [], compiled=False)[1:5] == [
        "-m",
        "pip",
        "--python",
        str(PYTHON),
    ]
    assert installing.installation("ensurepip", PYTHON, PINS, [], compiled=False)[0] == str(PYTHON)


@pytest.mark.parametrize("tool", ["pip", "ensurepip", "uv"])
def test_modules_are_compiled_at_once_only_where_python_may_not_keep_what_it_compiles(
    tool: installing.Tool,
) -> None:
    def compiles(compiled: bool) -> bool:
        command = installing.installation(tool, PYTHON, PINS, [], compiled)
        return "--compile-bytecode" in command or (tool != "uv" and "--no-compile" not in command)

    assert (compiles(True), compiles(False)) == (True, False)


def test_an_environment_for_pip_saves_giving_it_a_pip_of_its_own() -> None:
    assert "--without-pip" in installing.creation("pip", Path(".venv"))
    assert "--without-pip" not in installing.creation("ensurepip", Path(".venv"))


@pytest.mark.parametrize(
    ("line", "shown"),
    [
        ("Collecting tidewall~=1.2", ("5 fetched (tidewall~=1.2)", 5)),
        ("Installing collected packages: brack, tidewall", ("unpacking 2 packages", 4)),
        ("  Downloading tidewall-1.2.whl (8 kB)", (None, 4)),
        ("Collecting", (None, 4)),
    ],
)
def test_progress_counts_the_packages_after_four(line: str, shown: tuple[str | None, int]) -> None:
    assert installing.progress_of(line, 4) == shown


def test_progress_is_told_as_it_happens() -> None:
    told: list[str] = []
    lines = ["Collecting brack", "Collecting hollin", "Installing collected packages: brack, hollin"]
    code = f"print(*{lines}, sep=chr(10))"
    installing.run_showing_progress([sys.executable, "-c", code], told.append)
    assert told == ["1 fetched (brack)", "2 fetched (hollin)", "unpacking 2 packages"]
