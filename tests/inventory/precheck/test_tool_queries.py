"""Tools, dry ice and rag cans as the check loads them from the database."""

from datetime import timedelta

import pytest

from inventory.models import IgnitionSource, PlaceCheck, Step
from inventory.precheck.queries import TOPICS, check, facts_of
from inventory.stock.rules.acts import Act
from tests.world import LITRE, ML, NOON, World, bottle, job, larkmoor, need, reactive, record, step

pytestmark = pytest.mark.django_db


@pytest.fixture
def world() -> World:
    return larkmoor()


def loaded(of) -> object:  # type: ignore[no-untyped-def]
    return facts_of(of.shop, [of], TOPICS)[of.pk]


def test_a_step_brings_its_tools_and_its_dry_ice_even_where_it_takes_nothing(world: World) -> None:
    of = job(world)
    blast = step(of, bay=world.bay_1)
    Step.objects.filter(pk=blast.pk).update(tools=["dry_ice", "vacuum"], dry_ice_g=2500)

    [one] = loaded(of).air.steps
    assert (one.tools, one.dry_ice_g) == (("dry_ice", "vacuum"), 2500)


def test_a_source_brings_its_sort(world: World) -> None:
    of = job(world)
    Step.objects.filter(pk=step(of, bay=world.bay_1).pk).update(tools=["ozone"])
    IgnitionSource.objects.create(place=world.bay_1, name="big heater", sort="fuel_heater", state="on")

    [spark] = loaded(of).air.places[world.bay_1.code].sparks
    assert (spark.name, spark.sort, spark.state) == ("big heater", "fuel_heater", "on")


def test_a_rag_can_knows_where_it_is_when_it_was_emptied_and_when_it_was_used(world: World) -> None:
    world.bay_1.rag_can_at = "left of the door"
    world.bay_1.save()
    wipe = reactive(world, "Panel wipe", "solvent", "4")
    of = job(world)
    wiping = step(of, bay=world.bay_1)
    need(wiping, wipe, 100 * ML)
    drum = bottle(world, wipe, LITRE)
    before = job(world)
    done = step(before, bay=world.bay_1)
    used = NOON - timedelta(days=1)
    record(world, Act("use", used, source=drum.code, amount=50 * ML, job=before.code, step=done.code))
    emptied = NOON - timedelta(days=2)
    PlaceCheck.objects.create(place=world.bay_1, what="rags", done_at=emptied, by=world.tomas)
    PlaceCheck.objects.create(place=world.bay_1, what="eyewash", done_at=NOON, by=world.tomas)

    can = loaded(of).rags.bays[world.bay_1.code]
    assert (can.name, can.can_at) == ("Bay 1", "left of the door")
    assert (can.emptied_at, can.used_at) == (emptied, used)


def test_what_was_taken_back_filled_no_can(world: World) -> None:
    wipe = reactive(world, "Panel wipe", "solvent", "4")
    of = job(world)
    wiping = step(of, bay=world.bay_1)
    need(wiping, wipe, 100 * ML)
    drum = bottle(world, wipe, LITRE)
    lines = record(world, Act("use", NOON, source=drum.code, amount=50 * ML, job=of.code, step=wiping.code))
    record(world, Act("reverse", NOON, reverses=lines[-1].seq))
    assert loaded(of).rags.bays[world.bay_1.code].used_at is None


def test_an_acid_that_is_rinsed_by_a_jet_stops_the_whole_check(world: World) -> None:
    of = job(world)
    rims = step(of, bay=world.bay_1)
    need(rims, reactive(world, "Brack lime remover", "acid", "3"), 100 * ML)

    assert "tools.washer" not in {one.code for one in check(of, NOON).check.findings}
    Step.objects.filter(pk=rims.pk).update(tools=["pressure_washer"])
    assert "tools.washer" in {one.code for one in check(of, NOON).check.findings}
