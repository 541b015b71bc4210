"""`precheck JOB`: the check of a job, for scripts and for the printer in the office."""

from argparse import ArgumentParser
from dataclasses import asdict
from datetime import datetime, tzinfo
from typing import Any

from django.utils import timezone

from inventory.codes import pair, tidy
from inventory.management.scripted import Answer, BadInput, ScriptedCommand
from inventory.models import Job
from inventory.precheck import queries

WORDS = {"stop": "Stop", "ask": "Ask", "tell": "Note"}


class Command(ScriptedCommand):
    """Runs the same check as the page and the scan station."""

    help = "Check a job against the shelf: what would stop it, what is asked, what to do."

    def add_arguments(self, parser: ArgumentParser) -> None:
        """Take the job's code, and the instant if it is not now."""
        parser.add_argument("job", help="the job's code, such as JDPX KLNB")
        parser.add_argument("--at", help="an instant such as 2026-11-27T09:00; now without it")

    def answer(self, **options: Any) -> Answer:
        """Return the verdict with its findings, the gravest first."""
        job = _job(options["job"])
        checked = queries.check(job, _instant(options["at"], job.shop.zone))
        findings = [
            {name: value for name, value in asdict(finding).items() if name != "of"}
            for finding in checked.check.findings
        ]
        lines = [f"{job} ({pair(job.code)})", checked.headline.says, checked.headline.next]
        for one in checked.check.findings:
            lines.append(f"{WORDS[one.grade]}: {one.says} {one.do} ({one.because} Source: {one.source}.)")
        lines.append("The product's own label and data sheet, local codes and licensed practice come first.")
        document = {"job": job.code, "verdict": checked.check.verdict, "findings": findings}
        return "\n".join(line for line in lines if line), document


def _job(text: str) -> Job:
    code = tidy(text)
    job = Job.objects.filter(code=code).select_related("shop", "vehicle").first()
    if job is None:
        raise BadInput(f"JOB: “{text}” is no job's code. A code such as JDPX KLNB was expected.")
    return job


def _instant(text: str | None, zone: tzinfo) -> datetime:
    """Return an instant; one without an offset is on the shop's clock."""
    if text is None:
        return timezone.now()
    try:
        given = datetime.fromisoformat(text)
    except ValueError as error:
        raise BadInput(f"--at: “{text}” is no instant. One such as 2026-11-27T09:00 was expected.") from error
    return given if given.tzinfo else given.replace(tzinfo=zone)
