"""A shop that sets its clock to another zone: every bottle's last day ends at another instant."""

from datetime import UTC, date, datetime

import pytest
from django.forms import modelform_factory

from inventory.models import Container, Shop
from inventory.settings.actions import keep
from inventory.stock.audit import audit
from tests.world import LITRE, bottle, hollin, larkmoor

pytestmark = pytest.mark.django_db


def test_another_clock_moves_the_end_of_every_last_day() -> None:
    world = larkmoor()
    ktrv = bottle(world, hollin(world), LITRE, expires_on=date(2027, 3, 31))
    assert ktrv.use_by_at == datetime(2027, 3, 31, 23, tzinfo=UTC)
    keep(
        modelform_factory(Shop, fields=["time_zone"])({"time_zone": "America/New_York"}, instance=world.shop)
    )
    assert Container.objects.get().use_by_at == datetime(2027, 4, 1, 4, tzinfo=UTC)
    assert list(audit()) == []
