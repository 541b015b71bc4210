"""More than planned is judged before it is recorded, and who scans is asked once, by name."""

import pytest

from inventory.models import Override, Place, Shown, Step
from inventory.precheck.rules import ENDED_BY_DOING as OF_THE_CHECK
from inventory.stock.conversation.guards import ENDED_BY_DOING
from tests.inventory.scan.desk import desk, kinds
from tests.inventory.scan.unplanned import found, kept, nia, opened, plain, shop, wheel_acid, wipe, working
from tests.world import ML, need, step

pytestmark = pytest.mark.django_db


def wiping(world: object, ml: int = 60) -> tuple[object, str, str]:
    """Return a job that plans the wipe, its code, and a bottle of it."""
    made = wipe(world)  # type: ignore[arg-type]
    car, now = working(world)  # type: ignore[arg-type]
    need(now, made, ml * ML)
    return car, car.code, opened(world, made)  # type: ignore[arg-type]


def test_an_amount_far_above_the_plan_is_judged_before_it_is_recorded() -> None:
    """700 ml let go 700/180 of the 91.2 % that 180 ml give: 355 %."""
    world = shop()
    _, car, full = wiping(world)
    here = desk(world)
    assert here.hears(car, full).startswith("recorded: Hollin panel wipe ")

    spoken = here.say("700 ml")

    assert f"{spoken['grade']}: {spoken['says']}" == (
        "stop: Wheels, Bay 1: who works here breathes 355 % of the 15-minute limit (isopropanol)."
    )
    assert spoken["next"].endswith("60 ml stay recorded: type another amount, or UNDO.")
    assert kept(full).content == 940 * ML
    # It is still the amount of the same use: 50 ml instead of 60, not on top of them.
    assert kinds(here.say("50 ml")) == ["reverse", "use"]
    assert kept(full).content == 950 * ML


def test_an_amount_above_the_plan_asks_with_its_own_figure_and_is_kept_with_it() -> None:
    """120 ml let go 120/180 of 91.2 %: 60.8 %."""
    world = shop()
    car, code, full = wiping(world)
    here = desk(world)
    asked = "Wheels, Bay 1: who works here breathes 60.8 % of the 15-minute limit (isopropanol)."

    assert here.hears(code, full, "120 ml") == f"ask: {asked}"
    assert here.hears("YES").startswith("recorded: Hollin panel wipe ")

    answered = Override.objects.get(code="air.exposure")
    assert (answered.says, answered.by, answered.reason) == (asked, world.tomas, "Answered at the station.")
    assert Shown.objects.filter(code="air.exposure", job=car).exists()
    assert [(one.grade, one.says) for one in found(car, "air.exposure")] == [("tell", asked)]


def test_a_larger_amount_than_the_one_that_was_answered_asks_again() -> None:
    world = shop()
    _, code, full = wiping(world)
    here = desk(world)
    here.hears(code, full, "120 ml", "YES", full)

    assert here.hears("30 ml").startswith(
        "ask: Wheels, Bay 1: who works here breathes 76 % of the 15-minute limit"
    )


def test_the_planned_bottle_in_the_planned_amount_says_nothing_new() -> None:
    world = shop()
    _, code, full = wiping(world)
    here = desk(world)

    assert here.hears(code, full).startswith("recorded: ")
    assert here.hears("40 ml").startswith("recorded: ")
    assert not Override.objects.exists()


def test_what_was_used_beyond_the_plan_counts_in_the_check_afterwards() -> None:
    world = shop()
    car, code, full = wiping(world)
    here = desk(world)
    assert "30.4 %" in found(car, "air.exposure")[0].says

    here.hears(code, full, "ALREADY", "340 ml")

    assert [(one.grade, one.says) for one in found(car, "air.exposure")] == [
        ("stop", "Wheels, Bay 1: who works here breathes 203 % of the 15-minute limit (isopropanol).")
    ]


def test_a_bottle_that_was_put_away_again_stops_no_other() -> None:
    world = shop()
    _, code, full = wiping(world)
    here = desk(world)
    assert here.hears(code, opened(world, wheel_acid(world))).startswith("stop: ")

    assert here.hears(full).startswith("recorded: ")


