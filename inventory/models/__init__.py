"""The nouns of the shop, one a file."""

from .attempt import Attempt
from .container import Container
from .job import CheckSignature, Job, Override, Step, StepNeed, Vehicle
from .lot import Lot
from .movement import Head, Movement
from .order import Order, OrderLine
from .person import Person
from .place import Admission, Place, PosterIssue
from .product import GUARDING_KINDS, TRACED_KINDS, GivenBy, Kind, KitPart, LifeUnit, Pack, Product
from .request import Request
from .service import Service, ServiceNeed, ServiceStep, Stage
from .shop import Shop
from .station import Heard, Station
from .supplier import Supplier

__all__ = [
    "GUARDING_KINDS",
    "TRACED_KINDS",
    "Admission",
    "Attempt",
    "CheckSignature",
    "Container",
    "GivenBy",
    "Head",
    "Heard",
    "Job",
    "Kind",
    "KitPart",
    "LifeUnit",
    "Lot",
    "Movement",
    "Order",
    "OrderLine",
    "Override",
    "Pack",
    "Person",
    "Place",
    "PosterIssue",
    "Product",
    "Request",
    "Service",
    "ServiceNeed",
    "ServiceStep",
    "Shop",
    "Stage",
    "Station",
    "Step",
    "StepNeed",
    "Supplier",
    "Vehicle",
]
