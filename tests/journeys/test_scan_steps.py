"""How many lines the common jobs at a station take, the person being there: the counts are promised."""

from datetime import timedelta

import pytest

from inventory.models import Container, Movement, OrderLine, Person, StepNeed
from tests.inventory.scan.desk import Desk, content, desk
from tests.world import (
    GRAM,
    LITRE,
    ML,
    NOON,
    TODAY,
    World,
    bottle,
    fenmoor,
    hollin,
    job,
    larkmoor,
    marl,
    need,
    pack,
    spray_bottle,
    step,
    tidewall,
)

pytestmark = pytest.mark.django_db
GTIN = "4006381333931"


def lines(here: Desk) -> int:
    return len(here.heard)


def test_a_case_of_twelve_is_received_in_five_lines() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}")
    here = desk(world)
    said = here.hears(GTIN, "12", "T-88", "use by 03/2028", world.store.code)
    assert said == (
        "recorded: Received 12 bottles of Tidewall coating, lot T-88, use by 31 March 2028, into Store."
    )
    assert (lines(here), len(here.heard[-1]["labels"])) == (5, 12)
    assert Container.objects.filter(state="sealed", place=world.store, use_by_on="2028-03-31").count() == 12


def test_a_symbol_with_lot_and_date_takes_two_lines_at_the_store() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}")
    here = desk(world, place=world.store)
    said = here.hears(f"010{GTIN}1728033110T-88", "12")
    assert said == (
        "recorded: Received 12 bottles of Tidewall coating, lot T-88, use by 31 March 2028, into Store."
    )
    assert lines(here) == 2


def test_the_place_is_asked_once_a_delivery() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}")
    here = desk(world)
    here.hears(GTIN, "1", "A", "none", world.store.code)
    assert here.hears(GTIN, "1", "B", "none").startswith("recorded: Received 1 bottle")
    assert here.hears("DONE", GTIN, "1", "C", "none") == "ask: Where does the Tidewall coating go?"


def test_a_case_code_says_how_many_it_brings() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}", per_case=12)
    here = desk(world, place=world.store)
    assert here.hears(GTIN, "T-88", "none").startswith("recorded: Received 12 bottles")
    assert lines(here) == 3


def test_bottles_are_counted_by_scanning_each() -> None:
    world = larkmoor()
    pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}")
    here = desk(world, place=world.store)
    assert here.hears(GTIN, GTIN, GTIN) == "ask: 3 ×"
    assert here.hears("DONE", "NO LOT", "NO DATE").startswith("recorded: Received 3 bottles")


def test_opening_takes_two_lines_and_says_until_when() -> None:
    world = larkmoor()
    coat = bottle(world, tidewall(world), 30 * ML)
    here = desk(world)
    assert here.hears(coat.code, "OPEN") == f"recorded: Opened {coat.code[:4]}. Use by 23 February."
    assert lines(here) == 2


def test_five_bottles_are_filled_from_a_drum_in_eight_lines() -> None:
    world = larkmoor()
    drum = bottle(world, fenmoor(world, mix_life=30), 5 * LITRE)
    sprays = [spray_bottle(world) for _ in range(5)]
    here = desk(world)
    said = here.hears(drum.code, "FILL", "1:10", *(spray.code for spray in sprays))
    assert said == (
        f"recorded: Filled {sprays[-1].code[:4]}: 91 ml product into 909 ml water, water first. "
        "Use by 25 December."
    )
    assert lines(here) == 8
    assert [content(each) for each in sprays] == [LITRE] * 5
    assert content(drum) == 5 * LITRE - 5 * 90_909


def test_correction_and_coating_over_two_days_take_eight_lines() -> None:
    world = larkmoor()
    shelf = _two_day_job(world)
    here = desk(world)
    here.hears(shelf["job"], shelf["iron"], "SIGN", shelf["wipe"], "SIGN")
    assert here.hears(shelf["wipe"], shelf["coat"], "SIGN") == "recorded: Signed the coating on Grey estate."
    assert lines(here) == 8
    assert not StepNeed.objects.exclude(outcome="done").filter(product__traced=False).exists()
    uses = Movement.objects.filter(kind="use").order_by("seq").values_list("product__name", "amount")
    assert list(uses) == [
        ("Fenmoor iron remover", 200 * ML),
        ("Hollin panel wipe", 40 * ML),
        ("Marl cutting compound", 60 * GRAM),
        ("Hollin panel wipe", 30 * ML),
        ("Tidewall coating", 10 * ML),
    ]


