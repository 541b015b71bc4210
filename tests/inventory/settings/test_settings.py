"""The shop's own facts, its places and its suppliers."""

import pytest
from django.urls import reverse

from inventory.models import Place, Supplier

pytestmark = pytest.mark.django_db


def shop(**changes: str) -> dict[str, str]:
    known = {
        "name": "Larkmoor Works", "country": "GB", "time_zone": "Europe/London", "system": "metric",
        "language": "en", "currency": "EUR", "emergency_number": "112",
    }  # fmt: skip
    return known | changes


def test_a_technician_changes_no_setting(client, world):
    client.force_login(world.tomas)

    assert client.post(reverse("settings:shop"), shop(name="Mine")).status_code == 403


def test_a_clock_that_does_not_exist_is_refused_with_two_that_do(ines, world):
    answer = ines.post(reverse("settings:shop"), shop(time_zone="Larkmoor"))

    assert "is no clock. Write it as Europe/London or America/New_York." in answer.content.decode()


def test_a_shop_moves_country_and_its_labels_follow(ines, world):
    ines.post(reverse("settings:shop"), shop(country="us"))

    world.shop.refresh_from_db()
    assert (world.shop.country, world.shop.regime) == ("US", "US")


def test_a_place_cannot_stand_in_itself_by_way_of_another(ines, world):
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", within=world.bay_1)
    data = {"name": "Bay 1", "kind": "bay", "within": str(shelf.pk), "read_at_m": "2"}

    answer = ines.post(reverse("settings:place", args=[world.bay_1.code]), data)

    assert "stands in this place already" in answer.content.decode()


def test_a_supplier_keeps_the_smallest_order_in_cents(ines, world):
    ines.post(
        reverse("settings:new_supplier"), {"name": "Pellow Trade", "lead_days": "9", "minimum": "80.50"}
    )

    assert Supplier.objects.get(name="Pellow Trade").minimum_order_minor == 8050
