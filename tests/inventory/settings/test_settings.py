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


def test_a_shop_says_its_own_floors_and_unit_of_paint(ines, world):
    ines.post(reverse("settings:shop"), shop(film_unit="mil", floor_whole_um="100", floor_clear_um="45"))

    world.shop.refresh_from_db()
    kept = (world.shop.film_unit, world.shop.floor_whole_um, world.shop.floor_clear_um)
    assert kept == ("mil", 100, 45)


def test_floors_left_empty_stay_as_they_are(ines, world):
    ines.post(reverse("settings:shop"), shop(floor_whole_um=""))

    world.shop.refresh_from_db()
    assert (world.shop.film_unit, world.shop.floor_whole_um, world.shop.floor_clear_um) == ("µm", 80, 40)


@pytest.mark.parametrize("um", ["0", "501", "-3", "thick"])
def test_a_floor_that_cannot_be_is_refused(ines, world, um):
    answer = ines.post(reverse("settings:shop"), shop(floor_whole_um=um))

    assert answer.status_code == 200
    world.shop.refresh_from_db()
    assert world.shop.floor_whole_um == 80
