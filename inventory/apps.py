"""The shelf, the ledger and the jobs."""

from django.apps import AppConfig


class InventoryConfig(AppConfig):
    """Everything a shop owns and does with it."""

    name = "inventory"
    default_auto_field = "django.db.models.BigAutoField"

    def ready(self) -> None:
        """Register the check of the ledger's guards."""
        from inventory import checks  # noqa: F401
