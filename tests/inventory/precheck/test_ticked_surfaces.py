"""What is ticked or written of a whole car, and what its panels say beside that."""

import pytest

from inventory.models import Panel, Vehicle
from inventory.trade.acts import Surface
from tests import world as w
from tests.inventory.precheck.cars import coating_job, facts

pytestmark = pytest.mark.django_db

PAINT = Surface("paint", "clear_coat")


def ticked(shop: w.World, *surfaces: str) -> Vehicle:
    """Return a car of which somebody ticked or wrote these."""
    vehicle = w.car(shop)
    vehicle.surfaces = list(surfaces)
    vehicle.save()
    return vehicle


def test_what_is_ticked_of_a_whole_car_counts_beside_its_clear_coat(shop: w.World) -> None:
    vehicle = ticked(shop, "wrap_matte", "leather")

    assert facts(coating_job(shop, w.tidewall(shop), vehicle)).surfaces == (
        PAINT, Surface("car", "wrap_matte", as_paint=True), Surface("car", "leather"),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "key", "because"),
    [
        ("matte film", "wrap_matte", "the booking page once gave it as its example"),
        ("soft top", "top_fabric", "the other example; fabric bears less than vinyl"),
        ("Matte wrap on the roof", "wrap_matte", "a phrase within a longer text"),
        ("fresh refinish", "fresh_refinish", "its own name"),
        ("leather", "leather", "a single word alone"),
        ("PPF", "film", "as people write it"),
        ("vinyl wrap, bonnet", "wrap_gloss", "a phrase before a comma"),
    ],
)
def test_old_words_that_name_a_surface_count_as_if_it_were_ticked(
    shop: w.World, text: str, key: str, because: str
) -> None:
    found = facts(coating_job(shop, w.tidewall(shop), ticked(shop, text)))

    assert [one.key for one in found.surfaces] == ["clear_coat", key], because
    assert found.unread == (), because


@pytest.mark.parametrize("text", ["satin foil", "leatherette", "two-tone", "customer is a friend"])
def test_old_words_that_name_none_are_not_read(shop: w.World, text: str) -> None:
    found = facts(coating_job(shop, w.tidewall(shop), ticked(shop, text)))

    assert found.surfaces == (PAINT,)
    assert found.unread == (text,)


def test_where_panels_are_listed_words_ask_nothing_and_a_tick_stands_beside_the_panels(shop: w.World) -> None:
    vehicle = ticked(shop, "satin foil", "matte", "film")
    Panel.objects.create(vehicle=vehicle, position=1, name="bonnet", surface="film")

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert [(one.name, one.key) for one in found.surfaces] == [("bonnet", "film"), ("car", "matte")]
    assert found.unread == ()


def test_a_car_of_which_only_the_lamps_are_listed_still_has_paint(shop: w.World) -> None:
    vehicle = ticked(shop)
    Panel.objects.create(vehicle=vehicle, position=1, name="left lamp", surface="lamp")

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert [one.key for one in found.surfaces] == ["lamp", "clear_coat"]


@pytest.mark.parametrize(
    ("panels", "said", "reached", "because"),
    [
        ([], ["wrap_matte"], ["paint", "car"], "work on the paint of a wrapped car meets the wrap"),
        ([("bonnet", "film"), ("roof", "film")], [], ["bonnet", "roof"], "nothing but film is listed"),
        ([("bonnet", "film"), ("roof", "clear_coat")], [], ["roof"], "film beside paint is masked"),
    ],
)
def test_work_on_the_paint_meets_a_film_that_lies_on_all_of_it(
    shop: w.World, panels: list[tuple[str, str]], said: list[str], reached: list[str], because: str
) -> None:
    vehicle = ticked(shop, *said)
    for number, (name, surface) in enumerate(panels):
        Panel.objects.create(vehicle=vehicle, position=number, name=name, surface=surface)

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert [one.name for one in found.surfaces if "paint" in one.areas] == reached, because


@pytest.mark.parametrize(
    ("panels", "of_wheels", "because"),
    [
        ([("rims", "aluminium")], ["rims"], "bare metal may be that of the wheels"),
        ([("grille", "chrome")], ["grille"], "where nobody said what the wheels are, it may be them"),
        ([("grille", "chrome"), ("wheels", "aluminium")], ["wheels"], "its name says which is the wheel"),
        ([("grille", "chrome"), ("set", "powder_coat")], ["set"], "powder coat is of the wheels"),
    ],
)
def test_metal_is_of_the_wheels_unless_something_else_is(
    shop: w.World, panels: list[tuple[str, str]], of_wheels: list[str], because: str
) -> None:
    vehicle = ticked(shop)
    for number, (name, surface) in enumerate(panels):
        Panel.objects.create(vehicle=vehicle, position=number, name=name, surface=surface)

    found = facts(coating_job(shop, w.tidewall(shop), vehicle))

    assert [one.name for one in found.surfaces if "wheels" in one.areas] == of_wheels, because
