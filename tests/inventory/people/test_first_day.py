"""The sheet of the first day: what stands on it, on screen and on paper, and who signs it."""

from datetime import date
from io import BytesIO

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from pypdf import PdfReader

from inventory.models import Equipment, FirstDay, Person, Place, Shop
from inventory.people.rules.first_day import Here, House, Room, sections
from safety.models import DataSheet, SheetVersion
from safety.print.words import languages
from tests.world import GRAM, ML, World, bottle, person, product

pytestmark = pytest.mark.django_db
ADDRESS = "people:sign_first_day"


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


@pytest.fixture
def acid_in_bay(world: World) -> None:
    made = product(world, "Brack wheel acid", "acid")
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title="Brack wheel acid")
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 1, 1), confirmed_on=date(2025, 1, 2),
        confirmed_by="Ines", hazards=["Skin Corr. 1B H314"], statements=["H314", "P280"],
        signal_word="Danger",
        holds_fluoride=True, wear_hands="nitrile 0.4 mm", spill="Neutraliser first.",
    )  # fmt: skip
    made.sheet = sheet
    made.save()
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", within=world.bay_1)
    bottle(world, made, 500 * ML, place=shelf)
    Place.objects.filter(pk=world.bay_1.pk).update(eyewash_at="left of the door", spill_kit_at="green box")
    gel = product(world, "Ossen gel", "first_aid", dimension="mass")
    Equipment.objects.create(product=gel, serves="gluconate")
    bottle(world, gel, 25 * GRAM, place=world.bay_1)


def sign(client: Client, who: Person, shown_by: Person, language: str = "en") -> str:
    said = {"shown_by": shown_by.code, "language": language}
    answer = client.post(reverse(ADDRESS, args=[who.code]), said, follow=True)
    return answer.content.decode()


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


def words_of(pdf: bytes) -> str:
    return " ".join("".join(p.extract_text() + "\n" for p in PdfReader(BytesIO(pdf)).pages).split())


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
