"""`recheck`: every open job of a period, with its verdict; the same answer as each job's own check."""

import io
import json
from datetime import timedelta

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from inventory.models import Job
from inventory.precheck import queries
from tests import world as w

pytestmark = pytest.mark.django_db
ML = 1_000


def recheck(*words: str) -> str:
    out = io.StringIO()
    call_command("recheck", *words, stdout=out)
    return out.getvalue()


def jobs(world: w.World, count: int) -> list[Job]:
    """Return jobs on the days after today, each wanting 10 ml more of one wipe than the day before left."""
    wipe = w.hollin(world)
    wipe.needs_sheet = False
    wipe.save()
    w.bottle(world, wipe, 15 * ML)
    made = []
    for day in range(1, count + 1):
        job = w.job(world, timezone.now() + timedelta(days=day))
        w.need(w.step(job, "Panel wipe"), wipe, 10 * ML)
        made.append(job)
    return made


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--from", "soon"], "--from: “soon” is no day. One such as 2026-12-01 was expected."),
        (["--from", "2026-12-02", "--to", "2026-12-01"], "--to: 2026-12-01 lies before --from, 2026-12-02."),
        (["--shop", "nowhere"], "--shop: one of these was expected: larkmoor."),
    ],
)
def test_what_is_no_period_is_refused(shop: w.World, words: list[str], says: str) -> None:
    with pytest.raises(CommandError) as ended:
        recheck(*words)
    assert (str(ended.value), ended.value.returncode) == (says, 2)


def test_each_job_gets_the_verdict_of_its_own_check(shop: w.World) -> None:
    made = jobs(shop, 3)

    lines = [json.loads(line) for line in recheck("--json").splitlines()]

    assert [(line["job"], line["verdict"]) for line in lines] == [
        (made[0].code, "ready"), (made[1].code, "ask"), (made[2].code, "ask"),
    ]  # fmt: skip
    for job, line in zip(made, lines, strict=True):
        fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
        findings = queries.check(fresh, timezone.now()).check.findings
        assert [one["says"] for one in line["findings"]] == [one.says for one in findings]


def test_people_read_the_sum_at_the_end_and_what_to_do(shop: w.World) -> None:
    jobs(shop, 2)

    told = recheck()

    assert "  ask: Hollin panel wipe: 10 ml needed, 5 ml free." in told
    assert told.rstrip().splitlines()[-1].endswith(": 1 ready, 1 ask, 0 stop.")


def test_a_job_outside_the_days_and_a_closed_one_are_left_out(shop: w.World) -> None:
    made = jobs(shop, 3)
    Job.objects.filter(pk=made[0].pk).update(state="closed")
    last = (timezone.now() + timedelta(days=2)).date().isoformat()

    lines = [json.loads(line) for line in recheck("--to", last, "--json").splitlines()]

    assert [line["job"] for line in lines] == [made[1].code]


def test_forty_jobs_ask_the_database_as_often_as_two(shop: w.World) -> None:
    def asked() -> int:
        with CaptureQueriesContext(connection) as seen:
            recheck("--json")
        return len(seen)

    jobs(shop, 2)
    few = asked()
    for day in range(3, 41):
        job = w.job(shop, timezone.now() + timedelta(days=day))
        w.need(w.step(job, "Panel wipe"), shop.shop.products.get(), 10 * ML)

    assert asked() == few