def _two_day_job(world: World) -> dict[str, str]:
    """Book the car, put what it takes on the shelf; return the codes that are scanned."""
    iron, wipe = fenmoor(world, needs_sheet=False), hollin(world, needs_sheet=False)
    compound, coat = marl(world, needs_sheet=False), tidewall(world, needs_sheet=False)
    car = job(world, NOON, hours=30)
    wash = step(car, "Iron remover", stage="decontaminate", bay=world.bay_1)
    cut = step(car, "Cut", stage="correct", after_hours=2, bay=world.bay_1)
    lay = step(car, "Coat", stage="coat", after_hours=24, bay=world.bay_2)
    need(wash, iron, 200 * ML), need(cut, compound, 60 * GRAM), need(cut, wipe, 40 * ML)
    need(lay, wipe, 30 * ML), need(lay, coat, 10 * ML)
    bottle(world, compound, 150 * GRAM, opened_at=NOON - timedelta(days=2), place=world.bay_1)
    codes = {"iron": (iron, LITRE), "wipe": (wipe, 500 * ML), "coat": (coat, 30 * ML)}
    return {"job": car.code} | {
        name: bottle(world, what, amount).code for name, (what, amount) in codes.items()
    }


def test_a_signature_posts_what_was_not_scanned_as_assumed_and_undo_takes_all_of_it_back() -> None:
    world = larkmoor()
    compound = marl(world, needs_sheet=False)
    pot = bottle(world, compound, 150 * GRAM, opened_at=NOON - timedelta(days=2), place=world.bay_1)
    car = job(world, NOON)
    cut = step(car, "Cut", stage="correct", bay=world.bay_1)
    need(cut, compound, 60 * GRAM)
    here = desk(world)
    assert here.hears(car.code, "SIGN") == (
        "recorded: Signed the correction on Grey estate: 1 bottle booked as planned."
    )
    cut.refresh_from_db()
    assert (content(pot), cut.signed_by) == (90 * GRAM, world.tomas)
    assert Movement.objects.get(kind="use").facts == {"assumed": True, "measured": False}
    here.say("UNDO")
    cut.refresh_from_db()
    assert (content(pot), cut.signed_at) == (150 * GRAM, None)


def test_a_traced_product_is_never_posted_by_a_signature() -> None:
    world = larkmoor()
    coat = tidewall(world, needs_sheet=False)
    open_one = bottle(world, coat, 30 * ML, opened_at=NOON - timedelta(days=2), place=world.bay_1)
    car = job(world, NOON)
    need(step(car, "Coat", bay=world.bay_1), coat, 10 * ML)
    here = desk(world)
    here.hears(car.code, "SIGN")
    assert here.heard[-1]["next"] == "Not scanned: Tidewall coating."
    assert content(open_one) == 30 * ML


def test_a_delivery_is_counted_on_its_order_and_what_is_damaged_stays_owed() -> None:
    world = larkmoor()
    bought = pack(tidewall(world), 30 * ML, gtin=f"0{GTIN}")
    order = world.shop.orders.create(supplier=world.orlo, state="placed", placed_on=TODAY)
    OrderLine.objects.create(order=order, pack=bought, packs=12)
    here = desk(world, place=world.store)
    here.hears(GTIN, "10", "T-88", "none")
    assert here.heard[-1]["next"].startswith(f"Order {order.code[:4]} with Orlo Supply: 10 of 12 came.")
    assert here.hears("DAMAGED", "2") == (
        f"recorded: 2 of Tidewall coating damaged: written on order {order.code[:4]}."
    )
    assert _line(order) == (10, 2, False, "placed")
    here.hears("SHORT")
    assert _line(order) == (10, 2, True, "received")
    here.hears("UNDO", "UNDO", "UNDO")
    assert _line(order) == (0, 0, False, "placed")
    assert not Container.objects.exclude(state="expected").exists()


def _line(order: object) -> tuple[int, int, bool, str]:
    line = OrderLine.objects.select_related("order").get()
    return line.received, line.damaged, line.closed_short, line.order.state


def test_another_person_starts_without_the_last_ones_car() -> None:
    world = larkmoor()
    wipe = hollin(world, needs_sheet=False)
    can = bottle(world, wipe, 500 * ML)
    car = job(world, NOON)
    need(step(car), wipe, 40 * ML)
    here = desk(world)
    here.hears(car.code, world.ines.code, can.code)
    assert here.heard[-1]["movements"] == []
    assert here.station.state["bar"]["car"] == ""
    assert Person.objects.get(code=here.station.state["state"]["who"]) == world.ines
