"""Reading the project as text and syntax: what the architecture tests look at."""

import ast
import os
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGES = ("inventory", "safety")
# What tools and the program itself leave beside the sources; none of it is committed.
LEFT_BEHIND = {".git", ".venv", ".demo", ".capdate", "__pycache__"}


def files(root: Path) -> Iterator[Path]:
    """Every file of the project below `root`, without what tools leave behind."""
    for folder, names, found in os.walk(root):
        names[:] = sorted(
            name for name in names if name not in LEFT_BEHIND and not name.endswith(("_cache", ".hypothesis"))
        )
        yield from (Path(folder) / name for name in sorted(found))


def modules(root: Path) -> Iterator[Path]:
    """Every Python file a person wrote: migrations are made by Django."""
    return (file for file in files(root) if file.suffix == ".py" and file.parent.name != "migrations")


def imports(file: Path) -> Iterator[str]:
    """The dotted names a module imports, as `from a.b import c` reads: a.b.c."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        if isinstance(node, ast.ImportFrom):
            yield from (f"{node.module}.{alias.name}" for alias in node.names)
