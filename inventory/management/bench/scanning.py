"""Scan-out onto a job: a bottle, then an amount, heard by the station's view; its twin by the bare driver."""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import count

from django.core.signing import get_cookie_signer
from django.http import HttpResponseBase
from django.test import Client, RequestFactory
from django.urls import reverse

from inventory.access import STATION_COOKIE
from inventory.management.bench import bare
from inventory.management.bench.figures import milliseconds, typical
from inventory.management.bench.ground import TOKEN, Ground
from inventory.models import Movement
from inventory.scan.views import say

TAKEN = "5 ml"
_keys = count()


@dataclass(frozen=True)
class Scanned:
    """Typical milliseconds: the view, the whole request, the bare driver, the ledger alone; and queries."""

    view_ms: float
    request_ms: float
    bare_ms: float
    queries: int


def scan_out(ground: Ground, times: int, progress: Callable[[int], object]) -> Scanned:
    """Measure taking from the drum; each measured scan is recorded for good."""
    station = Station(ground)
    station.onto_the_job()
    views, requests, bares = [], [], []
    for _ in range(times):
        station.whole(ground.drum.code)
        views.append(milliseconds(lambda: station.view(TAKEN)))
        station.whole(ground.drum.code)
        requests.append(milliseconds(lambda: station.whole(TAKEN)))
        station.whole(ground.drum.code)
        bares.append(_bare(station))
        progress(1)
    station.whole(ground.drum.code)
    queries = bare.queries_of(lambda: station.view(TAKEN))
    assert Movement.objects.filter(shop=ground.shop, kind="use", source=ground.drum).count() >= 3 * times
    return Scanned(typical(views), typical(requests), typical(bares), queries)


def _bare(station: "Station") -> float:
    statements = bare.statements_of(lambda: station.view(TAKEN))
    bare.level_keys(statements)
    return milliseconds(lambda: bare.write(statements))


class Station:
    """The enrolled device: by the view alone, or through every middleware."""

    def __init__(self, ground: Ground) -> None:
        self.ground = ground
        signed = get_cookie_signer(salt=STATION_COOKIE).sign(TOKEN)
        self.client, self.factory = Client(HTTP_HOST="localhost"), RequestFactory(HTTP_HOST="localhost")
        self.client.cookies[STATION_COOKIE] = signed
        self.factory.cookies[STATION_COOKIE] = signed

    def onto_the_job(self) -> None:
        """Take the job in hand, and all that it plans of the drum: what follows is one entry a scan."""
        for line in (self.ground.person.code, self.ground.job.code, self.ground.drum.code, "100 ml"):
            self.whole(line)

    def _line(self, line: str) -> dict[str, str]:
        return {"line": line, "key": f"bench-{next(_keys)}"}

    def whole(self, line: str) -> None:
        """Say a line by a whole request."""
        _heard(self.client.post(reverse("scan:say"), self._line(line)))

    def view(self, line: str) -> None:
        """Say a line to the view, from its entry to its answer."""
        request = self.factory.post(reverse("scan:say"), self._line(line))
        request.user = self.ground.person
        _heard(say(request))


def _heard(answer: HttpResponseBase) -> None:
    if answer.status_code != 200:
        raise RuntimeError(f"The station answered {answer.status_code}: {answer.reason_phrase}")
