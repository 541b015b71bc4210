"""What a mixed bottle holds: parts of product and of water after a pour, and the product's share."""

from math import gcd

from .lines import Parts


def diluted(source: Parts, poured: Parts) -> Parts:
    """Return the mix that a pour gives: `poured` parts of what the source holds and of water.

    Out of a bottle at 1:10, poured neat, comes 1:10; poured 1:1 with water it is 1:21.
    """
    product = source[0] * poured[0]
    water = sum(source) * sum(poured) - product
    shared = gcd(product, water)
    return product // shared, water // shared


def gross(concentrate: int, parts: Parts) -> int:
    """Return how much of a mix holds so much of the product itself, in its base unit, rounded up."""
    return -(-concentrate * sum(parts) // parts[0])


def share(amount: int, parts: Parts) -> int:
    """Return how much of the product itself is in an amount of a mix, in its base unit, rounded down."""
    return amount * parts[0] // sum(parts)
