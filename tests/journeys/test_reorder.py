"""From an empty shelf to a full one: the report orders, the order is placed, a scan receives it."""

from datetime import date

import pytest
from django.urls import reverse

from inventory.models import Container, Order
from inventory.reorder import queries
from tests.inventory.reorder.used_shop import pack_of, used_shop
from tests.inventory.scan.desk import desk
from tests.world import NOON, TODAY

pytestmark = pytest.mark.django_db


def to_order(world) -> list[str]:
    """Return the products that November's report orders."""
    return [line.product.name for line in queries.report(world.shop, TODAY, TODAY).lines]


def test_what_the_report_orders_is_placed_scanned_in_and_not_ordered_again(client, monkeypatch):
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)
    world = used_shop()
    wipe = pack_of("Hollin panel wipe")
    wipe.gtin = "04006381333931"
    wipe.save()
    client.force_login(world.ines)
    assert to_order(world) == ["Tidewall coating", "Hollin panel wipe"]

    prefix = f"from{world.orlo.pk}"
    packs = {wipe: 2, pack_of("Tidewall coating"): 6}
    posted = {f"{prefix}-pack_{pack.pk}": number for pack, number in packs.items()}
    client.post(reverse("reorder:place", args=[world.orlo.pk]), {f"{prefix}-key": "once", **posted})
    order = Order.objects.get()
    assert order.due_on == date(2026, 12, 1)
    assert to_order(world) == [], "it is on its way"

    here = desk(world)
    said = here.hears("4006381333931", "2", "PW-7", "use by 2027-12-31", world.store.code)
    assert said == (
        "recorded: Received 2 bottles of Hollin panel wipe, lot PW-7, use by 31 December 2027, into Store."
    )
    assert order.lines.get(pack=wipe).received == 2
    assert Container.objects.filter(pack=wipe, content=1_000_000).count() == 2
    assert to_order(world) == [], "it stands on the shelf, and is not on order as well"
    page = client.get(reverse("reorder:order", args=[order.code])).content.decode()
    assert "On its way: 6 packs, due Tuesday 1 December. 2 packs came." in page

    client.post(reverse("reorder:cancel", args=[order.code]))
    client.post(reverse("reorder:close_rest", args=[order.code]))
    order.refresh_from_db()
    assert order.state == "received"
    assert to_order(world) == ["Tidewall coating"], "what will not come is ordered again"
