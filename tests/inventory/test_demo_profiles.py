"""The demo's profiles: every family, area and group is one that the trade and the chart know."""

import pytest

from inventory.management.demo.tables import Row, listed, table
from inventory.trade.kinds import families
from inventory.trade.surfaces import AREAS
from safety.reactions.groups import groups

KINDS = {row["key"]: row["kind"] for row in table("products")}
ROWS = table("profiles")


@pytest.mark.parametrize("row", ROWS, ids=[row["product"] for row in ROWS])
def test_a_row_names_what_the_tables_know(row: Row) -> None:
    assert row["family"] in ("", *families(KINDS[row["product"]]))
    assert set(listed(row["touches"])) <= set(AREAS)
    assert set(listed(row["groups"])) <= set(groups())
    assert row["source"]


def test_no_product_is_described_twice() -> None:
    names = [row["product"] for row in ROWS]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("product", "group", "because"),
    [
        ("brack", "15", "the wheel acid holds a fluoride"),
        ("brack_mould", "hypochlorite", "the mould cleaner is bleach"),
        ("fenmoor", "20", "the iron remover is a thioglycolate"),
        ("tidewall", "107", "the coating cures with water"),
    ],
)
def test_the_products_that_must_not_meet_carry_what_keeps_them_apart(
    product: str, group: str, because: str
) -> None:
    (row,) = [row for row in ROWS if row["product"] == product]
    assert group in listed(row["groups"]), because
