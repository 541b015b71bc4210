"""`poster`: the sheets as a file, one JSON document, nothing half-written."""

import io
import json
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command

from inventory.management import written
from inventory.models import PosterIssue
from tests.inventory.posters.wall import SITE, wiped_bay
from tests.safety.print.paper import codes, size_mm
from tests.world import World, larkmoor

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    found = larkmoor()
    wiped_bay(found)
    return found


def poster(*words: Any) -> str:
    out = io.StringIO()
    call_command("poster", *map(str, words), stdout=out)
    return out.getvalue()


def refused(*words: Any) -> str:
    out = io.StringIO()
    with pytest.raises(CommandError) as refusal:
        call_command("poster", *map(str, words), "--json", stdout=out)
    assert refusal.value.returncode == 2
    document = json.loads(out.getvalue())
    assert list(document) == ["error"]
    return str(document["error"])


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["Bay 9"], "PLACE “Bay 9”: a place's code or name was expected."),
        (["Bay 1"], "Bay 1 admits no product yet. Admit what is used there, then print its poster."),
        (["Bay 2", "--paper", "B5"], "B5"),
        (["Bay 2", "--read-at", "40"], "A poster is read from 0.5 to 10 m, not from 40 m."),
    ],
)
def test_what_cannot_be_printed_is_refused_and_nothing_is_kept(
    world: World, tmp_path: Path, words: list[str], says: str
) -> None:
    file = tmp_path / "bay.pdf"
    file.write_text("the one that hangs")
    assert says in refused(*words, "--out", file)
    assert (PosterIssue.objects.count(), file.read_text()) == (0, "the one that hangs")


def test_a_name_in_two_shops_asks_for_the_code(world: World, tmp_path: Path) -> None:
    larkmoor("next-door")
    assert "several places are called so, their code was expected" in refused(
        "Bay 2", "--out", tmp_path / "a.pdf"
    )


def test_a_file_that_cannot_be_written_makes_no_version(world: World, tmp_path: Path) -> None:
    says = refused("Bay 2", "--out", tmp_path / "no" / "such" / "folder.pdf")
    assert ("a file that can be written was expected" in says, PosterIssue.objects.count()) == (True, 0)


def test_a_write_that_breaks_leaves_the_old_file_and_no_half_one(
    world: World, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> None:
        raise OSError(28, "No space left on device")

    file = tmp_path / "bay.pdf"
    file.write_text("the one that hangs")
    monkeypatch.setattr(written.os, "fsync", broken)
    assert "No space left on device" in refused("Bay 2", "--out", file)
    assert [(one.name, one.read_text()) for one in tmp_path.iterdir()] == [("bay.pdf", "the one that hangs")]
    assert PosterIssue.objects.count() == 0


def test_json_is_one_document_that_says_what_is_on_it(world: World, tmp_path: Path) -> None:
    file = tmp_path / "bay.pdf"
    said = json.loads(
        poster(world.bay_2.code.lower(), "--out", file, "--paper", "A4", "--read-at", "1.5", "--json")
    )
    assert {key: said[key] for key in ("code", "place", "paper", "version", "read_at_m", "file")} == {
        "code": world.bay_2.code,
        "place": "Bay 2",
        "paper": "A4",
        "version": 1,
        "read_at_m": 1.5,
        "file": str(file),
    }
    assert [(one["name"], one["signal_word"]) for one in said["products"]] == [
        ("Hollin panel wipe", "Danger")
    ]
    pdf = file.read_bytes()
    assert codes(pdf) == [f"{SITE}/posters/{world.bay_2.code}/"]
    assert size_mm(pdf) == pytest.approx((210, 297), abs=0.1)


def test_a_person_reads_one_sentence(world: World, tmp_path: Path) -> None:
    file = tmp_path / "bay.pdf"
    assert poster("bay 2", "--out", file) == f"Bay 2, version 1: 1 product, written to {file}.\n"


def test_a_code_that_no_phone_can_open_is_said(world: World, tmp_path: Path) -> None:
    world.shop.site_url = ""
    world.shop.save()
    says = poster("Bay 2", "--out", tmp_path / "bay.pdf")
    assert "which no phone can: set the site's address in Settings." in says
