"""People and protection as the database keeps them: what is loaded, in how many queries, of whose shop."""

from datetime import date, timedelta
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import (
    Container,
    Equipment,
    FirstDay,
    FitTest,
    GloveMinutes,
    Job,
    MedicalEvaluation,
    Place,
    PlaceCheck,
    Product,
    Training,
)
from inventory.precheck import queries
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.people import load
from inventory.stock.rules.acts import Act
from safety.models import DataSheet, SheetVersion
from tests import world as w
from tests.world import ML, NOON

pytestmark = pytest.mark.django_db
TODAY = NOON.date()
CORROSIVE = ["Skin Corr. 1B H314"]


def sheeted(product: Product, on: date = date(2025, 1, 1), *, confirmed: bool = True, **says: Any) -> Product:
    sheet, _ = DataSheet.objects.get_or_create(supplier="Orlo Supply", title=product.name)
    stood_for = {"confirmed_on": on, "confirmed_by": "Ines"} if confirmed else {}
    SheetVersion.objects.create(sheet=sheet, revision_on=on, typed_on=on, **stood_for, **says)
    product.sheet = sheet
    product.save()
    return product


def acid(world: w.World, name: str = "Brack wheel acid", **says: Any) -> Product:
    known = {"hazards": CORROSIVE, "holds_fluoride": True, "wear_eyes": "face shield", **says}
    return sheeted(w.product(world, name, "acid"), **known)


def serving(world: w.World, name: str, serves: str, place: Place | None = None, **facts: Any) -> Container:
    kind = facts.pop("kind", "protective")
    expires_on = facts.pop("expires_on", date(2027, 12, 31))
    of = w.product(world, name, kind, dimension="pieces")
    Equipment.objects.create(product=of, serves=serves, **facts)
    return w.bottle(world, of, 10, expires_on=expires_on, place=place)


def washing(world: w.World, steps: int = 1, **work: Any) -> Job:
    """A job whose steps each take an acid of their own, in Bay 1, by Tomas."""
    job = w.job(world)
    for at in range(steps):
        step = w.step(job, f"Acid {at}", bay=world.bay_1, person=world.tomas)
        type(step).objects.filter(pk=step.pk).update(**work)
        w.need(step, acid(world, f"Acid {job.code} {at}"), 10 * ML)
    return Job.objects.select_related("shop", "vehicle").get(pk=job.pk)


def facts(world: w.World, job: Job) -> Any:
    return load(Loading(world.shop, [job]))[job.pk]


def fitted(world: w.World, mask: Product) -> None:
    evaluation = MedicalEvaluation.objects.create(
        person=world.tomas, evaluated_on=TODAY - timedelta(days=20), kept_by=world.ines
    )
    FitTest.objects.create(
        person=world.tomas, mask=mask, evaluation=evaluation, tested_on=TODAY - timedelta(days=19),
        until_on=TODAY + timedelta(days=300), kept_by=world.ines,
    )  # fmt: skip


def test_a_step_is_loaded_with_its_person_its_mask_and_what_it_names(world: w.World) -> None:
    job = washing(world, respirator="half", sprayed=True)
    mask = serving(world, "Ossen half mask", "half").product
    fitted(world, mask)
    Training.objects.create(
        person=world.tomas, topic="fluoride", trained_on=TODAY, proof="Ines", kept_by=world.ines
    )
    FirstDay.objects.create(person=world.tomas, signed_at=NOON, shown_by=world.ines)

    found = facts(world, job)

    step, product = job.steps.get(), job.steps.get().needs.get().product
    work = found.work[step.code]
    assert (work.person, work.respirator, work.sprayed, work.products) == (
        world.tomas.code, "half", True, (product.code,),
    )  # fmt: skip
    tomas = found.persons[world.tomas.code]
    assert [one.topic for one in tomas.trained] == ["fluoride"]
    assert (tomas.first_day, tomas.owner, len(tomas.evaluated)) == (NOON, False, 1)
    assert (tomas.fitted[0].mask, tomas.fitted[0].serves) == (mask.code, "half")
    danger = found.dangers[product.code]
    assert (danger.hazards, danger.fluoride, danger.worn["eyes"]) == (tuple(CORROSIVE), True, "face shield")


def test_an_unconfirmed_sheet_gives_no_classes_and_its_fluoride_counts(world: w.World) -> None:
    job = w.job(world)
    product = w.product(world, "Brack wheel acid", "acid")
    sheeted(product, hazards=["Eye Irrit. 2 H319"])
    sheeted(product, date(2026, 1, 1), confirmed=False, hazards=CORROSIVE, holds_fluoride=True)
    w.need(w.step(job), product, ML)

    danger = facts(world, job).dangers[product.code]

    assert (danger.hazards, danger.fluoride) == (("Eye Irrit. 2 H319",), True)


def hold(world: w.World, box: Container) -> None:
    w.record(world, Act("quarantine", NOON, target=box.code, facts={"reason": "torn"}))


def hold_lot(world: w.World, box: Container) -> None:
    w.record(world, Act("quarantine", NOON, lot=box.lots.get().code, facts={"reason": "called back"}))


def discard(world: w.World, box: Container) -> None:
    w.record(world, Act("discard", NOON, target=box.code, facts={"reason": "torn"}))


def put_away(world: w.World, box: Container) -> None:
    Place.objects.filter(pk=box.place_id).update(kind="waste")