# Who scans


def test_who_scans_is_asked_about_once_for_a_job_and_the_answer_is_kept_by_name() -> None:
    world = shop()
    car, code, full = wiping(world, 120)
    new = nia(world)
    here = desk(world, who=new)
    asked = "Nia has no training in date for flammable liquids and aerosols (Hollin panel wipe)."

    assert here.hears(code, full) == f"ask: {asked}"
    assert here.hears("NO") == "tell: Nothing was recorded."
    assert here.hears(full, "YES").startswith("recorded: ")
    assert here.hears("50 ml").startswith("recorded: ")

    answered = Override.objects.get(code="people.training")
    assert (answered.says, answered.by, answered.job) == (asked, new, car)
    assert desk(world, who=new, name="Second").hears(code, full).startswith("recorded: ")


def test_who_scans_is_not_asked_about_another_product_of_the_stage() -> None:
    world = shop()
    _, code, full = wiping(world)
    polish = plain(world, "Sallow polish", "polish")
    need(Step.objects.get(), polish, 20 * ML)
    here = desk(world, who=nia(world))

    assert here.hears(code, opened(world, polish)).startswith("recorded: Sallow polish ")
    assert here.hears(full) == (
        "ask: Nia has no training in date for flammable liquids and aerosols (Hollin panel wipe)."
    )
    assert not Override.objects.exists()


def test_who_pours_without_a_plan_is_not_asked_about_the_planned_product_of_the_step() -> None:
    world = shop()
    _, code, full = wiping(world)
    mild = opened(world, plain(world, "Fenmoor soap", "shampoo"))
    here = desk(world, who=nia(world))

    here.hears(code, mild)
    assert here.hears("20 ml").startswith("recorded: Fenmoor soap ")
    assert here.hears(full).startswith("ask: Nia has no training in date for flammable liquids ")


def test_a_mask_of_the_step_is_asked_about_with_each_of_its_bottles() -> None:
    world = shop()
    car, now = working(world, respirator="half")
    polish = plain(world, "Sallow polish", "polish")
    need(now, polish, 20 * ML)

    asks = [one for one in found(car, "people.training") if one.grade == "ask"]

    assert [(one.says, one.of) for one in asks] == [
        ("Tomas has no training in date for wearing a respirator.", (now.code,))
    ]


def test_asks_of_people_and_of_other_bottles_stay_on_the_check_s_page() -> None:
    world = shop()
    car, code, full = wiping(world)
    new = nia(world)
    later = step(car, "Wipe again", stage="coat", bay=world.bay_1, person=new, after_hours=2)  # type: ignore[arg-type]
    need(later, wipe_of(full), 60 * ML)

    # Nia's training for Thursday's coat is none of Tomas's business at the wheels.
    assert desk(world).hears(code, full).startswith("recorded: ")


def wipe_of(code: str):  # type: ignore[no-untyped-def]
    return kept(code).product


def test_several_asks_are_one_question_and_one_yes_and_each_is_kept() -> None:
    world = shop()
    car, _ = working(world)
    Place.objects.filter(pk=world.bay_1.pk).update(air_m3_h=None)
    here = desk(world, who=nia(world))

    spoken = [here.say(line) for line in (car.code, opened(world, wipe(world)), "60 ml")][-1]

    assert spoken["says"] == "What is breathed at Wheels is not known: the air flow of Bay 1 is missing."
    assert spoken["next"].endswith(
        " YES answers this, too: Nia has no training in date for flammable liquids and aerosols "
        "(Hollin panel wipe)."
    )
    assert here.hears("YES").startswith("recorded: ")
    assert Override.objects.count() == 2
    assert not Override.objects.exclude(by__name="Nia").exists()


def test_what_ends_by_doing_is_no_question_that_a_badge_could_end() -> None:
    of_people = {one for one in OF_THE_CHECK if one.startswith(("people.", "rags.", "air."))}

    assert of_people == ENDED_BY_DOING
