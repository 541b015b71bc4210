"""Who does what, what they were trained and fitted for, and what is at hand to protect them."""

from dataclasses import dataclass


@dataclass(frozen=True)
class PeopleFacts:
    """Who does what, what they were trained and fitted for, and what is at hand to protect them."""
