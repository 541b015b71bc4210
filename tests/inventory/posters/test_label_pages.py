"""The label page: printing marks, looking does not; what a label says."""

from datetime import date, timedelta

import pytest
from django.test import Client
from django.urls import reverse

from inventory.models import Container, Supplier
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
    answer = tomas.post(at(row), {field.name: field.value() or "" for field in form})
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
    assert "A sheet of A4 has the labels 1 to 10, not 99." in read(answer)


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
        "lot HO-2405 · opened 22 November + 90 days, given by the maker",
        "Stick it clear of the maker’s hazards, lot and date.",
    ):
        assert words in said
    assert "flammable" not in said, "its hazards stand on the maker's own label"
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
    assert label.facts == ("1 part + 10 water", "lot HO-1", "mixed by Tomas"), "the reason says when"
    said = text(tomas.post(at(spray), ROLL).content)
    assert "1 part + 10 water · lot HO-1 · mixed by Tomas · mixed 20 November + 30 days" in said
    assert "Highly flammable liquid and vapour" in said


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


def test_a_label_is_never_cut_to_fit_the_stock_in_the_printer(world: World) -> None:
    contents = labels(world.shop, in_order(world.shop, [mixed(world).code]))
    assert stock_for(contents).size.name == stock_for(contents, "medium").size.name == "tall"
    assert stock_for(contents, "large").size.name == "large"


def test_the_page_offers_the_size_that_carries_another_form(world: World, tomas: Client) -> None:
    row = wiped(world)
    answer = tomas.post(at(row), ROLL | {"size": "small", "form": "secondary"})
    assert (answer.status_code, "take tall (74 × 52 mm)." in read(answer)) == (422, True)
    form = answer.context["form"]
    assert form["size"].value() == "tall", "the next tap prints"
    again = tomas.post(at(row), {field.name: field.value() or "" for field in form})
    assert (again.status_code, size_mm(again.content)) == (200, (74.0, 52.0))
    assert "Highly flammable liquid and vapour" in text(again.content)


def test_a_small_form_for_a_litre_is_refused_at_its_field(world: World, tomas: Client) -> None:
    answer = tomas.post(at(wiped(world)), ROLL | {"form": "small"})
    assert (answer.status_code, list(answer.context["form"].errors)) == (422, ["form"])
    assert "the small form ends at 125 ml in EU" in read(answer)


def test_the_shops_language_is_its_labels_language(world: World, tomas: Client) -> None:
    world.shop.language = "es"
    world.shop.save(update_fields=["language"])
    label = says(world, mixed(world))
    assert (label.use_by_says, label.use_by, label.signal_word) == (
        "Usar antes del",
        "20 dic 2026",
        "Peligro",
    )
    assert label.because == "mezclado 20 nov 2026 + 30 días (este taller)"
    assert label.facts == ("1 parte + 10 de agua", "lote HO-1", "mezclado por Tomas")


def test_the_makers_telephone_is_known_where_the_shop_buys_from_the_maker(world: World) -> None:
    row = wiped(world, maker="Orlo")
    assert labels(world.shop, in_order(world.shop, [row.code]), "secondary")[0].supplier == "Orlo"
    row.product.supplier = Supplier.objects.create(shop=world.shop, name="orlo ", phone="0800 555 0142")  # type: ignore[union-attr]
    row.product.save()  # type: ignore[union-attr]
    assert (
        labels(world.shop, in_order(world.shop, [row.code]), "secondary")[0].supplier
        == "Orlo · 0800 555 0142"
    )


def test_an_empty_bottle_takes_a_lasting_label_with_boxes_for_its_fills(world: World) -> None:
    spray = spray_bottle(world)
    label = labels(world.shop, in_order(world.shop, [spray.code]), "lasting")[0]
    assert (label.name, label.fill_says, label.notice) == ("Spray bottle", "Filled on", "")


def test_a_refillable_bottles_page_says_when_it_needs_no_label_and_the_caution(
    world: World, tomas: Client
) -> None:
    page = read(tomas.get(at(mixed(world))))
    assert "exempt only where other means protect equally" in page
    assert "(Directive 92/58/EEC, Annex III; read in a faithful copy)" in page
    assert "Never set it down unattended" in page
    assert "If it is emptied within the shift" not in read(
        tomas.get(at(bottle(world, fenmoor(world), LITRE)))
    )


def test_the_page_says_which_stock_stands_what_without_claiming_a_source(world: World, tomas: Client) -> None:
    page = read(tomas.get(at(wiped(world))))
    assert "polyester film" in page
    assert "Common practice, no source: try a label with what is in your bottle" in page
    assert "Label the bottle, not its box." in page
