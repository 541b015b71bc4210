"""Set-up: which interpreter, what is missing, when an environment is trusted, how to go on."""

import re
import tomllib
from pathlib import Path

import pytest

import manage
from inventory.project import environment, installing
from inventory.project.installing import CannotInstall, Here

PYPROJECT = """
[project]
dependencies = ["tidewall~=1.2", "brack[fast]>=3"]
[dependency-groups]
test = ["hollin==2.0"]
"""
VENV = Path("shop/.venv")


def test_an_older_python_is_told_in_one_sentence_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(manage.sys, "version_info", (3, 9, 2))
    with pytest.raises(
        SystemExit, match=r"^Capdate needs Python 3\.11 or newer and this is 3\.9: install a newer"
    ):
        manage.main()


def test_a_machine_with_no_way_to_install_is_told_the_packages_name() -> None:
    with pytest.raises(CannotInstall, match=r"install the package python3-venv .*and start again\.$"):
        installing.choose_tool(Here(venv=True, ensurepip=False, pip=None, uv=False))


def test_an_environment_that_was_never_finished_is_not_trusted(tmp_path: Path) -> None:
    python = environment.interpreter(tmp_path, environment.os.name)
    python.parent.mkdir(parents=True)
    python.touch()
    assert environment.stamped(tmp_path, "run") is None


def test_a_stamp_without_an_interpreter_is_not_trusted(tmp_path: Path) -> None:
    environment.stamp_file(tmp_path, "run").write_text("3.11 abc")
    assert environment.stamped(tmp_path, "run") is None


def test_a_stamp_beside_an_interpreter_is_read_back(tmp_path: Path) -> None:
    python = environment.interpreter(tmp_path, environment.os.name)
    python.parent.mkdir(parents=True)
    python.touch()
    environment.stamp_file(tmp_path, "run").write_text("3.11 abc")
    assert environment.stamped(tmp_path, "run") == "3.11 abc"


@pytest.mark.parametrize(
    ("stamped", "afresh", "because"),
    [
        (None, True, "it was never finished"),
        ("3.12 abc", True, "another Python made it"),
        ("3.1 abc", True, "3.1 is not 3.11, though the text begins alike"),
        ("3.11 abc", False, "a finished one is brought up to date in place: a server may run from it"),
    ],
)
def test_what_stands_in_the_folder_is_thrown_away_only_when_it_is_of_no_use(
    stamped: str | None, afresh: bool, because: str
) -> None:
    assert environment.must_start_afresh(stamped, (3, 11)) is afresh, because


def test_any_change_of_list_pins_or_python_changes_the_stamp() -> None:
    stamps = {
        environment.stamp(["a", "b"], "a==1", (3, 11)),
        environment.stamp(["a"], "a==1", (3, 11)),
        environment.stamp(["a", "b"], "a==2", (3, 11)),
        environment.stamp(["a", "b"], "a==1", (3, 12)),
    }
    assert len(stamps) == 4


def test_the_order_of_the_list_does_not_change_the_stamp() -> None:
    assert environment.stamp(["b", "a"], "", (3, 11)) == environment.stamp(["a", "b"], "", (3, 11))


def test_setting_up_for_the_tests_finishes_the_program_too() -> None:
    assert list(environment.wanted_stamps(PYPROJECT, "", "test")) == ["run", "test"]
    assert list(environment.wanted_stamps(PYPROJECT, "", "run")) == ["run"]


def test_the_tests_packages_are_wanted_only_for_the_tests() -> None:
    assert environment.requirements(PYPROJECT, "run") == ["tidewall~=1.2", "brack[fast]>=3"]
    assert environment.requirements(PYPROJECT, "test") == ["tidewall~=1.2", "brack[fast]>=3", "hollin==2.0"]


@pytest.mark.parametrize(
    ("requirement", "is_missing", "because"),
    [
        ("no-such-package-of-ours", True, "it is not installed"),
        ("pytest<1", True, "the version does not fit"),
        ("pytest>=1", False, "it is installed and fits"),
        ("PyTest[dev]~=9.0", False, "case and extras are no part of the name"),
    ],
)
def test_what_is_missing_is_judged_by_name_and_version(
    requirement: str, is_missing: bool, because: str
) -> None:
    assert (environment.missing([requirement]) == [requirement]) is is_missing, because


@pytest.mark.parametrize(
    ("os_name", "expected", "because"),
    [
        ("posix", VENV / "bin" / "python", "Linux and macOS"),
        ("nt", VENV / "Scripts" / "python.exe", "Windows"),
    ],
)
def test_the_interpreter_is_found_on_each_system(os_name: str, expected: Path, because: str) -> None:
    assert environment.interpreter(VENV, os_name) == expected, because


def test_on_windows_the_child_is_waited_for_and_its_exit_code_handed_on(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    called: list[list[str]] = []
    monkeypatch.setattr(environment.subprocess, "call", lambda command: called.append(command) or 3)
    with pytest.raises(SystemExit) as ended:
        environment.hand_over(Path("python.exe"), ["manage.py", "demo"], "nt")
    assert (ended.value.code, called) == (3, [["python.exe", "manage.py", "demo"]])


def test_elsewhere_the_process_becomes_the_command(monkeypatch: pytest.MonkeyPatch) -> None:
    called: list[tuple[str, list[str]]] = []
    monkeypatch.setattr(environment.os, "execv", lambda path, command: called.append((path, command)))
    environment.hand_over(Path("bin/python"), ["manage.py", "demo"], "posix")
    assert called == [("bin/python", ["bin/python", "manage.py", "demo"])]


def test_an_environment_that_has_everything_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise AssertionError("nothing is to be made or started here")

    monkeypatch.setattr(environment, "make", refuse)
    monkeypatch.setattr(environment, "hand_over", refuse)
    monkeypatch.setattr(environment, "missing", lambda wanted: [])
    assert environment.enter("test") is None


def test_every_requirement_is_pinned_to_one_version() -> None:
    pins = re.findall(r"^([\w.-]+)==", environment.CONSTRAINTS.read_text(), re.MULTILINE)
    pinned = {pin.lower().replace("_", "-") for pin in pins}
    wanted = environment.requirements((environment.ROOT / "pyproject.toml").read_text(), "test")
    assert [each for each in wanted if environment.name_of(each).lower() not in pinned] == []


def test_the_pins_name_no_address() -> None:
    lines = [line for line in environment.CONSTRAINTS.read_text().splitlines() if line and line[0] != "#"]
    assert [line for line in lines if not re.fullmatch(r"[\w.-]+==[\w.]+", line)] == []


def test_set_up_imports_nothing_that_is_not_there_yet() -> None:
    code = "import sys; from inventory.project import environment, engines; print('django' in sys.modules)"
    shown = environment.subprocess.run(
        [environment.sys.executable, "-S", "-c", code], capture_output=True, text=True, cwd=environment.ROOT
    )
    assert (shown.stdout, shown.stderr) == ("False\n", "")


def test_the_python_that_is_asked_for_is_the_python_that_is_promised() -> None:
    project = tomllib.loads((environment.ROOT / "pyproject.toml").read_text())["project"]
    assert project["requires-python"] == ">=3.11"
