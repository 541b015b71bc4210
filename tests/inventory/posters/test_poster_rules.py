"""When a poster is out of date, each reason beside its nearest that is none."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest

from inventory.models import Admission, Place, Product
from inventory.posters.rules import Standing, by_outer_place, changes, in_one_sentence, only_here
from inventory.stock.rules.acts import Act
from tests.inventory.posters.wall import admitted, hang, notice, sheet, wiped_bay
from tests.world import (
    LITRE,
    ML,
    NOON,
    TODAY,
    World,
    bottle,
    hollin,
    larkmoor,
    marl,
    product,
    record,
    tidewall,
)

OUT = "The poster of Bay 2 is out of date: "
PRINTED = {
    "place": {"name": "Bay 2", "eyewash": "left of the door"},
    "products": {"HOLLIN": {"name": "Hollin panel wipe", "sheet": "2025-03-03", "typed": 1}},
}


def test_a_poster_that_still_says_what_holds_has_no_reason() -> None:
    assert changes(PRINTED, PRINTED, [Standing("HOLLIN", "Hollin panel wipe")]) == []


def test_a_place_that_admits_nothing_needs_no_poster() -> None:
    assert changes(None, {"place": {}, "products": {}}, []) == []


@pytest.mark.parametrize(
    ("reasons", "says"),
    [
        ([], ""),
        (["it was never printed"], "Bay 2 has no poster yet."),
        (["X is admitted now"], "The poster of Bay 2 is out of date: X is admitted now."),
        (
            ["X is admitted now", "y", "z"],
            "The poster of Bay 2 is out of date: X is admitted now, and 2 more.",
        ),
    ],
)
def test_the_notice_is_one_whole_sentence(reasons: list[str], says: str) -> None:
    assert in_one_sentence("Bay 2", reasons) == says


@pytest.mark.parametrize(
    ("url", "closed", "because"),
    [
        ("http://localhost:8000/posters/P/", True, "each phone is its own localhost"),
        ("http://127.0.0.1:8000/", True, "loopback"),
        ("http://[::1]/", True, "loopback"),
        ("http://192.168.1.20:8000/", False, "an address of the shop's network"),
        ("http://shelf.larkmoor.example/", False, "a name"),
    ],
)
def test_an_address_that_no_phone_can_open_is_known(url: str, closed: bool, because: str) -> None:
    assert only_here(url) is closed, because


def test_what_stands_in_a_cabinet_stands_in_its_bay() -> None:
    wipe = Standing("HOLLIN", "Hollin panel wipe")
    assert by_outer_place([(3, wipe)], {3: 2, 2: None, 1: None}) == {3: [wipe], 2: [wipe]}


def test_two_places_within_each_other_are_walked_once() -> None:
    wipe = Standing("HOLLIN", "Hollin panel wipe")
    assert by_outer_place([(1, wipe)], {1: 2, 2: 1}) == {1: [wipe], 2: [wipe]}


@pytest.fixture
def world(db: None) -> World:
    return larkmoor()


@pytest.fixture
def wipe(world: World) -> Product:
    """Bay 2 with its first version on the wall."""
    found = wiped_bay(world)
    hang(world.bay_2)
    return found


def test_a_place_that_admits_something_and_was_never_printed_has_no_poster(world: World) -> None:
    wiped_bay(world)
    assert notice(world.bay_2) == "Bay 2 has no poster yet."


def test_amounts_that_move_never_put_a_poster_out_of_date(world: World, wipe: Product) -> None:
    one = bottle(world, wipe, LITRE, place=world.bay_2)
    record(world, Act("use", NOON, source=one.code, amount=200 * ML))
    record(world, Act("move", NOON, target=one.code, place=world.store.code))
    assert notice(world.bay_2) == ""


def test_a_product_admitted_puts_it_out_of_date(world: World, wipe: Product) -> None:
    coating = tidewall(world)
    admitted(world.bay_1, coating)
    assert notice(world.bay_2) == ""  # the nearest: admitted next door
    admitted(world.bay_2, coating)
    assert notice(world.bay_2) == OUT + "Tidewall coating is admitted now."


def test_a_product_withdrawn_puts_it_out_of_date(world: World, wipe: Product) -> None:
    Admission.objects.filter(place=world.bay_2, product=wipe).delete()
    assert notice(world.bay_2) == OUT + "Hollin panel wipe is no longer admitted."


def test_a_newer_confirmed_sheet_puts_it_out_of_date(world: World, wipe: Product) -> None:
    sheet(wipe, date(2026, 1, 7), confirmed=False)
    assert notice(world.bay_2) == ""  # typed in, compared by nobody: the poster still prints the older one
    sheet(wipe, date(2026, 1, 7))
    assert notice(world.bay_2) == OUT + "Hollin panel wipe has another data sheet, of 7 January 2026."


def test_an_older_sheet_found_later_changes_nothing(world: World, wipe: Product) -> None:
    sheet(wipe, date(2022, 1, 7))
    assert notice(world.bay_2) == ""


def test_a_sheet_of_something_else_changes_nothing(world: World, wipe: Product) -> None:
    sheet(tidewall(world), date(2026, 1, 7))
    assert notice(world.bay_2) == ""


def _eyewash(bay: Place) -> None:
    bay.eyewash_at = "beside the sink"
    bay.save()


def _fire_area(bay: Place) -> None:
    bay.fire_area = "hall"
    bay.save()


def _poison_centre(bay: Place) -> None:
    bay.shop.poison_centre = "0800 555 0147"
    bay.shop.save()


def _currency(bay: Place) -> None:
    bay.shop.currency = "GBP"
    bay.shop.save()


@pytest.mark.parametrize(
    ("change", "says", "because"),
    [
        (_eyewash, OUT + "the place of the eyewash changed.", "people run where the poster sends them"),
        (_fire_area, "", "a poster does not say it"),
        (_poison_centre, OUT + "the poison centre’s number changed.", "the number on the wall is dead"),
        (_currency, "", "a poster has no prices"),
    ],
)
def test_a_fact_of_the_place_puts_it_out_of_date(
    world: World, wipe: Product, change: Callable[[Place], None], says: str, because: str
) -> None:
    change(world.bay_2)
    assert notice(world.bay_2) == says, because


def test_a_product_that_arrives_in_a_cabinet_of_the_bay_puts_it_out_of_date(
    world: World, wipe: Product
) -> None:
    cabinet = Place.objects.create(shop=world.shop, name="Cabinet A", kind="cabinet", within=world.bay_2)
    bottle(world, wipe, LITRE, place=cabinet)
    bottle(world, marl(world), 1000, place=world.store)
    assert notice(world.bay_2) == ""  # the nearest: a listed one in the cabinet, an unlisted one elsewhere
    bottle(world, tidewall(world), 30 * ML, place=cabinet)
    assert notice(world.bay_2) == OUT + "Tidewall coating stands there and is not on it."


def test_a_towel_that_arrives_changes_nothing(world: World, wipe: Product) -> None:
    towels = product(world, "Brack towels", "towel", dimension="pieces", noun="bag", needs_sheet=False)
    bottle(world, towels, 12, place=world.bay_2)
    assert notice(world.bay_2) == ""


@pytest.mark.parametrize(
    ("on", "says", "because"),
    [
        (date(2027, 11, 25), "", "the day that stands on its foot is its last"),
        (date(2027, 11, 26), OUT + "it was to be replaced after a year.", "a day later"),
    ],
)
def test_a_poster_hangs_for_a_year(world: World, wipe: Product, on: date, says: str, because: str) -> None:
    assert notice(world.bay_2, on) == says, because


def test_printing_again_ends_the_notice(world: World, wipe: Product) -> None:
    admitted(world.bay_2, tidewall(world))
    assert (hang(world.bay_2, TODAY + timedelta(days=1)).version, notice(world.bay_2)) == (2, "")


def test_a_shop_next_door_changes_nothing(world: World, wipe: Product) -> None:
    other = larkmoor("next-door")
    admitted(other.bay_2, hollin(other))
    assert notice(world.bay_2) == ""
