"""The demo's shop goes out as spreadsheets and comes in again: nothing changes but what somebody changed."""

import csv
from io import StringIO

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from inventory.management.demo import make
from inventory.models import Container, Movement, Person
from inventory.spreadsheets.resources import RESOURCES

pytestmark = pytest.mark.django_db


@pytest.fixture
def owner() -> Client:
    """Ines, signed in, in the demo's shop of today."""
    make(timezone.now(), lambda done, of: None)
    client = Client()
    client.force_login(Person.objects.get(username="ines"))
    return client


def upload(client: Client, kind: str, data: bytes, form: str):
    """Upload a file and return its preview."""
    file = SimpleUploadedFile(f"{kind}.{form}", data)
    return client.post(reverse("spreadsheets:home"), {"kind": kind, "file": file}, follow=True)


def test_every_kind_in_both_forms_comes_in_as_it_went_out(owner: Client) -> None:
    entries = Movement.objects.count()
    for kind in RESOURCES:
        for form in ("csv", "xlsx"):
            data = owner.get(reverse("spreadsheets:download", args=[kind, form])).content
            page = upload(owner, kind, data, form)
            assert page.context["says"].startswith("Nothing would change: all "), (kind, form)
            assert page.context["comes"] == 0
    assert Movement.objects.count() == entries


def test_a_stocktake_on_paper_is_typed_into_the_download_and_becomes_counts(owner: Client) -> None:
    data = owner.get(reverse("spreadsheets:download", args=["stock", "csv"])).content
    rows = list(csv.DictReader(StringIO(data.decode("utf-8-sig"), newline="")))
    poured = next(
        row for row in rows if row["unit"] == "ml" and row["sealed"] == "no" and int(row[CONTENT]) > 100
    )
    before, entries = poured[CONTENT], Movement.objects.count()
    poured[CONTENT] = str(int(before) - 40)
    new = dict.fromkeys(rows[0], "") | {
        "product": poured["product"], CONTENT: "0,5", "unit": "l", "place": "Store", "sealed": "no",
        "opened on": "unknown",
    }  # fmt: skip
    changed = StringIO(newline="")
    writer = csv.DictWriter(changed, rows[0], delimiter=";")
    writer.writeheader()
    writer.writerows([*rows, new])
    page = upload(owner, "stock", changed.getvalue().encode(), "csv")
    assert page.context["says"] == f"{len(rows) + 1} rows: 1 new, 1 changed, {len(rows) - 1} unchanged."
    file, seen = page.context["file"], page.context["seen"]
    owner.post(reverse("spreadsheets:bring", args=[file.token]), {"seen": seen})
    assert Container.objects.get(code=poured["code"]).content == (int(before) - 40) * 1_000
    assert list(Movement.objects.order_by("seq").values_list("kind", flat=True))[entries:] == [
        "receive",
        "count",
    ]
    assert Container.objects.latest("id").estimated


CONTENT = "content (in unit)"
