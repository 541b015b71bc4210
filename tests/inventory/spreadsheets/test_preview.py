"""What a row is refused for, by row and column; then what it becomes."""

from datetime import date, datetime, timedelta

import pytest

from inventory.models import Place
from inventory.spreadsheets.rules.outcome import Becomes, summary
from inventory.spreadsheets.rules.table import Unreadable
from tests import world as cast
from tests.world import ML, NOON

from .shop import complaints, judged, stocked, table

pytestmark = pytest.mark.django_db
STOCK = (
    "product | content (in unit) | unit | place | sealed | opened on | lot | use by (printed)"
    " | how many alike | code"
)


@pytest.mark.parametrize(
    ("heads", "says", "because"),
    [
        ("name | colour", "Column “colour” is not one of the columns for suppliers.", "unknown"),
        ("name | Name", "Column “Name” is there twice.", "double"),
        ("email", "Column “name” is missing.", "needed"),
        ("name | smallest order (USD)", "Column “smallest order (USD)” is not", "this shop counts in EUR"),
    ],
)
def test_wrong_columns_are_refused_before_any_row(heads, says, because) -> None:
    world = cast.larkmoor()
    with pytest.raises(Unreadable) as refused:
        judged(world, "suppliers", table(heads, ["x"] * (heads.count("|") + 1)))
    assert says in refused.value.says, because


@pytest.mark.parametrize(
    ("slug", "heads", "cells", "says"),
    [
        ("suppliers", "name", [" "], "Row 2, column “name”: This cell is empty. Fill it in."),
        ("suppliers", "name | email", ["Orlo", "at orlo"],
         "Row 2, column “email”: “at orlo” is no e-mail address. Correct it, or leave the cell empty."),
        ("suppliers", "name | lead time (days)", ["Orlo", "soon"],
         "Row 2, column “lead time (days)”: “soon” is no whole number. Write it in digits, like 12."),
        ("suppliers", "name | lead time (days)", ["Orlo", 366],
         "Row 2, column “lead time (days)”: 366 is outside 0 to 365. Check the figure."),
        ("suppliers", "name | smallest order (EUR)", ["Orlo", "1.234"],
         "Row 2, column “smallest order (EUR)”: “1.234” can be read as 1234.00 or as 1.234"),
        ("products", "name | kind | measured | open life", ["Tarn", "coating", "by volume", "90 dayz"],
         "Row 2, column “open life”: “90 dayz” is no length of time. Write it as 90 days, 18 months "
         "or 45 minutes."),
        ("products", "name | kind | measured | supplier", ["Tarn", "coating", "by volume", "Nobody"],
         "Row 2, column “supplier”: There is no supplier “Nobody” here. "
         "Bring it in under Suppliers first, or write its name as it is there."),
        ("products", "code | name | kind | measured", ["XBCDFGHJ", "Tarn", "coating", "by volume"],
         "Row 2, column “code”: “XBCDFGHJ” is no product here. Leave the code empty for a new product."),
        ("products", "name | kind | measured", ["Tidewall coating", "coating", "by weight"],
         "Row 2, column “measured”: There is stock of it measured otherwise, so this stays as it is."),
        ("products", "name | kind | measured | store from (°C) | store to (°C)",
         ["Tarn", "wax", "by weight", 20, 5],
         "Row 2, column “store to (°C)”: 5 °C is not above 20 °C. Check the two figures."),
        ("packs", "product | holds (in unit) | unit", ["Nowhere wax", 5, "ml"],
         "Row 2, column “product”: There is no product “Nowhere wax” here. "
         "Bring it in under Products first, or write its name as it is there."),
        ("packs", "product | holds (in unit) | unit", ["Hollin panel wipe", 5, "kg"],
         "Row 2, column “holds (in unit)”: “5 kg” is a mass, and a volume is wanted."),
        ("packs", "product | holds (in unit) | GTIN", ["Hollin panel wipe", "1 l", "05012345678901"],
         "Row 2, column “GTIN”: “05012345678901” is no GTIN: its last digit does not fit the others."),
        ("packs", "product | holds (in unit) | made of", ["Hollin panel wipe", "1 l", "wood"],
         "Row 2, column “made of”: “wood” is not one of: not said, glass or plastic, metal, safety can."),
        ("jobs", "vehicle | starts at (local time)", ["Van", "2026-12-01"],
         "Row 2, column “starts at (local time)”: “2026-12-01” has no time. Write it like 2026-12-01 08:30."),
        ("jobs", "vehicle | starts at (local time)", ["Van", "2026-12-01 08:30"],
         "Row 2, column “service”: Name the service, or say under “called” what is done."),
    ],
)  # fmt: skip
def test_a_wrong_cell_is_named_by_row_and_column(slug, heads, cells, says) -> None:
    found = complaints(stocked(), slug, table(heads, cells))
    assert (len(found), found[0].startswith(says)) == (1, True), found


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"product": "Tidewell"}, "column “product”: There is no product “Tidewell” here."),
        ({"product": ""}, "column “product”: Say what is in it."),
        ({"content (in unit)": "1,000"}, "has two readings"),
        ({"content (in unit)": 0}, "Nothing is in it."),
        ({"place": ""}, "column “place”: Say where it stands."),
        ({"place": "Loft"}, "column “place”: There is no place “Loft” here."),
        ({"sealed": ""}, "column “sealed”: Say whether it is sealed: yes or no."),
        ({"sealed": "no"}, "column “opened on”: Type the day it was opened, or “unknown”"),
        ({"opened on": "2026-11-01"}, "column “opened on”: It is sealed, so it was not opened."),
        (
            {"sealed": "no", "opened on": date(2026, 11, 26)},
            "column “opened on”: 2026-11-26 is still to come.",
        ),
        ({"sealed": "no", "opened on": "2026-11"}, "column “opened on”: “2026-11” is a month."),
        ({"use by (printed)": "03/04/27"}, "column “use by (printed)”: “03/04/27” has two readings"),
        ({"lot": "T-1", "use by (printed)": "2027-07-01"}, "Lot T-1 has 2027-06-30 elsewhere."),
        ({"code": "BQQQQQQQ"}, "column “code”: “BQQQQQQQ” is no code of a bottle."),
    ],
)
def test_a_bottle_that_cannot_be_on_a_shelf_is_refused(change, says) -> None:
    row = dict.fromkeys((head.strip() for head in STOCK.split("|")), None)
    row |= {
        "product": "Tidewall coating",
        "content (in unit)": 30,
        "unit": "ml",
        "place": "Store",
        "sealed": "yes",
    }
    world = stocked()
    assert complaints(world, "stock", table(STOCK, list(row.values()))) == [], (
        "the row without the change is fine"
    )
    found = complaints(world, "stock", table(STOCK, list((row | change).values())))
    assert (len(found), says in found[0]) == (1, True), found


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("2026-10-25 01:30", "01:30 comes twice on that day, when the clock goes back. "
                             "Write 2026-10-25 01:30+01:00 or 2026-10-25 01:30+00:00."),
        ("2026-03-29 01:30", "01:30 does not exist on that day: the clock goes forward over it. "
                             "Choose another."),
    ],
)  # fmt: skip
def test_a_time_that_the_clock_shows_twice_or_never_is_asked_back(typed, says) -> None:
    given = table("vehicle | called | starts at (local time)", ["Van", "Polish", typed])
    assert complaints(stocked(), "jobs", given) == [f"Row 2, column “starts at (local time)”: {says}"]


