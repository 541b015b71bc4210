"""The shelf's pages over the real ledger."""

from datetime import date, timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from inventory.models import Container, Movement
from inventory.shelf import queries
from inventory.stock.rules.acts import Act
from safety.models import DataSheet
from tests.world import GRAM, ML, NOON, bottle, marl, record, tidewall

pytestmark = pytest.mark.django_db


def page(code: str, name: str = "container") -> str:
    return reverse(f"shelf:{name}", args=[code])


def text(response) -> str:
    return response.content.decode()


def test_nobody_reads_the_shelf_without_signing_in(client, world):
    assert client.get(reverse("shelf:list")).headers["Location"].startswith(reverse("people:login"))


def test_a_viewer_sees_a_bottle_and_may_not_move_it(client, world):
    kept = bottle(world, tidewall(world), 30 * ML)
    client.force_login(world.wren)

    assert client.get(page(kept.code)).status_code == 200
    refused = client.post(page(kept.code, "move"), {"place": world.bay_1.code})
    assert refused.status_code == 403
    assert Container.objects.get(pk=kept.pk).place == world.store


def test_only_an_owner_releases_what_is_held(client, world):
    kept = bottle(world, tidewall(world), 30 * ML)
    record(world, Act("quarantine", NOON, target=kept.code, facts={"reason": "frozen"}))
    client.force_login(world.tomas)

    assert client.post(page(kept.code, "release"), {"reason": "looks fine"}).status_code == 403
    assert Container.objects.get(pk=kept.pk).held == "frozen"


def test_an_amount_with_two_readings_is_refused_at_its_field_and_nothing_is_written(ines, world):
    kept = bottle(world, tidewall(world), 30 * ML)

    answer = ines.post(page(kept.code, "count"), {"amount": "1,000 ml"})

    assert "1000" in text(answer)
    assert Movement.objects.filter(kind="count").count() == 0


def test_a_count_books_what_the_bottle_was_seen_to_hold(ines, world):
    kept = bottle(world, tidewall(world), 30 * ML)

    ines.post(page(kept.code, "count"), {"amount": "12 ml"})

    kept.refresh_from_db()
    assert (kept.content, kept.state) == (12 * ML, "open")


def test_a_bottle_says_which_term_won_and_whose_word_it_is(ines, world):
    opened = timezone.now() - timedelta(days=3)
    kept = bottle(world, tidewall(world), 30 * ML, expires_on=date(2099, 6, 30), opened_at=opened)

    assert "+ 90 days, given by the maker" in text(ines.get(page(kept.code)))


def test_an_entry_is_taken_back_from_the_bottles_own_page(ines, world):
    kept = bottle(world, marl(world), 1000 * GRAM, opened_at=NOON - timedelta(days=2))
    used = record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=60 * GRAM))[0]

    ines.post(reverse("shelf:take_back", args=[kept.code, used.seq]))

    kept.refresh_from_db()
    assert kept.content == 1000 * GRAM
    assert [entry.taken_back for entry in queries.life(kept, world.ines, NOON) if entry.seq == used.seq] == [
        True
    ]


def test_what_is_in_the_way_of_a_take_back_is_named(ines, world):
    kept = bottle(world, marl(world), 1000 * GRAM)
    opened = record(world, Act("open", NOON - timedelta(days=2), target=kept.code))[0]
    record(world, Act("use", NOON - timedelta(days=1), source=kept.code, amount=60 * GRAM))

    answer = ines.post(reverse("shelf:take_back", args=[kept.code, opened.seq]), follow=True)

    assert "is in the way" in text(answer)


def test_a_whole_lot_is_held_and_its_other_bottle_shows_it(ines, world):
    product = tidewall(world)
    one, other = bottle(world, product, 30 * ML, lot="TW-1"), bottle(world, product, 30 * ML, lot="TW-1")

    ines.post(page(one.code, "hold"), {"reason": "recalled", "whole_lot": "on"})

    assert "Held: nobody may use it." in text(ines.get(page(other.code)))


def test_a_life_adds_up_line_by_line(world):
    kept = bottle(world, tidewall(world), 30 * ML)
    record(world, Act("use", NOON - timedelta(days=2), source=kept.code, amount=9 * ML))
    record(world, Act("count", NOON - timedelta(days=1), target=kept.code, amount=20 * ML))

    newest_first = [(entry.what, entry.change, entry.left) for entry in queries.life(kept, world.ines, NOON)]

    assert newest_first == [
        ("counted", -1 * ML, 20 * ML),
        ("used", -9 * ML, 21 * ML),
        ("opened", None, 30 * ML),
        ("received", 30 * ML, 30 * ML),
    ]


