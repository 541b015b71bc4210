"""What the safety package keeps: data sheets and their versions."""

from safety.models.datasheet import DataSheet, Form, Regime, SheetVersion, Signal, stored_pdf

__all__ = ["DataSheet", "Form", "Regime", "SheetVersion", "Signal", "stored_pdf"]
