"""The nouns of the shop, one a file."""

from .attempt import Attempt
from .container import Container
from .job import CheckSignature, Job, Override, Step, StepNeed, Vehicle
from .lot import Lot
from .measured import AirMeasurement, AirSample, LocalExhaust, Washed
from .movement import Head, Movement
from .order import Order, OrderLine
from .panel import Arrival, Panel, Reading
from .person import Person
from .place import Admission, Place, PosterIssue
from .product import GUARDING_KINDS, TRACED_KINDS, GivenBy, Kind, KitPart, LifeUnit, Pack, Product
from .profile import Profile
from .protection import (
    Equipment,
    FirstDay,
    FitTest,
    GloveMinutes,
    IgnitionSource,
    MedicalEvaluation,
    PlaceCheck,
    Serves,
    Training,
)
from .request import Request
from .rule import AirLimit, RuleGrade, Shown
from .service import Service, ServiceNeed, ServiceStep, Stage, Work
from .shop import Shop
from .station import Heard, Station
from .supplier import Supplier
from .weather import WeatherReading

__all__ = [
    "GUARDING_KINDS",
    "TRACED_KINDS",
    "Admission",
    "AirLimit",
    "AirMeasurement",
    "AirSample",
    "Arrival",
    "Attempt",
    "CheckSignature",
    "Container",
    "Equipment",
    "FirstDay",
    "FitTest",
    "GivenBy",
    "GloveMinutes",
    "Head",
    "Heard",
    "IgnitionSource",
    "Job",
    "Kind",
    "KitPart",
    "LifeUnit",
    "LocalExhaust",
    "Lot",
    "MedicalEvaluation",
    "Movement",
    "Order",
    "OrderLine",
    "Override",
    "Pack",
    "Panel",
    "Person",
    "Place",
    "PlaceCheck",
    "PosterIssue",
    "Product",
    "Profile",
    "Reading",
    "Request",
    "RuleGrade",
    "Serves",
    "Service",
    "ServiceNeed",
    "ServiceStep",
    "Shop",
    "Shown",
    "Stage",
    "Station",
    "Step",
    "StepNeed",
    "Supplier",
    "Training",
    "Vehicle",
    "Washed",
    "WeatherReading",
    "Work",
]
