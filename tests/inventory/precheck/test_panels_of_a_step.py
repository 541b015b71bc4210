"""What a step's panels and a look at the car change for the surfaces: residues, stops, and who said what."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Arrival, Job, Panel, Step
from inventory.precheck import queries
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.surfaces import load
from tests import world as w
from tests.inventory.precheck.cars import TOMORROW, coating_job, facts, visit, wax
from tests.world import GRAM, ML, NOON

pytestmark = pytest.mark.django_db
UNKNOWN = "Nobody said what this car arrives with."


def two_panels(vehicle, *surfaces: str) -> list[Panel]:
    kinds = surfaces or ("clear_coat", "clear_coat")
    return [
        Panel.objects.create(vehicle=vehicle, position=n, name=name, surface=surface)
        for n, (name, surface) in enumerate(zip(("bonnet", "roof"), kinds, strict=True))
    ]


def polished(job: Job, *of: Panel) -> Step:
    step = w.step(job, "Polish", stage="correct")
    Step.objects.filter(pk=step.pk).update(cut="finish")
    step.panels.set(of)
    w.need(step, "polish", GRAM)
    w.need(step, "solvent", ML)
    return step


def said(job: Job, *families: str) -> list[tuple[str, str]]:
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    found = queries.check(fresh, NOON).check.findings
    return [(one.code, one.says) for one in found if one.code.startswith(families or ("residue.",))]


# What is cut on some panels


def test_a_matte_panel_that_is_not_cut_stops_no_polish(shop: w.World) -> None:
    job = w.job(shop, TOMORROW)
    bonnet, _ = two_panels(job.vehicle, "clear_coat", "matte")
    step = polished(job)
    # the twin: a polish of the whole car meets the matte roof
    assert [code for code, _ in said(job, "surface.")] == ["surface.never"]

    step.panels.set([bonnet])

    assert said(job, "surface.") == []


def test_a_polish_takes_wax_only_off_the_panels_that_it_meets(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    bonnet, _ = two_panels(job.vehicle)
    Arrival.objects.create(job=job, residue="wax")
    step = polished(job)
    # the twin: the whole car is polished, and nothing is left of the wax
    assert said(job) == []

    step.panels.set([bonnet])

    assert said(job) == [("residue.wax", "Coating: Tidewall coating would go over wax on the roof.")]


def test_what_an_earlier_visit_polished_on_one_panel_left_its_wax_on_the_other(shop: w.World) -> None:
    vehicle = w.car(shop)
    bonnet, _ = two_panels(vehicle)
    visit(shop, vehicle, ("Wax", wax(shop)), days_ago=60)
    past = visit(shop, vehicle, ("Polish", "polish"), days_ago=30)
    polish = past.steps.get()
    Step.objects.filter(pk=polish.pk).update(cut="finish")
    job = coating_job(shop, w.tidewall(shop), vehicle)
    assert [bool(one.arrives) for one in facts(job).surfaces] == [False, False]

    polish.panels.set([bonnet])

    assert [(one.name, list(one.arrives)) for one in facts(job).surfaces] == [
        ("bonnet", []), ("roof", ["wax"]),
    ]  # fmt: skip


def test_the_panels_of_cuts_are_one_query_however_many_steps_and_cars_have_some(shop: w.World) -> None:
    def asked(*jobs: Job) -> int:
        with CaptureQueriesContext(connection) as queries_of:
            load(Loading(shop.shop, jobs))
        return len(queries_of)

    def loaded(name: str, steps: int) -> Job:
        job = w.job(shop, TOMORROW, vehicle=w.car(shop, name))
        made = two_panels(job.vehicle)
        for _ in range(steps):
            polished(job, *made)
        return job

    few = asked(loaded("Small", 1))
    assert asked(*(loaded(f"Car {n}", 5) for n in range(4))) == few


# What somebody saw


def test_a_car_of_which_nobody_said_anything_is_told(shop: w.World) -> None:
    assert said(coating_job(shop, w.tidewall(shop))) == [("residue.unknown", UNKNOWN)]


def test_looked_and_nothing_on_it_ends_that(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    Arrival.objects.create(job=job, residue="nothing")
    assert said(job) == []


def test_a_look_at_one_panel_says_nothing_of_the_other(shop: w.World) -> None:
    job = coating_job(shop, w.tidewall(shop))
    bonnet, roof = two_panels(job.vehicle)
    Panel.objects.create(vehicle=job.vehicle, position=3, name="windscreen", surface="glass")
    Arrival.objects.create(job=job, residue="nothing", panel=bonnet)
    assert said(job) == [("residue.unknown", UNKNOWN)]

    Arrival.objects.create(job=job, residue="nothing", panel=roof)

    assert said(job) == []


@pytest.mark.parametrize(
    ("of_the_car", "of_the_roof", "expected", "because"),
    [
        ("nothing", "wax", {"bonnet": [], "roof": ["wax"]}, "the roof differs from its car"),
        ("wax", "nothing", {"bonnet": ["wax"], "roof": []}, "and the other way round"),
        ("wax", None, {"bonnet": ["wax"], "roof": ["wax"]}, "nobody looked at the roof"),
    ],
)
def test_a_panel_s_own_row_goes_over_the_car_s(
    shop: w.World, of_the_car: str, of_the_roof: str | None, expected: dict[str, list[str]], because: str
) -> None:
    job = coating_job(shop, w.tidewall(shop))
    _, roof = two_panels(job.vehicle)
    Arrival.objects.create(job=job, residue=of_the_car)
    if of_the_roof:
        Arrival.objects.create(job=job, residue=of_the_roof, panel=roof)
    assert {one.name: list(one.arrives) for one in facts(job).surfaces} == expected, because


def test_a_look_ends_wax_of_an_earlier_visit_and_not_the_coating_below_it(shop: w.World) -> None:
    vehicle = w.car(shop)
    visit(shop, vehicle, ("Coating", w.tidewall(shop)), ("Wax", wax(shop)))
    job = w.job(shop, TOMORROW, vehicle=vehicle)
    [before] = facts(job).surfaces
    assert (list(before.arrives), before.coating) == (["wax"], "Tidewall coating")

    Arrival.objects.create(job=job, residue="nothing")

    [after] = facts(job).surfaces
    assert (list(after.arrives), after.coating) == ([], "Tidewall coating")
