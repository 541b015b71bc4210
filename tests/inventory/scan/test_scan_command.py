"""The command `scan`: a line in, a JSON line out, nothing else on standard output."""

import io
import json
from typing import Any

import pytest
from django.core.management import CommandError, call_command

from inventory.models import Station
from tests.inventory.scan.desk import content
from tests.world import GRAM, bottle, larkmoor, marl

pytestmark = pytest.mark.django_db


def scan(monkeypatch: pytest.MonkeyPatch, *lines: str, **options: Any) -> tuple[list[dict[str, Any]], str]:
    """Return the JSON lines and what standard error said."""
    monkeypatch.setattr("sys.stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
    out, err = io.StringIO(), io.StringIO()
    try:
        call_command("scan", json=True, stdout=out, stderr=err, **options)
        status = 0
    except CommandError as refused:
        status = refused.returncode
    said = [json.loads(line) for line in out.getvalue().splitlines()]
    # An error is the last thing said, and the exit status says the same.
    assert status == (2 if said and "error" in said[-1] else 0)
    return said, err.getvalue()


def test_a_key_used_for_another_line_is_an_error_and_exit_status_2(monkeypatch: pytest.MonkeyPatch) -> None:
    world = larkmoor()
    said, _ = scan(monkeypatch, f"a\t{world.tomas.code}", "a\tUNDO")
    assert said[-1] == {
        "error": "The key a was used for another line already. Send this one under a new key."
    }


def test_a_station_that_is_not_there_is_refused_before_anything_is_heard(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    larkmoor()
    said, _ = scan(monkeypatch, "UNDO", station="Nowhere")
    assert said == [{"error": "--station Nowhere: no station of Larkmoor Works has this code or name."}]
    assert not Station.objects.exists()


def test_several_shops_must_be_named(monkeypatch: pytest.MonkeyPatch) -> None:
    larkmoor(), larkmoor("hollow-lane")
    said, _ = scan(monkeypatch, "UNDO")
    assert said == [{"error": "--shop: there are several shops, name one."}]
    assert scan(monkeypatch, "UNDO", shop="hollow-lane")[0][0]["grade"] == "ask"


def test_each_line_is_answered_by_a_line(monkeypatch: pytest.MonkeyPatch) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    said, _ = scan(monkeypatch, f"a\t{world.tomas.code}", f"b\t{compound.code}", "c\t60 g", "", "d\t12xyz!")
    assert [(one["scan"], one["grade"], one["key"]) for one in said] == [
        (world.tomas.code, "recorded", "a"),
        (compound.code, "recorded", "b"),
        ("60 g", "recorded", "c"),
        ("12xyz!", "unknown", "d"),
    ]
    assert [entry["kind"] for entry in said[2]["movements"]] == ["open", "use"]
    assert said[2]["says"] == f"Marl cutting compound {compound.code[:4]}: took 60 g, 90 g left."
    assert content(compound) == 90 * GRAM


def test_running_the_same_lines_again_records_nothing_twice(monkeypatch: pytest.MonkeyPatch) -> None:
    world = larkmoor()
    compound = bottle(world, marl(world), 150 * GRAM)
    lines = [f"a\t{world.tomas.code}", f"b\t{compound.code}", "c\t60 g"]
    first, _ = scan(monkeypatch, *lines)
    assert scan(monkeypatch, *lines)[0] == first
    assert content(compound) == 90 * GRAM


def test_keys_are_made_where_none_came_and_that_is_said_beside_the_answers(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    world = larkmoor()
    said, beside = scan(monkeypatch, world.tomas.code, "UNDO")
    assert beside.strip() == "Lines without a key get a new one each; it stands in the answer."
    assert len({one["key"] for one in said}) == 2


def test_a_group_separator_may_be_written_out(monkeypatch: pytest.MonkeyPatch) -> None:
    world = larkmoor()
    said, _ = scan(monkeypatch, world.tomas.code, "010400638133393110AB-1^]17271231")
    assert said[-1]["says"] == "No product here has the number 4006381333931. It is set aside."
