"""What a product does on a car: whose word each line is, what an owner may change, what is kept."""

from datetime import date

import pytest
from django.urls import reverse

from inventory.models import Product, Profile
from inventory.products.rules import Line, lines, unknown
from inventory.trade.edits import Edits
from inventory.trade.profile import profile
from safety.models import DataSheet, SheetVersion
from tests.world import World, fenmoor, hollin, larkmoor, tidewall

pytestmark = pytest.mark.django_db
COMMON = "common practice, no source"
TRADE = "trade pages, no authority"


def address(name: str, of: Product) -> str:
    return reverse(f"products:{name}", args=[of.code])


def read(client, of: Product) -> str:
    return client.get(address("profile", of)).content.decode()


# Who may


@pytest.mark.parametrize("name", ["edit_profile", "follow_kind", "confirm_groups"])
def test_only_an_owner_changes_what_a_product_does(client, world: World, name: str) -> None:
    coating = tidewall(world)
    client.force_login(world.tomas)

    answer = client.post(address(name, coating), {"line": "groups", "keep_dry_h": "1"})

    assert answer.status_code == 403
    assert not Profile.objects.exists()


def test_a_viewer_reads_the_page_and_finds_nothing_to_press(client, world: World) -> None:
    client.force_login(world.wren)

    text = read(client, tidewall(world))

    assert "Tidewall coating on the car" in text
    assert "Back to its kind" not in text
    assert "These are right" not in text


def test_a_stranger_is_asked_to_sign_in(client, world: World) -> None:
    assert client.get(address("profile", tidewall(world))).status_code == 302


def test_a_product_of_another_shop_is_not_found(ines, world: World) -> None:
    elsewhere = tidewall(larkmoor("elsewhere"))

    assert ines.get(address("profile", elsewhere)).status_code == 404
    assert ines.post(address("follow_kind", elsewhere), {"line": "groups"}).status_code == 404


# What it says


def test_a_coating_nobody_described_says_its_kind_and_whose_word_that_is(world: World) -> None:
    said = {line.name: line for line in lines(profile("coating"))}

    assert said["keep_dry"] == Line("keep_dry", "Kept dry for", "48 h", TRADE, typed=False)
    further = "not before 60 min and not after 180 min"
    assert said["recoat"] == Line("recoat", "A further layer", further, COMMON, typed=False)
    assert said["needs_absent"].says == (
        "wax (a stop); sealant, glaze or topper (a stop); oils, fillers or soap film (a stop); "
        "silicone in the air of the bay (asked); a cut that nothing has refined (a note)"
    )
    assert said["needs_absent"].whose == TRADE


def test_a_word_of_this_shop_stands_beside_those_of_the_kind() -> None:
    said = {line.name: line for line in lines(profile("coating", edits=Edits(keep_dry_h=12, heat_c=300)))}

    assert said["keep_dry"] == Line("keep_dry", "Kept dry for", "12 h", "this shop", typed=True)
    assert said["heat"] == Line("heat", "Stands", "300 °C", "this shop", typed=True)
    assert not said["wash_hold"].typed


def test_nothing_at_all_is_said_as_nothing_and_not_left_out() -> None:
    said = {line.name: line.says for line in lines(profile("shampoo", edits=Edits(leaves=())))}

    assert (said["leaves"], said["lifts"]) == ("nothing", "nothing")


def test_what_nobody_has_said_is_asked_of_a_coating_and_not_of_a_shampoo() -> None:
    assert "what heat it stands" in unknown(profile("coating"))
    assert unknown(profile("shampoo")) == ["how long it must lie", "how long it flashes off"]


def test_what_its_groups_say_stands_beside_what_it_counts_as() -> None:
    of_ketones = profile("solvent", frozenset({"19"}))
    said = {line.name: line for line in lines(of_ketones, frozenset({"ketone", "solvent"}))}
    assert said["traits"].says == "petroleum; by its groups: ketone; solvent"
    said = {line.name: line for line in lines(profile("acid"))}
    assert said["traits"] == Line("traits", "Counts as", "acid; wet", COMMON, typed=False)


# What it keeps


def test_what_it_counts_as_is_typed_says_whose_word_it_is_and_goes_back(ines, world: World) -> None:
    coating = tidewall(world)
    shown = ines.get(address("edit_profile", coating)).content.decode()
    assert '<datalist id="words-of">' in shown
    assert 'list="words-of"' in shown

    typed = {"traits": ["coats"], "source": "its label"}
    page = ines.post(address("edit_profile", coating), typed, follow=True)

    assert Profile.objects.get().traits == ["coats"]
    assert "<strong>this shop</strong>: its label" in page.content.decode()
    page = ines.post(address("follow_kind", coating), {"line": "traits"}, follow=True)
    assert Profile.objects.get().traits is None
    assert "Counts as: as its kind again." in page.content.decode()


