"""The customs: what no model, no template and no migration does."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.apps import apps
from django.db import migrations, models
from django.db.migrations.loader import MigrationLoader
from django.db.migrations.operations.base import Operation

from inventory.models.guards import InstallGuards
from tests.architecture.source import PACKAGES, ROOT, files, imports, modules
from tests.architecture.test_house import FEATURES

OURS = tuple(f"{package}." for package in PACKAGES)
SIGNALS = ("django.db.models.signals", "django.dispatch", "django.core.signals")
INLINE = {
    "a style attribute": re.compile(r"\sstyle\s*=", re.IGNORECASE),
    "a style element": re.compile(r"<style\b", re.IGNORECASE),
    "a script in the page": re.compile(r"<script\b(?![^>]*\ssrc=)", re.IGNORECASE),
    "a handler attribute": re.compile(r"\son[a-z]+\s*=\s*[\"'{]", re.IGNORECASE),
    "a handler for htmx": re.compile(r"\s(?:data-)?hx-on\b", re.IGNORECASE),
    "a script in an address": re.compile(r"javascript:", re.IGNORECASE),
}


def overrides_save(model: type) -> bool:
    """Whether one of our own classes changes what saving means."""
    return any(
        "save" in vars(each) for each in model.__mro__ if each.__module__.startswith((*OURS, __name__))
    )


def uses_signals(file: Path) -> bool:
    """Whether a module connects to signals."""
    return any(name.startswith(SIGNALS) or "django.db.models.signals" in name for name in imports(file))


def inline(text: str) -> list[str]:
    """What a page's policy would refuse in a template."""
    return [name for name, pattern in INLINE.items() if pattern.search(text)]


def touches_movement(operation: Operation) -> bool:
    """Whether an operation may rebuild Movement's table; a renamed model rebuilds those that refer to it."""
    inside = getattr(operation, "database_operations", None) or []
    names = {getattr(operation, name, "") for name in ("model_name_lower", "name_lower")}
    return (
        "movement" in names
        or isinstance(operation, migrations.RenameModel | migrations.RunSQL)
        or any(touches_movement(each) for each in inside)
    )


def lifts_the_guards(operations: list[Operation]) -> bool:
    """Whether a migration touches Movement and does not end by putting its guards back."""
    touched = any(touches_movement(each) for each in operations)
    return touched and not isinstance(operations[-1], InstallGuards)


def borrowed(today: Path) -> Iterator[str]:
    """What the first page takes from features besides their queries, and the values (rules) these return."""
    for file in modules(today):
        for name in imports(file):
            package, _, rest = name.partition(".")
            feature, _, kind = rest.partition(".")
            borrows = package == "inventory" and feature in set(FEATURES) - {"today", "precheck"}
            if borrows and kind.split(".")[0] not in {"queries", "rules"}:
                yield f"{file.name}: {name}"


def test_no_model_changes_what_saving_means() -> None:
    ours = [model for model in apps.get_models() if model.__module__.startswith(OURS)]
    assert (len(ours) > 10, [model for model in ours if overrides_save(model)]) == (True, [])


def test_a_model_with_a_save_of_its_own_is_noticed() -> None:
    class Quiet:
        """Saves as Django does."""

    class Loud(Quiet):
        def save(self) -> None:
            """Do something nobody sees."""

    assert (overrides_save(Loud), overrides_save(Quiet)) == (True, False)


def test_nothing_happens_by_signal() -> None:
    found = [file for package in PACKAGES for file in modules(ROOT / package) if uses_signals(file)]
    assert found == []


@pytest.mark.parametrize(
    "line",
    [
        "from django.db.models.signals import post_save",
        "from django.db.models import signals",
        "from django.dispatch import receiver",
    ],
)
def test_a_signal_is_noticed(tmp_path: Path, line: str) -> None:
    (tmp_path / "quiet.py").write_text(line)
    assert uses_signals(tmp_path / "quiet.py")


def test_templates_hold_nothing_that_the_pages_policy_refuses() -> None:
    found = {
        str(file.relative_to(ROOT)): inline(file.read_text("utf-8")) for file in files(ROOT / "templates")
    }
    assert {name: what for name, what in found.items() if what} == {}


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ('<p style="color: red">', ["a style attribute"]),
        ("<style>p {}</style>", ["a style element"]),
        ("<script>go()</script>", ["a script in the page"]),
        ('<button onclick="go()">', ["a handler attribute"]),
        ('<button hx-on:click="go()">', ["a handler for htmx"]),
        ('<a href="javascript:go()">', ["a script in an address"]),
        ("<script defer src=\"{% static 'x.js' %}\"></script>", []),
        ("<p class=\"style\" data-one='1'>stop = on</p>", []),
    ],
)
def test_what_is_inline_is_noticed(text: str, found: list[str]) -> None:
    assert inline(text) == found


def test_every_migration_that_touches_movements_puts_its_guards_back() -> None:
    loader = MigrationLoader(None)
    ours = {key: each for key, each in loader.disk_migrations.items() if key[0] in PACKAGES}
    assert any(touches_movement(operation) for each in ours.values() for operation in each.operations)
    assert [key for key, each in ours.items() if lifts_the_guards(each.operations)] == []


ADD = migrations.AddField("movement", "note", models.TextField(default=""))


@pytest.mark.parametrize(
    ("operations", "lifts", "because"),
    [
        ([ADD], True, "nothing puts the guards back"),
        ([InstallGuards(), ADD], True, "the table is rebuilt after the guards came back"),
        ([migrations.SeparateDatabaseAndState([ADD])], True, "it is touched all the same"),
        ([migrations.RenameModel("Lot", "Batch")], True, "tables that refer to it are rebuilt"),
        ([ADD, InstallGuards()], False, "the guards come last"),
        ([migrations.AddField("lot", "note", models.TextField(default=""))], False, "another table"),
    ],
)
def test_a_migration_that_lifts_the_guards_is_noticed(
    operations: list[Operation], lifts: bool, because: str
) -> None:
    assert lifts_the_guards(operations) is lifts, because


def test_the_first_page_only_reads_from_features() -> None:
    assert list(borrowed(ROOT / "inventory" / "today")) == []


def test_a_first_page_that_borrows_more_is_noticed(tmp_path: Path) -> None:
    lines = ["from inventory.shelf import queries", "from inventory.shelf.rules import Bottle"]
    (tmp_path / "views.py").write_text("\n".join([*lines, "from inventory.shelf import forms"]))
    assert list(borrowed(tmp_path)) == ["views.py: inventory.shelf.forms"]
