"""Hazard knowledge: it has never heard of stock."""

from django.apps import AppConfig


class SafetyConfig(AppConfig):
    """Data sheets, classes, statements, labels and posters."""

    name = "safety"
    default_auto_field = "django.db.models.BigAutoField"
