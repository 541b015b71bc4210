"""What the first page reads: what booked cars really take of a dying bottle, and what people lean on."""

from datetime import timedelta

import pytest

from inventory.models import Container, Equipment
from inventory.today import queries
from tests import world as w
from tests.world import GRAM, ML, NOON

pytestmark = pytest.mark.django_db
SOON = (NOON + timedelta(days=5)).date()


def mixed(shop: w.World, parts: tuple[int, int], ml: int = 800) -> Container:
    """A bottle of clay lubricant at 1:4 that dies in five days, and a car on Friday that takes some."""
    lube = w.product(shop, "Fenmoor clay lubricant", "lubricant", needs_sheet=False)
    one = w.bottle(shop, lube, ml * ML, expires_on=SOON, opened_at=NOON - timedelta(days=1))
    Container.objects.filter(pk=one.pk).update(parts_product=1, parts_water=4)
    w.need(w.step(w.job(shop, NOON + timedelta(days=2))), lube, 160 * ML, parts)
    return one


def fates(shop: w.World) -> list[str]:
    return [says for _, says in queries.dying(shop.shop, NOON)]


def test_a_mixed_bottle_counts_what_a_car_takes_of_its_mix_water_and_all(shop: w.World) -> None:
    mixed(shop, (1, 4))

    assert fates(shop) == ["0.8 l left, one booked car will finish it."]


def test_a_mixed_bottle_is_not_unwanted_where_a_car_wants_it_in_another_mix(shop: w.World) -> None:
    mixed(shop, (1, 0))

    assert fates(shop) == [
        "0.8 l left. One booked car wants it, but not at 1:4: plan its step at 1:4, or empty it."
    ]


def test_a_kind_that_a_car_wants_counts_as_its_products_do(shop: w.World) -> None:
    one = w.bottle(
        shop, w.hollin(shop, needs_sheet=False), 200 * ML, expires_on=SOON, opened_at=NOON - timedelta(days=1)
    )
    w.need(w.step(w.job(shop, NOON + timedelta(days=2))), "solvent", 200 * ML)

    assert one.product is not None
    assert fates(shop) == ["200 ml left, one booked car will finish it."]


def test_a_car_that_comes_after_the_bottle_died_wants_nothing_of_it(shop: w.World) -> None:
    one = mixed(shop, (1, 0))
    Container.objects.filter(pk=one.pk).update(use_by_at=NOON + timedelta(days=1))

    assert fates(shop)[0].startswith("0.8 l left. No car before ")


def gel(shop: w.World, **about: object) -> Container:
    known = shop.shop.products.filter(name="Ossen gel").first()
    made = known or w.product(shop, "Ossen gel", "first_aid", dimension="mass", needs_sheet=False)
    Equipment.objects.get_or_create(product=made, defaults={"serves": "gluconate"})
    return w.bottle(shop, made, 25 * GRAM, **about)  # type: ignore[arg-type]


def guards(shop: w.World) -> list[tuple[str, str]]:
    return [(hand.grade, hand.says) for hand in queries.hands(shop.shop, NOON) if "Ossen gel" in hand.says]


OVER = (NOON - timedelta(days=3)).date()
REPLACE = ("stop", "Ossen gel in Bay 2 is out of date: replace it.")
THROW_AWAY = (
    "tell",
    "Ossen gel in Bay 2 is out of date, and another that is good stands in reach: throw this one away.",
)  # fmt: skip


def test_a_tube_that_is_over_stops_where_no_good_one_is_in_reach(shop: w.World) -> None:
    gel(shop, place=shop.bay_2, expires_on=OVER)
    gel(shop, place=shop.store, expires_on=SOON)

    assert guards(shop) == [REPLACE]


def test_a_tube_that_is_over_is_thrown_away_where_a_good_one_stands_beside_it(shop: w.World) -> None:
    gel(shop, place=shop.bay_2, expires_on=OVER)
    gel(shop, place=shop.bay_2, expires_on=SOON)

    assert guards(shop) == [THROW_AWAY]


def test_a_second_tube_that_is_over_too_is_no_help(shop: w.World) -> None:
    gel(shop, place=shop.bay_2, expires_on=OVER)
    gel(shop, place=shop.bay_2, expires_on=OVER - timedelta(days=1))

    assert guards(shop) == [REPLACE, REPLACE]


def test_a_held_tube_is_no_help(shop: w.World) -> None:
    gel(shop, place=shop.bay_2, expires_on=OVER)
    Container.objects.filter(pk=gel(shop, place=shop.bay_2, expires_on=SOON).pk).update(held="frozen")

    assert guards(shop) == [REPLACE]
