"""Bringing a file in: all of it or nothing, in one transaction, and only as it was shown."""

from collections.abc import Callable
from datetime import datetime

from inventory.models import Person, Request, Shop
from inventory.spreadsheets import queries
from inventory.spreadsheets.actions.booking import bring_jobs
from inventory.spreadsheets.actions.nouns import bring_packs, bring_products, bring_suppliers
from inventory.spreadsheets.actions.shelving import bring_stock
from inventory.spreadsheets.queries import Preview
from inventory.spreadsheets.rules.outcome import Becomes, count
from inventory.spreadsheets.rules.table import Table
from inventory.stock.requests import Answer, answer_once


class Moved(Exception):
    """The shop changed between the preview and the confirmation; `now` is what the file would do by now."""

    says = "Something changed here since you looked. Nothing came in; this is what the file would do now."

    def __init__(self, now: Preview) -> None:
        super().__init__(self.says)
        self.now = now


Bring = Callable[[Preview, Person, Request], None]
_BRING: dict[str, Bring] = {
    "suppliers": bring_suppliers,
    "products": bring_products,
    "packs": bring_packs,
    "stock": bring_stock,
    "jobs": bring_jobs,
}


def bring_in(
    shop: Shop, slug: str, table: Table, *, seen: str, token: str, sha256: str, by: Person, at: datetime
) -> str:
    """Write what the preview with the fingerprint `seen` showed, once for a token; return the sentence.

    Raises Moved where it would do something else by now, and Refused where the ledger refuses; then nothing
    is written.
    """

    def do(request: Request) -> Answer:
        now = queries.preview(shop, slug, table, at)
        if now.wrong or now.fingerprint != seen:
            raise Moved(now)
        _BRING[slug](now, by, request)
        return {"says": _says(now)}

    body = {"spreadsheet": slug, "sha256": sha256, "seen": seen}
    return str(answer_once(shop, f"spreadsheet {token}", body, at, do)["says"])


def _says(preview: Preview) -> str:
    new, changed = (count(preview.outcomes, each) for each in (Becomes.NEW, Becomes.CHANGED))
    return f"{preview.sheet.what.capitalize()}: {new} new and {changed} changed rows are in."
