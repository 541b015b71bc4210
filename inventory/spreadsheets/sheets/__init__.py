"""Files in and out: bounded reading, guarded writing; RFC 4180 text in UTF-8, and workbooks."""

from inventory.spreadsheets.sheets.reading import read_table
from inventory.spreadsheets.sheets.writing import write_csv, write_xlsx

__all__ = ["read_table", "write_csv", "write_xlsx"]
