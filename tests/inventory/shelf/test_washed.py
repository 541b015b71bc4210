"""The page of a pad or towel: washed by a button, listed in its life, taken back by who did it."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import Container, Washed
from inventory.shelf import queries
from inventory.stock.rules.acts import Act
from tests.world import NOON, World, bottle, product, record, tidewall

pytestmark = pytest.mark.django_db
ML = 1_000


@pytest.fixture
def pad(world: World) -> Container:
    made = product(
        world, "Dunnock pad", "pad", dimension="pieces", noun="pad", needs_sheet=False, wear_uses=9
    )
    return bottle(world, made, 1, opened_at=NOON - timedelta(days=20))


def page(pad: Container, name: str = "container") -> str:
    return reverse(f"shelf:{name}", args=[pad.code])


def signed_in(person) -> Client:
    client = Client()
    client.force_login(person)
    return client


def test_a_viewer_washes_nothing_and_sees_no_button(world: World, pad: Container) -> None:
    wren = signed_in(world.wren)
    assert wren.post(page(pad, "washed")).status_code == 403
    assert wren.post(page(pad, "undo_washed")).status_code == 403
    assert ">Washed</button>" not in wren.get(page(pad)).content.decode()
    assert not Washed.objects.exists()


def test_a_bottle_has_no_such_button(world: World) -> None:
    kept = bottle(world, tidewall(world), 30 * ML)
    tomas = signed_in(world.tomas)
    assert ">Washed</button>" not in tomas.get(page(kept)).content.decode()
    answer = tomas.post(page(kept, "washed"), follow=True).content.decode()
    assert "is no pad and no towel, so its washing is not kept." in answer


def test_what_was_never_used_has_nothing_to_wash_out(world: World, pad: Container) -> None:
    fresh = bottle(world, pad.product, 1)
    tomas = signed_in(world.tomas)
    assert ">Washed</button>" not in tomas.get(page(fresh)).content.decode()
    answer = tomas.post(page(fresh, "washed"), follow=True).content.decode()
    assert "was never used, so there is nothing to wash out. Open it first." in answer
    assert not Washed.objects.exists()


def test_the_button_washes_it_the_life_says_so_and_the_same_person_takes_it_back(
    world: World, pad: Container
) -> None:
    tomas = signed_in(world.tomas)
    assert ">Washed</button>" in tomas.get(page(pad)).content.decode()

    answer = tomas.post(page(pad, "washed"), follow=True).content.decode()

    code = f"{pad.code[:4]} {pad.code[4:]}"
    assert f"Washed {code}. What single-stage paint, metal or a coating left in it stays." in answer
    assert Washed.objects.get().by == world.tomas
    assert page(pad, "undo_washed") in answer
    assert page(pad, "undo_washed") not in signed_in(world.ines).get(page(pad)).content.decode()
    assert "Taken back: “washed”." in tomas.post(page(pad, "undo_washed"), follow=True).content.decode()
    assert not Washed.objects.exists()


def test_another_s_wash_stays(world: World, pad: Container) -> None:
    signed_in(world.tomas).post(page(pad, "washed"))
    answer = signed_in(world.ines).post(page(pad, "undo_washed"), follow=True).content.decode()
    assert "Only Tomas takes this washing back, on the same day. It counts until the next use." in answer
    assert Washed.objects.count() == 1


def test_washes_stand_between_the_entries_at_their_time(world: World, pad: Container) -> None:
    record(world, Act("use", NOON - timedelta(days=3), source=pad.code, amount=0))
    record(world, Act("use", NOON - timedelta(days=1), source=pad.code, amount=0))
    Washed.objects.create(container=pad, washed_at=NOON - timedelta(days=2), by=world.tomas)
    life = [(one.what, one.left, one.may_take_back) for one in queries.life(pad, world.tomas, timezone.now())]
    assert life[:3] == [("used", 1, True), ("washed", 1, False), ("used", 1, True)]