def test_a_workbooks_own_time_is_asked_back_too() -> None:
    given = table(
        "vehicle | called | starts at (local time)",
        ["Van", "Polish", datetime.fromisoformat("2026-10-25 01:30")],
    )
    assert "comes twice" in complaints(stocked(), "jobs", given)[0]


def test_two_rows_about_one_thing_are_refused_at_the_second() -> None:
    given = table("name | phone", ["Orlo Supply", "1"], ["Fell Trading", "2"], ["orlo supply", "3"])
    assert complaints(cast.larkmoor(), "suppliers", given) == [
        "Row 4, column “name”: This supplier is in row 2 already. Keep one of the two."
    ]


def test_rows_of_a_file_that_disagree_about_a_lot_are_refused() -> None:
    row = ["Tidewall coating", 30, "ml", "Store", "yes", None, "T-9", "2027-01-31", 1, None]
    other = [*row[:7], "2027-02-28", 1, None]
    assert complaints(stocked(), "stock", table(STOCK, row, other)) == [
        "Row 3, column “use by (printed)”: Lot T-9 has 2027-01-31 elsewhere. Read number and date again."
    ]


def test_every_wrong_cell_of_a_row_is_named_at_once() -> None:
    given = table("name | email | lead time (days)", ["Orlo", "no", "no"])
    assert len(complaints(cast.larkmoor(), "suppliers", given)) == 2


