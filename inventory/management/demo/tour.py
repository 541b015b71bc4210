"""The four jobs, done on the demo shop: scan in and out, the pre-job check, posters, the reorder report."""

import json
from collections.abc import Callable
from datetime import datetime, timedelta
from io import StringIO
from pathlib import Path
from typing import Any

from django.core.management import call_command

from inventory.codes import code_of, pair
from inventory.models import Container, Job, Person, Place, Shop
from inventory.scan import actions

FILES = "printed"


class Tour:
    """One walk through the four jobs; what it writes lies in `folder/printed`."""

    def __init__(self, folder: Path, say: Callable[[str], object]) -> None:
        self.say = say
        self.out = folder / FILES
        self.shop = Shop.objects.get()

    def run(self, now: datetime) -> dict[str, Any]:
        """Do the four jobs, and return what was done and the files that were written."""
        self.out.mkdir(parents=True, exist_ok=True)
        done = {
            "scans": self._scan(now),
            "check": self._check(now),
            "posters": self._posters(),
            "reorder": self._reorder(now),
        }
        files = sorted(str(path) for path in self.out.iterdir())
        self.say("\nWritten:\n" + "\n".join(f"  {path}" for path in files))
        return done | {"files": files}

    def _scan(self, now: datetime) -> list[dict[str, Any]]:
        self.say("\n1. Scan in and out, as the station hears it")
        station = actions.desk(self.shop)
        answers = []
        for number, line in enumerate(self._lines()):
            answer = actions.say(station, line, f"demo-{now.timestamp()}-{number}", now, now=now)
            grade = {"tell": "note"}.get(answer["grade"], answer["grade"])
            self.say(f"   {line:<18} {grade:<9} {answer['says']} {answer['next']}".rstrip())
            answers.append(answer)
        return answers

    def _lines(self) -> list[str]:
        tomas = Person.objects.get(shop=self.shop, username="tomas")
        store = Place.objects.get(shop=self.shop, name="Store")
        gtin = "09520000001087"
        here = Container.objects.filter(shop=self.shop, held="", content__gt=100_000).order_by("code")
        wheel = here.filter(product__name="Brack wheel cleaner", state="open").first()
        sealed = here.filter(product__name="Quell interior cleaner", state="sealed").first()
        lines = [tomas.code, gtin, "2", "no lot", "no date", store.code, "done"]
        if sealed:
            lines += [sealed.code, code_of("open")]
        if wheel:
            lines += [wheel.code, "120 ml", "undo"]
        return lines

    def _check(self, now: datetime) -> dict[str, Any]:
        ahead = Job.objects.filter(shop=self.shop, state="open", starts_at__gte=now - timedelta(hours=12))
        job = ahead.filter(title__startswith="correction").order_by("starts_at").first()
        assert job is not None
        self.say(f"\n2. The check of job {pair(job.code)}, {job}")
        return self._command("precheck", job.code)

    def _posters(self) -> list[dict[str, Any]]:
        self.say("\n3. The posters of the bays, and a label")
        done = []
        for place in Place.objects.filter(shop=self.shop, kind="bay").order_by("name"):
            file = self.out / f"poster-{place.name.lower().replace(' ', '-')}.pdf"
            done.append(self._command("poster", place.code, "--out", str(file)))
        label = (
            Container.objects.filter(shop=self.shop, state="open", product__kind="coating")
            .order_by("use_by_at")
            .first()
        )
        if label is not None:
            done.append(self._command("label", label.code, "--out", str(self.out / "label.pdf")))
        return done

    def _reorder(self, now: datetime) -> list[dict[str, Any]]:
        month = now.astimezone(self.shop.zone).strftime("%Y-%m")
        self.say(f"\n4. The reorder report of {month}")
        return [
            self._command("reorder", "--month", month, "--out", str(self.out / f"reorder-{month}.{kind}"))
            for kind in ("pdf", "xlsx", "csv", "json")
        ]

    def _command(self, name: str, *arguments: str) -> dict[str, Any]:
        """Run a command twice over would print twice; so run it once with --json and say its sentence."""
        spoken = StringIO()
        call_command(name, *arguments, "--json", stdout=spoken)
        document: dict[str, Any] = json.loads(spoken.getvalue())
        self.say(f"   {name}: {_short(name, document)}")
        return document


def _short(name: str, document: dict[str, Any]) -> str:
    if name == "precheck":
        marks = {"stop": "Stop", "ask": "Ask", "tell": "Note"}
        lines = [f"{document['verdict']}."]
        lines += [f"      {marks[one['grade']]}: {one['says']} {one['do']}" for one in document["findings"]]
        return "\n".join(lines)
    return (
        str(document["file"])
        if "file" in document
        else ", ".join(f"{key} {value}" for key, value in list(document.items())[:4])
    )
