"""The report as a file to hand out, by the file's extension."""

from inventory.models import Shop
from inventory.reorder.pdf import Paper, report_pdf
from inventory.reorder.rules import Report
from inventory.reorder.sheets import report_csv, report_json, report_xlsx

CONTENT_TYPES = {
    "pdf": "application/pdf",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
}
LETTER_COUNTRIES = frozenset({"US", "CA"})


def paper_of(shop: Shop) -> Paper:
    """Return the paper that lies in this country's printers."""
    return "Letter" if shop.country in LETTER_COUNTRIES else "A4"


def file_of(report: Report, extension: str, paper: Paper) -> bytes:
    """Return the report as pdf, xlsx, csv or json; `paper` matters to the first only."""
    if extension == "pdf":
        return report_pdf(report, paper)
    write = {"xlsx": report_xlsx, "csv": report_csv, "json": report_json}
    return write[extension](report)
