"""The report as one JSON document, for programs."""

import json
from dataclasses import asdict
from typing import Any

from inventory.reorder.charts import weeks
from inventory.reorder.rules import Line, Report, SupplierOrder, z_of
from inventory.units import BASE_UNIT


def report_json(report: Report) -> bytes:
    """Return `report_document` as UTF-8 text."""
    return (json.dumps(report_document(report), ensure_ascii=False, indent=2) + "\n").encode()


def report_document(report: Report) -> dict[str, Any]:
    """Return the report in plain values.

    Numbers are JSON numbers, unrounded; amounts in the base unit that the line names (µl, mg, pieces, µm);
    money in minor units of `currency`; days are ISO 8601; null means unknown, or that there is none.

    {"shop", "month" (YYYY-MM), "made_on", "currency", "says", "total_minor",
     "unpriced" (lines without a price), "method": {"cycle_service", "z"}, "ledger_head",
     "suppliers": [{"name", "says", "minimum_order_minor", "total_minor", "unpriced",
       "expected_to_expire_minor", "lines": [LINE, …] (to order, the first to run out on top),
       "enough": [LINE, …] (not to order)}]}

    LINE: {"code", "product", "unit", "because", "usable", "on_order", "booked", "expected_beside", "safety",
     "order_up_to", "until_on", "lead_days", "order_by_on", "empty_on", "packs", "pack", "pack_amount",
     "pack_price_minor", "cost_minor", "expected_to_expire_minor",
     "weeks": [{"on", "level", "level_with_order", "comes", "expires", "short"}]}
    """
    return {
        "shop": report.shop,
        "month": f"{report.month:%Y-%m}",
        "made_on": report.made_on.isoformat(),
        "currency": report.currency,
        "says": report.says,
        "total_minor": report.total_minor,
        "unpriced": report.unpriced,
        "method": {"cycle_service": report.service, "z": z_of(report.service)},
        "ledger_head": report.chain_head,
        "suppliers": [_supplier(order) for order in report.orders],
    }


def _supplier(order: SupplierOrder) -> dict[str, Any]:
    return {
        "name": order.supplier.name,
        "says": order.says,
        "minimum_order_minor": order.supplier.minimum_order_minor,
        "total_minor": order.total_minor,
        "unpriced": order.unpriced,
        "expected_to_expire_minor": order.expected_to_expire_minor,
        "lines": [_line(line) for line in order.lines],
        "enough": [_line(line) for line in order.enough],
    }


def _line(line: Line) -> dict[str, Any]:
    product, wanted = line.product, line.wanted
    return {
        "code": product.code,
        "product": product.name,
        "unit": BASE_UNIT[product.dimension],
        "because": line.because,
        "usable": line.usable,
        "on_order": line.on_order,
        "booked": wanted.booked,
        "expected_beside": wanted.unbooked,
        "safety": wanted.safety,
        "order_up_to": wanted.order_up_to,
        "until_on": wanted.until_on.isoformat(),
        "lead_days": product.lead_days,
        "order_by_on": line.order_by_on and line.order_by_on.isoformat(),
        "empty_on": line.empty_on and line.empty_on.isoformat(),
        **_bought(line),
        "weeks": [asdict(week) | {"on": week.on.isoformat()} for week in weeks(line)],
    }


def _bought(line: Line) -> dict[str, Any]:
    pack = line.choice.pack if line.choice else None
    return {
        "packs": line.packs,
        "pack": pack and pack.code,
        "pack_amount": pack and pack.amount,
        "pack_price_minor": pack and pack.price_minor,
        "cost_minor": line.cost_minor,
        "expected_to_expire_minor": line.expected_to_expire_minor,
    }
