"""What the safety package keeps: data sheets and their versions."""

from safety.models.datasheet import DataSheet, Regime, SheetVersion, Signal, stored_pdf

__all__ = ["DataSheet", "Regime", "SheetVersion", "Signal", "stored_pdf"]
