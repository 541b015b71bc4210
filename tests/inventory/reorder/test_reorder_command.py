"""`reorder`: the month's report from a script. It is noon on Wednesday 25 November 2026."""

import csv
import io
import json
from datetime import timedelta
from pathlib import Path

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

from inventory.stock.rules.acts import Act
from tests.world import LITRE, ML, NOON, World, bottle, hollin, larkmoor, pack, record

pytestmark = pytest.mark.django_db


@pytest.fixture
def world(monkeypatch) -> World:
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)
    world = larkmoor()
    wipe = hollin(world)
    pack(wipe, LITRE, price_minor=1_450)
    kept = bottle(world, wipe, LITRE)
    record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=900 * ML))
    return world


def reorder(*words: object) -> dict[str, object]:
    out = io.StringIO()
    call_command("reorder", *map(str, words), "--json", stdout=out)
    return json.loads(out.getvalue())


def refused(*words: object) -> str:
    """Return the sentence of a refusal, which ends with exit status 2 and stands on standard output too."""
    out = io.StringIO()
    with pytest.raises(CommandError) as error:
        call_command("reorder", *map(str, words), "--json", stdout=out)
    assert error.value.returncode == 2
    assert json.loads(out.getvalue()) == {"error": str(error.value)}
    return str(error.value)


@pytest.mark.parametrize(
    ("month", "says"),
    [
        ("2026-13", "“2026-13” is no month: write it as YYYY-MM, 2026-11 for this one."),
        ("November", "“November” is no month: write it as YYYY-MM, 2026-11 for this one."),
        ("2026-10", "October 2026 ended before 25 November 2026. Ask for 2026-11 or a later month."),
        ("2028-01", "January 2028 is more than a year ahead. Ask for 2027-11 or an earlier month."),
    ],
)
def test_a_wrong_month_is_refused_and_no_file_is_written(world, tmp_path, month, says):
    assert refused("--month", month, "--out", tmp_path / "orders.csv") == says
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["orders.docx", "orders", "pdf"])
def test_another_kind_of_file_is_refused(world, tmp_path, name):
    out = tmp_path / name
    expected = f"--out {out}: a name ending in .pdf, .xlsx, .csv or .json was expected."
    assert refused("--month", "2026-11", "--out", out) == expected
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_is_not_there_is_refused(world, tmp_path):
    out = tmp_path / "nowhere" / "orders.csv"
    expected = f"--out {out}: a file that can be written was expected (No such file or directory)."
    assert refused("--month", "2026-11", "--out", out) == expected


def test_a_name_that_is_a_folder_is_refused_and_nothing_is_left_beside_it(world, tmp_path):
    (tmp_path / "orders.csv").mkdir()
    out = tmp_path / "orders.csv"
    expected = f"--out {out}: a file that can be written was expected (Is a directory)."
    assert refused("--month", "2026-11", "--out", out) == expected
    assert [each.name for each in tmp_path.iterdir()] == ["orders.csv"]


def test_which_of_several_shops_must_be_said(world, tmp_path):
    larkmoor("farrow")
    out = tmp_path / "orders.csv"
    assert refused("--month", "2026-11", "--out", out) == "--shop: there are several shops, name one."
    assert refused("--month", "2026-11", "--out", out, "--shop", "nobody") == (
        "--shop nobody: no shop has this short name."
    )
    assert reorder("--month", "2026-11", "--out", out, "--shop", "larkmoor")["total_minor"] == 2_900


def test_without_a_shop_there_is_nothing_to_order(tmp_path):
    assert refused("--month", "2026-11", "--out", tmp_path / "orders.csv") == (
        "There is no shop yet: set one up first."
    )


@pytest.mark.parametrize(
    ("name", "begins"),
    [("o.pdf", b"%PDF-"), ("o.xlsx", b"PK"), ("o.csv", b"\xef\xbb\xbfSupplier,"), ("o.JSON", b"{")],
)
def test_the_file_is_of_the_kind_that_its_name_says(world, tmp_path, name, begins):
    document = reorder("--month", "2026-11", "--out", tmp_path / name)
    assert (tmp_path / name).read_bytes().startswith(begins)
    assert document["file"] == str(tmp_path / name)
    assert [each.name for each in tmp_path.iterdir()] == [name]


def test_the_json_answer_says_what_is_on_the_file(world, tmp_path):
    out = tmp_path / "orders.csv"
    document = reorder("--month", "2026-11", "--out", out)
    (row,) = csv.DictReader(io.StringIO(out.read_text(encoding="utf-8-sig")))
    assert (row["Product"], row["Packs to order"], row["Cost (EUR)"]) == ("Hollin panel wipe", "2", "29.0")
    assert document["says"] == "Order 1 product from 1 supplier for €29.00, the first today."
    assert document["suppliers"][0]["lines"][0]["packs"] == 2


def test_an_older_file_is_replaced_whole(world, tmp_path):
    out: Path = tmp_path / "orders.json"
    out.write_text("x" * 1_000_000)
    reorder("--month", "2026-11", "--out", out)
    assert json.loads(out.read_text())["month"] == "2026-11"


def test_an_older_file_stays_where_the_month_is_wrong(world, tmp_path):
    out: Path = tmp_path / "orders.json"
    out.write_text("kept")
    refused("--month", "2026-10", "--out", out)
    assert out.read_text() == "kept"
