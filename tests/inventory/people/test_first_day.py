"""The sheet of the first day: what stands on it, on screen and on paper, and who signs it."""

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import FirstDay, Person
from inventory.people.rules.first_day import Here, House, Room, sections
from tests.inventory.people.first_days import ADDRESS, sign, words_of
from tests.world import World, person

pytestmark = pytest.mark.django_db


SAID = (
    "Bay 1. Dangerous: Brack wheel acid.",
    "Brack wheel acid. Danger. Causes severe skin burns and eye damage. Holds a fluoride.",
    "Brack wheel acid: hands: nitrile 0.4 mm.",
    "Eyewash of Bay 1: left of the door.",
    "Gel: Ossen gel, Bay 1.",
    "Spill kit of Bay 1: green box.",
    "Brack wheel acid: Neutraliser first.",
    "No acid, no fluoride and no respirator alone before this sheet is signed.",
)


def test_the_sheet_says_what_is_here_and_where_help_is(tomas: Client, acid_in_bay: None) -> None:
    page = tomas.get(reverse("people:first_day")).content.decode()
    assert [line for line in SAID if line not in page] == []
    assert "P280" not in page


def test_the_paper_says_the_same_and_has_lines_to_sign_on(tomas: Client, acid_in_bay: None) -> None:
    answer = tomas.get(reverse("people:first_day_pdf"))

    assert answer["Content-Type"] == "application/pdf"
    words = words_of(answer.content)
    assert [line for line in SAID if line not in words] == []
    assert "Read and understood (signature, day)" in words


def test_the_person_signs_with_who_showed_the_place_and_what_stood_on_the_sheet_is_kept(
    tomas: Client, world: World, acid_in_bay: None
) -> None:
    page = sign(tomas, world.tomas, world.ines)

    assert "Signed. Welcome, Tomas." in page
    kept = FirstDay.objects.get(person=world.tomas)
    assert kept.shown_by == world.ines
    assert kept.says["on_paper"] is False
    assert SAID[0] in kept.says["parts"][0]["lines"]


def test_nobody_signs_twice(tomas: Client, world: World) -> None:
    sign(tomas, world.tomas, world.ines)
    assert "Tomas has signed the sheet already." in sign(tomas, world.tomas, world.ines)
    assert FirstDay.objects.count() == 1


def test_an_owner_does_not_sign_for_somebody_who_can_sign_in(ines: Client, world: World) -> None:
    assert "Tomas signs this sheet, signed in as Tomas." in sign(ines, world.tomas, world.ines)
    assert not FirstDay.objects.exists()


def test_an_owner_keeps_the_printed_sheet_of_somebody_who_only_has_a_badge(
    ines: Client, world: World
) -> None:
    pia = Person.objects.create_user("pia", None, name="Pia", shop=world.shop)
    sign(ines, pia, world.ines)
    assert FirstDay.objects.get(person=pia).says["on_paper"] is True


def test_a_colleague_does_not_sign_for_another(tomas: Client, world: World) -> None:
    pia = person(world.shop, "Pia", Person.Role.TECHNICIAN)
    answer = tomas.post(reverse(ADDRESS, args=[pia.code]), {"shown_by": world.ines.code})
    assert answer.status_code == 403


@pytest.mark.parametrize("shown_by", ["tomas", "wren", ""])
def test_nobody_shows_themselves_round_and_no_viewer_does(tomas: Client, world: World, shown_by: str) -> None:
    code = getattr(world, shown_by).code if shown_by else ""
    said = {"shown_by": code, "language": "en"}
    answer = tomas.post(reverse(ADDRESS, args=[world.tomas.code]), said, follow=True)
    assert "Say who showed you round, then sign." in answer.content.decode()
    assert not FirstDay.objects.exists()


HOUSE = House("Larkmoor Works", "112")


def lines(title: str, house: House = HOUSE, rooms: tuple[Room, ...] = ()) -> tuple[str, ...]:
    return next(part.lines for part in sections(house, rooms) if part.title == title)


@pytest.mark.parametrize(
    ("title", "says"),
    [
        ("Where it is dangerous", ("No hazardous product stands or is admitted here.",)),
        ("What is worn", ("Nobody has said yet what is worn here: ask before the first bottle is opened.",)),
        ("Data sheets", ("Nobody has said where they are: ask the owner.",)),
    ],
)
def test_an_empty_part_says_so(title: str, says: tuple[str, ...]) -> None:
    assert lines(title) == says


def test_the_gel_is_spoken_of_only_where_a_fluoride_is() -> None:
    soap = Room("Bay 1", (Here("Soap", "Warning", ("Causes serious eye irritation.",)),))
    acid = Room(
        "Bay 1", (Here("Acid", "Danger", ("Causes severe skin burns and eye damage.",), fluoride=True),)
    )
    assert not any("gel" in line for line in lines("Eyes and skin", rooms=(soap,)))
    assert any("Rub the gel in" in line for line in lines("Eyes and skin", rooms=(acid,)))


def test_a_room_names_its_dangerous_products_apart_from_the_milder_ones() -> None:
    room = Room("Store", (Here("Soap", "Warning", ()), Here("Acid", "Danger", ()), Here("Lye", "Danger", ())))
    assert lines("Where it is dangerous", rooms=(room,)) == ("Store. Dangerous: Acid, Lye; milder: Soap.",)


def test_a_viewer_is_offered_no_signature_that_would_be_refused(
    client: Client, tomas: Client, world: World
) -> None:
    own = reverse("people:person", args=[world.tomas.code])
    assert "Sign: I was shown all of it" in tomas.get(own).content.decode()
    client.force_login(world.wren)
    own = reverse("people:person", args=[world.wren.code])
    assert "Sign: I was shown all of it" not in client.get(own).content.decode()