@pytest.mark.parametrize("spoil", [hold, hold_lot, discard, put_away])
def test_what_is_on_its_way_out_protects_nobody(world: w.World, spoil: Any) -> None:
    box = serving(world, "Ossen gloves", "gloves")
    job = washing(world)
    assert [one.code for one in facts(world, job).items] == [box.code]

    spoil(world, box)

    found = facts(world, job)
    assert (found.items, found.kept) == ((), True)


def test_an_item_in_a_box_in_a_cabinet_in_the_bay_is_in_reach_of_it(world: w.World) -> None:
    cabinet = Place.objects.create(shop=world.shop, name="Cabinet", kind="cabinet", within=world.bay_1)
    box = Place.objects.create(shop=world.shop, name="Green box", kind="tray", within=cabinet)
    serving(world, "Ossen gel", "gluconate", box, kind="first_aid")

    found = facts(world, washing(world)).items[0]

    assert found.reach == {box.code, cabinet.code, world.bay_1.code}
    assert (found.place_name, found.ends_on, found.sealed) == ("Green box", date(2027, 12, 31), True)


def test_a_bay_knows_its_last_run_and_the_fluorides_that_stand_in_it(world: w.World) -> None:
    shelf = Place.objects.create(shop=world.shop, name="Shelf", kind="shelf", within=world.bay_1)
    stands = acid(world)
    w.bottle(world, stands, 100 * ML, place=shelf)
    w.bottle(world, acid(world, "Old acid, reformulated", holds_fluoride=False), 100 * ML, place=shelf)
    for days in (9, 2):
        PlaceCheck.objects.create(
            place=world.bay_1, what="eyewash", done_at=NOON - timedelta(days=days), by=world.tomas
        )
    PlaceCheck.objects.create(place=world.bay_1, what="rags", done_at=NOON, by=world.tomas)

    bay = facts(world, washing(world)).bays[world.bay_1.code]

    assert bay.fluorides == ("Brack wheel acid",)
    assert bay.run_at == NOON - timedelta(days=2)


def test_the_minutes_of_gloves_come_with_the_gloves_that_are_here(world: w.World) -> None:
    job = washing(world)
    product = job.steps.get().needs.get().product
    here = serving(world, "Ossen gloves", "gloves").product
    away = w.product(world, "Corrin gloves", "protective", dimension="pieces")
    for glove, minutes in ((here, 30), (away, 480)):
        GloveMinutes.objects.create(glove=glove, against=product, minutes=minutes, source="table of May 2026")

    assert [(one.glove_name, one.minutes) for one in facts(world, job).gloves] == [("Ossen gloves", 30)]


def test_another_shop_protects_and_trains_nobody_here(world: w.World) -> None:
    other = w.larkmoor("elsewhere")
    serving(other, "Ossen gloves", "gloves")
    Training.objects.create(
        person=other.tomas, topic="fluoride", trained_on=TODAY, proof="Ines", kept_by=other.ines
    )

    found = facts(world, washing(world))

    assert (found.kept, found.trainings_kept, found.items) == (False, False, ())


def full(world: w.World) -> None:
    serving(world, "Ossen gloves", "gloves")
    fitted(world, serving(world, "Ossen half mask", "half").product)
    serving(world, "Ossen eyewash", "eyewash", world.bay_1, kind="first_aid")


def counted(world: w.World, jobs: list[Job]) -> int:
    loading = Loading(world.shop, jobs)
    assert loading.step_rows
    assert loading.work_rows
    assert loading.product_rows
    with CaptureQueriesContext(connection) as asked:
        load(loading)
    return len(asked)


def test_fifteen_steps_cost_no_more_queries_than_three_nor_three_jobs_than_one(
    world: w.World,
) -> None:
    full(world)
    small = washing(world, 3, respirator="half")
    large = washing(world, 15, respirator="half")

    few = counted(world, [small])

    assert few <= 10
    assert counted(world, [large]) == few
    assert counted(world, [small, large, washing(world, 2, respirator="half")]) == few


def test_a_harmless_job_asks_nothing_about_its_people(world: w.World) -> None:
    job = w.job(world)
    w.need(w.step(job, bay=world.bay_1, person=world.tomas), w.product(world, "Soap", "shampoo"), ML)
    assert counted(world, [job]) <= 3


def test_the_check_says_what_is_missing_and_falls_silent_when_it_is_there(world: w.World) -> None:
    job = washing(world)
    codes = {one.code for one in queries.check(job, NOON).check.findings}
    assert {"people.first_day", "people.gluconate", "people.eyewash", "people.training"} <= codes

    serving(world, "Ossen gel", "gluconate", world.bay_1, kind="first_aid")
    serving(world, "Ossen eyewash", "eyewash", world.bay_1, kind="first_aid")
    for worn in ("gloves", "goggles", "face_shield", "apron"):
        serving(world, f"Ossen {worn}", worn)
    FirstDay.objects.create(person=world.tomas, signed_at=NOON, shown_by=world.ines)
    for topic in ("corrosive", "fluoride"):
        Training.objects.create(
            person=world.tomas, topic=topic, trained_on=TODAY, proof="Ines", kept_by=world.ines
        )

    left = {one.code for one in queries.check(job, NOON).check.findings}
    assert not any(code.startswith("people.") for code in left), left
