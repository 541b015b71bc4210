"""The pages of the data sheets: read in the shop without login, attached by an owner only."""

from datetime import date
from pathlib import Path
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from safety.forms import LARGEST
from safety.models import DataSheet, SheetVersion
from safety.print.pen import Pen
from tests.world import World

pytestmark = pytest.mark.django_db


def pdf(words: str = "Hollin panel wipe") -> bytes:
    pen = Pen(210, 297, words)
    pen.text(20, 20, words, 4)
    return pen.pdf()


def owner(world: World) -> Client:
    client = Client()
    client.force_login(world.ines)
    return client


def typed(file: bytes | None, **more: Any) -> dict[str, Any]:
    fields = {
        "revision_on": "2025-03-03",
        "language": "en",
        "regime": "EU",
        "hazard_lines": "Flam. Liq. 2 H225\nEye Irrit. 2 H319",
        "statement_lines": "H225, H319 EUH066",
        "never_lines": "Brack wheel acid: heat",
        "confirm": "on",
    } | more
    if file is not None:
        fields["pdf"] = SimpleUploadedFile("../../evil.pdf", file, content_type="application/pdf")
    return fields


def attach(client: Client, sheet: DataSheet, file: bytes | None, **more: Any) -> Any:
    return client.post(reverse("safety:new_version", args=[sheet.pk]), typed(file, **more))


@pytest.mark.parametrize(
    ("file", "says"),
    [
        (None, "Attach the sheet itself"),
        (b"<html><script>alert(1)</script></html>", "This is not a PDF"),
        (b"MZ" + pdf(), "This is not a PDF"),
        (pdf()[:-60], "cut short"),
        (b"%PDF-1.4 nothing\nstartxref\n9\n%%EOF", "damaged"),
        (b"%PDF-1.4" + b"0" * LARGEST, "may have 20 MB"),
        (pdf().replace(b"/Kids", b"/Kidz"), "no page"),
        (pdf().replace(b"/FlateDecode", b"/FlatterCode"), "a page in it cannot be read"),
    ],
)
def test_a_file_that_is_no_whole_pdf_is_refused(
    world: World, sheet: DataSheet, file: bytes | None, says: str
) -> None:
    answer = attach(owner(world), sheet, file)
    assert answer.status_code == 200
    assert says in answer.content.decode()
    assert SheetVersion.objects.count() == 0


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [
        ("hazard_lines", "Flam. Liquid 2 H225", "is in the table"),
        ("statement_lines", "H999", "H999 is not in the table"),
        ("statement_lines", "flammable", "is not a code like"),
        ("never_lines", "Bleach cleaner", "lacks a colon"),
        ("revision_on", "", "This field is required"),
        ("not_classified", "on", "cannot be “not classified” too"),
        ("revision_on", "2999-01-01", "lies after the day it was confirmed"),
    ],
)
def test_what_cannot_be_understood_is_refused_and_stays_typed(
    world: World, sheet: DataSheet, field: str, value: str, says: str
) -> None:
    answer = attach(owner(world), sheet, pdf(), **{field: value})
    page = answer.content.decode()
    assert says in page
    assert "Brack wheel acid: heat" in page or field == "never_lines"
    assert SheetVersion.objects.count() == 0


def test_only_an_owner_attaches(world: World, sheet: DataSheet) -> None:
    client = Client()
    client.force_login(world.tomas)
    assert attach(client, sheet, pdf()).status_code == 403
    assert attach(Client(), sheet, pdf()).status_code == 302
    assert SheetVersion.objects.count() == 0


def test_an_owner_attaches_a_version_and_it_counts(world: World, sheet: DataSheet) -> None:
    answer = attach(owner(world), sheet, pdf())
    assert answer.status_code == 302
    kept = SheetVersion.objects.get()
    assert kept.hazards == ["Flam. Liq. 2 H225", "Eye Irrit. 2 H319"]
    assert kept.statements == ["H225", "H319", "EUH066"]
    assert kept.never_with == [{"with": "Brack wheel acid", "why": "heat"}]
    assert kept.signal_word == "Danger"
    assert kept.confirmed_by == "Ines"
    assert kept.revision_on == date(2025, 3, 3)


def test_an_uploaded_name_never_chooses_where_the_file_is_kept(world: World, sheet: DataSheet) -> None:
    attach(owner(world), sheet, pdf())
    name = SheetVersion.objects.get().pdf.name
    assert name.startswith("sheets/")
    assert "evil" not in name
    assert len(Path(name).stem) == 32


def test_a_newer_version_leaves_the_older_one_readable(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf("the old words"))
    attach(client, sheet, pdf("the new words"), revision_on="2026-03-03")
    old, new = SheetVersion.objects.order_by("revision_on")
    page = client.get(reverse("safety:sheet", args=[sheet.pk])).content.decode()
    assert page.index("3 March 2026") < page.index("3 March 2025")
    read = client.get(reverse("safety:sheet_pdf", args=[sheet.pk]), {"version": old.pk})
    assert b"".join(read.streaming_content) == pdf("the old words")
    now = client.get(reverse("safety:sheet_pdf", args=[sheet.pk]))
    assert b"".join(now.streaming_content) == pdf("the new words")
    assert new.confirmed


