"""`bench` runs, counts queries and fills a ledger that verifies; only a quiet machine can say how fast."""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from random import Random

import numpy as np
import pytest

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


@pytest.mark.engine
def test_bench_prints_one_document_with_every_figure(tmp_path: Path) -> None:
    url = os.environ.get("DATABASE_URL", "")
    own = {"CAPDATE_DIR": str(tmp_path), "DATABASE_URL": f"{url}_{os.getpid()}" if "postgres" in url else ""}
    ran = subprocess.run(
        [sys.executable, "manage.py", "bench", "--quick", "--json"],
        cwd=ROOT, env=os.environ | own, capture_output=True, text=True, check=True,
    )  # fmt: skip
    document = json.loads(ran.stdout)
    figures = {figure["name"]: figure for figure in document["figures"]}
    assert document["engine"] == ("postgresql" if own["DATABASE_URL"] else "sqlite")
    assert figures["scan-out, long ledger to short"]["aim"] == "≤ 1.2"
    assert figures["scan-out behind 2 000 lines: queries"]["value"] <= 20
    assert [name.split(" ")[0] for name in figures][-18:-9] == [
        "check", "whole", "whole", "whole", "whole", "a", "reorder", "import", "import",
    ]  # fmt: skip
    assert figures["whole check: queries, as many for twice the steps and cars"]["value"] <= 40
    assert figures["a year of 12 jobs checked anew"]["unit"] == "s"
    assert figures["classify 60 mixtures of 12 ingredients: classifying, each"]["unit"] == "µs"
    assert figures["poster of 25 products: ours to the bare canvas"]["value"] > 0
    assert figures["sheet of 24 labels: ours to the bare canvas"]["unit"] == "times"
    assert not list(tmp_path.glob("bench.sqlite3*")), "the database it made is gone"
