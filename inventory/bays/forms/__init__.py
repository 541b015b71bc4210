"""The forms of the bays."""

from .air import AirForm, ReadingForm, SparkForm
from .measured import ExhaustForm, MeasurementForm, ProductForm, result_rows

__all__ = [
    "AirForm",
    "ExhaustForm",
    "MeasurementForm",
    "ProductForm",
    "ReadingForm",
    "SparkForm",
    "result_rows",
]
