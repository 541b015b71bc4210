"""The list of orders, and one order's page. It is noon on Wednesday 25 November 2026."""

from datetime import date

import pytest
from django.urls import reverse

from inventory.models import Order, OrderLine
from tests.inventory.reorder.used_shop import ordered, pack_of, used_shop
from tests.world import NOON, TODAY, World

pytestmark = pytest.mark.django_db


@pytest.fixture
def world(monkeypatch) -> World:
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)
    return used_shop()


@pytest.fixture
def tomas(client, world):
    client.force_login(world.tomas)
    return client


def text(response) -> str:
    return response.content.decode()


def placed(world: World, **facts: object) -> Order:
    """Place an order of 3 l of panel wipe two days ago, due on 29 November."""
    return ordered(world, pack_of("Hollin panel wipe").product, 3, **facts).order


@pytest.mark.parametrize("action", ["place_draft", "postpone", "close_rest", "cancel"])
def test_a_viewer_changes_no_order(client, world, action):
    order = placed(world)
    client.force_login(world.wren)
    assert client.post(reverse(f"reorder:{action}", args=[order.code])).status_code == 403
    order.refresh_from_db()
    assert order.state == "placed"


@pytest.mark.parametrize(
    ("due_on", "received", "says"),
    [
        (date(2026, 11, 29), 0, "On its way: 3 packs, due Sunday 29 November."),
        (date(2026, 11, 25), 1, "On its way: 2 packs, due today. 1 pack came."),
        (date(2026, 11, 22), 0, "3 days late: 3 packs should be here."),
    ],
)
def test_the_list_says_how_each_order_stands(tomas, world, due_on, received, says):
    order = placed(world, received=received)
    Order.objects.filter(pk=order.pk).update(due_on=due_on)
    assert says in text(tomas.get(reverse("reorder:orders")))
    assert says in text(tomas.get(reverse("reorder:order", args=[order.code])))


def act(client, name: str, order: Order, **posted: object) -> str:
    return text(client.post(reverse(f"reorder:{name}", args=[order.code]), posted, follow=True))


def test_an_order_of_which_some_came_is_not_cancelled(tomas, world):
    order = placed(world, received=1)
    says = "Some of it came already, so it cannot be cancelled. Close the rest instead."
    assert says in act(tomas, "cancel", order)
    order.refresh_from_db()
    assert order.state == "placed"


def test_what_ended_is_not_ended_again(tomas, world):
    order = placed(world)
    act(tomas, "cancel", order)
    assert "This order is cancelled already. Nothing was changed." in act(tomas, "close_rest", order)
    assert "This order is cancelled already. Nothing was changed." in act(tomas, "place_draft", order)


def test_an_order_does_not_come_before_it_was_placed(tomas, world):
    order = placed(world)
    says = "It was placed on 23 November 2026 and cannot come before. Give a later day."
    assert says in act(tomas, "postpone", order, due_on="2026-11-22")
    assert "That is no day. Give it as the field shows it." in act(tomas, "postpone", order, due_on="soon")
    order.refresh_from_db()
    assert order.due_on == date(2026, 11, 29)


def test_the_rest_of_an_order_is_closed(tomas, world):
    order = placed(world, received=1)
    page = act(tomas, "close_rest", order)
    assert "Closed: 2 packs will not come." in page
    assert "Closed: 1 of 3 packs came, 2 will not." in page
    assert OrderLine.objects.get().closed_short


def test_a_supplier_may_name_another_day(tomas, world):
    order = placed(world)
    page = act(tomas, "postpone", order, due_on="2026-12-03")
    assert "Expected on 3 December 2026 now." in page
    assert "On its way: 3 packs, due Thursday 3 December." in page


def test_a_draft_is_placed_from_its_page(tomas, world):
    order = placed(world)
    Order.objects.update(state="draft", placed_on=None, due_on=None)
    assert "Not placed yet: 3 packs from Orlo Supply." in text(tomas.get(reverse("reorder:orders")))
    assert "Marked as placed with Orlo Supply." in act(tomas, "place_draft", order)
    order.refresh_from_db()
    assert (order.state, order.placed_on, order.due_on) == ("placed", TODAY, date(2026, 12, 1))