def test_what_was_typed_stays_on_the_page_beside_the_error(ines, world: World) -> None:
    coating = tidewall(world)

    text = ines.post(
        address("edit_profile", coating), {"recoat_from_min": "200", "source": "its label"}
    ).content.decode()

    assert "One thing to put right" in text
    assert 'value="200"' in text
    assert 'value="its label"' in text
    assert not Profile.objects.exists()


def test_one_line_goes_back_to_its_kind_and_the_others_stay(ines, world: World) -> None:
    coating = tidewall(world)
    Profile.objects.create(product=coating, recoat_from_min=30, recoat_to_min=45, keep_dry_h=12)

    page = ines.post(address("follow_kind", coating), {"line": "recoat"}, follow=True)

    kept = Profile.objects.get()
    assert (kept.recoat_from_min, kept.recoat_to_min, kept.keep_dry_h) == (None, None, 12)
    assert "A further layer: as its kind again." in page.content.decode()


@pytest.mark.parametrize("line", ["", "groups_confirmed_by", "product_id"])
def test_a_line_that_the_page_does_not_have_is_not_found(ines, world: World, line: str) -> None:
    coating = tidewall(world)
    Profile.objects.create(product=coating, keep_dry_h=12)

    assert ines.post(address("follow_kind", coating), {"line": line}).status_code == 404
    assert Profile.objects.get().keep_dry_h == 12


# What it reacts with


def sheeted(of: Product, *ingredients: dict[str, object]) -> Product:
    sheet = DataSheet.objects.create(supplier="Orlo Supply", title=of.name)
    SheetVersion.objects.create(
        sheet=sheet, revision_on=date(2025, 1, 1), typed_on=date(2025, 2, 1), confirmed_on=date(2025, 2, 1),
        confirmed_by="Ines", composition=list(ingredients),
    )  # fmt: skip
    of.sheet = sheet
    of.save()
    return of


ISOPROPANOL = {"name": "Propan-2-ol", "cas": "67-63-0", "percent": 70, "hazards": ["Flam. Liq. 2 H225"]}


def test_groups_are_proposed_from_the_sheet_with_the_reason(ines, world: World) -> None:
    text = read(ines, sheeted(hollin(world), ISOPROPANOL))

    assert "until an owner confirms or changes them" in text
    assert "alcohols and glycols" in text
    assert "Propan-2-ol: 4." in text


def test_what_an_owner_confirms_is_kept_with_name_and_day(ines, world: World) -> None:
    wipe = sheeted(hollin(world), ISOPROPANOL)

    sent = {"groups": ["4"], "more": ["106"], "water_based": "yes"}
    page = ines.post(address("confirm_groups", wipe), sent, follow=True)

    kept = Profile.objects.get()
    assert (kept.groups, kept.water_based, kept.groups_confirmed_by) == (["4", "106"], True, "Ines")
    assert kept.groups_confirmed_on is not None
    assert "by Ines on" in page.content.decode()


def test_none_of_the_proposed_groups_is_an_answer_too(ines, world: World) -> None:
    wipe = sheeted(hollin(world), ISOPROPANOL)

    page = ines.post(address("confirm_groups", wipe), {}, follow=True)

    assert Profile.objects.get().groups == []
    assert "No group: nothing in the chart speaks of it." in page.content.decode()


def test_a_group_that_the_chart_lacks_is_refused_and_nothing_is_kept(ines, world: World) -> None:
    iron = fenmoor(world)

    page = ines.post(address("confirm_groups", iron), {"more": ["99"]})

    assert "99 is not one of the available choices" in page.content.decode()
    assert not Profile.objects.exists()


def test_confirming_groups_leaves_the_shops_words_alone_and_taking_it_back_too(ines, world: World) -> None:
    iron = fenmoor(world)
    Profile.objects.create(product=iron, touches=["wheels"], source="its label")

    ines.post(address("confirm_groups", iron), {"more": ["20"]})
    assert Profile.objects.get().groups == ["20"]
    ines.post(address("follow_kind", iron), {"line": "groups"})

    kept = Profile.objects.get()
    assert (kept.groups, kept.groups_confirmed_on, kept.groups_confirmed_by) == ([], None, "")
    assert (kept.touches, kept.source) == (["wheels"], "its label")


def test_the_products_page_leads_to_it(ines, world: World) -> None:
    coating = tidewall(world)

    page = ines.get(address("product", coating)).content.decode()

    assert f'href="{address("profile", coating)}">On the car</a>' in page
