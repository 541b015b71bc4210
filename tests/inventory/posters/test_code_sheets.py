"""Badges, command cards and places: a scanner reads the right codes off the sheet."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.codes import COMMANDS
from inventory.models import Person
from inventory.posters.pdf import COMMAND_WORDS, code_sheet
from tests.safety.print.paper import codes, outside, overlaps, pages, size_mm, text
from tests.world import World

pytestmark = pytest.mark.django_db


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


def test_badges_and_command_cards_carry_the_right_codes(world: World, tomas: Client) -> None:
    badges = tomas.get(reverse("posters:badges_pdf")).content
    people = Person.objects.filter(role__in=["owner", "technician"])
    assert sorted(codes(badges)) == sorted(people.values_list("code", flat=True))
    cards = tomas.get(reverse("posters:cards_pdf")).content
    found = [code for page in range(pages(cards)) for code in codes(cards, page)]
    places = [world.store.code, world.bay_1.code, world.bay_2.code]
    assert sorted(found) == sorted([*COMMANDS.values(), *places])
    assert "Bottle finished" in text(cards)


@pytest.mark.parametrize(
    "name",
    ["Ö", "Bay for correction, coating and everything that needs warm dry air", "W" * 60],
)
def test_no_name_leaves_its_card(name: str) -> None:
    pdf = code_sheet([(name, COMMANDS["yes"])] * 25, "A4")
    assert codes(pdf, 1) == [COMMANDS["yes"]]  # 24 cards a page
    assert (outside(pdf), overlaps(pdf)) == ([], [])


def test_a_shop_in_the_states_prints_its_cards_on_letter(world: World, tomas: Client) -> None:
    world.shop.country = "US"
    world.shop.save()
    assert size_mm(tomas.get(reverse("posters:cards_pdf")).content) == (215.9, 279.4)


def test_every_command_has_a_word_on_its_card() -> None:
    assert sorted(COMMAND_WORDS) == sorted(COMMANDS)
