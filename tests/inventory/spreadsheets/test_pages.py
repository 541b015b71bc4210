"""The pages: who is refused, what is shown, that a file waits for one person and one hour only."""

from datetime import timedelta
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from inventory.models import Supplier
from inventory.spreadsheets import actions
from inventory.spreadsheets.rules.table import Bounds, Unreadable
from inventory.spreadsheets.sheets import read_table
from tests import world as cast
from tests.world import NOON

from .shop import stocked

pytestmark = pytest.mark.django_db
HOME = "/spreadsheets/"


def upload(client, kind: str, data: bytes, name: str = "list.csv"):
    """Post a file and follow to its preview."""
    file = SimpleUploadedFile(name, data)
    return client.post(HOME, {"kind": kind, "file": file}, follow=True)


def confirm(client, page):
    """Press the main button of a preview."""
    file, seen = page.context["file"], page.context["seen"]
    return client.post(reverse("spreadsheets:bring", args=[file.token]), {"seen": seen}, follow=True)


def text(page) -> str:
    """Return a page's words without the space between them."""
    return " ".join(page.content.decode().split())


@pytest.mark.parametrize("who", ["tomas", "wren"])
def test_only_an_owner_takes_out_or_brings_in(client, who) -> None:
    world = cast.larkmoor()
    client.force_login(getattr(world, who))
    assert client.get(HOME).status_code == 403
    assert client.get(reverse("spreadsheets:download", args=["suppliers", "csv"])).status_code == 403
    assert upload(client, "suppliers", b"name\nFell\n").status_code == 403
    assert Supplier.objects.count() == 1


def test_a_refused_file_is_said_at_its_field_and_not_kept(client, settings) -> None:
    client.force_login(cast.larkmoor().ines)
    assert "Column “colour” is not one of the columns for suppliers" in text(
        upload(client, "suppliers", b"colour\nred\n")
    )
    assert "larger than 8 MB" in text(upload(client, "suppliers", b"x" * (Bounds().bytes + 1)))
    assert list(Path(settings.MEDIA_ROOT).rglob("*.data")) == []


def test_a_preview_with_problems_shows_them_first_and_has_no_button_to_bring_it_in(client) -> None:
    client.force_login(cast.larkmoor().ines)
    page = upload(client, "suppliers", b"name;lead time (days)\nFell;3\nOther;soon\n")
    assert page.context["says"] == "1 row of 2 cannot be taken, so nothing comes in yet."
    assert [row.row for row in page.context["page"]] == [3, 2]
    assert "Row 3, column “lead time (days)”: “soon” is no whole number." in text(page)
    assert " in</button>" not in text(page)


def test_a_file_is_looked_at_and_brought_in(client) -> None:
    client.force_login(cast.larkmoor().ines)
    page = upload(client, "suppliers", b"name,lead time (days)\nFell,3\nOrlo Supply,6\n")
    assert "2 rows: 1 new, 1 unchanged." in text(page)
    assert "Bring this row in" in text(page)
    assert Supplier.objects.count() == 1, "nothing is written by looking"
    assert "Suppliers: 1 new and 0 changed rows are in." in text(confirm(client, page))
    assert Supplier.objects.get(name="Fell").lead_days == 3


def test_what_changed_in_between_is_said_and_shown_anew(client) -> None:
    client.force_login(cast.larkmoor().ines)
    page = upload(client, "suppliers", b"name,lead time (days)\nOrlo Supply,9\n")
    Supplier.objects.update(lead_days=7)
    again = confirm(client, page)
    assert "Something changed here since you looked." in text(again)
    assert "<del>7</del> → <ins>9</ins>" in text(again)
    assert "0 new and 1 changed" in text(confirm(client, again))


def test_another_person_does_not_see_the_file(client) -> None:
    world = cast.larkmoor()
    other = cast.person(world.shop, "Bela", "owner")
    client.force_login(world.ines)
    page = upload(client, "suppliers", b"name\nFell\n")
    client.force_login(other)
    assert "This file is not kept any more" in text(confirm(client, page))
    assert Supplier.objects.count() == 1


def test_a_kept_file_is_forgotten_after_an_hour_or_at_once(client, settings) -> None:
    world = cast.larkmoor()
    file = actions.keep(world.ines, "suppliers", "../../list.csv", b"name\nFell\n", NOON)
    kept = list(Path(settings.MEDIA_ROOT).rglob("*.data"))
    assert [path.parent.name for path in kept] == [world.ines.code], "a name from outside is no path"
    assert actions.kept(world.ines, file.token, NOON + timedelta(minutes=59)).data == b"name\nFell\n"
    with pytest.raises(Unreadable):
        actions.kept(world.ines, file.token, NOON + timedelta(minutes=61))
    assert list(Path(settings.MEDIA_ROOT).rglob("*.data")) == []


def test_a_kept_file_that_was_touched_is_refused(settings) -> None:
    world = cast.larkmoor()
    file = actions.keep(world.ines, "suppliers", "list.csv", b"name\nFell\n", NOON)
    next(Path(settings.MEDIA_ROOT).rglob("*.data")).write_bytes(b"name\nOther\n")
    with pytest.raises(Unreadable, match="not what was uploaded"):
        actions.kept(world.ines, file.token, NOON)


@pytest.mark.parametrize("token", ["../../secret_key", "x" * 32, ""])
def test_a_token_is_no_path(token) -> None:
    with pytest.raises(Unreadable):
        actions.kept(cast.larkmoor().ines, token, NOON)


@pytest.mark.parametrize(("form", "starts"), [("csv", b"\xef\xbb\xbf"), ("xlsx", b"PK")])
@pytest.mark.parametrize("kind", ["suppliers", "products", "packs", "stock"])
def test_every_kind_is_downloaded_as_a_file(client, kind, form, starts) -> None:
    client.force_login(stocked().ines)
    answer = client.get(reverse("spreadsheets:download", args=[kind, form]))
    assert (answer.status_code, answer.content.startswith(starts)) == (200, True)
    assert answer["Content-Disposition"].startswith(f'attachment; filename="{kind}-')
    assert len(read_table(answer.content).rows) >= 1


def test_there_is_no_other_kind(client) -> None:
    client.force_login(cast.larkmoor().ines)
    assert client.get("/spreadsheets/out/people.csv").status_code == 404
    assert client.get("/spreadsheets/out/products.pdf").status_code == 404
