"""The people of a shop: roles, sign-in, PIN, and leaving without a trace of the name."""

import pytest
from django.urls import reverse

from inventory.models import Movement, Person
from inventory.stock.audit import audit
from tests.world import ML, bottle, tidewall

pytestmark = pytest.mark.django_db


def test_the_only_owner_cannot_become_a_technician(ines, world):
    data = {"name": "Ines", "username": "ines", "role": "technician", "is_active": "on"}

    answer = ines.post(reverse("people:edit", args=[world.ines.code]), data)

    assert "Make somebody else an owner first." in answer.content.decode()
    assert Person.objects.get(pk=world.ines.pk).role == "owner"


def test_a_technician_adds_nobody(client, world):
    client.force_login(world.tomas)

    assert client.post(reverse("people:new"), {"name": "Pia"}).status_code == 403


@pytest.mark.parametrize("pin", ["123", "12a4", "１２３４"])
def test_a_pin_that_is_no_four_digits_is_refused(ines, world, pin):
    data = {"name": "Ines", "username": "ines", "role": "owner", "is_active": "on", "pin": pin}

    answer = ines.post(reverse("people:edit", args=[world.ines.code]), data)

    assert "A PIN is 4 to 12 digits." in answer.content.decode()


def test_somebody_without_a_password_badges_and_cannot_sign_in(ines, client, world):
    ines.post(
        reverse("people:new"), {"name": "Pia", "username": "pia", "role": "technician", "is_active": "on"}
    )

    pia = Person.objects.get(username="pia")
    assert pia.shop == world.shop
    assert pia.code.startswith("H")
    assert not client.login(username="pia", password="")


def test_a_person_may_hold_a_pin_that_nobody_can_read(ines, world):
    data = {"name": "Ines", "username": "ines", "role": "owner", "is_active": "on", "pin": "2580"}
    ines.post(reverse("people:edit", args=[world.ines.code]), data)

    kept = Person.objects.get(pk=world.ines.pk)
    assert kept.check_pin("2580")
    assert not kept.check_pin("0852")
    assert "2580" not in kept.pin_hash


def test_a_name_is_removed_and_the_chain_still_holds(ines, world):
    bottle(world, tidewall(world), 30 * ML)
    assert Movement.objects.get().person == world.tomas

    ines.post(reverse("people:remove_name", args=[world.tomas.code]))

    gone = Person.objects.get(pk=world.tomas.pk)
    assert (gone.name, gone.is_active) == ("someone who left", False)
    assert list(audit()) == []
