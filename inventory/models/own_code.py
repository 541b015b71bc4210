"""Fresh own codes as field defaults; the database keeps them unique.

Containers come by the hundred thousand, so the ledger draws theirs and looks before it writes.
"""

from inventory.codes import new_code


def place_code() -> str:
    """Return a fresh code for a place."""
    return new_code("P")


def person_code() -> str:
    """Return a fresh code for a person's badge."""
    return new_code("H")


def job_code() -> str:
    """Return a fresh code for a job."""
    return new_code("J")


def step_code() -> str:
    """Return a fresh code for a step; the chain names a step by it."""
    return new_code("S")


def lot_code() -> str:
    """Return a fresh code for a lot."""
    return new_code("L")


def product_code() -> str:
    """Return a fresh code for a product."""
    return new_code("X")


def station_code() -> str:
    """Return a fresh code for a scan station."""
    return new_code("T")


def vehicle_code() -> str:
    """Return a fresh code for a vehicle."""
    return new_code("V")


def order_code() -> str:
    """Return a fresh code for an order."""
    return new_code("D")
