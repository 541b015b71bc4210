"""The pages of the jobs, and what they share: finding a job, saying who gains."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager

from django.contrib import messages
from django.http import Http404, HttpRequest

from inventory.access import shop_of
from inventory.jobs import queries
from inventory.models import Job
from inventory.stock.rules.lines import Refused


def found(request: HttpRequest, code: str) -> Job:
    """Return a job of this shop, or 404."""
    job = queries.jobs(shop_of(request)).filter(code=code).first()
    if job is None:
        raise Http404("This shop has no such job.")
    return job


def found_open(request: HttpRequest, code: str) -> Job:
    """Return a job that is still booked, or 404: what is closed is only read."""
    job = found(request, code)
    if job.state != Job.State.OPEN:
        raise Http404("This job is no longer booked.")
    return job


def tell(request: HttpRequest, sentences: Iterable[str]) -> None:
    """Show sentences as notes on the next page."""
    for sentence in sentences:
        messages.info(request, sentence)


@contextmanager
def refusals_told(request: HttpRequest) -> Iterator[None]:
    """Show on the next page why something was refused."""
    try:
        yield
    except Refused as refused:
        messages.error(request, refused.says)
