"""A service while it is written: what its steps run into on a clean car, asked once and not at each job."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from inventory.models import Service
from inventory.precheck.queries.services import clashes_of
from tests import world as w

pytestmark = pytest.mark.django_db
ML = 1_000


@pytest.fixture
def service(shop: w.World) -> Service:
    return Service.objects.create(shop=shop.shop, name="Correction and coating")


def step(of: Service, name: str, kind: str, after: int = 0, stage: str = "correct", **work: object):
    row = of.steps.create(
        position=of.steps.count() + 1, stage=stage, name=name, starts_after=after, minutes=60, **work
    )
    row.needs.create(kind=kind, amount=ML)
    return row


def cut_and_coat(of: Service, *between: tuple[str, str]) -> None:
    step(of, "Cut", "compound")
    for n, (name, kind) in enumerate(between, 1):
        step(of, name, kind, 60 * n)
    step(of, "Coat", "coating", 600, "coat")


def told(of: Service) -> list[tuple[str, str, str]]:
    return [(one.clash.grade, one.clash.code, one.step.name) for one in clashes_of(of)]


def test_a_compound_that_nothing_refines_is_asked_about_once_in_the_service(service: Service) -> None:
    cut_and_coat(service, ("Wipe", "solvent"))
    assert told(service) == [("ask", "order.no_refining", "Coat")]


def test_a_polish_between_them_settles_it(service: Service) -> None:
    cut_and_coat(service, ("Refine", "polish"), ("Wipe", "solvent"))
    assert told(service) == []


def test_a_coat_without_a_wipe_after_the_polish_stops(service: Service) -> None:
    cut_and_coat(service, ("Refine", "polish"))
    assert told(service) == [("stop", "residue.oils", "Coat")]


def test_what_a_step_says_of_itself_counts(service: Service) -> None:
    step(service, "Coat", "coating", stage="coat")
    polish = step(service, "Polish", "polish", 60 * 24 * 30)
    assert ("stop", "residue.coating", "Polish") in told(service)

    polish.strips_coating = True
    polish.save()

    assert ("stop", "residue.coating", "Polish") not in told(service)


def test_a_wait_is_said_from_the_service_s_start_since_it_has_no_date(service: Service) -> None:
    step(service, "Coat", "coating", stage="coat")
    step(service, "Wax on top", "wax", 60, "coat")
    [one] = clashes_of(service)
    assert (one.clash.grade, one.clash.code, one.step.name) == ("stop", "wait.cure", "Wax on top")
    assert one.clash.do == "Wait until 49 h after the start."
    assert "coating was put on until 60 min after the start." in one.clash.because
    assert "2026" not in one.clash.says + one.clash.because


def test_the_service_s_page_says_it_and_leads_to_the_step(ines: Client, service: Service) -> None:
    cut_and_coat(service, ("Wipe", "solvent"))
    coat = service.steps.get(name="Coat")
    page = ines.get(reverse("jobs:service", args=[service.pk])).content.decode()
    assert "What its steps run into" in page
    assert "Put a finishing polish before this step, or keep it so where the customer wants it so." in page
    assert reverse("jobs:service_step", args=[service.pk, coat.pk]) in page


def test_a_service_in_a_right_order_says_nothing_of_it(ines: Client, service: Service) -> None:
    cut_and_coat(service, ("Refine", "polish"), ("Wipe", "solvent"))
    page = ines.get(reverse("jobs:service", args=[service.pk])).content.decode()
    assert "What its steps run into" not in page


def test_a_long_service_asks_as_many_queries_as_a_short_one(service: Service, shop: w.World) -> None:
    counted = []
    for products in (2, 10):
        for n in range(products):
            made = w.product(shop, f"Marl {products} {n}", "compound")
            row = step(service, f"Cut {products} {n}", "compound")
            row.needs.create(product=made, amount=ML)
        with CaptureQueriesContext(connection) as asked:
            clashes_of(service)
        counted.append(len(asked))
    assert counted[0] == counted[1]
