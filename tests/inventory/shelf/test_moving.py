"""Moving a bottle from its page asks what the scan station asks of putting it away."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Container, Place
from inventory.shelf import queries
from safety.models import DataSheet, SheetVersion
from tests.world import LITRE, NOON, World, bleach, bottle, lime_remover, product, soap

pytestmark = pytest.mark.django_db
NEVER = (
    "Brack bleach and Brack lime remover never stand in one cabinet, on one shelf or tray: "
    "bleach beside acid."
)


@pytest.fixture
def there(world: World) -> Place:
    """A cabinet in which bleach stands."""
    made = Place.objects.create(shop=world.shop, name="Cabinet A", kind="cabinet")
    bottle(world, bleach(world), LITRE, place=made)
    return made


def moved(browser: Client, container: Container, place: Place, *known: str) -> str:
    """Move a bottle from its page, and return the page that answers."""
    sent = {"place": place.code, "known": known}
    answer = browser.post(reverse("shelf:move", args=[container.code]), sent, follow=True)
    container.refresh_from_db()
    return answer.content.decode()


def test_acid_is_not_moved_beside_bleach(ines: Client, world: World, there: Place) -> None:
    sour = bottle(world, lime_remover(world), LITRE)
    text = moved(ines, sour, there)
    assert NEVER in text
    assert "Move one of them to another cabinet before anything else." in text
    assert sour.place == world.store


def test_no_word_lifts_that_stop(ines: Client, world: World, there: Place) -> None:
    sour = bottle(world, lime_remover(world), LITRE)
    moved(ines, sour, there, queries.beside(sour, there)[0].code)
    assert sour.place == world.store


def test_soap_is_moved_beside_bleach(ines: Client, world: World, there: Place) -> None:
    mild = bottle(world, soap(world), LITRE)
    assert "stands in Cabinet A now." in moved(ines, mild, there)
    assert mild.place == there


def test_acid_and_bleach_in_one_bay_are_moved_and_told(ines: Client, world: World) -> None:
    bottle(world, bleach(world), LITRE, place=world.bay_1)
    sour = bottle(world, lime_remover(world), LITRE)
    page = moved(ines, sour, world.bay_1)
    assert "Brack bleach and Brack lime remover share a bay." in page
    assert "Keep them closed, and never let one into the other" in page
    assert sour.place == world.bay_1


def test_more_that_burns_than_a_fire_area_holds_is_asked_once(ines: Client, world: World) -> None:
    hall = Place.objects.create(
        shop=world.shop, name="Hall", kind="bay", fire_area="hall", fire_area_limit_l=5
    )
    sheet = DataSheet.objects.create(title="Hollin panel wipe", supplier="Hollin")
    SheetVersion.objects.create(
        sheet=sheet, revision_on=NOON.date(), hazards=["Flam. Liq. 2 H225"], typed_on=NOON.date(),
        confirmed_on=NOON.date(), confirmed_by="Ines", flash_point_c=12,
    )  # fmt: skip
    wipe = product(world, "Hollin panel wipe", "solvent", sheet=sheet)
    world.shop.country = "DE"
    world.shop.save()
    bottle(world, wipe, 5 * LITRE, place=hall)
    more = bottle(world, wipe, LITRE)
    text = moved(ines, more, hall)
    assert "Put it there all the same" in text
    assert more.place == world.store
    code = text.split('name="known" value="')[1].split('"')[0]
    moved(ines, more, hall, code)
    assert more.place == hall
