"""A product's card, a cabinet's list, the shop's chemicals: who reads them, what they say, the command."""

import io
import json
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from inventory.models import Place, PosterIssue, Product
from inventory.posters import queries
from tests.inventory.posters.wall import SITE, admitted, hang, notice, sheet, wiped_bay
from tests.safety.print.paper import codes, faults, pages, size_mm, text
from tests.world import TODAY, World, bottle, fenmoor, larkmoor, marl, tidewall

pytestmark = pytest.mark.django_db
OUTSIDE, INSIDE = {"REMOTE_ADDR": "203.0.113.9"}, {"REMOTE_ADDR": "192.168.1.5"}


@pytest.fixture
def world() -> World:
    found = larkmoor()
    wiped_bay(found)
    return found


@pytest.fixture
def wipe(world: World) -> Product:
    return Product.objects.get(name="Hollin panel wipe")


def pages_of(world: World, wipe: Product) -> list[str]:
    return [
        reverse("posters:card", args=[wipe.code]),
        reverse("posters:card_pdf", args=[wipe.code]),
        reverse("posters:cabinet_pdf", args=[world.bay_2.code]),
        reverse("posters:chemicals", args=[world.shop.slug]),
        reverse("posters:chemicals_pdf", args=[world.shop.slug]),
    ]


def read(response: Any) -> str:
    return " ".join(response.content.decode().split())


def poster(*words: Any) -> dict[str, Any]:
    out = io.StringIO()
    call_command("poster", *map(str, words), "--json", stdout=out)
    document: dict[str, Any] = json.loads(out.getvalue())
    return document


def refused(*words: Any) -> str:
    out = io.StringIO()
    with pytest.raises(CommandError) as refusal:
        call_command("poster", *map(str, words), "--json", stdout=out)
    assert refusal.value.returncode == 2
    return str(json.loads(out.getvalue())["error"])


def test_nobody_outside_reads_cards_or_lists(world: World, wipe: Product, client: Client) -> None:
    answers = [client.get(url, **OUTSIDE).status_code for url in pages_of(world, wipe)]  # type: ignore[arg-type]
    assert answers == [302] * 5


def test_the_shops_own_network_reads_them_without_a_login(
    world: World, wipe: Product, client: Client
) -> None:
    answers = [client.get(url, **INSIDE).status_code for url in pages_of(world, wipe)]  # type: ignore[arg-type]
    assert answers == [200] * 5


def test_who_belongs_to_another_shop_finds_nothing(world: World, wipe: Product, client: Client) -> None:
    client.force_login(larkmoor("next-door").ines)
    assert [client.get(url).status_code for url in pages_of(world, wipe)] == [404] * 5


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], "One of PLACE, --card, --cabinet and --chemicals was expected."),
        (["Bay 2", "--card", "Hollin panel wipe"], "One of PLACE, --card, --cabinet and --chemicals"),
        (["--card", "Quill"], "--card “Quill”: a product's code or name was expected."),
        (["--cabinet", "Bay 9"], "--cabinet “Bay 9”: a place's code or name was expected."),
        (["--chemicals", "elsewhere"], "--chemicals “elsewhere”: the address name of a shop was expected."),
        (["--card", "Hollin panel wipe", "--read-at", "3"], "--read-at: only a poster"),
        (["--card", "Hollin panel wipe", "--language", "xx"], "“xx” is not one of en, es."),
        (["Bay 2", "--language", "xx"], "“xx” is not one of en, es."),
        (["--chemicals", "--paper", "B5"], "B5"),
    ],
)
def test_what_cannot_be_printed_is_refused_and_nothing_is_written(
    world: World, tmp_path: Path, words: list[str], says: str
) -> None:
    assert says in refused("--out", tmp_path / "a.pdf", *words)
    assert (list(tmp_path.iterdir()), PosterIssue.objects.count()) == ([], 0)


def test_a_card_says_where_what_and_whom_to_call_and_makes_no_version(
    world: World, wipe: Product, tmp_path: Path
) -> None:
    Place.objects.filter(pk=world.bay_2.pk).update(task="Panel wipe", eyewash_at="left of the door")
    Place.objects.create(shop=world.shop, name="Yard drum", kind="waste")
    file = tmp_path / "card.pdf"
    said = poster("--card", wipe.code.lower(), "--out", file)
    pdf = file.read_bytes()
    assert (said["card"], said["signal_word"], said["pictograms"]) == (
        "Hollin panel wipe",
        "Danger",
        ["GHS02", "GHS07"],
    )
    assert [one["title"] for one in said["sections"]] == [
        "Area and task",
        "Dangers",
        "Protection and rules",
        "Malfunction and spill",
        "First aid",
        "Waste",
    ]
    words = text(pdf)
    for says in (
        "Used in: Bay 2 (Panel wipe).",
        "Data sheet of 3 March 2025.",
        "H225 Highly flammable liquid and vapour.",
        "Eyewash: left of the door",
        "Call 112.",
        "labelled container at: Yard drum.",
    ):
        assert says in words
    assert codes(pdf) == [f"{SITE}/posters/cards/{wipe.code}/"]
    assert (size_mm(pdf), faults(pdf, edge=5), PosterIssue.objects.count()) == ((210.0, 297.0), [], 0)


def test_the_page_that_a_cards_code_opens_says_the_same(world: World, wipe: Product, client: Client) -> None:
    url = reverse("posters:card", args=[wipe.code])
    content = queries.card(wipe, f"{SITE}{url}", TODAY)
    page = read(client.get(url))
    said = [line.text for section in content.sections for line in section.lines]
    assert all(one in page for one in [*said, *content.product.statements] if "'" not in one)


