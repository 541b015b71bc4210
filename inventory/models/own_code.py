"""Fresh own codes as field defaults; the database keeps them unique.

Containers come by the hundred thousand, so the ledger draws theirs and looks before it writes.
"""

from inventory.codes import new_code

_drawn: set[str] = set()


def fresh(letter: str) -> str:
    """Return a code that this process has not drawn before.

    Six letters give 24 million: half a year told in one process met the same one twice. Another process may
    still have drawn it; then the database refuses, and what was asked is asked again.
    """
    code = new_code(letter)
    while code in _drawn:
        code = new_code(letter)
    _drawn.add(code)
    return code


def place_code() -> str:
    """Return a fresh code for a place."""
    return fresh("P")


def person_code() -> str:
    """Return a fresh code for a person's badge."""
    return fresh("H")


def job_code() -> str:
    """Return a fresh code for a job."""
    return fresh("J")


def step_code() -> str:
    """Return a fresh code for a step; the chain names a step by it."""
    return fresh("S")


def lot_code() -> str:
    """Return a fresh code for a lot."""
    return fresh("L")


def product_code() -> str:
    """Return a fresh code for a product."""
    return fresh("X")


def station_code() -> str:
    """Return a fresh code for a scan station."""
    return fresh("T")


def vehicle_code() -> str:
    """Return a fresh code for a vehicle."""
    return fresh("V")


def order_code() -> str:
    """Return a fresh code for an order."""
    return fresh("D")
