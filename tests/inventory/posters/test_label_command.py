"""`label`: one label as a file, one JSON document; without the file it does not count as printed."""

import io
import json
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command

from inventory.models import Container
from inventory.stock.rules.acts import Act
from tests.inventory.posters.wall import sheet
from tests.safety.print.paper import codes, size_mm, text
from tests.world import LITRE, NOON, World, bottle, hollin, record

pytestmark = pytest.mark.django_db


@pytest.fixture
def row(world: World) -> Container:
    wipe = hollin(world)
    sheet(wipe)
    return bottle(world, wipe, LITRE, lot="HO-2405")


def label(*words: Any) -> str:
    out = io.StringIO()
    call_command("label", *map(str, words), stdout=out)
    return out.getvalue()


def refused(*words: Any) -> str:
    out = io.StringIO()
    with pytest.raises(CommandError) as refusal:
        call_command("label", *map(str, words), "--json", stdout=out)
    assert refusal.value.returncode == 2
    return str(json.loads(out.getvalue())["error"])


@pytest.mark.parametrize("code", ["BXXXXXXX", "hello", ""])
def test_a_code_of_no_bottle_is_refused_by_name(world: World, tmp_path: Path, code: str) -> None:
    says = refused(code, "--out", tmp_path / "label.pdf")
    assert says == f"CONTAINER “{code}”: the code of a bottle on the shelf was expected."
    assert list(tmp_path.iterdir()) == []


def test_a_bottle_that_is_gone_is_refused(world: World, row: Container, tmp_path: Path) -> None:
    record(world, Act("discard", NOON, source=row.code))
    assert "a bottle on the shelf was expected" in refused(row.code, "--out", tmp_path / "label.pdf")


@pytest.mark.parametrize(
    ("size", "says"),
    [
        ("huge", "“huge” is not one of small, medium, tall, large, wide, extra, drum."),
        ("small", "take medium (70 × 37 mm)"),
    ],
)
def test_a_size_that_does_not_do_is_refused_and_nothing_is_marked(
    world: World, row: Container, tmp_path: Path, size: str, says: str
) -> None:
    row.product.name = "Hollin long slow-drying panel wipe for fresh and for cured finishes, clear"  # type: ignore[union-attr]
    row.product.save()  # type: ignore[union-attr]
    assert says in refused(row.code, "--out", tmp_path / "label.pdf", "--size", size)
    row.refresh_from_db()
    assert (row.labelled_at, list(tmp_path.iterdir())) == (None, [])


def test_a_file_that_cannot_be_written_marks_nothing(row: Container, tmp_path: Path) -> None:
    assert "a file that can be written was expected" in refused(
        row.code, "--out", tmp_path / "no" / "label.pdf"
    )
    row.refresh_from_db()
    assert row.labelled_at is None


def test_json_is_one_document_and_the_paper_reads_back(row: Container, tmp_path: Path) -> None:
    file = tmp_path / "label.pdf"
    spoken = f"{row.code[:4]} {row.code[4:].lower()}"  # as it is read aloud off a label
    said = json.loads(label(spoken, "--out", file, "--json"))
    assert (said["container"], said["file"], said["size"]) == (row.code, str(file), "medium")
    assert said["why"] == "medium (70 × 37 mm)."
    assert (said["labels"][0]["form"], said["labels"][0]["facts"]) == ("maker", ["lot HO-2405"])
    pdf = file.read_bytes()
    assert (codes(pdf), size_mm(pdf)) == ([row.code], (70.0, 37.0))
    assert "Hollin panel wipe" in text(pdf)
    row.refresh_from_db()
    assert row.labelled_at is not None


def test_a_person_reads_one_sentence(row: Container, tmp_path: Path) -> None:
    file = tmp_path / "label.pdf"
    assert (
        label(row.code, "--out", file)
        == f"The label of {row.code[:4]} {row.code[4:]} is in {file}. medium (70 × 37 mm).\n"
    )


def test_a_form_and_a_language_are_taken_as_asked(row: Container, tmp_path: Path) -> None:
    file = tmp_path / "label.pdf"
    asked = ("--form", "secondary", "--language", "es", "--paper", "A4", "--json")
    said = json.loads(label(row.code, "--out", file, *asked))
    only = said["labels"][0]
    assert (only["form"], only["language"], only["signal_word"]) == ("secondary", "es", "Peligro")
    # Spanish wording: CLP Annex III, Spanish edition, as in the table.
    assert only["statements"] == ["Líquido y vapores muy inflamables.", "Provoca irritación ocular grave."]
    assert (said["paper"], said["size"]) == ("A4", "tall"), "1 l asks for 52 × 74 mm"
    assert "Líquido y vapores muy inflamables." in text(file.read_bytes())


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (
            ("--form", "sticker"),
            "The form “sticker” is not there; under the rules of EU there are maker, second",
        ),
        (("--form", "us_workplace"), "The form “us_workplace” is for US only"),
        (("--form", "small"), "It holds 1000 ml; the small form ends at 125 ml in EU. Take the full one."),
        (("--language", "xx"), "“xx” is not one of en, es."),
        (("--paper", "A5"), "“A5” is not one of A4, A3, Letter, Tabloid."),
    ],
)
def test_a_form_language_or_paper_that_is_not_there_is_refused(
    row: Container, tmp_path: Path, asked: tuple[str, ...], says: str
) -> None:
    assert says in refused(row.code, "--out", tmp_path / "label.pdf", *asked)
    assert list(tmp_path.iterdir()) == []
