"""The label page: printing marks, looking does not; what a label says."""

from datetime import date, timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Container
from inventory.posters.queries import in_order, labels, stock_for
from inventory.stock.rules.acts import Act
from tests.inventory.posters.wall import sheet
from tests.safety.print.paper import codes, pages, size_mm, text
from tests.world import (
    LITRE,
    ML,
    NOON,
    World,
    bottle,
    fenmoor,
    hollin,
    larkmoor,
    product,
    record,
    spray_bottle,
    tidewall,
)

pytestmark = pytest.mark.django_db
ROLL = {"size": "extra", "paper": "roll", "first": "1"}


@pytest.fixture
def tomas(world: World) -> Client:
    client = Client()
    client.force_login(world.tomas)
    return client


def at(row: Container) -> str:
    return reverse("posters:label_pdf", args=[row.code])


def read(response: object) -> str:
    return " ".join(response.content.decode().split())  # type: ignore[attr-defined]


def wiped(world: World, **facts: object) -> Container:
    """A bottle of panel wipe whose sheet is here."""
    wipe = hollin(world, **facts)
    sheet(wipe)
    return bottle(world, wipe, LITRE, lot="HO-2405")


def says(world: World, row: Container):  # type: ignore[no-untyped-def]
    return labels(world.shop, in_order(world.shop, [row.code]))[0]


def mixed(world: World) -> Container:
    """A spray bottle of panel wipe, one part and ten parts water, five days old."""
    wipe = hollin(world, mix_life=30, mix_life_by="shop")
    sheet(wipe)
    drum, spray = bottle(world, wipe, LITRE, lot="HO-1"), spray_bottle(world)
    filled = Act(
        "fill",
        NOON - timedelta(days=5),
        source=drum.code,
        target=spray.code,
        amount=91 * ML,
        added=LITRE,
        parts=(1, 10),
    )
    record(world, filled)
    return spray


def test_a_viewer_and_a_stranger_print_no_label(world: World, client: Client) -> None:
    row = wiped(world)
    assert client.post(at(row), ROLL).status_code == 302
    client.force_login(world.wren)
    assert (client.get(at(row)).status_code, client.post(at(row), ROLL).status_code) == (403, 403)
    row.refresh_from_db()
    assert row.labelled_at is None


@pytest.mark.parametrize("asked", ["BXXXXXXX", "", "hello,,"])
def test_codes_that_are_on_no_bottle_are_not_found(tomas: Client, asked: str) -> None:
    assert tomas.get(reverse("posters:labels_pdf"), {"codes": asked}).status_code == 404


def test_another_shops_bottle_is_not_found(world: World, tomas: Client) -> None:
    assert tomas.get(at(wiped(larkmoor("next-door")))).status_code == 404


def test_a_bottle_that_is_gone_gets_no_label(world: World, tomas: Client) -> None:
    row = wiped(world)
    record(world, Act("discard", NOON, source=row.code))
    assert tomas.get(at(row)).status_code == 404


def test_opening_the_page_is_not_labelling_and_printing_is(world: World, tomas: Client) -> None:
    row = wiped(world)
    tomas.get(at(row))
    row.refresh_from_db()
    assert row.labelled_at is None
    answer = tomas.post(at(row), ROLL)
    row.refresh_from_db()
    assert (answer["Content-Type"], row.labelled_at is not None) == ("application/pdf", True)
    assert row.label_says == f"{row.product.code} 1:0"  # type: ignore[union-attr]


def test_two_taps_print_a_worn_label_again(world: World, tomas: Client) -> None:
    row = wiped(world)
    page = read(tomas.get(reverse("shelf:container", args=[row.code])))
    assert f'href="{at(row)}">Print label</a>' in page  # the first tap; the second sends what the form holds
    form = tomas.get(at(row)).context["form"]
    answer = tomas.post(at(row), {field.name: field.value() for field in form})
    assert codes(answer.content) == [row.code]


def test_the_stock_in_the_printer_is_remembered(world: World, tomas: Client) -> None:
    row = wiped(world)
    tomas.post(at(row), {"size": "large", "paper": "A4", "first": "3"})
    form = tomas.get(at(row)).context["form"]
    assert [form[name].value() for name in ("size", "paper", "first")] == ["large", "A4", 1]


def test_a_label_too_small_names_the_next_size_and_is_not_printed(world: World, tomas: Client) -> None:
    name = "Hollin long slow-drying panel wipe for fresh and for cured finishes, clear"
    long = product(world, name, "solvent")
    sheet(long, hazards=["Flam. Liq. 2 H225", "Eye Irrit. 2 H319", "STOT SE 3 H336", "Asp. Tox. 1 H304"])
    row = bottle(world, long, LITRE)
    answer = tomas.post(at(row), {"size": "small", "paper": "roll", "first": "1"})
    expected = "does not fit a small label (50 × 25 mm) so that it can be read: take medium (70 × 37 mm)."
    assert (answer.status_code, expected in read(answer)) == (422, True)
    row.refresh_from_db()
    assert row.labelled_at is None


