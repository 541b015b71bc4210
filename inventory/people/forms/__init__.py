"""The forms about people and what protects them."""

from .protection import EquipmentForm, MinutesForm
from .record import EvaluationForm, FaceForm, FitTestForm, SignForm, TrainingForm
from .roster import PersonForm, SignInForm

__all__ = [
    "EquipmentForm",
    "EvaluationForm",
    "FaceForm",
    "FitTestForm",
    "MinutesForm",
    "PersonForm",
    "SignForm",
    "SignInForm",
    "TrainingForm",
]
