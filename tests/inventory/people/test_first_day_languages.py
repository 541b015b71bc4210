"""The sheet of the first day in the shop's languages: what is said in each, what stays, what is kept."""

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.models import FirstDay, Shop
from inventory.people.rules.first_day import Here, House, Room, sections
from safety.print.words import languages
from tests.inventory.people.first_days import ADDRESS, sign, words_of
from tests.world import World

pytestmark = pytest.mark.django_db

IN_SPANISH = (
    "Bay 1. Peligrosos: Brack wheel acid.",
    "Brack wheel acid. Peligro. Provoca quemaduras graves en la piel y lesiones oculares graves. "
    "Contiene un fluoruro.",
    "Brack wheel acid: manos: nitrile 0.4 mm.",
    "Lavaojos de Bay 1: left of the door.",
    "Gel: Ossen gel, Bay 1.",
    "Kit de derrames de Bay 1: green box.",
    "Brack wheel acid: Neutraliser first.",
    "Hasta firmar esta hoja, nada de ácidos, fluoruros ni protección respiratoria a solas.",
    "Lo que dicen las fichas de datos está en el idioma de la ficha.",
    "Los nombres y lugares están como los escribió el taller.",
    "Traducido de memoria, aún sin revisar por un hablante nativo del oficio: si algo no está claro, "
    "pregunte.",
)


def test_the_sheet_is_read_in_spanish_and_what_was_typed_stays_as_it_is(
    tomas: Client, acid_in_bay: None
) -> None:
    page = tomas.get(reverse("people:first_day"), {"language": "es"}).content.decode()
    assert [line for line in IN_SPANISH if line not in page] == []
    assert '<div lang="es">' in page
    assert "<h1>El primer día aquí</h1>" in page
    assert "Firmar: me lo han enseñado todo" in page
    assert '<a class="button" href="?language=en" lang="en" hreflang="en">English</a>' in page


def test_the_paper_in_spanish_says_the_same_and_has_lines_to_sign_on(
    tomas: Client, acid_in_bay: None
) -> None:
    answer = tomas.get(reverse("people:first_day_pdf"), {"language": "es"})
    said = words_of(answer.content)
    assert [line for line in IN_SPANISH if line not in said] == []
    assert "Leído y entendido (firma, fecha)" in said
    assert "Larkmoor Works: el primer día" in said


def test_the_english_sheet_says_nothing_of_translation(tomas: Client, acid_in_bay: None) -> None:
    page = tomas.get(reverse("people:first_day")).content.decode()
    assert "Translated from memory" not in page
    assert "stands in the language of the sheet" not in page


@pytest.mark.parametrize(("asked", "title"), [("", "El primer día aquí"), ("fr", "El primer día aquí")])
def test_a_language_that_is_none_of_ours_is_the_shops_own(
    tomas: Client, world: World, asked: str, title: str
) -> None:
    world.shop.language = "es"
    world.shop.save()
    page = tomas.get(reverse("people:first_day"), {"language": asked}).content.decode()
    assert f"<h1>{title}</h1>" in page


def test_what_was_signed_is_kept_in_the_language_that_was_read(
    tomas: Client, world: World, acid_in_bay: None
) -> None:
    page = sign(tomas, world.tomas, world.ines, "es")
    kept = FirstDay.objects.get(person=world.tomas).says
    assert kept["language"] == "es"
    assert kept["parts"][0] == {"title": "Dónde hay peligro", "lines": [IN_SPANISH[0]]}
    assert 'shown round by Ines, read in <span lang="es">español</span>.' in page
    again = tomas.get(reverse("people:first_day"), {"language": "es"}).content.decode()
    assert "Usted lo firmó el " in again
    assert "; se lo enseñó Ines." in again


def test_a_sheet_in_a_language_that_nobody_can_read_here_is_not_signed(tomas: Client, world: World) -> None:
    assert "Say who showed you round, then sign." in sign(tomas, world.tomas, world.ines, "fr")
    assert not FirstDay.objects.exists()


def test_a_refused_signature_leads_back_to_the_sheet_in_its_language(tomas: Client, world: World) -> None:
    said = {"shown_by": "", "language": "es"}
    answer = tomas.post(reverse(ADDRESS, args=[world.tomas.code]), said)
    assert answer["Location"] == "/people/first-day/?language=es"


def test_a_sheet_signed_before_languages_were_kept_names_none(tomas: Client, world: World) -> None:
    says = {"on_paper": False, "parts": [{"title": "Eyes and skin", "lines": ["Rinse."]}]}
    FirstDay.objects.create(person=world.tomas, signed_at=timezone.now(), shown_by=world.ines, says=says)
    page = tomas.get(reverse("people:person", args=[world.tomas.code])).content.decode()
    assert "shown round by Ines." in page
    assert "read in" not in page


HOUSE = House("Larkmoor Works", "112")
WORN = (("Hands", "a"), ("Eyes", "b"), ("Body", "c"), ("Breath", "d"))
FULL = (
    House("Larkmoor Works", "112", "0800 1", "desk", "https://l/", ("gel",), ("bottle",), ("gloves",)),
    (
        Room(
            "Bay 1",
            (
                Here("Acid", "Danger", ("H.",), WORN, "Lime.", fluoride=True, isocyanate=True),
                Here("Soap", "Warning", ("H.",)),
            ),
            "eyes", "kit", "fire", "aid",
        ),
        Room("Store", (Here("Soap", "Warning", ("H.",)),)),
        Room("Van", (Here("Lye", "Danger", ("H.",)),)),
    ),
)  # fmt: skip
PARTS = (
    "Where it is dangerous", "What the dangerous ones do", "What is worn", "Data sheets", "Eyes and skin",
    "Spill and fire", "Who is called", "Until this is signed",
)  # fmt: skip


def english_left(language: str) -> list[str]:
    """Return the lines that a language shares with English, of a sheet that says all it can, and an empty."""
    both = [
        (sections(house, rooms), sections(house, rooms, language)) for house, rooms in (FULL, (HOUSE, ()))
    ]
    return [
        line
        for english, other in both
        for one, same in zip(english, other, strict=True)
        for line, said in zip((one.title, *one.lines), (same.title, *same.lines), strict=True)
        if line == said
    ]


def test_all_that_the_sheet_can_say_is_said_in_every_language() -> None:
    """What stays is what the shop or a sheet wrote, and a word that is the same in both."""
    assert [part.title for part in sections(*FULL)] == list(PARTS)
    assert [one for one in Shop.Language.values if one not in languages()] == []
    assert english_left("es") == ["Gel: gel.", "Acid: Lime."]
