"""Waits that still run: which layer, until when, and whose word the wait is."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from .saying import DAY, HOUR, MINUTE
from .standing import Layer

UNITS = {"min": MINUTE, "h": HOUR, "d": DAY}


@dataclass(frozen=True)
class Running:
    """A wait of a layer that is not over; `wanted` says its length as it was given, "48 h"."""

    layer: Layer
    since: datetime
    until: datetime
    wanted: str
    source: str


def length(wait: str, amount: int) -> timedelta:
    """Return an amount of a wait as time; the wait's name ends with its unit."""
    return amount * UNITS[wait.rpartition("_")[2]]


def wanted(wait: str, amount: int) -> str:
    """Return "48 h", "7 d", "60 min"."""
    return f"{amount} {wait.rpartition('_')[2]}"


def running(layers: Iterable[Layer], start: datetime, *waits: str) -> Running | None:
    """Return the wait that ends last of those not over at `start`.

    A coating whose day nobody knows counts as cured: it came with the car.
    """
    found = [
        Running(
            layer, layer.at, layer.at + length(wait, amount), wanted(wait, amount), layer.profile.source(wait)
        )
        for layer in layers
        for wait in waits
        if layer.at is not None and (amount := getattr(layer.profile.waits, wait)) is not None
    ]
    return max((one for one in found if start < one.until), key=lambda one: one.until, default=None)
