"""What the check finds beyond the shelf stops at the station too, and is asked anew when it may change."""

from datetime import timedelta

import pytest

from inventory.models import PlaceCheck, Product, Shown, Step
from inventory.precheck.queries import Pouring
from inventory.precheck.questions import Finding
from inventory.scan.queries.beyond import Beyond
from safety.models import DataSheet, SheetVersion
from tests.inventory.scan.desk import desk
from tests.world import (
    LITRE,
    ML,
    NOON,
    World,
    bleach,
    bottle,
    job,
    larkmoor,
    lime_remover,
    need,
    product,
    reactive,
    soap,
    step,
)

pytestmark = pytest.mark.django_db


def wheels(world: World) -> tuple[str, str]:
    """Return the codes of a job with acid done and iron remover next, and of the iron remover's bottle."""
    car = job(world, NOON)
    first = step(car, "Wheel acid", bay=world.bay_1)
    need(first, reactive(world, "Brack lime remover", "acid", "3", "106"), 10 * ML)
    Step.objects.filter(pk=first.pk).update(signed_at=NOON, signed_by=world.tomas)
    rinse = step(car, "Rinse wheels", bay=world.bay_1, after_hours=1)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)
    iron = reactive(world, "Fenmoor iron remover", "iron", "20", "106")
    need(step(car, "Iron", bay=world.bay_1, after_hours=2), iron, 10 * ML)
    return car.code, bottle(world, iron, LITRE, opened_at=NOON - timedelta(days=1)).code


def test_iron_remover_is_stopped_at_the_station_until_the_rinse_is_signed_there() -> None:
    world = larkmoor()
    car, iron = wheels(world)
    here = desk(world)

    assert here.hears(car, iron) == "stop: Iron waits for the rinse: Rinse wheels is not signed."
    assert here.hears("10 ml").startswith("stop: Iron waits for the rinse")
    assert here.hears("RINSE").startswith("recorded: Signed Rinse wheels")
    assert here.hears(iron, "10 ml").startswith("recorded: ")


def test_taking_the_signature_back_stops_it_again() -> None:
    world = larkmoor()
    car, iron = wheels(world)
    here = desk(world)
    here.hears(car, "RINSE", "UNDO")

    assert here.hears(iron).startswith("stop: Iron waits for the rinse")


def test_what_was_signed_on_a_page_is_known_once_the_car_is_scanned_again() -> None:
    world = larkmoor()
    car, iron = wheels(world)
    here = desk(world)
    assert here.hears(car, iron).startswith("stop: ")

    Step.objects.filter(name="Rinse wheels").update(signed_at=NOON, signed_by=world.ines)

    assert here.hears(car, iron, "10 ml").startswith("recorded: ")


def test_a_stop_for_people_stops_every_bottle_of_its_step_and_none_of_another() -> None:
    world = larkmoor()
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title="Brack alkaline wash")
    SheetVersion.objects.create(
        sheet=sheet, revision_on=NOON.date(), typed_on=NOON.date(), confirmed_on=NOON.date(),
        confirmed_by="Ines", hazards=["Skin Corr. 1A H314"],
    )  # fmt: skip
    burns = product(world, "Brack alkaline wash", "alkaline", sheet=sheet)
    mild, wipe = (
        product(world, name, "shampoo", needs_sheet=False) for name in ("Fenmoor soap", "Fenmoor foam")
    )
    car = job(world, NOON)
    wash = step(car, "Wash", bay=world.bay_1)
    need(wash, burns, 10 * ML)
    need(wash, mild, 10 * ML)
    need(step(car, "Foam", bay=world.bay_1, after_hours=1), wipe, 10 * ML)
    strong, soft, other = (
        bottle(world, each, LITRE, opened_at=NOON - timedelta(days=1)).code for each in (burns, mild, wipe)
    )
    here = desk(world)
    here.hears(car.code)
    no_eyewash = "stop: Bay 1 has no eyewash for what burns eyes."

    assert here.hears(strong) == no_eyewash
    assert here.hears("10 ml") == no_eyewash
    assert here.hears("YES") == "tell: There is no question to answer."
    assert here.hears(soft) == no_eyewash
    assert here.hears(other, "10 ml").startswith("recorded: ")

    world.bay_1.eyewash_at = "left of the door"
    world.bay_1.save()
    PlaceCheck.objects.create(place=world.bay_1, what="eyewash", done_at=NOON, by=world.tomas)

    assert here.hears(car.code, strong, "10 ml").startswith("recorded: ")


def test_an_ozone_machine_stops_every_bottle_of_the_step_beside_it() -> None:
    world = larkmoor()
    mild = product(world, "Fenmoor soap", "shampoo", needs_sheet=False)
    car = job(world, NOON)
    need(step(car, "Wash", bay=world.bay_1), mild, 10 * ML)
    machine = step(car, "Ozone", bay=world.bay_1, after_hours=0)
    soap = bottle(world, mild, LITRE, opened_at=NOON - timedelta(days=1)).code
    assert desk(world).hears(car.code, soap, "10 ml").startswith("recorded: ")

    Step.objects.filter(pk=machine.pk).update(tools=["ozone"])

    here = desk(world, name="Another screen")
    assert (
        here.hears(car.code, soap) == "stop: Wash is planned in Bay 1 while the ozone machine of Ozone runs."
    )


def test_what_is_on_the_car_already_is_written_down_whoever_it_harms() -> None:
    world = larkmoor()
    car, iron = wheels(world)
    here = desk(world)

    assert here.hears(car, iron).startswith("stop: ")
    assert here.hears("ALREADY", "10 ml").startswith("recorded: ")