def test_a_file_is_handed_out_as_what_it_is(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf())
    answer = client.get(reverse("safety:sheet_pdf", args=[sheet.pk]))
    assert answer["Content-Type"] == "application/pdf"
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert "Orlo%20Supply%20Hollin%20panel%20wipe%202025-03-03.pdf" in answer["Content-Disposition"]
    assert answer["Content-Security-Policy"].startswith("script-src 'none'")


def test_a_sheet_without_a_file_has_none_to_hand_out(world: World, sheet: DataSheet) -> None:
    assert owner(world).get(reverse("safety:sheet_pdf", args=[sheet.pk])).status_code == 404


def test_a_file_lost_from_the_disk_is_not_found_and_breaks_nothing(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf())
    Path(SheetVersion.objects.get().pdf.path).unlink()
    assert client.get(reverse("safety:sheet_pdf", args=[sheet.pk])).status_code == 404
    assert client.get(reverse("safety:sheet", args=[sheet.pk])).status_code == 200


@pytest.mark.parametrize("name", ["sheets", "sheet", "sheet_pdf"])
def test_sheets_are_read_without_login_in_the_shop_and_nowhere_else(
    world: World, sheet: DataSheet, name: str
) -> None:
    attach(owner(world), sheet, pdf())
    where = reverse(f"safety:{name}", args=[] if name == "sheets" else [sheet.pk])
    assert Client(REMOTE_ADDR="192.168.1.20").get(where).status_code == 200
    assert Client(REMOTE_ADDR="203.0.113.9").get(where).status_code == 302
    forged = Client(REMOTE_ADDR="203.0.113.9", HTTP_X_FORWARDED_FOR="192.168.1.20").get(where)
    assert forged.status_code == 302


def test_a_sheet_says_its_hazards_first_aid_and_what_is_missing(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), aid_eyes="Rinse at least 15 minutes")
    page = client.get(reverse("safety:sheet", args=[sheet.pk])).content.decode()
    assert 'alt="flame"' in page
    assert "H225 Highly flammable liquid and vapour." in page
    assert "EUH066 Repeated exposure may cause skin dryness or cracking." in page
    assert "Rinse at least 15 minutes" in page
    assert "first aid for the skin" in page
    assert "The product’s own label and data sheet" in page


def test_an_unconfirmed_version_is_shown_with_a_warning_and_confirmed_by_an_owner(
    world: World, sheet: DataSheet
) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), confirm="")
    where = reverse("safety:sheet", args=[sheet.pk])
    assert "Nobody has compared these fields" in client.get(where).content.decode()
    kept = SheetVersion.objects.get()
    answer = client.post(reverse("safety:confirm", args=[sheet.pk, kept.pk]), follow=True)
    assert "labels and posters use this version now" in answer.content.decode()
    kept.refresh_from_db()
    assert kept.confirmed_by == "Ines"


def test_the_list_filters_old_and_waiting(world: World, sheet: DataSheet) -> None:
    client = owner(world)
    attach(client, sheet, pdf(), revision_on="2019-01-01")
    other = DataSheet.objects.create(supplier="Orlo Supply", title="Stott rinse")
    attach(client, other, pdf(), confirm="")
    old = client.get(reverse("safety:sheets"), {"only": "old"}).content.decode()
    assert "Hollin panel wipe" in old
    assert "Stott rinse" not in old
    waiting = client.get(reverse("safety:sheets"), {"only": "waiting"}).content.decode()
    assert "Stott rinse" in waiting
    assert "Hollin panel wipe" not in waiting


def test_the_list_asks_a_constant_number_of_queries(world: World, django_assert_max_num_queries: Any) -> None:
    for number in range(12):
        one = DataSheet.objects.create(supplier="Orlo Supply", title=f"Wipe {number}")
        SheetVersion.objects.create(sheet=one, revision_on=date(2025, 3, 3), typed_on=date(2025, 4, 1))
    with django_assert_max_num_queries(8):
        Client(REMOTE_ADDR="192.168.1.20").get(reverse("safety:sheets"))


def test_adding_a_sheet_goes_on_to_its_file(world: World) -> None:
    answer = owner(world).post(
        reverse("safety:new_sheet"), {"supplier": "Orlo Supply", "title": "Tidewall coating"}
    )
    made = DataSheet.objects.get(title="Tidewall coating")
    assert answer["Location"] == reverse("safety:new_version", args=[made.pk])


def test_a_pictogram_is_a_picture_and_an_unknown_one_is_not_found(world: World) -> None:
    client = Client(REMOTE_ADDR="192.168.1.20")
    answer = client.get(reverse("safety:pictogram", args=["GHS07"]))
    assert answer["Content-Type"] == "image/svg+xml"
    assert b"<svg" in answer.content
    assert client.get(reverse("safety:pictogram", args=["GHS10"])).status_code == 404
