"""Out and in again changes nothing, for every kind, in both forms, for every text."""

from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.models import Supplier
from inventory.spreadsheets.resources import RESOURCES
from inventory.spreadsheets.rules.outcome import Becomes
from inventory.spreadsheets.rules.values import CONTROL
from inventory.spreadsheets.sheets import read_table, write_csv, write_xlsx
from tests import world as cast
from tests.world import NOON

from .shop import round_trip, stocked

pytestmark = pytest.mark.django_db
FORMS = ["csv", "xlsx"]
# Everything that a database of either engine keeps: no NUL, no half of a surrogate pair.
TEXTS = st.text(
    st.characters(exclude_characters="\0", exclude_categories=["Cs"]), min_size=1, max_size=60
).filter(lambda text: text.strip()) | st.sampled_from(
    [
        "=1+1",
        "'=1+1",
        "''",
        "@SUM(A1)",
        "a\r\nb",
        "a\rb",
        'say "so"',
        "x;y,z\tq",
        "_x0041_",
        "#N/A",
        " both ",
        "１",
    ]
)
HOW_MANY = {"suppliers": 1, "products": 3, "packs": 3, "stock": 5, "jobs": 2}


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("slug", RESOURCES)
def test_an_export_that_nobody_touched_changes_nothing(slug, form) -> None:
    world = stocked()
    booked = cast.job(world)
    cast.step(booked, bay=world.bay_1, person=world.tomas)
    cast.step(booked, "Coat", after_hours=1, bay=world.bay_2)
    # 25 October 2026, 01:30 comes twice in London.
    cast.job(world, NOON.replace(month=10, hour=0, minute=30), vehicle=cast.car(world, "Red hatch"))
    found = round_trip(world, slug, form)
    assert [outcome.becomes for outcome in found.outcomes] == [Becomes.SAME] * HOW_MANY[slug]
    assert [outcome.problems for outcome in found.outcomes] == [()] * HOW_MANY[slug]


@pytest.mark.parametrize("form", FORMS)
def test_the_same_holds_in_a_shop_of_ounces_and_decimal_commas(form) -> None:
    world = stocked()
    cast.job(world)
    world.shop.system, world.shop.decimal_mark, world.shop.currency = "us", "comma", "USD"
    for slug in RESOURCES:
        found = round_trip(world, slug, form, NOON + timedelta(days=1))
        assert {outcome.becomes for outcome in found.outcomes} <= {Becomes.SAME}


@given(st.lists(TEXTS, min_size=1, max_size=5))
@settings(max_examples=150)
def test_every_text_comes_back_from_a_file_as_it_went_out(texts) -> None:
    rows = [[text, 1] for text in texts]
    for data in (write_csv(["text", "one"], rows), write_xlsx(["text", "one"], rows, "texts")):
        assert [row.cells[0] for row in read_table(data).rows] == texts


def test_a_thing_of_any_name_goes_out_and_in_unchanged() -> None:
    world = cast.larkmoor()

    @given(TEXTS.filter(lambda text: not CONTROL.search(text)))
    @settings(max_examples=60)
    def holds(text: str) -> None:
        Supplier.objects.filter(pk=world.orlo.pk).update(name=text, phone=text[:40].strip() and text[:40])
        for form in FORMS:
            assert [each.becomes for each in round_trip(world, "suppliers", form).outcomes] == [Becomes.SAME]

    holds()
