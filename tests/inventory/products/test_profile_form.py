"""What an owner types about a product on a car: what is refused, what is kept, what follows its kind."""

import pytest

from inventory.models import Product, Profile
from inventory.precheck.queries.profiles import edits_of
from inventory.products.forms import ProfileForm
from inventory.trade.edits import Edits
from inventory.trade.profile import Profile as Trade
from inventory.trade.profile import profile
from tests.world import World, product, tidewall

pytestmark = pytest.mark.django_db


def posted(form: ProfileForm, **changes: object) -> dict[str, object]:
    """Return what a browser sends of a form that was changed so; an emptied field is sent empty."""
    shown = {name: form[name].value() for name in form.fields}
    kept = {name: value for name, value in shown.items() if value not in (None, [])}
    kept["topper_ok"] = {True: "true", False: "false"}.get(shown["topper_ok"], "unknown")
    return kept | changes


def form_of(of: Product, groups: frozenset[str] = frozenset(), **changes: object) -> ProfileForm:
    """Return the form of a product as an owner sends it, with these changes."""
    row = Profile.objects.filter(product=of).first() or Profile(product=of)
    shown = ProfileForm(instance=row, kind=of.kind, groups=groups)
    return ProfileForm(posted(shown, **changes), instance=row, kind=of.kind, groups=groups)


# What is refused


@pytest.mark.parametrize(
    ("changes", "field", "says"),
    [
        (
            {"recoat_from_min": "200", "recoat_to_min": "90"},
            "recoat_to_min",
            "The further layer would be too late before it is early enough. It would be 200 to 90.",
        ),
        (
            # The other end is the kind's own.
            {"recoat_from_min": "200"},
            "recoat_to_min",
            "The further layer would be too late before it is early enough. It would be 200 to 180.",
        ),
        (
            {"air_from_c": "30", "air_to_c": "10"},
            "air_to_c",
            "The window ends below where it starts. It would be 30 to 10.",
        ),
        (
            {"never": ["glass", "lamp"], "asks": ["glass"]},
            "asks",
            "Glass: never, or asked about? Tick one.",
        ),
        ({"keep_dry_h": "12.5"}, "keep_dry_h", "Write whole numbers."),
        (
            {"cure_h": "100000"},
            "cure_h",
            "Ensure this value is less than or equal to 8760.",
        ),
        (
            {"never": ["moon"]},
            "never",
            "Select a valid choice. moon is not one of the available choices.",
        ),
        (
            {"traits": ["sticky"]},
            "traits",
            "Select a valid choice. sticky is not one of the available choices.",
        ),
    ],
)
def test_a_profile_that_cannot_be_is_refused(world: World, changes, field: str, says: str) -> None:
    form = form_of(tidewall(world), **changes)

    assert form.errors.get(field) == [says]


def test_a_window_of_one_open_end_is_kept(world: World) -> None:
    form = form_of(tidewall(world), humidity_from="30")

    assert form.is_valid(), form.errors
    assert form.save().humidity_from == 30


# What is kept


def test_what_nobody_changed_goes_on_following_the_kind(world: World) -> None:
    kept = form_of(tidewall(world), keep_dry_h="12", source="its technical sheet").save()

    assert (kept.keep_dry_h, kept.source) == (12, "its technical sheet")
    lists = (kept.leaves, kept.lifts, kept.needs_absent, kept.never, kept.asks, kept.touches, kept.traits)
    assert lists == (None,) * 7
    assert (kept.family, kept.cure_h, kept.topper_ok) == ("", None, None)


def test_a_list_that_was_changed_is_kept_and_one_put_back_follows_the_kind_again(world: World) -> None:
    coating = tidewall(world)

    assert form_of(coating, touches=["wheels"]).save().touches == ["wheels"]
    assert form_of(coating, touches=["paint", "film"]).save().touches is None


def test_nothing_ticked_is_nothing_and_not_the_kind(world: World) -> None:
    soap = product(world, "Fenmoor neutral shampoo", "shampoo")

    kept = form_of(soap, leaves=[]).save()

    assert kept.leaves == []
    assert profile("shampoo").leaves == {"oils"}


def test_another_family_brings_its_own_lists_and_keeps_none_of_the_old(world: World) -> None:
    soap = product(world, "Fenmoor neutral shampoo", "shampoo")

    kept = form_of(soap, family="alkaline").save()

    assert (kept.family, kept.lifts) == ("alkaline", None)
    assert profile("shampoo", edits=Edits(family="alkaline")).lifts == {"wax"}


def test_grades_of_what_must_not_be_there_are_kept_as_the_trade_writes_them(world: World) -> None:
    kept = form_of(tidewall(world), need_wax="ask", need_haze="", need_oils="stop").save()

    assert kept.needs_absent == ["wax:ask", "sealant", "oils", "silicone:ask"]


# What it counts as


def of(kept: Profile, groups: frozenset[str] = frozenset()) -> Trade:
    """Return what a check counts with."""
    return profile(kept.product.kind, groups, edits_of(kept))


def test_a_wipe_that_is_no_petroleum_may_touch_vinyl_and_no_list_was_typed_for_it(world: World) -> None:
    wipe = product(world, "Hollin panel wipe", "solvent")
    assert "wrap_gloss" in profile("solvent").never

    kept = form_of(wipe, traits=["solvent"]).save()

    assert (kept.traits, kept.never) == (["solvent"], None)
    assert "wrap_gloss" not in of(kept).never
    assert of(kept).source("traits") == "this shop"


def test_a_trait_put_back_follows_the_kind_again(world: World) -> None:
    wipe = product(world, "Hollin panel wipe", "solvent")
    form_of(wipe, traits=["solvent"]).save()
    assert form_of(wipe, traits=["petroleum", "solvent"]).save().traits is None


def test_counting_as_nothing_is_an_answer(world: World) -> None:
    wipe = product(world, "Hollin panel wipe", "solvent")
    kept = form_of(wipe, traits=[]).save()
    assert (kept.traits, of(kept).traits) == ([], frozenset())


def test_what_its_groups_say_cannot_be_unticked(world: World) -> None:
    # group 19 of the chart: ketones
    ketone = frozenset({"19"})
    wipe = product(world, "Hollin panel wipe", "solvent")
    offered = [key for key, _ in form_of(wipe, ketone).fields["traits"].choices]
    assert not {"ketone", "solvent"} & set(offered)

    kept = form_of(wipe, ketone, traits=[]).save()

    assert of(kept, ketone).traits == {"ketone", "solvent"}
    # what its kind said and its groups hid is not lost when the groups change
    assert kept.traits == ["solvent"]
    assert form_of(wipe, ketone, traits=["petroleum"]).save().traits is None


def test_a_list_that_the_new_traits_say_anyhow_is_not_kept(world: World) -> None:
    wipe = product(world, "Hollin panel wipe", "solvent")
    kept = form_of(wipe, traits=["bleach"], never=["leather", "top_fabric"]).save()
    assert (kept.traits, kept.never) == (["bleach"], None)
    assert of(kept).never == {"leather", "top_fabric"}