def test_the_shelf_asks_the_database_as_often_for_thirty_bottles_as_for_three(
    ines, world, django_assert_max_num_queries
):
    product = tidewall(world)
    for _ in range(30):
        bottle(world, product, 30 * ML)

    with django_assert_max_num_queries(8):
        ines.get(reverse("shelf:list"))


@pytest.mark.parametrize(
    ("query", "shown", "because"),
    [
        ("only=open", {"Marl cutting compound"}, "only it was opened"),
        ("only=held", {"Tidewall coating"}, "only it is held"),
        ("q=marl", {"Marl cutting compound"}, "by name, whatever the case"),
        ("kind=coating", {"Tidewall coating"}, "by kind"),
        ("only=", {"Marl cutting compound", "Tidewall coating"}, "no filter hides nothing"),
    ],
)
def test_the_filters_leave_what_they_name(ines, world, query, shown, because):
    held = bottle(world, tidewall(world), 30 * ML)
    record(world, Act("quarantine", NOON, target=held.code, facts={"reason": "frozen"}))
    bottle(world, marl(world), 1000 * GRAM, opened_at=NOON - timedelta(days=2))

    rows = ines.get(f"{reverse('shelf:list')}?{query}").context["bottles"]

    assert {row.product for row in rows} == shown, because


def test_a_us_shop_reads_its_shelf_in_fluid_ounces(ines, world):
    world.shop.system = "us"
    world.shop.save()
    bottle(world, tidewall(world), 473_176)

    assert "16 fl oz" in text(ines.get(reverse("shelf:list")))


def test_a_bottle_without_a_sheet_says_that_nobody_knows_how_it_harms(ines, world):
    kept = bottle(world, tidewall(world), 30 * ML)

    assert "No data sheet yet: treat as hazardous, ask the owner." in text(ines.get(page(kept.code)))


def test_a_bottle_shows_what_its_label_says_of_hazards_and_what_to_wear(ines, world):
    sheet = DataSheet.objects.create(supplier="Tidewall", title="Tidewall coating")
    sheet.versions.create(
        revision_on=date(2025, 3, 3),
        hazards=["Flam. Liq. 2 H225"],
        signal_word="Danger",
        wear_hands="nitrile 0.4 mm",
        typed_on=date(2025, 3, 4),
        confirmed_on=date(2025, 3, 4),
        confirmed_by="Ines",
    )
    kept = bottle(world, tidewall(world, sheet=sheet), 30 * ML)

    shown = text(ines.get(page(kept.code)))

    assert "Highly flammable liquid and vapour." in shown
    assert "nitrile 0.4 mm" in shown
    assert 'alt="GHS02"' in shown


def why(world, client, **about) -> str:
    kept = bottle(world, tidewall(world), 30 * ML)
    recalled = about.pop("recalled", False)
    Container.objects.filter(pk=kept.pk).update(**about)
    kept.lots.update(recalled=recalled)
    return client.get(page(kept.code, "discard")).context["form"].initial["reason"]


@pytest.mark.parametrize(
    ("about", "reason", "because"),
    [
        ({"held": "frozen"}, "frozen", "it goes for what it is held for"),
        ({"held": "recalled", "recalled": True}, "recalled", "a recall is called by its name"),
        ({"held": "maker's notice 12", "recalled": True}, "recalled: maker's notice 12", "and by its notice"),
        (
            {"use_by_at": NOON - timedelta(days=400), "use_by_on": NOON.date()},
            "out of date",
            "its date is over",
        ),
        ({"content": 0}, "empty", "nothing is in it"),
        ({}, "", "the shop knows no reason: somebody says it"),
    ],
)
def test_the_reason_for_discarding_starts_from_what_the_shop_knows(ines, world, about, reason, because):
    assert why(world, ines, **about) == reason, because


def test_a_lot_that_was_not_given_is_said_once(ines, world):
    bare = bottle(world, tidewall(world), 30 * ML)
    known = bottle(world, marl(world), 30 * GRAM, lot="M-7")
    bare.lots.update(number="")

    said = text(ines.get(page(bare.code)))

    assert "lot not given" in said
    assert "lot lot" not in said
    assert "lot M-7" in text(ines.get(page(known.code)))