def test_what_a_car_s_scan_showed_is_kept_once() -> None:
    world = larkmoor()
    car, _ = wheels(world)

    desk(world).hears(car, car)

    assert Shown.objects.filter(code="reaction.car").count() == 1


def test_what_was_found_serves_two_minutes_for_its_own_job_and_never_backwards() -> None:
    found = Beyond("JDPXKLNB", "HTMSKLNB", NOON, ())

    assert found.serves("JDPXKLNB", "HTMSKLNB", NOON + timedelta(seconds=119))
    assert not found.serves("JDPXKLNB", "HTMSKLNB", NOON + timedelta(minutes=2))
    assert not found.serves("JDPRHHLN", "HTMSKLNB", NOON)
    assert not found.serves("JDPXKLNB", "HNESKLNB", NOON)
    assert not found.serves("JDPXKLNB", "HTMSKLNB", NOON - timedelta(seconds=1))
    assert Beyond.from_json(found.as_json()) == found


@pytest.mark.parametrize(
    ("judged", "asked", "grade", "serves", "because"),
    [
        ("", None, "stop", True, "the plan alone, as it was judged"),
        ("X1", None, "stop", False, "a bottle that was put away harms nobody"),
        ("", ("X1", None), "tell", False, "the plan does not hold it"),
        ("X1", ("X1", 60), "stop", True, "the same amount"),
        ("X1", ("X2", 60), "tell", False, "another product"),
        ("X1", ("X1", 61), "tell", False, "more than was judged"),
        ("X1", ("X1", 10), "tell", True, "less than what raised nothing"),
        ("X1", ("X1", 10), "stop", False, "less than what was stopped may be little enough"),
        ("X1", ("X1", 10), "ask", False, "nor is the answer to less that of more"),
    ],
)
def test_what_was_found_with_a_bottle_in_hand_serves_that_bottle_and_what_it_was_judged_for(
    judged: str, asked: tuple[str, int | None] | None, grade: str, serves: bool, because: str
) -> None:
    finding = Finding("air.exposure", grade, "Says.", "", "", "", ("SDPXKLNB",))
    found = Beyond("JDPXKLNB", "HTMSKLNB", NOON, (finding,), judged, 60 if judged else None, "SDPXKLNB")
    pouring = Pouring(Product(code=asked[0]), asked[1], "SDPXKLNB") if asked else None

    assert found.answers(pouring) is serves, because
    assert Beyond.from_json(found.as_json()) == found


def test_what_is_recorded_is_known_from_then_on() -> None:
    found = Beyond("JDPXKLNB", "HTMSKLNB", NOON, (), "X1", 60, "SDPXKLNB").as_recorded()

    assert found.answers(None)
    assert found.answers(Pouring(Product(code="X1"), None, "SDPXKLNB"))
    assert not found.answers(Pouring(Product(code="X1"), 10, "SDPXKLNB"))


def test_what_was_just_used_unplanned_stops_the_next_bottle_that_it_must_not_meet() -> None:
    world = larkmoor()
    car = job(world, NOON)
    Step.objects.filter(pk=step(car, "Wheels", bay=world.bay_1).pk).update(touches=["paint"])
    sour = bottle(world, lime_remover(world), LITRE, opened_at=NOON - timedelta(days=1))
    white = bottle(world, bleach(world), LITRE, opened_at=NOON - timedelta(days=1))
    mild = bottle(world, soap(world), LITRE, opened_at=NOON - timedelta(days=1))
    here = desk(world)
    # Nobody is trained here and no eyewash is run: what the check says of people is another test's.
    Product.objects.update(kind="other")
    assert here.hears(car.code, sour.code, "10 ml").startswith("recorded: ")

    assert here.hears(mild.code, "10 ml").startswith("recorded: ")
    assert here.hears(white.code, "10 ml").startswith(
        "stop: Brack bleach and Brack lime remover follow one another on this car without a rinse."
    )


def test_signing_a_stage_leaves_its_rinse_to_rinse() -> None:
    world = larkmoor()
    car = job(world, NOON)
    step(car, "Wheel acid")
    rinse = step(car, "Rinse wheels", after_hours=1)
    Step.objects.filter(pk=rinse.pk).update(rinses=True)
    here = desk(world)

    spoken = [here.say(line) for line in (car.code, "SIGN")][-1]

    assert spoken["next"] == "Rinse wheels is signed by RINSE, once the drain runs clear."
    rinse.refresh_from_db()
    assert rinse.signed_at is None
    assert here.hears("SIGN") == "tell: Rinse wheels on Grey estate is not signed."


def test_who_scans_is_judged_not_who_was_planned() -> None:
    world = larkmoor()
    world.bay_1.eyewash_at = "left of the door"
    world.bay_1.save()
    PlaceCheck.objects.create(place=world.bay_1, what="eyewash", done_at=NOON, by=world.tomas)
    sour = lime_remover(world)
    car = job(world, NOON)
    lime = step(car, "Lime", bay=world.bay_1, person=world.ines)
    lime.touches = ["paint", "glass"]
    lime.save()
    need(lime, sour, 10 * ML)
    here_is = bottle(world, sour, LITRE, opened_at=NOON - timedelta(days=1))

    other = desk(world, who=world.tomas, name="Tomas")
    assert other.hears(car.code, here_is.code) == "stop: Tomas has not signed the sheet of the first day."
    assert desk(world, who=world.ines, name="Ines").hears(car.code, here_is.code).startswith("recorded: ")
    # More of it, which nobody planned, is taken in the same step.
    assert other.hears(here_is.code) == "stop: Tomas has not signed the sheet of the first day."