def test_a_row_becomes_new_changed_or_unchanged_and_says_what_changes() -> None:
    world = cast.larkmoor()
    given = table("name | lead time (days)", ["Fell Trading", 4], ["Orlo Supply", 9])
    found = judged(world, "suppliers", given).outcomes
    assert [each.becomes for each in found] == [Becomes.NEW, Becomes.CHANGED]
    assert [(each.column, each.before, each.after) for each in found[1].changes] == [
        ("lead time (days)", "6", "9")
    ]
    assert summary(found) == "2 rows: 1 new, 1 changed."
    unchanged = judged(world, "suppliers", table("name | lead time (days)", ["Orlo Supply", 6])).outcomes
    assert summary(unchanged) == "Nothing would change: the one row is known as written."


def test_a_column_that_is_not_in_the_file_leaves_what_is_there() -> None:
    world = cast.larkmoor()
    world.orlo.phone = "0800 1"
    world.orlo.save()
    assert judged(world, "suppliers", table("name", ["Orlo Supply"])).outcomes[0].becomes is Becomes.SAME
    changed = judged(world, "suppliers", table("name | phone", ["Orlo Supply", ""])).outcomes[0]
    assert changed.becomes is Becomes.CHANGED, "an empty cell in a column that is there empties it"


@pytest.mark.parametrize(
    ("number", "unit", "mark", "base", "because"),
    [
        ("500 ml", "", "", 500 * ML, "unit in the cell"),
        ("0,5", "l", "", 500 * ML, "unit beside it"),
        ("1,000", "ml", "point", 1_000 * ML, "the shop named its mark"),
        (1500, "ml", "comma", 1_500 * ML, "a real number has one reading"),
        ("1 pt", "", "", None, "US or imperial was never said"),
    ],
)
def test_an_amount_is_read_in_any_unit(number, unit, mark, base, because) -> None:
    world = stocked()
    world.shop.decimal_mark = mark
    given = table("product | holds (in unit) | unit", ["Hollin panel wipe", number, unit])
    thing = judged(world, "packs", given).rows[0].thing
    assert (thing.amount if thing else None) == base, because


def test_an_opened_day_that_nobody_knows_is_estimated_and_the_preview_says_so() -> None:
    given = table(STOCK, ["Tidewall coating", 20, "ml", "Store", "no", "unknown", "", None, 1, None])
    note = judged(stocked(), "stock", given).outcomes[0].note
    # Tidewall lives 90 days open: 45 days before 25 November 2026.
    assert note.startswith("Opened day not known: 2026-10-11 is written (45 days ago, half of its open life")


def test_what_a_spreadsheet_does_not_change_of_a_bottle_is_refused() -> None:
    world = stocked()
    bottle = cast.bottle(world, cast.product(world, "Brack wheel acid", "acid"), 500 * ML, lot="B-1")
    given = table(
        "code | product | content (in unit) | unit | lot", [bottle.code, "Brack wheel acid", 500, "ml", "B-2"]
    )
    assert complaints(world, "stock", given) == [
        "Row 2, column “lot”: This is not changed by a spreadsheet. Put “B-1” back, "
        "or correct it on the bottle's page."
    ]


def test_another_shops_things_are_not_known() -> None:
    here, there = cast.larkmoor(), cast.larkmoor("fell")
    cast.tidewall(there)
    Place.objects.create(shop=there.shop, name="Loft", kind="store")
    given = table(STOCK, ["Tidewall coating", 20, "ml", "Loft", "yes", None, "", None, 1, None])
    assert len(complaints(here, "stock", given)) == 2


def test_a_preview_asks_as_many_questions_for_two_rows_as_for_two_hundred(django_assert_num_queries) -> None:
    world = stocked()
    row = ["Tidewall coating", 30, "ml", "Store", "yes", None, "", None, 1, None]
    for rows in (2, 200):
        with django_assert_num_queries(6):
            judged(world, "stock", table(STOCK, *[row] * rows), NOON + timedelta(hours=rows))


def test_a_code_that_is_only_drawn_never_makes_two_products_one(monkeypatch) -> None:
    world = cast.larkmoor()
    monkeypatch.setattr("inventory.models.own_code.fresh", lambda letter: letter * 8)
    given = table("name | kind | measured", ["Tarn", "topper", "by weight"], ["Combe", "topper", "by weight"])
    found = judged(world, "products", given)
    assert [each.becomes for each in found.outcomes] == [Becomes.NEW, Becomes.NEW]
