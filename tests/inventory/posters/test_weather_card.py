"""The weather card: each value that a shop reads has a square that a scanner reads, in its own degrees."""

import io
import json
from datetime import UTC, datetime
from decimal import Decimal
from itertools import pairwise

import pint
import pytest
import zxingcpp
from django.core.management import call_command
from django.test import Client
from django.urls import reverse

from inventory.codes import AIR, COMMANDS, HUMIDITY, PANEL, value_of
from inventory.models import WeatherReading
from safety.print.code_card import BLANK, COLUMNS, Band, CodeCard, print_code_card
from safety.print.pen import UnknownPaper
from tests.safety.print.paper import DPI, codes, drawn, faults, pages, picture, size_mm, text
from tests.world import World

pytestmark = pytest.mark.django_db
UREG = pint.UnitRegistry()


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


def printed(client: Client, paper: str = "") -> bytes:
    return client.get(reverse("posters:weather_pdf") + (f"?paper={paper}" if paper else "")).content


def in_the_states(world: World) -> None:
    world.shop.country, world.shop.system = "US", "us"
    world.shop.save()


def said(pdf: bytes, quantity: str) -> list[Decimal | None]:
    """Return the values of a quantity that a scanner reads off a sheet, in order."""
    found = [value.amount for code in codes(pdf) if (value := value_of(code)) and value.quantity == quantity]
    return sorted(found, key=lambda one: (one is None, one))


def test_nobody_prints_it_without_signing_in() -> None:
    assert Client().get(reverse("posters:weather_pdf")).status_code == 302


def test_a_paper_that_nobody_prints_on_is_refused() -> None:
    with pytest.raises(UnknownPaper, match="“Foolscap” is not one of"):
        print_code_card(CodeCard("", "", (), ""), "Foolscap")


def test_a_scanner_reads_every_value_off_it_at_200_dpi(tomas: Client) -> None:
    pdf = printed(tomas)
    assert said(pdf, AIR) == [Decimal(each) for each in range(5, 41)]
    assert said(pdf, PANEL) == [*(Decimal(each) for each in range(5, 41)), None]
    assert said(pdf, HUMIDITY) == [Decimal(each) for each in range(20, 96, 5)]
    assert COMMANDS["undo"] in codes(pdf)
    assert len(codes(pdf)) == 36 + 37 + 16 + 1, "and nothing else"


@pytest.mark.parametrize(
    ("paper", "size"), [("", (297.0, 210.0)), ("A3", (420.0, 297.0)), ("Tabloid", (431.8, 279.4))]
)
def test_it_is_one_sheet_across_and_nothing_lies_over_anything(
    tomas: Client, paper: str, size: tuple[float, float]
) -> None:
    pdf = printed(tomas, paper)
    assert (pages(pdf), size_mm(pdf)) == (1, size)
    assert faults(pdf, edge=4.2) == []
    assert len(codes(pdf)) == 90


def test_squares_stand_far_enough_apart_that_a_scanner_meets_one_at_a_time(tomas: Client) -> None:
    """Six millimetres of white between two squares is our own figure (no source)."""
    squares = [one.box for one in drawn(printed(tomas)) if one.kind == "symbol"]
    squares.sort(key=lambda box: (round(box.bottom), box.left))
    beside = [right.left - left.right for left, right in pairwise(squares) if right.left > left.left]
    assert min(box.right - box.left for box in squares) > 8
    assert min(beside) > 6


def test_each_square_stands_under_its_own_value_and_in_its_own_band(tomas: Client) -> None:
    pdf = printed(tomas)
    height = size_mm(pdf)[1]
    words = [(one.box, one.box.text) for one in drawn(pdf) if one.kind == "text"]
    heads = [(box.top, text) for box, text in words if text in {"Air", "Panel", "Humidity"}]
    for square in zxingcpp.read_barcodes(picture(pdf)):
        left, up = square.position.top_left.x / DPI * 25.4, height - square.position.top_left.y / DPI * 25.4
        above = [
            text for box, text in words if box.left - 4 < left < box.right + 3 and 0 < box.bottom - up < 4
        ]
        if value := value_of(square.text):
            says = "not measured" if value.amount is None else str(value.amount)
            band = min((top, text) for top, text in heads if top > up)[1]
            assert (above, band.lower()) == ([says], value.quantity)
        else:
            assert (above, square.text) == (["Undo"], COMMANDS["undo"])


def test_it_says_how_it_is_used_and_how_finer_values_are_typed(tomas: Client) -> None:
    words = text(printed(tomas))
    assert (
        "With no bottle in hand scan the bay, or the car in it, then one value of each: air, panel and "
        "humidity, in any order."
    ) in words
    assert "type it at the station, as “air 21.4” or “humidity 52”" in words
    assert "°F" not in words


def test_a_shop_in_the_states_reads_fahrenheit_and_its_codes_mean_celsius(
    world: World, tomas: Client
) -> None:
    in_the_states(world)
    pdf = printed(tomas)
    outside = [
        round(Decimal(UREG.Quantity(each, UREG.degF).to(UREG.degC).magnitude), 1)
        for each in range(42, 105, 2)
    ]
    assert said(pdf, AIR) == outside, "as pint converts them"
    assert size_mm(pdf) == (279.4, 215.9)
    assert faults(pdf, edge=4.2) == []
    assert "as “air 70.5 F” or “humidity 52”" in text(pdf)
    assert "°C" not in text(pdf)


def test_an_imperial_shop_counts_its_gallons_and_reads_celsius(world: World, tomas: Client) -> None:
    world.shop.system = "imperial"
    world.shop.save()
    assert said(printed(tomas), AIR) == [Decimal(each) for each in range(5, 41)]


def test_a_band_of_one_value_more_takes_a_row_more() -> None:
    cells = [("1", COMMANDS["yes"])] * COLUMNS
    assert Band("Air", "°C", cells).rows == 1
    assert Band("Air", "°C", [*cells, BLANK]).rows == 2


def test_the_posters_page_leads_to_it(tomas: Client) -> None:
    assert reverse("posters:weather_pdf") in tomas.get(reverse("posters:list")).content.decode()


def test_with_the_scanner_alone_a_reading_is_kept_from_the_printed_cards(
    world: World, tomas: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every line is read off our own paper: the badge, the bay's card, three values."""
    values = {value_of(code): code for code in codes(printed(tomas))}
    badges = codes(tomas.get(reverse("posters:badges_pdf")).content)
    assert world.tomas.code in badges
    lines = [
        world.tomas.code,
        world.bay_2.code,
        values[(HUMIDITY, Decimal(55))],
        values[(AIR, Decimal(21))],
        values[(PANEL, Decimal(19))],
    ]
    typed = "".join(f"{number}\t{line}\n" for number, line in enumerate(lines))
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    out = io.StringIO()
    before = datetime.now(UTC)

    call_command("scan", json=True, stdout=out)

    spoken = [json.loads(line) for line in out.getvalue().splitlines()]
    assert [(one["says"], one["next"]) for one in spoken[2:]] == [
        ("Bay 2: humidity 55 %.", "Now air, then the panel."),
        ("Bay 2: air 21 °C, humidity 55 %.", "Now the panel."),
        ("Bay 2: air 21 °C, panel 19 °C, humidity 55 %.", "The check of a coat counts it for two hours."),
    ]
    kept = WeatherReading.objects.get()
    assert (kept.place, kept.by) == (world.bay_2, world.tomas)
    assert before <= kept.taken_at <= datetime.now(UTC)
