"""The check's pages: one sentence leads, one button a finding, and who may answer, override and sign."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import CheckSignature, Container, Job, Override
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
TOMORROW = NOON + timedelta(days=1)


@pytest.fixture(autouse=True)
def noon(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON)


def client(person) -> Client:
    entered = Client()
    entered.force_login(person)
    return entered


def short_job(world: w.World, ml: int = 180) -> Job:
    wipe = w.hollin(world, needs_sheet=False)
    w.bottle(world, wipe, 140 * ML)
    job = w.job(world, TOMORROW)
    w.need(w.step(job, bay=world.bay_2, person=world.ines), wipe, ml * ML)
    return job


def lots_apart(world: w.World) -> Job:
    coating = w.tidewall(world, needs_sheet=False)
    w.bottle(world, coating, 30 * ML, lot="T-1")
    w.bottle(world, coating, 25 * ML, lot="T-2")
    job = w.job(world, TOMORROW)
    w.need(w.step(job, "Coating"), coating, 40 * ML)
    return job


def answer_url(job: Job, code: str) -> str:
    need = job.steps.get().needs.get()
    about = f"{need.product.code}+{job.steps.get().code}"
    return f"{reverse('precheck:answer', args=[job.code, code])}?about={about}"


def text(response) -> str:
    return " ".join(response.content.decode().split())


def test_the_page_leads_with_one_sentence_then_findings_then_steps_then_the_caution(shop: w.World) -> None:
    page = text(client(shop.tomas).get(reverse("precheck:job", args=[short_job(shop).code])))

    parts = [
        "One question to answer before Thursday 12:00.",
        "Hollin panel wipe: 180 ml needed, 140 ml free.",
        "Why, and where it comes from",
        ">Answer</a>",
        "Steps and what they take",
        "Bay 2 · Ines",
        "140 ml of 180 ml",
        "Sign-off",
        "The product’s own label and data sheet, local codes and licensed practice come first.",
    ]
    places = [page.find(part) for part in parts]
    assert -1 not in places
    assert places == sorted(places)


def test_an_unanswered_question_cannot_be_signed_away(shop: w.World) -> None:
    job = short_job(shop)

    page = client(shop.tomas).post(reverse("precheck:sign", args=[job.code]), follow=True)

    assert "One question to answer before Thursday 12:00. Sign when the check is ready." in text(page)
    assert not CheckSignature.objects.exists()


def test_an_answer_is_kept_with_its_name_and_then_the_check_can_be_signed(shop: w.World) -> None:
    job, tomas = short_job(shop), client(shop.tomas)
    says = "Hollin panel wipe: 180 ml needed, 140 ml free."

    page = tomas.post(
        answer_url(job, "too_little"), {"says": says, "reason": "Half the roof is glass."}, follow=True
    )

    kept = Override.objects.get()
    assert (kept.says, kept.reason, kept.by, kept.grade, kept.given_at) == (
        says, "Half the roof is glass.", shop.tomas, "ask", NOON,
    )  # fmt: skip
    assert "Ready for Thursday 12:00, as answered: it stands on one answer." in text(page)
    assert "There is too little for one thing: somebody said it will do." in text(page)
    assert "There is enough" not in text(page)
    assert "Tomas answered on Wednesday 25 November: “Half the roof is glass.”" in text(page)
    tomas.post(reverse("precheck:sign", args=[job.code]))
    signed = CheckSignature.objects.get()
    assert (signed.by, signed.verdict, [one["says"] for one in signed.findings]) == (
        shop.tomas,
        "ready",
        [says],
    )


def test_an_answer_to_a_sentence_that_changed_meanwhile_is_not_kept(shop: w.World) -> None:
    job = short_job(shop)

    page = client(shop.tomas).post(
        answer_url(job, "too_little"),
        {"says": "Hollin panel wipe: 180 ml needed, 150 ml free.", "reason": "Fine."},
        follow=True,
    )

    assert "The shelf changed since you read this. Read the check again." in text(page)
    assert not Override.objects.exists()


@pytest.mark.parametrize("secret", ["clear coat", "4711"])
def test_an_owner_overrides_a_stop_for_the_paint_by_password_or_pin(shop: w.World, secret: str) -> None:
    shop.ines.set_pin("4711")
    shop.ines.save()
    job = lots_apart(shop)
    given = {
        "says": "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest.",
        "reason": "The second lot goes on the boot lid only.",
        "owner": shop.ines.code,
        "secret": secret,
    }

    page = client(shop.tomas).post(answer_url(job, "two_lots"), given, follow=True)

    assert Override.objects.get().by == shop.ines
    assert "Ines overrode this stop on Wednesday 25 November" in text(page)
    assert "Ready for Thursday 12:00, as answered: it stands on one answer." in text(page)


@pytest.mark.parametrize(
    ("who", "secret", "because"),
    [
        ("ines", "0000", "a wrong PIN"),
        ("tomas", "clear coat", "a technician's password is no owner's"),
        ("ines", "", "no secret at all"),
    ],
)
def test_nobody_else_overrides_a_stop(shop: w.World, who: str, secret: str, because: str) -> None:
    shop.ines.set_pin("4711")
    shop.ines.save()
    given = {
        "says": "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest.",
        "reason": "In a hurry.",
        "owner": getattr(shop, who).code,
        "secret": secret,
    }

    client(shop.tomas).post(answer_url(lots_apart(shop), "two_lots"), given)

    assert not Override.objects.exists(), because


def overriding(shop: w.World, secret: str) -> dict[str, str]:
    return {
        "says": "Tidewall coating: 40 ml needed from one lot, 30 ml in the fullest.",
        "reason": "The second lot goes on the boot lid only.",
        "owner": shop.ines.code,
        "secret": secret,
    }


def test_after_three_wrong_pins_the_right_one_waits_too(shop: w.World) -> None:
    shop.ines.set_pin("4711")
    shop.ines.save()
    address = answer_url(lots_apart(shop), "two_lots")
    for pin in ("0000", "1111", "2222"):
        client(shop.tomas).post(address, overriding(shop, pin))

    page = client(shop.tomas).post(address, overriding(shop, "4711"))

    assert "Too many wrong tries. Wait 1 second, then try again." in text(page)
    assert not Override.objects.exists()
    client(shop.ines).post(address, overriding(shop, "4711"))
    assert Override.objects.get().by == shop.ines, "whoever did not guess does not wait"


def test_the_right_pin_counts_once_the_wait_is_over(shop: w.World, monkeypatch: pytest.MonkeyPatch) -> None:
    shop.ines.set_pin("4711")
    shop.ines.save()
    address = answer_url(lots_apart(shop), "two_lots")
    for pin in ("0000", "1111", "2222"):
        client(shop.tomas).post(address, overriding(shop, pin))
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOON + timedelta(seconds=1))

    client(shop.tomas).post(address, overriding(shop, "4711"))

    assert Override.objects.get().by == shop.ines


def test_a_stop_that_protects_people_has_no_override(shop: w.World) -> None:
    acid = w.product(shop, "Brack wheel acid", "acid")
    w.bottle(shop, acid, 500 * ML)
    job = w.job(shop, TOMORROW)
    w.need(w.step(job), acid, 50 * ML)

    page = client(shop.ines).get(answer_url(job, "no_sheet"), follow=True)

    assert "This stop ends by changing the fact, not by a word." in text(page)
    assert "Override" not in text(page)
    assert "Attach a data sheet" in text(page)


def test_printing_the_label_ends_the_question_about_it(shop: w.World) -> None:
    wipe = w.hollin(shop, needs_sheet=False)
    bottle = w.bottle(shop, wipe, 500 * ML, opened_at=NOON - timedelta(days=1))
    job = w.job(shop, TOMORROW)
    w.need(w.step(job), wipe, 180 * ML)
    tomas = client(shop.tomas)
    page = text(tomas.get(reverse("precheck:job", args=[job.code])))
    assert f"Hollin panel wipe {bottle.code[:4]} {bottle.code[4:]} is open and has no label of ours." in page

    Container.objects.update(labelled_at=NOON)

    assert "Ready for Thursday 12:00." in text(tomas.get(reverse("precheck:job", args=[job.code])))


def test_a_viewer_reads_the_check_and_changes_nothing(shop: w.World) -> None:
    job, wren = short_job(shop), client(shop.wren)

    assert wren.get(reverse("precheck:job", args=[job.code])).status_code == 200
    assert wren.get(answer_url(job, "too_little")).status_code == 403
    assert wren.post(reverse("precheck:sign", args=[job.code])).status_code == 403


def test_another_shop_s_job_is_not_there(shop: w.World) -> None:
    elsewhere = w.job(w.larkmoor("elsewhere"))

    assert client(shop.ines).get(reverse("precheck:job", args=[elsewhere.code])).status_code == 404


def test_without_a_login_there_is_no_check(shop: w.World) -> None:
    response = Client().get(reverse("precheck:job", args=[w.job(shop).code]))

    assert response.status_code == 302
