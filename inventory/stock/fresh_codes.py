"""Codes that nothing carries yet: drawn together and looked up together, one question for a few hundred."""

from collections.abc import Iterable, Iterator
from typing import Any

from django.db.models import Model

from inventory.codes import new_code

SLICE = 400


def taken(model: type[Model], codes: Iterable[str]) -> set[str]:
    """Return those of some codes that are on something already, here or in another shop."""
    listed, found = list(codes), set[str]()
    for start in range(0, len(listed), SLICE):
        rows: Any = model._default_manager.filter(code__in=listed[start : start + SLICE])
        found |= set(rows.values_list("code", flat=True))
    return found


def unused(model: type[Model], letter: str, at_once: int) -> Iterator[str]:
    """Draw codes for ever, none twice; among 20 000 drawn blindly about eight would be."""
    drawn: set[str] = set()
    while True:
        batch: set[str] = set()
        while len(batch) < min(max(at_once, 1), SLICE):
            batch |= {new_code(letter)} - drawn
        drawn |= batch
        yield from sorted(batch - taken(model, batch))
