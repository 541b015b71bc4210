"""Booking a car at its page: a key books once, however often the button is pressed."""

from datetime import datetime

from inventory.models import Request, Service, Shop, Vehicle
from inventory.stock.booking import book as written
from inventory.stock.requests import Answer, answer_once


def book(
    shop: Shop,
    service: Service | None,
    car: Vehicle,
    starts_at: datetime,
    *,
    title: str,
    key: str,
    at: datetime,
) -> str:
    """Book a car, a new one saved with it, and return the job's code; the same key gives the same job.

    Raises KeyReused where the key came with another booking.
    """
    body = {
        "service": service.pk if service else None,
        "car": car.pk or [car.name, car.plate, car.size, car.contact, car.surfaces],
        "starts_at": starts_at.isoformat(),
        "title": title,
    }

    def write(request: Request) -> Answer:
        if car.pk is None:
            car.save()
        return {"job": written(shop, service, car, starts_at, title=title, at=at).code}

    return str(answer_once(shop, key, body, at, write)["job"])
