"""Invented products for the order tests: amounts in µl unless said, made on 1 December 2026."""

from dataclasses import replace
from datetime import date
from typing import Any

from inventory.reorder.rules import Pack, ProductFacts, Supplier

MADE_ON = date(2026, 12, 1)
DECEMBER = date(2026, 12, 1)
ML, LITRE = 1_000, 1_000_000

ORLO = Supplier("Orlo Supply", minimum_order_minor=0)

PANEL_WIPE = ProductFacts(
    code="PBKTRLNV",
    name="Hollin panel wipe",
    supplier=ORLO,
    dimension="volume",
    mean_per_day=200 * ML,
    spread_per_day=0.0,
    lead_days=6,
    packs=(Pack("PW5", 5 * LITRE, 3_000, noun="can"),),
)


def product(**changes: Any) -> ProductFacts:
    """Return the panel wipe with other facts."""
    return replace(PANEL_WIPE, **changes)
