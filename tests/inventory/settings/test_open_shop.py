"""The first owner of a new installation opens the shop, once."""

import pytest
from django.urls import reverse

from inventory.models import Head, Person, Shop
from tests.world import larkmoor

pytestmark = pytest.mark.django_db

FACTS = {
    "name": "Larkmoor Works",
    "country": "gb",
    "language": "en",
    "time_zone": "Europe/London",
    "system": "metric",
    "currency": "eur",
    "emergency_number": "112",
}


def test_nobody_opens_a_second_shop_through_the_page(client):
    world = larkmoor()
    client.force_login(world.ines)

    assert client.post(reverse("settings:open"), FACTS).status_code == 403


def test_the_first_owner_is_asked_for_the_shop_before_anything_else(client):
    client.force_login(Person.objects.create_superuser("ines", "clear coat", name="Ines"))

    assert client.get(reverse("today:home")).headers["Location"] == reverse("settings:open")


def test_a_shop_opens_with_an_empty_ledger_and_its_owner(client):
    ines = Person.objects.create_superuser("ines", "clear coat", name="Ines")
    client.force_login(ines)

    client.post(reverse("settings:open"), FACTS)

    shop = Shop.objects.get()
    ines.refresh_from_db()
    assert (shop.slug, shop.country, ines.shop, ines.is_owner) == ("larkmoor-works", "GB", shop, True)
    assert Head.objects.get(shop=shop).seq == 0
    assert client.get(reverse("today:home")).status_code == 200