def test_a_cabinet_lists_what_stands_in_it_and_in_places_within(world: World, tmp_path: Path) -> None:
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", within=world.bay_2)
    coating = tidewall(world)
    sheet(coating, hazards=["Resp. Sens. 1 H334"])
    bottle(world, coating, 30_000, place=shelf)
    file = tmp_path / "cabinet.pdf"
    said = poster("--cabinet", "Bay 2", "--out", file)
    assert [(one["name"], one["signal_word"]) for one in said["products"]] == [("Tidewall coating", "Danger")]
    assert said["notes"] == ["Not on the list of this place: Tidewall coating."]
    pdf = file.read_bytes()
    assert "1 product stands here" in text(pdf)
    assert (codes(pdf), faults(pdf, edge=5)) == ([f"{SITE}/posters/{world.bay_2.code}/"], [])


def test_the_page_of_a_place_shows_what_stands_there(world: World, client: Client) -> None:
    bottle(world, tidewall(world), 30_000, place=world.bay_2)
    page = read(client.get(reverse("posters:place", args=[world.bay_2.code])))
    assert "Standing here now" in page
    assert "Not on the list of this place: Tidewall coating." in page


def test_the_list_of_chemicals_names_product_maker_sheet_and_places(world: World, tmp_path: Path) -> None:
    """29 CFR 1910.1200(e)(1)(i): what is known to be present, by the name on its sheet."""
    Product.objects.filter(name="Hollin panel wipe").update(maker="Hollin Works")
    iron, compound, gone = fenmoor(world), marl(world), tidewall(world)
    sheet(compound, hazards=[], not_classified=True)
    bottle(world, iron, 5_000_000, place=world.store)
    admitted(world.bay_2, compound)
    file = tmp_path / "list.pdf"
    said = poster("--chemicals", "--out", file)
    assert [(one["name"], one["maker"], one["sheet"], one["places"]) for one in said["chemicals"]] == [
        ("Fenmoor iron remover", "maker not given", "none yet", "Store"),
        ("Hollin panel wipe", "Hollin Works", "3 March 2025", "Bay 2"),
    ]
    assert said["notes"] == [
        "Left out, as their sheets say they are not classified as hazardous: Marl cutting compound."
    ]
    assert gone.name not in text(file.read_bytes())
    assert faults(file.read_bytes(), edge=5) == []


def test_the_list_asks_as_much_for_many_products_as_for_one(world: World) -> None:
    def asked() -> int:
        with CaptureQueriesContext(connection) as seen:
            queries.chemicals(world.shop, SITE, TODAY)
        return len(seen)

    before = asked()
    for product in (fenmoor(world), marl(world), tidewall(world)):
        sheet(product)
        admitted(world.bay_1, product)
    assert (before, asked()) == (4, 4)


def test_a_shop_that_speaks_spanish_prints_and_shows_spanish(
    world: World, wipe: Product, client: Client, tmp_path: Path
) -> None:
    world.shop.language = "es"
    world.shop.save()
    file = tmp_path / "bay.pdf"
    said = poster("Bay 2", "--out", file)
    assert (said["language"], said["signal_word"]) == ("es", "Peligro")
    assert "Primeros auxilios" in text(file.read_bytes())
    page = read(client.get(reverse("posters:place", args=[world.bay_2.code])))
    assert '<div lang="es">' in page
    assert "Si ocurre" in page
    assert "Call 112" not in page


def test_one_print_may_speak_another_language_and_be_read_from_another_distance(
    world: World, client: Client
) -> None:
    client.force_login(world.tomas)
    sent = {"paper": "A4", "language": "es", "read_at": "1.5"}
    answer = client.post(reverse("posters:print", args=[world.bay_2.code]), sent, follow=True)
    assert "Texto grande legible hasta 1.5 m" in text(answer.content)
    assert notice(world.bay_2) == "", "a poster in another language is no older than one in the shop's own"


def test_a_room_and_its_fan_stand_on_the_poster_in_figures(world: World) -> None:
    Place.objects.filter(pk=world.bay_2.pk).update(volume_m3=160, air_m3_h=960)
    wall = queries.walls(world.shop, Place.objects.get(pk=world.bay_2.pk), TODAY)[0]
    lines = [line for sign in queries.content(wall, SITE, TODAY).equipment for line in sign.lines]
    assert "Room 160 m³, fresh air 960 m³ an hour: the air is new 6 times an hour at best." in lines


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [
        ("first_aid_at", "office", "the place of the first-aid kit changed"),
        ("volume_m3", 160, "the size of the room changed"),
        ("air_m3_h", 960, "the fresh air of the fan changed"),
    ],
)
def test_a_changed_fact_puts_the_poster_out_of_date(
    world: World, field: str, value: object, says: str
) -> None:
    hang(world.bay_2)
    Place.objects.filter(pk=world.bay_2.pk).update(**{field: value})
    assert says in notice(world.bay_2)


def test_an_empty_cabinet_prints_a_sheet_that_says_so(world: World, tmp_path: Path) -> None:
    file = tmp_path / "cabinet.pdf"
    poster("--cabinet", "Bay 1", "--out", file)
    pdf = file.read_bytes()
    assert (pages(pdf), "Nothing with a data sheet stands here." in text(pdf)) == (1, True)
