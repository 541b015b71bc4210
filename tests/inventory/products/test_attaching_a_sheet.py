"""From the check to a data sheet that counts, in one path; and whom to ask where only an owner may."""

from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from inventory.models import Job, Product
from safety.models import DataSheet, SheetVersion
from safety.print.pen import Pen
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db


@pytest.fixture
def shop(settings: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> w.World:
    settings.MEDIA_ROOT = tmp_path
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)
    return w.larkmoor()


def entered(person: Any) -> Client:
    client = Client()
    client.force_login(person)
    return client


def acid_job(shop: w.World) -> tuple[Product, Job]:
    acid = w.product(shop, "Brack wheel acid", "acid", maker="Brack")
    w.bottle(shop, acid, 500 * ML)
    job = w.job(shop, NOON + timedelta(days=1))
    w.need(w.step(job), acid, 50 * ML)
    return acid, job


def version(sheet: DataSheet, **more: Any) -> SheetVersion:
    usual = {"revision_on": date(2025, 3, 3), "typed_on": date(2025, 3, 4), "not_classified": True}
    return SheetVersion.objects.create(sheet=sheet, **(usual | more))


def file() -> SimpleUploadedFile:
    pen = Pen(210, 297, "Brack wheel acid")
    pen.text(20, 20, "Brack wheel acid", 4)
    return SimpleUploadedFile("sheet.pdf", pen.pdf(), content_type="application/pdf")


def text(answer: Any) -> str:
    return " ".join(answer.content.decode().split())


def no_sheet(client: Client, job: Job) -> bool:
    page = text(client.get(reverse("precheck:job", args=[job.code])))
    return "Brack wheel acid has no data sheet." in page or "a data sheet that nobody has confirmed" in page


def test_from_the_check_to_a_sheet_that_counts_without_leaving_the_path(shop: w.World) -> None:
    (acid, job), ines = acid_job(shop), entered(shop.ines)
    attach = f"{reverse('products:sheet', args=[acid.code])}?job={job.code}"
    assert f'href="{attach}">Attach a data sheet</a>' in text(
        ines.get(reverse("precheck:job", args=[job.code]))
    )
    assert no_sheet(ines, job)

    first = ines.get(attach)
    new = first.context["new"]
    assert 'value="Brack wheel acid"' in text(ines.get(new))
    onward = ines.post(new, {"title": "Brack wheel acid", "supplier": "Brack"})["Location"]
    typed = {"pdf": file(), "revision_on": "2025-03-03", "language": "en", "regime": "EU",
             "not_classified": "on", "confirm": "on"}  # fmt: skip
    back = ines.post(onward, typed)["Location"]
    kept = DataSheet.objects.get()
    assert back == f"{attach}&sheet={kept.pk}"
    assert "The new sheet is here. Link it, and Brack wheel acid has its data sheet." in text(ines.get(back))
    end = ines.post(back, {"sheet": kept.pk}, follow=True)

    assert end.redirect_chain[-1][0] == reverse("precheck:job", args=[job.code])
    assert "Brack wheel acid has its data sheet now." in text(end)
    assert Product.objects.get(pk=acid.pk).sheet == kept
    assert not no_sheet(ines, job)


def test_a_sheet_that_is_here_is_linked_from_the_products_page(shop: w.World) -> None:
    (acid, job), ines = acid_job(shop), entered(shop.ines)
    kept = DataSheet.objects.create(supplier="Brack", title="Wheel acid")
    version(kept, confirmed_by="Ines", confirmed_on=date(2025, 3, 4))

    end = ines.post(reverse("products:sheet", args=[acid.code]), {"sheet": kept.pk})

    assert end["Location"] == reverse("products:product", args=[acid.code])
    assert not no_sheet(ines, job)


