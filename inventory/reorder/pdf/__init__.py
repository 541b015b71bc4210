"""The reorder report on paper. Decides nothing: every figure comes from the rules."""

from inventory.reorder.pdf.report import PAPERS, Paper, report_pdf

__all__ = ["PAPERS", "Paper", "report_pdf"]
