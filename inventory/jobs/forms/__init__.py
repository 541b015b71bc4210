"""The forms of jobs and services, one file a page's worth."""

from .closing import CloseForm
from .fields import next_morning, used_up
from .jobs import BookForm, JobForm, MoveForm, StepForm, VehicleForm
from .needs import need_rows
from .services import ServiceForm, ServiceStepForm

__all__ = [
    "BookForm",
    "CloseForm",
    "JobForm",
    "MoveForm",
    "ServiceForm",
    "ServiceStepForm",
    "StepForm",
    "VehicleForm",
    "need_rows",
    "next_morning",
    "used_up",
]
