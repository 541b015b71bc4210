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


def test_who_only_badges_needs_no_name_to_sign_in_with(ines, client, world):
    sent = {"name": "Pia", "username": "", "role": "technician", "is_active": "on"}
    ines.post(reverse("people:new"), sent)

    pia = Person.objects.get(name="Pia")
    page = ines.get(reverse("people:edit", args=[pia.code])).content.decode()
    assert (pia.username, pia.has_usable_password()) == (f"badge-{pia.code.lower()}", False)
    assert pia.username not in page
    assert "badge only" in ines.get(reverse("people:list")).content.decode()
    ines.post(reverse("people:edit", args=[pia.code]), sent | {"name": "Pia M"})
    assert Person.objects.get(pk=pia.pk).name == "Pia M", "kept again without a name to sign in with"


def test_a_password_asks_for_the_name_that_goes_with_it(ines, world):
    sent = {
        "name": "Pia",
        "username": "",
        "role": "technician",
        "is_active": "on",
        "password": "clear coat 9",
    }

    page = ines.post(reverse("people:new"), sent).content.decode()

    assert "Who has a password signs in with a name. Say which." in page
    assert not Person.objects.filter(name="Pia").exists()


def test_who_signs_in_cannot_lose_the_name_for_it(ines, world):
    sent = {"name": "Tomas", "username": "", "role": "technician", "is_active": "on"}

    ines.post(reverse("people:edit", args=[world.tomas.code]), sent)

    assert Person.objects.get(pk=world.tomas.pk).username == world.tomas.username


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
