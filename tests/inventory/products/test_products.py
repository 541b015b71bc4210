"""The product pages: lives as they are said, densities with their source, use by that follows."""

from datetime import timedelta

import pytest
from django.forms import ValidationError
from django.urls import reverse

from inventory.models import Container, Pack, Product
from inventory.products.forms import ProductForm, read_life
from safety.models import DataSheet, SheetVersion
from tests.world import ML, NOON, bottle, larkmoor, product, tidewall


@pytest.mark.parametrize("text", ["soon", "ninety days", "90", "0 days", "90 days or so", "-3 days"])
def test_a_life_that_is_no_length_of_time_is_refused(text):
    with pytest.raises(ValidationError):
        read_life(text)


@pytest.mark.parametrize(
    ("text", "life", "because"),
    [
        ("", None, "nothing said is nothing known"),
        ("90 days", (90, "day"), "as the label prints it"),
        ("18 m", (18, "month"), "months, not minutes"),
        ("2 years", (24, "month"), "a year is twelve months, whatever its days"),
        ("45 min", (45, "minute"), "a two-part mix lives for minutes"),
    ],
)
def test_a_life_is_read_as_it_is_said(text, life, because):
    assert read_life(text) == life, because


@pytest.fixture
def world(db):
    return larkmoor()


def sent(**changes: str) -> dict[str, str]:
    known = {
        "name": "Tidewall coating",
        "kind": "coating",
        "dimension": "volume",
        "noun": "bottle",
        "keeping": "each",
        "sealed_life_by": "maker",
        "open_life_by": "maker",
        "mix_life_by": "shop",
    }
    return known | changes


def test_a_technician_changes_no_product(client, world):
    product = tidewall(world)
    client.force_login(world.tomas)

    assert client.post(reverse("products:edit", args=[product.code]), sent(open="1 day")).status_code == 403


def test_a_density_without_its_source_is_refused(world):
    form = ProductForm(sent(density="980"), shop=world.shop)

    assert form.errors["density_source"] == [
        "Say where the density comes from, the data sheet's section 9 for one."
    ]


def test_the_dimension_is_fixed_once_there_is_stock(world):
    product = tidewall(world)
    bottle(world, product, 30 * ML)

    form = ProductForm(sent(dimension="mass"), instance=product, shop=world.shop)

    assert form.is_valid()
    assert form.save().dimension == "volume"


def test_a_shorter_life_moves_the_use_by_of_what_is_open(ines, world):
    product = tidewall(world)
    kept = bottle(world, product, 30 * ML, opened_at=NOON - timedelta(days=3))
    assert Container.objects.get(pk=kept.pk).use_by_on == (NOON + timedelta(days=87)).date()

    page = ines.post(reverse("products:edit", args=[product.code]), sent(open="30 days"), follow=True)

    assert Container.objects.get(pk=kept.pk).use_by_on == (NOON + timedelta(days=27)).date()
    assert "Kept. 1 use-by date moved with it." in page.content.decode()


def test_two_dates_that_move_are_said_as_two(ines, world):
    product = tidewall(world)
    for _ in range(2):
        bottle(world, product, 30 * ML, opened_at=NOON - timedelta(days=3))

    page = ines.post(reverse("products:edit", args=[product.code]), sent(open="30 days"), follow=True)

    assert "Kept. 2 use-by dates moved with it." in page.content.decode()


def test_a_gtin_whose_check_digit_is_wrong_is_refused(ines, world):
    product = tidewall(world)
    pack = {"holds": "30 ml", "gtin": "6291041500214", "multiple": "1", "per_case": "1"}

    answer = ines.post(reverse("products:new_pack", args=[product.code]), pack)

    assert "its last digit does not fit the others" in answer.content.decode()
    assert not Pack.objects.exists()


def test_a_gtin_is_kept_with_fourteen_digits(ines, world):
    product = tidewall(world)
    pack = {
        "holds": "30 ml",
        "gtin": "6291041500213",
        "price": "55",
        "multiple": "1",
        "per_case": "1",
        "usual": "on",
    }

    ines.post(reverse("products:new_pack", args=[product.code]), pack)

    kept = Pack.objects.get()
    assert (kept.gtin, kept.amount, kept.price_minor) == ("06291041500213", 30 * ML, 5500)


