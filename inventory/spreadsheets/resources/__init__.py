"""What each kind of spreadsheet holds, column by column, as resources of django-import-export."""

from inventory.spreadsheets.resources.columns import Amiss, Sheet
from inventory.spreadsheets.resources.jobs import JobResource, JobRow
from inventory.spreadsheets.resources.known import Known
from inventory.spreadsheets.resources.packs import PackResource
from inventory.spreadsheets.resources.products import ProductResource
from inventory.spreadsheets.resources.stock import StockResource, StockRow
from inventory.spreadsheets.resources.suppliers import SupplierResource

RESOURCES: dict[str, type[Sheet]] = {
    each.slug: each for each in (SupplierResource, ProductResource, PackResource, StockResource, JobResource)
}

__all__ = ["RESOURCES", "Amiss", "JobResource", "JobRow", "Known", "Sheet", "StockResource", "StockRow"]
