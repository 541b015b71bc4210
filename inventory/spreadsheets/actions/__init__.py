"""Keeping an uploaded file, and bringing it in."""

from inventory.spreadsheets.actions.bringing import Moved, bring_in
from inventory.spreadsheets.actions.keeping import Kept, drop, keep, kept

__all__ = ["Kept", "Moved", "bring_in", "drop", "keep", "kept"]