def test_a_product_that_was_not_known_at_the_station_keeps_its_gtin_on_the_way(ines, world):
    answer = ines.post(
        reverse("products:new") + "?gtin=06291041500213", sent(name="Pellow snow foam", kind="foam")
    )

    made = Product.objects.get(name="Pellow snow foam")
    assert (
        answer.headers["Location"] == reverse("products:new_pack", args=[made.code]) + "?gtin=06291041500213"
    )


def burning(world, country):
    """Return a panel wipe of category 2 with a gallon in plastic."""
    world.shop.country = country
    world.shop.save()
    made = product(world, "Hollin panel wipe", "solvent")
    made.sheet = DataSheet.objects.create(supplier="Hollin", title="Panel wipe")
    made.save()
    SheetVersion.objects.create(
        sheet=made.sheet, revision_on=NOON.date(), hazards=["Flam. Liq. 2 H225"], typed_on=NOON.date(),
        confirmed_on=NOON.date(), confirmed_by="Ines",
    )  # fmt: skip
    Pack.objects.create(product=made, amount=3_785_412, vessel="plastic")
    Pack.objects.create(product=made, amount=500 * ML, vessel="plastic")
    return made


def test_the_page_says_which_pack_is_above_the_table_of_container_sizes(client, world):
    client.force_login(world.tomas)
    page = client.get(reverse("products:product", args=[burning(world, "US").code])).content.decode()
    assert page.count("Table H-12.</strong>") == 1
    assert (
        "Hollin panel wipe: 3.8 l (1 gal) of category 2 in glass or plastic is above the 0.946 l (1 qt) of "
        "29 CFR 1910.106, Table H-12."
    ) in page
    assert "Source: 29 CFR 1910.106(d)(2)(iii), Table H-12 (read)." in page


@pytest.mark.parametrize("country", ["GB", "DE"])
def test_elsewhere_the_page_says_what_a_pack_is_made_of_and_no_more(client, world, country):
    client.force_login(world.tomas)
    page = client.get(reverse("products:product", args=[burning(world, country).code])).content.decode()
    assert ", glass or plastic" in page
    assert "Table H-12" not in page


def test_an_owner_says_what_a_pack_is_made_of(client, world):
    client.force_login(world.ines)
    made = tidewall(world)
    sent = {"holds": "50 ml", "vessel": "metal", "multiple": "1", "per_case": "1"}
    client.post(reverse("products:new_pack", args=[made.code]), sent)
    assert made.packs.get(amount=50 * ML).vessel == "metal"


def test_a_pack_made_of_something_else_is_refused(client, world):
    client.force_login(world.ines)
    made = tidewall(world)
    sent = {"holds": "50 ml", "vessel": "paper", "multiple": "1", "per_case": "1"}
    page = client.post(reverse("products:new_pack", args=[made.code]), sent).content.decode()
    assert "Select a valid choice. paper is not one of the available choices." in page
    assert not made.packs.filter(amount=50 * ML).exists()


def wipe_of(world, country, composition, **facts):
    world.shop.country = country
    world.shop.save()
    made = product(world, "Hollin panel wipe", "solvent", **facts)
    made.sheet = DataSheet.objects.create(supplier="Hollin", title="Panel wipe")
    made.save()
    SheetVersion.objects.create(
        sheet=made.sheet, revision_on=NOON.date(), hazards=["Flam. Liq. 2 H225"], typed_on=NOON.date(),
        confirmed_on=NOON.date(), confirmed_by="Ines", composition=composition,
    )  # fmt: skip
    return made


IPA = [{"name": "Propan-2-ol", "cas": "67-63-0", "percent": 70, "hazards": ["Flam. Liq. 2 H225"]}]


@pytest.mark.parametrize(
    ("country", "density", "composition", "says", "because"),
    [
        ("GB", 880_000, IPA, "gives off at least 616 g/l of volatile organic compounds, as it is sold.",
         "70 % of 880 g/l, under the limits of the EU and the UK"),
        ("DE", None, IPA, "how many g/l is not known without its density.", "no density was typed in"),
        ("DE", 880_000, [], "", "nobody typed in what it is made of"),
        ("US", 880_000, IPA, "", "other limits hold there"),
    ],
)  # fmt: skip
def test_the_page_says_what_a_panel_wipe_gives_off_as_far_as_it_is_known(
    client, world, country, density, composition, says, because
):
    client.force_login(world.tomas)
    made = wipe_of(world, country, composition, density_mg_per_l=density, density_source="its sheet")
    page = client.get(reverse("products:product", args=[made.code])).content.decode()
    assert ("What it gives off" in page) is bool(says), because
    assert says in page, because
