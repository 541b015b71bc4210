"""The reorder report as files for other programs: a workbook, comma-separated text, a JSON document."""

from inventory.reorder.sheets.document import report_document, report_json
from inventory.reorder.sheets.tables import report_csv, report_xlsx

__all__ = ["report_csv", "report_document", "report_json", "report_xlsx"]
