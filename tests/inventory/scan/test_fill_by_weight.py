"""Filling a bottle out of what is kept by weight or counted: a powder in a tub, tablets in a box."""

import pytest

from inventory.models import Container
from inventory.posters.queries.labels import in_order, labels
from tests.inventory.scan.desk import Desk, content, desk
from tests.world import GRAM, ML, NOON, World, bottle, product, spray_bottle

pytestmark = pytest.mark.django_db


@pytest.fixture
def tomas(world: World) -> Desk:
    return desk(world)


@pytest.fixture
def tub(world: World) -> Container:
    """A kilogram of Brindle wash powder, opened."""
    powder = product(world, "Brindle wash powder", "shampoo", dimension="mass", noun="tub", needs_sheet=False)
    return bottle(world, powder, 1000 * GRAM, opened_at=NOON)


def test_a_powder_is_mixed_into_a_bottle_that_never_held_anything_by_weighing_both(
    world: World, tomas: Desk, tub: Container
) -> None:
    spray = spray_bottle(world)
    asked = tomas.say(tub.code), tomas.say("FILL")
    assert "Type it as 1:10, product to water, by weight" in asked[1]["next"]

    said = tomas.hears("1:9", spray.code)

    assert said == (
        f"recorded: Filled {spray.code[:4]}: 100 g product into 900 g water, both weighed, water first. "
        "No date limits it."
    )
    assert (content(spray), content(tub)) == (1000 * GRAM, 900 * GRAM), "a litre takes a kilogram"
    assert labels(world.shop, in_order(world.shop, [spray.code]))[0].facts[0] == "1 part + 9 water by weight"


def test_what_was_mixed_by_weight_is_counted_and_used_by_weight(
    world: World, tomas: Desk, tub: Container
) -> None:
    spray = spray_bottle(world)
    tomas.hears(tub.code, "FILL", "1:9", spray.code, "DONE")

    assert tomas.hears(spray.code, "COUNT", "400 g").startswith("recorded: ")
    assert content(spray) == 400 * GRAM


def test_an_amount_for_each_bottle_is_typed_in_grams(world: World, tomas: Desk, tub: Container) -> None:
    spray = spray_bottle(world)
    assert tomas.hears(tub.code, "FILL", "1:9", "200 g") == (
        "ask: 200 g into each: scan the bottles to fill."
    )
    assert "20 g product into 180 g water" in tomas.hears(spray.code)
    assert content(spray) == 200 * GRAM


def test_an_amount_in_millilitres_is_not_guessed_into_grams(
    world: World, tomas: Desk, tub: Container
) -> None:
    tub.product.density_mg_per_l = 700_000
    tub.product.save()
    spray = spray_bottle(world)
    assert "give the amount in the product's own unit" in tomas.hears(tub.code, "FILL", "1:9", "200 ml")
    tomas.hears(spray.code)
    assert content(spray) == 1000 * GRAM, "what was refused is forgotten: the bottle is filled up"


def test_tablets_are_counted_so_no_ratio_holds_and_using_them_works(world: World, tomas: Desk) -> None:
    tablets = product(world, "Brindle tablets", "shampoo", dimension="pieces", noun="box", needs_sheet=False)
    box = bottle(world, tablets, 20, opened_at=NOON)
    spray = spray_bottle(world)

    assert tomas.hears(box.code, "FILL", "1:9", spray.code) == (
        "stop: Brindle tablets is counted, so no ratio says how much of it goes in."
    )
    assert tomas.heard[-1]["next"] == (
        f"Dissolve it as its label says, then USE what went in from {box.code[:4]}."
    )
    tomas.hears("DONE", box.code, "USE", "2 pieces")
    assert (content(box), content(spray)) == (18, 0)


def test_what_is_poured_is_still_measured_by_volume(world: World, tomas: Desk) -> None:
    soap = product(world, "Brindle shampoo", "shampoo", noun="drum", needs_sheet=False)
    drum = bottle(world, soap, 1000 * ML, opened_at=NOON)
    spray = spray_bottle(world)
    assert "100 ml product into 900 ml water, water first." in tomas.hears(
        drum.code, "FILL", "1:9", spray.code
    )


def test_millilitres_of_a_mix_by_weight_are_refused_with_the_way_out(
    world: World, tomas: Desk, tub: Container
) -> None:
    """The powder's density says nothing of what is nine parts water."""
    tub.product.density_mg_per_l = 500_000
    tub.product.save()
    spray = spray_bottle(world)
    tomas.hears(tub.code, "FILL", "1:9", spray.code, "DONE")
    says = "of a mix by weight says nothing about its weight. Weigh it, and type the grams."

    assert tomas.hears(spray.code, "COUNT", "400 ml") == f"ask: 400 ml {says}"
    assert tomas.hears("400 g").startswith("recorded: ")
    assert tomas.hears(spray.code, "USE", "100 ml") == f"ask: 100 ml {says}"
    assert content(spray) == 400 * GRAM


def test_a_light_powder_fills_a_bottle_with_what_fits(world: World, tomas: Desk, tub: Container) -> None:
    tub.product.density_mg_per_l = 500_000
    tub.product.save()
    spray = spray_bottle(world)
    tomas.hears(tub.code, "FILL", "neat", spray.code)
    assert content(spray) == 500 * GRAM


def test_how_much_of_a_powder_fits_is_asked_where_its_density_is_not_known(
    world: World, tomas: Desk, tub: Container
) -> None:
    spray = spray_bottle(world)
    asked = tomas.hears(tub.code, "FILL", "neat", spray.code)
    assert asked.startswith("ask: How many grams of Brindle wash powder")
    assert tomas.hears("300 g").startswith("ask: 300 g into each")
    tomas.hears(spray.code)
    assert content(spray) == 300 * GRAM


def test_a_mix_by_weight_is_decanted_as_the_water_that_it_mostly_is(
    world: World, tomas: Desk, tub: Container
) -> None:
    tub.product.density_mg_per_l = 500_000
    tub.product.save()
    first, second = spray_bottle(world), spray_bottle(world)
    tomas.hears(tub.code, "FILL", "1:9", first.code, "DONE")
    tomas.hears(first.code, "FILL", second.code, "YES")
    assert content(second) == 1000 * GRAM, tomas.heard[-2:]
