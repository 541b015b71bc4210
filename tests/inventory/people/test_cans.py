"""The waste cans' page, and discarding into one from a bottle's page."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Movement, Place, PlaceCheck
from inventory.shelf.actions import discard
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from inventory.today.queries import hands
from tests.world import LITRE, NOON, World, bleach, bottle, job, lime_remover, reactive, record, soap, step

pytestmark = pytest.mark.django_db
NEVER = "Brack bleach and Brack lime remover never go into one vessel."


@pytest.fixture
def can(shop: World) -> Place:
    return Place.objects.create(shop=shop.shop, name="Waste can", kind="can")


def discarded(shop: World, can: Place, of, at=NOON) -> None:  # type: ignore[no-untyped-def]
    row = bottle(shop, of, LITRE)
    record(shop, Act("discard", at, target=row.code, place=can.code))


def test_acid_is_refused_where_bleach_is_in_the_can(ines: Client, shop: World, can: Place) -> None:
    discarded(shop, can, bleach(shop))
    sour = bottle(shop, lime_remover(shop), LITRE)

    page = ines.post(reverse("shelf:discard", args=[sour.code]), {"reason": "old", "can": can.code})

    assert NEVER in page.content.decode()
    assert Movement.objects.filter(kind="discard").count() == 1


@pytest.mark.parametrize("way", ["no can", "emptied"])
def test_the_ways_out_end_it(ines: Client, shop: World, can: Place, way: str) -> None:
    discarded(shop, can, bleach(shop))
    sour = bottle(shop, lime_remover(shop), LITRE)
    if way == "emptied":
        ines.post(reverse("people:emptied", args=[can.code]))

    into = can.code if way == "emptied" else ""
    ines.post(reverse("shelf:discard", args=[sour.code]), {"reason": "old", "can": into})
    told = "tipped into Waste can" in ines.get(reverse("shelf:container", args=[sour.code])).content.decode()
    assert told is (way == "emptied")

    assert [row.place for row in Movement.objects.filter(kind="discard").order_by("seq")] == [
        can, can if way == "emptied" else None,
    ]  # fmt: skip


def test_heat_is_asked_once_and_answered_on_the_page(ines: Client, shop: World, can: Place) -> None:
    discarded(shop, can, reactive(shop, "Lye", "cleaner", "10"))
    sour = bottle(shop, reactive(shop, "Sour", "cleaner", "1"), LITRE)
    address, sent = reverse("shelf:discard", args=[sour.code]), {"reason": "old", "can": can.code}

    asked = ines.post(address, sent).content.decode()
    assert "Lye and Sour react in one vessel." in asked
    assert "Tip it in all the same" in asked
    assert Movement.objects.filter(kind="discard").count() == 1

    ines.post(address, {**sent, "known": "reaction.vessel_heat"})
    assert Movement.objects.filter(kind="discard").count() == 2


def test_without_a_can_the_form_asks_only_why(ines: Client, shop: World) -> None:
    mild = bottle(shop, soap(shop), LITRE)
    assert "Tipped into" not in ines.get(reverse("shelf:discard", args=[mild.code])).content.decode()


def test_nothing_is_moved_into_a_can_to_stand_there(ines: Client, shop: World, can: Place) -> None:
    mild = bottle(shop, soap(shop), LITRE)
    page = ines.get(reverse("shelf:move", args=[mild.code])).content.decode()
    assert can.code not in page
    assert shop.store.code in page


def test_the_page_lists_what_is_in_it_and_the_button_empties_it_once(
    ines: Client, shop: World, can: Place
) -> None:
    discarded(shop, can, soap(shop))
    page = ines.get(reverse("people:cans")).content.decode()
    assert "Nobody has written down that it was emptied." in page
    assert "Fenmoor soap" in page

    for _ in range(2):
        ines.post(reverse("people:emptied", args=[can.code]))

    assert PlaceCheck.objects.filter(what="emptied", place=can).count() == 1
    after = ines.get(reverse("people:cans")).content.decode()
    assert "Empty by the book." in after
    assert "Fenmoor soap" not in after


def test_what_was_taken_back_is_in_no_can(ines: Client, shop: World, can: Place) -> None:
    discarded(shop, can, soap(shop))
    seq = Movement.objects.get(kind="discard").seq
    record(shop, Act("reverse", NOON, reverses=seq))
    assert "Empty by the book." in ines.get(reverse("people:cans")).content.decode()


def test_a_store_cannot_be_emptied_as_a_can(ines: Client, shop: World) -> None:
    assert ines.post(reverse("people:emptied", args=[shop.store.code])).status_code == 404


def test_as_many_queries_for_ten_things_in_it_as_for_one(
    ines: Client, shop: World, can: Place, django_assert_num_queries
) -> None:
    discarded(shop, can, soap(shop))
    ines.get(reverse("people:cans"))
    with django_assert_num_queries(6) as first:
        ines.get(reverse("people:cans"))
    for name in "abcdefghi":
        discarded(shop, can, reactive(shop, f"Make {name}", "cleaner", "10"))
    with django_assert_num_queries(len(first)):
        ines.get(reverse("people:cans"))


def test_the_rag_can_of_a_bay_is_emptied_by_a_button_once(ines: Client, shop: World) -> None:
    shop.bay_1.rag_can_at = "left of the door"
    shop.bay_1.save()
    page = ines.get(reverse("people:cans")).content.decode()
    assert "Left of the door. Nobody has written down that it was emptied." in page

    for _ in range(2):
        ines.post(reverse("people:rags", args=[shop.bay_1.code]))

    assert PlaceCheck.objects.filter(what="rags", place=shop.bay_1).count() == 1
    assert "Left of the door. Last emptied on" in ines.get(reverse("people:cans")).content.decode()


@pytest.mark.parametrize(
    ("emptied_hours_ago", "told", "because"),
    [
        (None, True, "never emptied"),
        (30, True, "emptied before it was used yesterday"),
        (20, False, "emptied in yesterday's evening"),
    ],
)
def test_the_first_page_says_which_rag_can_still_holds_yesterday_s_rags(
    shop: World, emptied_hours_ago: int | None, told: bool, because: str
) -> None:
    shop.bay_1.rag_can_at = "left of the door"
    shop.bay_1.save()
    wipe = bottle(shop, reactive(shop, "Panel wipe", "solvent", "4"), LITRE)
    of = job(shop)
    wiping = step(of, bay=shop.bay_1)
    yesterday = NOON - timedelta(hours=24)
    record(shop, Act("use", yesterday, source=wipe.code, amount=1000, job=of.code, step=wiping.code))
    if emptied_hours_ago:
        PlaceCheck.objects.create(
            place=shop.bay_1, what="rags", by=shop.tomas, done_at=NOON - timedelta(hours=emptied_hours_ago)
        )

    said = [hand.says for hand in hands(shop.shop, NOON)]
    assert ("The rag can of Bay 1 still holds rags of a day before." in said) is told, because


def test_the_bay_s_page_offers_it_too(tomas: Client, shop: World) -> None:
    address = reverse("bays:bay", args=[shop.bay_1.code])
    assert "No covered metal can for rags is named." in tomas.get(address).content.decode()

    shop.bay_1.rag_can_at = "left of the door"
    shop.bay_1.save()
    page = tomas.get(address).content.decode()
    assert (
        "Covered metal can: left of the door. It is emptied at the end of each day; nobody has written down "
        "yet that it was."
    ) in page
    assert reverse("people:rags", args=[shop.bay_1.code]) in page


def test_what_somebody_else_tipped_in_a_moment_ago_is_judged_as_it_is_written(
    shop: World, can: Place
) -> None:
    sour = bottle(shop, lime_remover(shop), LITRE)
    discarded(shop, can, bleach(shop))  # after the form was read, before it is written

    with pytest.raises(Refused, match=NEVER):
        discard(sour, "old", can, by=shop.tomas, at=NOON)

    assert Movement.objects.filter(kind="discard").count() == 1