def test_a_place_that_the_sheet_does_not_have_is_said_at_its_field(world: World, tomas: Client) -> None:
    answer = tomas.post(at(wiped(world)), {"size": "large", "paper": "A4", "first": "99"})
    assert "A A4 sheet has the labels 1 to 10, not 99." in read(answer)


def test_a_strip_has_one_page_a_label_in_the_order_asked(world: World, tomas: Client) -> None:
    wipe, coating = hollin(world), tidewall(world)
    sheet(wipe)
    sheet(coating)
    rows = [bottle(world, coating, 30 * ML), bottle(world, wipe, LITRE), bottle(world, coating, 30 * ML)]
    asked = ",".join([*(row.code.lower() for row in rows), "BXXXXXXX"])
    page = read(tomas.get(reverse("posters:labels_pdf"), {"codes": asked}))
    assert "Print these 3 labels" in page
    assert "Not on the shelf, so without a label: BXXXXXXX." in page
    answer = tomas.post(reverse("posters:labels_pdf"), ROLL | {"codes": asked})
    read_back = [codes(answer.content, number) for number in range(pages(answer.content))]
    assert read_back == [[row.code] for row in rows]
    assert size_mm(answer.content) == (105.0, 148.0)


def test_a_sheet_begun_goes_on_at_its_first_free_label(world: World, tomas: Client) -> None:
    wipe = hollin(world)
    sheet(wipe)
    rows = [bottle(world, wipe, LITRE) for _ in range(3)]
    sent = {"size": "large", "paper": "A4", "first": "9", "codes": ",".join(row.code for row in rows)}
    answer = tomas.post(reverse("posters:labels_pdf"), sent)
    assert sorted(codes(answer.content, 0)) == sorted(row.code for row in rows[:2])
    assert codes(answer.content, 1) == [rows[2].code]
    assert size_mm(answer.content) == (210.0, 297.0)


def test_a_label_reads_back_whole(world: World, tomas: Client) -> None:
    row = wiped(world, open_life=90, open_life_by="maker", maker="Hollin")
    record(world, Act("open", NOON - timedelta(days=3), target=row.code))
    answer = tomas.post(at(row), ROLL)
    said = text(answer.content)
    for words in (
        "Hollin panel wipe",
        "20 Feb 2027",  # 22 November + 90 days
        "Danger",
        "Highly flammable liquid and vapour",
        "lot HO-2405 · Hollin · opened 22 November + 90 days, given by the maker",
    ):
        assert words in said
    assert codes(answer.content) == [row.code]


def test_where_another_date_ends_it_the_label_still_says_when_it_was_opened(world: World) -> None:
    row = wiped(world)
    record(world, Act("open", NOON - timedelta(days=3), target=row.code))
    assert "opened 22 Nov 2026" in says(world, row).facts


def test_a_mixed_bottle_says_its_mix_when_until_and_why(world: World, tomas: Client) -> None:
    spray = mixed(world)
    label = says(world, spray)
    assert (label.name, label.use_by) == ("Hollin panel wipe, 1:10", "20 Dec 2026")
    assert label.because == "mixed 20 November + 30 days, given by this shop"
    assert label.facts == ("1 part + 10 water", "lot HO-1"), "the reason says when it was mixed"
    assert "1 part + 10 water · lot HO-1 · mixed 20 November + 30 days" in text(
        tomas.post(at(spray), ROLL).content
    )


def test_a_life_of_minutes_names_the_hour(world: World) -> None:
    two_part = hollin(world, open_life=90, open_life_unit="minute", open_life_by="maker")
    row = bottle(world, two_part, LITRE, opened_at=NOON)
    assert says(world, row).use_by == "25 Nov 2026 13:30"


def test_a_best_before_is_not_called_use_by(world: World) -> None:
    row = bottle(world, hollin(world), LITRE)
    row.lots.update(best_before_on=date(2027, 5, 31))
    label = says(world, row)
    assert (label.use_by_says, label.use_by) == ("Best before", "31 May 2027")


def test_an_empty_bottle_says_so(world: World) -> None:
    spray = spray_bottle(world)
    label = says(world, spray)
    assert (label.name, label.notice) == ("Empty spray bottle", "Nothing in it. Label it when it is filled.")
    assert (label.pictograms, label.use_by) == ((), "")


def test_a_product_without_a_sheet_warns_and_a_towel_does_not(world: World) -> None:
    bare = bottle(world, fenmoor(world), LITRE)
    assert says(world, bare).notice == "No data sheet yet: treat as hazardous, ask the owner."
    towels = product(world, "Brack towels", "towel", dimension="pieces", needs_sheet=False)
    assert says(world, bottle(world, towels, 12)).notice == ""


def test_a_sheet_that_nobody_compared_warns(world: World) -> None:
    wipe = hollin(world)
    sheet(wipe, confirmed=False)
    label = says(world, bottle(world, wipe, LITRE))
    assert (label.notice, label.statements) == ("No data sheet yet: treat as hazardous, ask the owner.", ())


def test_the_label_of_a_first_print_keeps_its_facts_whole(world: World) -> None:
    spray = mixed(world)
    contents = labels(world.shop, in_order(world.shop, [spray.code]))
    assert (stock_for(contents, whole=False), stock_for(contents)) == ("medium", "tall")
