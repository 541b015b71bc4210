"""The demo's shop: what it promises to show is there, on whatever day somebody tries it.

Told once for the module: half a year through the ledger is the longest set-up here.
"""

import json
import os
import subprocess
import sys
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from django.db import transaction

from inventory.management.demo import make
from inventory.models import Container, Job, Kind, Movement, Order, Product, Shop
from inventory.precheck.queries import verdicts
from inventory.stock.audit import audit
from inventory.today.queries import hands
from tests.world import NOON

ROOT = Path(__file__).resolve().parents[2]
HERE = (Container.State.SEALED, Container.State.OPEN, Container.State.EMPTY)
FINDINGS = {
    ("held", "stop"),
    ("recalled", "stop"),
    ("out_of_date", "stop"),
    ("two_lots", "stop"),
    ("past_estimate", "ask"),
    ("too_little", "ask"),
    ("no_sheet", "ask"),
    ("no_sheet", "stop"),
    ("unlabelled", "ask"),
    ("air.exposure", "ask"),
    ("air.exposure", "stop"),
    ("air.named_protection", "stop"),
    ("air.no_composition", "ask"),
    ("air.note", "tell"),
    ("paint.thin", "ask"),
    ("people.fit_test", "stop"),
    ("people.gloves", "tell"),
    ("reaction.bay_closed", "tell"),
    ("reaction.car_wait", "tell"),
    ("surface.note", "tell"),
    ("surface.unlisted", "ask"),
    ("tools.ozone_air", "ask"),
}
# Told only while a step is at hand, which the hour decides.
BY_THE_HOUR = {("surface.cool_first", "tell")}


def quiet(done: int, of: int) -> None:
    """Follow the days without a word."""


def findings(shop: Shop, at: datetime) -> set[tuple[str, str]]:
    """Return code and grade of everything that the checks of the booked jobs find."""
    jobs = Job.objects.filter(shop=shop).select_related("shop", "vehicle")
    found = verdicts(shop, at, jobs).values()
    return {(finding.code, finding.grade) for verdict in found for finding in verdict.check.findings}


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(NOON, id="an ordinary Wednesday"),
        # 23 hours long, and the half year before it starts in summer time.
        pytest.param(datetime(2026, 3, 29, 0, 30, tzinfo=UTC), id="the day on which summer time begins"),
        # Months added to this day end on another day number.
        pytest.param(datetime(2028, 2, 29, 9, 0, tzinfo=UTC), id="29 February"),
        # Nobody works on Sundays, and by the shop's clock it is nearly Monday.
        pytest.param(datetime(2027, 7, 18, 22, 45, tzinfo=UTC), id="late on a Sunday in summer"),
        # So many days ago it was summer time, and by the shop's clock the next day.
        pytest.param(datetime(2026, 11, 29, 23, 2, tzinfo=UTC), id="an hour before midnight in winter"),
    ],
)
def now(request: pytest.FixtureRequest) -> datetime:
    """The moment at which somebody tries the demo."""
    return request.param


