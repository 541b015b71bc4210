"""`air` and `weather` at a prompt: one JSON document, sentences for people, a refusal with its place."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

ROOT = Path(__file__).parents[2]
TASK: dict[str, Any] = {
    "place": {"volume_m3": 100, "air_m3_h": 600, "mixing_k": 1},
    "minutes": 60,
    "regime": "US",
    "emissions": [{"name": "isopropanol", "cas": "67-63-0", "grams": 785}],
}


def air(tmp_path: Path, document: object, *words: str) -> str:
    file, out = tmp_path / "task.json", io.StringIO()
    file.write_text(json.dumps(document), encoding="utf-8")
    call_command("air", str(file), *words, stdout=out)
    return out.getvalue()


def weather(*words: str) -> str:
    out = io.StringIO()
    call_command("weather", *words, stdout=out)
    return out.getvalue()


@pytest.mark.parametrize(
    ("document", "sentence"),
    [
        ({}, "The task: “emissions” is missing; a list was expected."),
        (TASK | {"regime": "FR"}, "The task, regime: one of US, EU, UK was expected, not “FR”."),
    ],
)
def test_a_bad_task_is_refused_by_its_place(tmp_path: Path, document: object, sentence: str) -> None:
    with pytest.raises(CommandError) as ended:
        air(tmp_path, document)
    assert (str(ended.value), ended.value.returncode) == (sentence, 2)


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["--air", "20", "--humidity", "120"], "humidity: a number from 1 to 100 % was expected, not 120."),
        (["--air", "20"], "The following arguments are required: --humidity."),
        (["--air", "warm", "--humidity", "5"], "Argument --air: invalid float value: 'warm'."),
    ],
)
def test_a_bad_reading_is_refused_by_its_place(words: list[str], sentence: str) -> None:
    with pytest.raises(CommandError) as ended:
        weather(*words)
    assert (str(ended.value).startswith(sentence), ended.value.returncode) == (True, 2)


def test_a_tasks_air_is_one_json_document(tmp_path: Path) -> None:
    """By hand: 530.9 ppm in the room, 1 192.9 at the nose, 798 m³/h for the room, none for the nose."""
    document = json.loads(air(tmp_path, TASK, "--json"))
    [one], findings = document.pop("contaminants"), document.pop("findings")
    assert [(each["code"], each["grade"]) for each in findings] == [
        ("air.exposure", "stop"),
        ("air.respirator", "tell"),
        ("air.no_flow_is_enough", "tell"),
        ("air.ignition", "tell"),
    ]
    assert document == {
        "index": pytest.approx(2.982, abs=0.001),
        "lel_percent": pytest.approx(2.65, abs=0.01),
        "needed_m3_h": pytest.approx(798, abs=0.5),
        "needed_m3_h_breathing_zone": None,
        "clear_after_min": pytest.approx(25.86, abs=0.01),
    }
    assert one == {
        "name": "isopropanol",
        "cas": "67-63-0",
        "room_ppm": pytest.approx(530.9, abs=0.1),
        "breathing_zone_ppm": pytest.approx(1192.9, abs=0.2),
        "limit_ppm": 400,
        "room_mg_m3": pytest.approx(1305.1, abs=0.1),
        "breathing_zone_mg_m3": pytest.approx(2931.9, abs=0.1),
        "limit_mg_m3": 980,
        "limit_from": "OSHA PEL",
        "mark": "S",
    }


def test_a_person_reads_the_findings_then_the_figures_then_what_they_are_worth(tmp_path: Path) -> None:
    lines = air(tmp_path, TASK).splitlines()
    assert lines[0] == (
        "STOP: Who works here breathes 238 % of the 15-minute limit (isopropanol). Change the plan: "
        "less product, local exhaust with the air measured under it or an air-fed mask; then ask "
        "again."
    )
    assert lines[-7:] == [
        "isopropanol: room 531 ppm / 1305 mg/m³, breathing zone 1193 ppm / 2932 mg/m³, "
        "limit 400 ppm / 980 mg/m³ (OSHA PEL, read)",
        "All of them together, parts of the 8-hour limits: 2.98",
        "Lower explosive limit, room average: 2.65 %",
        "Air flow needed for the room average: 798 m³/h",
        "Air flow needed for the breathing zone: no figure; both must be met",
        "Clear after the end: 25.9 min",
        "Screening arithmetic for a workshop: it never replaces a competent person's assessment. The "
        "product's own label and data sheet, local codes and licensed practice come first.",
    ]


def test_what_is_from_memory_or_has_no_limit_says_so(tmp_path: Path) -> None:
    emissions = [
        {"name": "ammonia", "cas": "7664-41-7", "grams": 1},
        {"name": "isopropanol", "cas": "67-63-0"},
    ]
    text = air(tmp_path, TASK | {"regime": "EU", "emissions": emissions})
    assert "limit 20 ppm / 14 mg/m³ (EU IOELV, from memory: check it)\n" in text
    assert "isopropanol: room no figure / no figure" in text
    assert "limit no figure / no figure (none found)\n" in text


def test_a_reading_is_one_json_document() -> None:
    """20 °C and 50 %: 9.26 °C by the Magnus formula."""
    assert json.loads(weather("--air", "20", "--humidity", "50", "--panel", "18", "--json")) == {
        "dew_point_c": pytest.approx(9.26, abs=0.005),
        "margin_c": pytest.approx(8.74, abs=0.005),
        "findings": [],
    }
    document = json.loads(weather("--air", "20", "--humidity", "50", "--json"))
    assert document["margin_c"] is None
    assert [list(one) for one in document["findings"]] == [
        ["code", "grade", "says", "because", "do", "source", "about"]
    ]


def test_a_person_reads_dew_point_margin_and_the_wait() -> None:
    lines = weather("--air", "20", "--humidity", "83", "--panel=18").splitlines()
    assert lines[:3] == [
        "Dew point 17.0 °C",
        "Panel 1.0 K above the dew point",
        "STOP: The panel is 1.0 K above the dew point; at least 3 K above is wanted. Wait until the panel is "
        "at least 20.0 °C, or until humidity is down to 73 % at this air.",
    ]
    assert weather("--air", "20", "--humidity", "50").splitlines()[1] == "Panel not measured"
    assert weather("--air", "20", "--humidity", "90", "--panel", "17").splitlines()[1] == (
        "Panel 1.3 K below the dew point"
    )


def shell(text: str, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "django", *words, "--json", "--settings", "inventory.project.settings"],
        input=text, capture_output=True, text=True, cwd=ROOT, check=False,
        env=os.environ | {"PYTHONPATH": str(ROOT), "DATABASE_URL": "postgres://nobody@127.0.0.1:1/nowhere"},
    )  # fmt: skip


@pytest.mark.parametrize(
    ("words", "text", "status", "key"),
    [
        (["air"], json.dumps(TASK), 0, "contaminants"),
        (["air"], '{"minutes": NaN}', 2, "error"),
        (["air"], "", 2, "error"),
        (["weather", "--air", "-3", "--humidity", "40"], "", 0, "dew_point_c"),
        (["weather", "--air", "20", "--humidity", "0"], "", 2, "error"),
        (["weather"], "", 2, "error"),
    ],
)
def test_standard_output_is_one_line_of_json_where_no_database_answers(
    words: list[str], text: str, status: int, key: str
) -> None:
    ran = shell(text, *words)
    assert (ran.returncode, len(ran.stdout.splitlines())) == (status, 1), ran.stderr
    assert key in json.loads(ran.stdout)
