"""What the station writes: lines that are said to it, and the stations themselves."""

from .lines import say
from .stations import desk, enrol, revoke, screen_of, settle

__all__ = ["desk", "enrol", "revoke", "say", "screen_of", "settle"]