@pytest.fixture(scope="module")
def shop(now: datetime, django_db_setup: None, django_db_blocker: Any) -> Iterator[Shop]:
    """The demo's shop as it stands then; taken back after the module."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make(now, quiet).shop
        transaction.set_rollback(True)


@pytest.fixture
def here(shop: Shop) -> Any:
    """What stands on its shelf."""
    return Container.objects.filter(shop=shop, state__in=HERE)


@pytest.mark.django_db
def test_there_are_about_forty_products_and_one_of_every_kind(shop: Shop) -> None:
    products = Product.objects.filter(shop=shop)
    assert 40 <= products.count() <= 50
    assert set(products.values_list("kind", flat=True)) == set(Kind.values)


@pytest.mark.django_db
def test_at_least_a_hundred_and_twenty_containers_stand_here_in_every_state(here: Any) -> None:
    assert here.count() >= 120
    assert set(here.values_list("state", flat=True)) == set(HERE)


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("what", "at_least", "because"),
    [
        ({"held": "frozen"}, 1, "a bottle can be held by itself"),
        ({"lots__recalled": True}, 1, "a recall is about a lot"),
        ({"use_by_at__lt": "now", "content__gt": 0}, 2, "stock dies on the shelf"),
        ({"mixed_at__isnull": False}, 5, "spray bottles hold mixes"),
        ({"refillable": True, "state": "empty"}, 3, "empty sprays wait for a fill"),
        ({"labelled_at": None, "state": "open"}, 1, "the check asks about a bare bottle"),
        ({"retest_on": None, "use_by_on": None, "content__gt": 0}, 1, "a pad never goes out of date"),
    ],
)
def test_every_state_that_a_page_shows_is_there(
    here: Any, now: datetime, what: dict[str, object], at_least: int, because: str
) -> None:
    what = {name: now if value == "now" else value for name, value in what.items()}
    assert here.filter(**what).distinct().count() >= at_least, because


@pytest.mark.django_db
def test_bottles_have_gone_each_in_its_way(shop: Shop) -> None:
    assert Container.objects.filter(shop=shop, state=Container.State.GONE).count() >= 10
    kinds = set(Movement.objects.filter(shop=shop).values_list("kind", flat=True))
    assert {
        "receive", "open", "use", "fill", "move", "count", "discard", "return", "quarantine",
    } <= kinds  # fmt: skip


@pytest.mark.django_db
def test_a_wipe_that_was_measured_under_the_examined_arm_is_told_and_one_without_the_arm_asks(
    shop: Shop, now: datetime
) -> None:
    told = {}
    for service in ("Lime and water marks", "Wheels off and coated"):
        [job] = Job.objects.filter(shop=shop, state=Job.State.OPEN, service__name=service)
        check = verdicts(shop, now, Job.objects.filter(pk=job.pk).select_related("shop", "vehicle"))
        [verdict] = check.values()
        told[service] = {one.code: one for one in verdict.check.findings}
    measured, asked = told["Lime and water marks"], told["Wheels off and coated"]
    assert "air.exposure" not in measured
    assert "isopropanol 9 % of 500 ppm (UK WEL, read in a copy), measured" in measured["air.note"].because
    assert asked["air.exposure"].grade == "ask"
    assert "it was made under Extraction arm, and the step is not." in asked["air.exposure"].because


@pytest.mark.django_db
def test_half_a_year_is_told_through_the_ledger_and_nothing_in_it_is_wrong(shop: Shop, now: datetime) -> None:
    first = Movement.objects.filter(shop=shop).order_by("seq")[0]
    assert now - first.happened_at >= timedelta(days=180)
    assert Movement.objects.filter(shop=shop).count() >= 500
    assert list(audit()) == []


@pytest.mark.django_db
def test_one_booked_job_runs_over_two_days(shop: Shop) -> None:
    jobs = Job.objects.filter(shop=shop, state=Job.State.OPEN)
    assert [job for job in jobs if (job.ends_at - job.starts_at) > timedelta(days=1)]


@pytest.mark.django_db
def test_an_order_is_on_its_way(shop: Shop, now: datetime) -> None:
    order = Order.objects.get(shop=shop, state=Order.State.PLACED)
    assert order.due_on > now.date()


@pytest.mark.django_db
def test_the_booked_jobs_show_each_finding_of_the_check(shop: Shop, now: datetime) -> None:
    assert findings(shop, now) - BY_THE_HOUR == FINDINGS


@pytest.mark.django_db
def test_a_forgotten_rag_can_stands_on_the_first_page(shop: Shop, now: datetime) -> None:
    said = [hand.says for hand in hands(shop, now) if "rag can" in hand.says]
    assert said == ["The rag can of Bay 2 still holds rags of a day before."]


@pytest.mark.django_db
def test_one_of_them_is_ready_as_it_is(shop: Shop, now: datetime) -> None:
    jobs = Job.objects.filter(shop=shop, state=Job.State.OPEN).select_related("shop", "vehicle")
    assert "ready" in {verdict.verdict for verdict in verdicts(shop, now, jobs).values()}


def demo(folder: Path, *options: str) -> subprocess.CompletedProcess[str]:
    """Run the command as a person does, its shop in a folder of its own."""
    kept = {
        key: value
        for key, value in os.environ.items()
        if key not in ("DATABASE_URL", "DJANGO_SETTINGS_MODULE")
    }
    command = [sys.executable, "manage.py", "demo", "--once", "--dir", str(folder), *options]
    return subprocess.run(command, cwd=ROOT, env=kept, capture_output=True, text=True, timeout=400)


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, subprocess.CompletedProcess[str]]:
    """The demo run once into an empty folder."""
    folder = tmp_path_factory.mktemp("demo")
    return folder, demo(folder)


@pytest.mark.timeout(900)
def test_the_command_does_the_four_jobs_and_ends(
    told: tuple[Path, subprocess.CompletedProcess[str]],
) -> None:
    folder, run = told
    assert run.returncode == 0, run.stderr
    for job in ("1. Scan in and out", "2. The check", "3. The posters", "4. The reorder report"):
        assert job in run.stdout
    kinds = {path.suffix for path in (folder / "printed").iterdir()}
    assert {".pdf", ".xlsx", ".csv", ".json"} <= kinds


@pytest.mark.timeout(900)
def test_what_it_printed_can_be_read_by_a_scanner(
    told: tuple[Path, subprocess.CompletedProcess[str]],
) -> None:
    import pypdfium2
    import zxingcpp

    folder, run = told
    assert run.returncode == 0, run.stderr
    for name in ("label.pdf", "poster-bay-1.pdf", "poster-bay-2.pdf"):
        first = pypdfium2.PdfDocument(folder / "printed" / name)[0]
        assert zxingcpp.read_barcodes(first.render(scale=200 / 72).to_pil().convert("L")), name


@pytest.mark.timeout(900)
def test_a_second_start_keeps_the_shop_and_json_is_all_it_prints(
    told: tuple[Path, subprocess.CompletedProcess[str]],
) -> None:
    folder, first = told
    assert first.returncode == 0, first.stderr
    second = demo(folder, "--json")
    assert second.returncode == 0, second.stderr
    assert "is here already. To start anew, delete" in second.stderr
    done = json.loads(second.stdout)
    assert done["check"]["verdict"] == "stop"
    assert [Path(file).exists() for file in done["files"]] == [True] * len(done["files"])
