"""The indexed copy of a use by: written with a container's state, and where a lot or a life changed."""

from inventory.models import Container
from inventory.stock import queries
from inventory.stock.rules.use_by import Term, use_by

USE_BY = ["use_by_on", "use_by_at", "use_by_term", "use_by_firm"]


def put_use_by(container: Container, term: Term | None) -> bool:
    """Copy a use by into a container's row, unsaved; say whether it changed."""
    now = (term.on, term.at, term.name, term.firm) if term else (None, None, "", True)
    before = tuple(getattr(container, name) for name in USE_BY)
    container.use_by_on, container.use_by_at, container.use_by_term, container.use_by_firm = now
    return now != before


def keep_use_by(container: Container) -> bool:
    """Recompute and write one use-by copy; say whether it changed."""
    changed = put_use_by(container, use_by(queries.dates_of_container(container), container.shop.zone))
    if changed:
        container.save(update_fields=USE_BY)
    return changed
