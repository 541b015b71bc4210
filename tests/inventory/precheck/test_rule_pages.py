"""The owner's page about the rules of the check: who sees it, what is kept, what it counts."""

from datetime import timedelta

import pytest
from django.test import Client

from inventory.models import Override, RuleGrade, Shown
from inventory.precheck import actions, queries
from tests import world as w
from tests.inventory.precheck.cases import NOON

pytestmark = pytest.mark.django_db
ML = 1_000


def signed_in(person) -> Client:
    client = Client()
    client.force_login(person)
    return client


def test_a_technician_does_not_see_the_owner_s_rules(shop: w.World) -> None:
    assert signed_in(shop.tomas).get("/check/rules/").status_code == 403


def test_a_grade_needs_a_reason(shop: w.World) -> None:
    page = signed_in(shop.ines).post("/check/rules/wait.recoat/", {"grade": "tell", "reason": ""})

    assert page.status_code == 200
    assert not RuleGrade.objects.exists()


def test_what_protects_people_is_not_made_a_note(shop: w.World) -> None:
    page = signed_in(shop.ines).post("/check/rules/people.face/", {"grade": "tell", "reason": "A nuisance."})

    assert "This rule protects people: it is never made a note." in page.content.decode()
    assert not RuleGrade.objects.exists()


def test_a_grade_is_kept_with_name_and_reason_and_changes_the_check(shop: w.World) -> None:
    wipe = w.hollin(shop)
    wipe.needs_sheet = False
    wipe.save()
    w.bottle(shop, wipe, 100 * ML)
    job = w.job(shop, NOON + timedelta(days=1))
    w.need(w.step(job, "Panel wipe"), wipe, 180 * ML)
    assert queries.check(job, NOON).check.verdict == "ask"

    signed_in(shop.ines).post(
        "/check/rules/too_little/", {"grade": "tell", "reason": "The van brings more every morning."}
    )

    assert queries.check(job, NOON).check.verdict == "ready"
    page = signed_in(shop.ines).get("/check/rules/").content.decode()
    assert "The van brings more every morning." in page


def test_another_shop_s_grade_changes_nothing_here(shop: w.World) -> None:
    other = w.larkmoor("elsewhere")
    actions.regrade(other.shop, "too_little", "tell", "There.", by=other.ines, at=NOON)

    assert queries.grade_of(shop.shop, "too_little") == ""
    assert queries.grade_of(other.shop, "too_little") == "tell"


def test_a_rule_that_is_none_is_not_found(shop: w.World) -> None:
    assert signed_in(shop.ines).get("/check/rules/moonphase/").status_code == 404


def test_answering_counts_once_as_shown_and_once_as_passed(shop: w.World) -> None:
    wipe = w.hollin(shop)
    wipe.needs_sheet = False
    wipe.save()
    w.bottle(shop, wipe, 100 * ML)
    job = w.job(shop, NOON + timedelta(days=1))
    w.need(w.step(job, "Panel wipe"), wipe, 180 * ML)
    [finding] = queries.check(job, NOON).check.findings
    about = " ".join(finding.about)

    for _ in range(2):
        with pytest.raises(actions.NotNow):
            actions.sign(job, by=shop.tomas, at=NOON)
    assert Shown.objects.count() == 1
    actions.answer(job, finding.code, about, finding.says, "A bottle comes.", by=shop.tomas, at=NOON)

    assert [(one.code, one.grade) for one in Shown.objects.all()] == [("too_little", "ask")]
    assert Override.objects.count() == 1
    [row] = queries.rates(shop.shop, NOON - timedelta(days=365))
    assert (row.rate.shown, row.rate.passed, row.reasons) == (1, 1, ("A bottle comes.",))
    assert queries.rates(shop.shop, NOON + timedelta(days=1)) == []
