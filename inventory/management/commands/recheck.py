"""`recheck [--shop S] [--from D] [--to D]`: every open job checked anew, as each morning asks for."""

from argparse import ArgumentParser
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, time, timedelta
from typing import Any

from django.utils import timezone
from tqdm import tqdm

from inventory.codes import pair
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Job, Shop
from inventory.precheck import queries
from inventory.precheck.queries import Verdict

# So many jobs at once ask the database as often as one; a year in one piece would fill the memory.
BATCH = 50
YEAR = timedelta(days=365)


class Command(ScriptedCommand):
    """Checks all open jobs of a period, a JSON line a job; the bar stands on standard error."""

    help = "Check every open job of a period anew, and say which are not ready and why."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the shop and the days."""
        parser.add_argument("--shop", help="its short name; not needed where there is one shop")
        parser.add_argument("--from", dest="first", help="the first day, such as 2026-12-01; else today")
        parser.add_argument("--to", dest="last", help="the last day; else a year after the first")

    def answers(self, **options: Any) -> Iterator[Answer]:
        """Yield each job's verdict, and what they come to at the end for people."""
        shop = _shop(options["shop"])
        now = timezone.now()
        first = _day(options["first"], "--from", now.astimezone(shop.zone).date())
        last = _day(options["last"], "--to", first + YEAR)
        if last < first:
            raise BadInput(f"--to: {last} lies before --from, {first}.")
        jobs = booked(shop, first, last)
        counts: Counter[str] = Counter()
        for job, found in checked(shop, jobs, now):
            counts[found.verdict] += 1
            yield said(job, found), document(job, found)
        if not self.as_json:
            told = ", ".join(f"{counts[each]} {each}" for each in ("ready", "ask", "stop"))
            self.stdout.write(f"{len(jobs)} jobs from {first} to {last}: {told}.")


def booked(shop: Shop, first: date, last: date) -> list[Job]:
    """Return the open jobs that start from the first day to the last, both included."""
    begins = datetime.combine(first, time.min, shop.zone)
    ends = datetime.combine(last + timedelta(days=1), time.min, shop.zone)
    rows = Job.objects.filter(shop=shop, state=Job.State.OPEN, starts_at__gte=begins, starts_at__lt=ends)
    return list(rows.select_related("vehicle", "shop").order_by("starts_at", "id"))


def checked(shop: Shop, jobs: Sequence[Job], at: datetime) -> Iterator[tuple[Job, Verdict]]:
    """Yield each job with its verdict, a batch at a time, with a bar."""
    with tqdm(total=len(jobs), desc="recheck", unit=" jobs", disable=None) as bar:
        for start in range(0, len(jobs), BATCH):
            some = jobs[start : start + BATCH]
            found = queries.verdicts(shop, at, some)
            for job in some:
                yield job, found[job.code]
            bar.update(len(some))


def said(job: Job, found: Verdict) -> str:
    """Return a job's line, and what stands open under it."""
    open_ = [one for one in found.check.findings if one.grade != "tell"]
    lines = [f"{pair(job.code)} {job.starts_at:%Y-%m-%d} {job}: {found.verdict}"]
    return "\n".join([*lines, *(f"  {one.grade}: {one.says} {one.do}" for one in open_)])


def document(job: Job, found: Verdict) -> dict[str, object]:
    """Return a job's line for a script."""
    return {"job": job.code, "verdict": found.verdict, "findings": _codes(found.check.findings)}


def _codes(findings: Iterable[Any]) -> list[dict[str, object]]:
    return [{"code": one.code, "grade": one.grade, "says": one.says} for one in findings]


def _shop(slug: str | None) -> Shop:
    rows = list(Shop.objects.filter(slug=slug) if slug else Shop.objects.all()[:2])
    if len(rows) != 1:
        wanted = ", ".join(Shop.objects.values_list("slug", flat=True)) or "none: there is no shop yet"
        raise BadInput(f"--shop: one of these was expected: {wanted}.")
    return rows[0]


def _day(text: str | None, name: str, otherwise: date) -> date:
    try:
        return date.fromisoformat(text) if text else otherwise
    except ValueError as error:
        raise BadInput(f"{name}: “{text}” is no day. One such as 2026-12-01 was expected.") from error
