"""A printed label goes out of date with the hazards it tells: then Today lists its bottle."""

from datetime import date, timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Container, Kind
from inventory.posters.actions import print_strip
from inventory.posters.queries import in_order, labels
from inventory.posters.queries.prints import to_print_again
from inventory.shelf.queries import hazards
from inventory.stock.rules.acts import Act
from tests.inventory.posters.wall import sheet
from tests.world import LITRE, ML, NOON, World, bottle, hollin, larkmoor, product, record, spray_bottle

pytestmark = pytest.mark.django_db

LYE = {
    "name": "Sodium hydroxide",
    "cas": "1310-73-2",
    "percent": 6,
    "hazards": ["Skin Corr. 1A H314"],
    "limits": [
        {"from": 5, "to": None, "hazard": "Skin Corr. 1A H314"},
        {"from": 2, "to": 5, "hazard": "Skin Corr. 1B H314"},
        {"from": 0.5, "to": 2, "hazard": "Skin Irrit. 2 H315"},
        {"from": 0.5, "to": 2, "hazard": "Eye Irrit. 2 H319"},
    ],
}
ALKALINE = {
    "hazards": ["Skin Corr. 1A H314"],
    "composition": [LYE],
    "ph": 13.5,
    "mixes": [{"parts": [1, 10], "ph": 11.2, "flash_point_c": None}],
}


@pytest.fixture
def world() -> World:
    return larkmoor()


def washed(world: World, **sheet_says: object) -> Container:
    """A spray bottle of alkaline wash, one part and ten parts water, by a sheet with its composition."""
    wash = product(world, "Fenmoor alkaline wash", Kind.ALKALINE, noun="drum", density_mg_per_l=1_080_000)
    sheet(wash, **(ALKALINE | sheet_says))
    drum, spray = bottle(world, wash, 5 * LITRE), spray_bottle(world)
    record(
        world,
        Act(
            "fill",
            NOON - timedelta(days=5),
            source=drum.code,
            target=spray.code,
            amount=90 * ML,
            added=990 * ML,
            parts=(1, 10),
        ),
    )
    return spray


def printed(world: World, row: Container) -> Container:
    print_strip(world.shop, in_order(world.shop, [row.code]), NOON)
    row.refresh_from_db()
    return row


def again(world: World) -> list[str]:
    return [row.code for row in to_print_again(world.shop)]


def today(world: World) -> str:
    client = Client()
    client.force_login(world.ines)
    return " ".join(client.get(reverse("today:home")).content.decode().split())


def test_a_mixed_bottle_is_labelled_as_its_dilution(world: World) -> None:
    """6 % at 1.08 kg/l, 1:10: 0.585 %; from 0.5 % irritant to skin and eyes (CLP Annex VI)."""
    label = labels(world.shop, in_order(world.shop, [washed(world).code]))[0]
    assert (label.pictograms, label.signal_word) == (("GHS07",), "Warning")
    assert label.statements == ("Causes skin irritation.", "Causes serious eye irritation.")
    assert label.notice == ""


def test_without_a_measured_ph_the_label_keeps_the_concentrates_classes_and_says_so(world: World) -> None:
    label = labels(world.shop, in_order(world.shop, [washed(world, mixes=[]).code]))[0]
    assert (label.pictograms, label.signal_word) == (("GHS05",), "Danger")
    assert label.notice.startswith("Classes not settled: pH 13.5 is the concentrate's")
    assert label.notice.endswith("treat as the concentrate.")


def test_the_bottles_page_says_as_its_label_does_and_why(world: World) -> None:
    row = Container.objects.select_related("product__sheet").get(pk=washed(world).pk)
    found = hazards(world.shop, row)
    assert found is not None
    assert found.parts.elements.statements == ("H315", "H319")
    assert {one.hazard for one in found.because} == {"Skin Irrit. 2 H315", "Eye Irrit. 2 H319"}


def test_a_label_just_printed_is_not_asked_for_again(world: World) -> None:
    row = printed(world, washed(world))
    assert again(world) == []
    assert "say other hazards" not in today(world), row.label_says


