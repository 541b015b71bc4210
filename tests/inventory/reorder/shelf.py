"""Invented products for the order tests: amounts in µl unless said, made on 1 December 2026."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from hypothesis import strategies as st

from inventory.reorder.rules import (
    Booked,
    OnOrder,
    Pack,
    ProductFacts,
    Report,
    Stock,
    Supplier,
    reorder_report,
)
from inventory.units import Dimension

MADE_ON = date(2026, 12, 1)
DECEMBER = date(2026, 12, 1)
MONTH_END = date(2026, 12, 31)
ML, LITRE = 1_000, 1_000_000

ORLO = Supplier("Orlo Supply", minimum_order_minor=0)

PANEL_WIPE = ProductFacts(
    code="PBKTRLNV",
    name="Hollin panel wipe",
    supplier=ORLO,
    dimension=Dimension.VOLUME,
    mean_per_day=200 * ML,
    spread_per_day=0.0,
    lead_days=6,
    packs=(Pack("PW5", 5 * LITRE, 3_000, noun="can"),),
)


def product(**changes: Any) -> ProductFacts:
    """Return the panel wipe with other facts."""
    return replace(PANEL_WIPE, **changes)


MERROW = Supplier("Merrow Coatings", minimum_order_minor=40_000)
CHAIN_HEAD = "1284 · 9f4c02d7a1be55e03c7714d8b6602a91f0d3ce84a7b95d126ef7083c41aa27be"


def december_report() -> Report:
    """Return Larkmoor Works' invented report for December, with every kind of line on it."""
    products = (
        product(
            mean_per_day=180 * ML,
            spread_per_day=260 * ML,
            stock=(Stock(1_600 * ML, date(2027, 3, 31), sealed=False),),
            booked=(Booked(date(2026, 12, 3), 400 * ML), Booked(date(2026, 12, 10), 350 * ML)),
        ),
        product(
            code="PCTLDWLL",
            name="Tidewall coating",
            supplier=MERROW,
            mean_per_day=4 * ML,
            spread_per_day=9 * ML,
            lead_days=9,
            sealed_life_days=365,
            packs=(Pack("TW30", 30 * ML, 5_500, noun="bottle"), Pack("TW50", 50 * ML, 8_000, noun="bottle")),
            stock=(
                Stock(12 * ML, date(2026, 12, 4), sealed=False),
                Stock(30 * ML, date(2026, 12, 18)),
                Stock(30 * ML, date(2027, 6, 30)),
            ),
            on_order=(OnOrder(30 * ML, date(2026, 12, 14)),),
            booked=(Booked(date(2026, 12, 8), 40 * ML), Booked(date(2026, 12, 22), 40 * ML)),
        ),
        product(
            code="PFNMRNDX",
            name="Fenmoor iron remover",
            mean_per_day=260 * ML,
            spread_per_day=310 * ML,
            packs=(Pack("FI5", 5 * LITRE, 4_250, noun="can"),),
            stock=(Stock(1_200 * ML, date(2026, 12, 3), sealed=False), Stock(5 * LITRE, date(2027, 11, 30))),
            on_order=(OnOrder(5 * LITRE, date(2026, 12, 20)),),
        ),
        product(
            code="PBRCKWHL",
            name="Brack wheel acid",
            mean_per_day=8 * ML,
            spread_per_day=20 * ML,
            sealed_life_days=120,
            packs=(Pack("BW1", LITRE, 1_900, minimum=6, noun="bottle"),),
            booked=(Booked(date(2026, 12, 5), 120 * ML),),
        ),
        product(
            code="PMRLCTTN",
            name="Marl cutting compound",
            dimension=Dimension.MASS,
            mean_per_day=60 * ML,
            spread_per_day=90 * ML,
            packs=(Pack("MC1", LITRE, 2_800, noun="tub"),),
            stock=(Stock(2_300 * ML),),
        ),
        product(
            code="PFNSHPDS",
            name="Finishing pads 150 mm",
            dimension=Dimension.PIECES,
            mean_per_day=0.5,
            spread_per_day=0.9,
            packs=(Pack("FP5", 5, None, noun="bag"),),
            stock=(Stock(6),),
        ),
        product(
            code="PSPRCLNT",
            name="Sorrel clay lubricant",
            mean_per_day=20 * ML,
            packs=(Pack("SC1", LITRE, 950, noun="bottle"),),
            stock=(Stock(3 * LITRE, date(2027, 8, 31)),),
        ),
        product(
            code="PTPFRTRL",
            name="Tarn trim dressing",
            packs=(Pack("TD1", 500 * ML, 1_450, noun="bottle"),),
            supplier=MERROW,
            mean_per_day=3 * ML,
            stock=(Stock(500 * ML, date(2026, 11, 20)), Stock(250 * ML, date(2026, 12, 31))),
        ),
        product(code="PVRDGNPL", name="Verdigan glaze", mean_per_day=0.0, stock=(Stock(200 * ML),)),
    )
    return reorder_report(products, "Larkmoor Works", DECEMBER, MADE_ON, "EUR", CHAIN_HEAD)


amounts = st.integers(0, 20_000)
december_days = st.integers(0, 50).map(lambda day: MADE_ON + timedelta(days=day - 3))
some_product = st.builds(
    product,
    mean_per_day=st.floats(0, 500),
    spread_per_day=st.floats(0, 500),
    lead_days=st.integers(0, 30),
    packs=st.lists(
        st.builds(
            Pack,
            st.just("P"),
            st.integers(1, 9_000),
            st.integers(1, 900),
            st.integers(1, 6),
            st.integers(1, 6),
        ),
        min_size=1,
        max_size=3,
    ).map(tuple),
    stock=st.lists(st.builds(Stock, amounts, st.none() | december_days), max_size=4).map(tuple),
    on_order=st.lists(st.builds(OnOrder, amounts, st.none() | december_days), max_size=2).map(tuple),
    booked=st.lists(st.builds(Booked, december_days, amounts), max_size=4).map(tuple),
    sealed_life_days=st.none() | st.integers(0, 400),
    cancelled=st.floats(0, 0.9),
    bookings_seen=st.sampled_from([0, 30]),
    days_booked_ahead=st.none() | st.floats(0, 40),
)
