"""`bench` runs, counts queries and fills a ledger that verifies; only a quiet machine can say how fast."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
import pytest
from django.core.management import CommandError, call_command

from inventory.management.bench import bare, drawing
from inventory.management.bench.filling import Filler
from inventory.management.bench.ground import lay
from inventory.management.bench.mixtures import SEED, drawn
from inventory.management.bench.scanning import Station
from inventory.models import Container, Head, Movement
from inventory.stock.audit import audit
from safety.hazards.classes import read_hazard
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import classify
from tests.safety.print.paper import pages, picture, text

ROOT = Path(__file__).parents[2]


@pytest.mark.django_db
def test_the_long_ledger_is_a_true_one() -> None:
    ground = lay(3)
    Filler(ground, 2_000).up_to(1_502, lambda lines: None)
    assert Head.objects.get().seq == Movement.objects.count() == 1_502
    assert list(audit()) == []
    assert Container.objects.filter(state="open").count() == 51, "fifty stay on the shelf, and the drum"


@pytest.mark.django_db
def test_a_scan_costs_as_many_queries_behind_a_longer_ledger() -> None:
    ground = lay(15)
    filler = Filler(ground, 2_000)
    counted = []
    for lines in (1_002, 1_602):
        filler.head.refresh_from_db()
        filler.up_to(lines, lambda written: None)
        station = Station(ground)
        station.whole(ground.person.code)
        station.whole(ground.drum.code)
        counted.append(bare.queries_of(lambda station=station: station.view("5 ml")))  # type: ignore[misc]
    assert counted[0] == counted[1] <= 20


def test_the_drawn_mixtures_are_the_same_at_every_run_and_find_every_kind_of_class() -> None:
    assert drawn(Random(SEED)) == drawn(Random(SEED))
    draw = Random(SEED)
    documents = [drawn(draw) for _ in range(100)]
    assert all(len(document["ingredients"]) == 12 for document in documents)
    found = {
        read_hazard(text).of.name
        for document in documents
        for text in classify(read_mixture(document), "EU").hazards
    }
    assert {"Flam. Liq.", "Aerosol", "Acute Tox.", "Skin Corr.", "Carc.", "STOT SE", "Aquatic Acute"} < found
    assert {"Resp. Sens.", "Asp. Tox.", "Aquatic Chronic", "STOT RE", "Skin Sens."} < found


@pytest.mark.parametrize("make", [drawing.poster, drawing.sheet])
def test_the_bare_canvas_draws_the_same_page(make: Callable[[], bytes]) -> None:
    ours, bare = make(), drawing.replay(drawing.strokes_of(make))
    assert (pages(bare), text(bare)) == (pages(ours), text(ours))
    assert np.array_equal(picture(bare), picture(ours)), "pixel for pixel"


def benched(folder: Path, *only: str) -> tuple[dict[str, Any], dict[str, dict[str, Any]]]:
    """Run the quick `bench` on a database of its own; return its document, and its figures by name."""
    url = os.environ.get("DATABASE_URL", "")
    own = {"CAPDATE_DIR": str(folder), "DATABASE_URL": f"{url}_{os.getpid()}" if "postgres" in url else ""}
    ran = subprocess.run(
        [sys.executable, "manage.py", "bench", "--quick", "--json", *only],
        cwd=ROOT, env=os.environ | own, capture_output=True, text=True, check=True,
    )  # fmt: skip
    document = json.loads(ran.stdout)
    return document, {figure["name"]: figure for figure in document["figures"]}


def test_a_part_that_is_none_is_refused_before_anything_is_made() -> None:
    with pytest.raises(CommandError, match="invalid choice: 'everything'"):
        call_command("bench", "--only", "everything")


@pytest.mark.engine
def test_parts_are_measured_alone(tmp_path: Path) -> None:
    _, figures = benched(tmp_path, "--only", "mixtures", "--only", "checking")
    assert list(figures) == [
        "check of a job of 15 steps",
        "whole check: 15 steps, 8 surfaces, 25 products, 10 other cars",
        "whole check: loading the same facts",
        "whole check to loading the same facts",
        "whole check: queries, as many for twice the steps and cars",
        "a year of 12 jobs checked anew",
        "classify 60 mixtures of 12 ingredients: reading, each",
        "classify 60 mixtures of 12 ingredients: classifying, each",
        "classify 60 mixtures of 12 ingredients: both, all of them",
    ]
    assert not list(tmp_path.glob("bench.sqlite3*")), "the database it made is gone"


@pytest.mark.engine
def test_bench_prints_one_document_with_every_figure(tmp_path: Path) -> None:
    document, figures = benched(tmp_path)
    assert document["engine"] == (
        "postgresql" if "postgres" in os.environ.get("DATABASE_URL", "") else "sqlite"
    )
    assert figures["scan-out, long ledger to short"]["aim"] == "≤ 1.2"
    assert figures["scan-out behind 2 000 lines: queries"]["value"] <= 20
    assert [name.split(" ")[0] for name in figures][-18:-9] == [
        "check", "whole", "whole", "whole", "whole", "a", "reorder", "import", "import",
    ]  # fmt: skip
    # Beside 38: what the ledger says was used, what products cut, and what covers the whole car.
    assert figures["whole check: queries, as many for twice the steps and cars"]["value"] <= 42
    assert figures["a year of 12 jobs checked anew"]["unit"] == "s"
    assert figures["classify 60 mixtures of 12 ingredients: classifying, each"]["unit"] == "µs"
    assert figures["poster of 25 products: ours to the bare canvas"]["value"] > 0
    assert figures["sheet of 24 labels: ours to the bare canvas"]["unit"] == "times"
    assert not list(tmp_path.glob("bench.sqlite3*")), "the database it made is gone"