def test_another_composition_puts_the_labels_of_its_mixes_out_of_date(world: World) -> None:
    row = printed(world, washed(world))
    assert row.product
    sheet(row.product, date(2026, 6, 1), **(ALKALINE | {"composition": [LYE | {"percent": 2.5}]}))
    assert again(world) == [row.code]
    shown = today(world)
    assert "The label of Fenmoor alkaline wash says other hazards than it would now: print it again." in shown
    assert f"?codes={row.code}" in shown


def test_a_newer_sheet_that_says_the_same_leaves_labels_alone(world: World) -> None:
    row = printed(world, washed(world))
    assert row.product
    sheet(row.product, date(2026, 6, 1), **ALKALINE)
    assert again(world) == []


def test_another_countrys_rules_put_labels_out_of_date_where_they_word_them_otherwise(world: World) -> None:
    row = printed(world, washed(world))
    world.shop.country = "US"
    world.shop.save(update_fields=["country"])
    assert again(world) == [row.code], "in the US the limits of Annex VI do not hold: not settled"


def test_printing_again_ends_it(world: World) -> None:
    row = printed(world, washed(world))
    assert row.product
    sheet(row.product, date(2026, 6, 1), **(ALKALINE | {"composition": [LYE | {"percent": 2.5}]}))
    printed(world, row)
    assert again(world) == []


def test_our_label_on_the_makers_bottle_tells_no_hazards_and_stays_true(world: World) -> None:
    wipe = hollin(world)
    sheet(wipe)
    row = printed(world, bottle(world, wipe, LITRE))
    sheet(wipe, date(2026, 6, 1), hazards=["Eye Irrit. 2 H319"])
    assert again(world) == []
    assert row.label_says == f"{wipe.code} 1:0"


def test_a_label_of_before_marks_were_kept_is_not_judged(world: World) -> None:
    row = printed(world, washed(world))
    Container.objects.filter(pk=row.pk).update(label_says="demo")
    assert row.product
    sheet(row.product, date(2026, 6, 1), **(ALKALINE | {"composition": [LYE | {"percent": 2.5}]}))
    assert again(world) == []


def test_the_labels_of_many_bottles_are_judged_in_two_queries(
    world: World, django_assert_num_queries: object
) -> None:
    row = printed(world, washed(world))
    for _ in range(3):
        assert row.product
        drum = row.product.containers.filter(parts_water=0).first()
        assert drum
        fill = Act(
            "fill", NOON - timedelta(days=1), source=drum.code, target=spray_bottle(world).code,
            amount=90 * ML, added=990 * ML, parts=(1, 10),
        )  # fmt: skip
        printed(world, record(world, fill)[0].target)  # type: ignore[arg-type]
    with django_assert_num_queries(2):  # type: ignore[operator]
        assert to_print_again(world.shop) == []


def test_moving_to_another_country_says_what_changes_on_labels(world: World) -> None:
    washed(world)
    client = Client()
    client.force_login(world.ines)
    facts = {
        "name": "Larkmoor Works", "country": "US", "time_zone": "Europe/London", "system": "metric",
        "currency": "EUR", "emergency_number": "112", "language": "en",
    }  # fmt: skip
    answer = client.post(reverse("settings:shop"), facts, follow=True)
    shown = " ".join(answer.content.decode().split())
    assert "Labels follow the rules of the United States now." in shown
    assert "Fenmoor alkaline wash, 1:10: now" in shown
    assert "Bottles to label again stand on Today." in shown


def test_a_change_of_clock_says_nothing_of_labels(world: World) -> None:
    client = Client()
    client.force_login(world.ines)
    facts = {
        "name": "Larkmoor Works", "country": "GB", "time_zone": "Europe/Paris", "system": "metric",
        "currency": "EUR", "emergency_number": "112", "language": "en",
    }  # fmt: skip
    answer = client.post(reverse("settings:shop"), facts, follow=True)
    assert "Labels follow the rules" not in answer.content.decode()