def test_a_sheet_that_nobody_compared_is_linked_only_with_somebodys_word(shop: w.World) -> None:
    (acid, job), ines = acid_job(shop), entered(shop.ines)
    kept = DataSheet.objects.create(supplier="Brack", title="Wheel acid")
    version(kept)
    address = reverse("products:sheet", args=[acid.code])

    refused = ines.post(address, {"sheet": kept.pk})

    assert "Nobody has compared this sheet yet. Open it, compare it, then tick this." in text(refused)
    assert Product.objects.get(pk=acid.pk).sheet is None
    ines.post(address, {"sheet": kept.pk, "confirm": "on"})
    assert (SheetVersion.objects.get().confirmed_by, SheetVersion.objects.get().confirmed_on) == (
        "Ines", NOON.date(),
    )  # fmt: skip
    assert not no_sheet(ines, job)


def test_an_attached_sheet_that_nobody_confirmed_leads_to_the_same_page(shop: w.World) -> None:
    (acid, job), ines = acid_job(shop), entered(shop.ines)
    kept = DataSheet.objects.create(supplier="Brack", title="Wheel acid")
    version(kept)
    Product.objects.filter(pk=acid.pk).update(sheet=kept)

    assert ">Confirm its data sheet</a>" in text(ines.get(reverse("precheck:job", args=[job.code])))
    assert ">Confirm its data sheet</a>" in text(ines.get(reverse("products:product", args=[acid.code])))
    ines.post(reverse("products:sheet", args=[acid.code]), {"sheet": kept.pk, "confirm": "on"})
    assert not no_sheet(ines, job)


@pytest.mark.parametrize("who", ["tomas", "wren"])
def test_who_is_no_owner_is_told_whom_to_ask_and_gets_no_button(shop: w.World, who: str) -> None:
    (acid, job), client = acid_job(shop), entered(getattr(shop, who))

    check = text(client.get(reverse("precheck:job", args=[job.code])))
    page = text(client.get(reverse("products:product", args=[acid.code])))

    assert "Only an owner can attach it: Ines." in check
    assert "Only an owner can attach it: Ines." in page
    assert "Attach a data sheet" not in check + page
    assert client.get(reverse("products:sheet", args=[acid.code])).status_code == 403


@pytest.mark.parametrize(
    "back", ["https://elsewhere.example/", "//elsewhere.example/", "javascript:alert(1)"]
)
def test_a_new_sheet_leads_back_to_nowhere_but_this_site(shop: w.World, back: str) -> None:
    ines, kept = entered(shop.ines), DataSheet.objects.create(supplier="Brack", title="Wheel acid")
    typed = {"pdf": file(), "revision_on": "2025-03-03", "language": "en", "regime": "EU",
             "not_classified": "on"}  # fmt: skip

    end = ines.post(f"{reverse('safety:new_version', args=[kept.pk])}?back={back}", typed)

    assert end["Location"] == reverse("safety:sheet", args=[kept.pk])


def test_where_nobody_typed_what_it_is_made_of_the_product_leads_an_owner_there(shop: w.World) -> None:
    acid, _ = acid_job(shop)
    kept = DataSheet.objects.create(supplier="Brack", title="Wheel acid")
    bare = version(kept, confirmed_by="Ines", confirmed_on=date(2025, 3, 4))
    Product.objects.filter(pk=acid.pk).update(sheet=kept)
    address = reverse("products:product", args=[acid.code])
    link = f'href="{reverse("safety:section_3", args=[kept.pk, bare.pk])}">Type what it is made of</a>'
    assert link in text(entered(shop.ines).get(address))
    assert link not in text(entered(shop.tomas).get(address))

    SheetVersion.objects.filter(pk=bare.pk).update(composition=[{"name": "Water", "percent": 90}])

    assert link not in text(entered(shop.ines).get(address))


def test_a_sheet_of_which_nothing_was_read_is_not_linked_and_the_stop_stays(shop: w.World) -> None:
    acid, job = acid_job(shop)
    sheet = DataSheet.objects.create(title="Brack wheel acid", supplier="Brack")
    version(sheet, not_classified=False)
    client = entered(shop.ines)
    page = client.post(reverse("products:sheet", args=[acid.code]), {"sheet": sheet.pk, "confirm": "on"})
    assert "Nobody can stand for an empty sheet" in text(page)
    assert Product.objects.get(pk=acid.pk).sheet_id is None
    assert no_sheet(client, job)
