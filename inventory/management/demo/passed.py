"""What the demo's checks showed in past months, and what somebody passed by a word: one rule too often."""

from datetime import timedelta

from inventory.management.demo.nouns import Cast
from inventory.models import Job, Override, Shown

SEEN = 12
# Code, grade, how many of the last closed jobs it was passed on, and what was said each time.
RULES = (
    ("past_estimate", "ask", 5, "Test spot is clear, nothing stringy."),
    ("wait.recoat", "ask", 1, "The maker's leaflet allows it after a wipe."),
    ("unlabelled", "ask", 0, ""),
)


def pass_some(cast: Cast) -> None:
    """Keep what was shown on the last closed jobs, and the answers that passed it."""
    jobs = Job.objects.filter(shop=cast.shop, state=Job.State.CLOSED).order_by("-starts_at")[:SEEN]
    for number, job in enumerate(jobs):
        for code, grade, passed, reason in RULES:
            before = job.starts_at - timedelta(minutes=20)
            told = {"job": job, "code": code, "about": job.code, "grade": grade}
            Shown.objects.create(**told, first_at=before)
            if number < passed:
                says = "It was asked about this job."
                Override.objects.create(
                    **told, says=says, reason=reason, by=cast.people["tomas"], given_at=before
                )
