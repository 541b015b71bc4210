"""Profiles: a kind's defaults, what its composition adds, and what a shop's own words replace."""

from typing import Any

import pytest

from inventory.models.product import Kind
from inventory.trade.kinds import families, traits, traits_of, turn
from inventory.trade.profile import Edits, profile
from inventory.trade.reading import MARKS, header, rows
from inventory.trade.residues import residues
from inventory.trade.surface_rules import GRADES, surface_rules
from inventory.trade.surfaces import AREAS, materials

TABLES = ("surfaces", "residues", "kinds", "surface_rules", "group_traits", "order_of_work", "rules")


def test_a_kind_that_no_table_has_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match="paintbrush"):
        profile("paintbrush")


def test_a_family_that_its_kind_does_not_have_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match="shampoo acid"):
        profile("shampoo", edits=Edits(family="acid"))


@pytest.mark.parametrize("kind", list(Kind))
def test_every_kind_of_product_has_a_profile(kind: str) -> None:
    assert profile(kind).kind == kind


def test_no_profile_is_of_a_kind_that_no_product_can_have() -> None:
    assert {row["kind"] for row in rows("kinds")} == set(Kind.values)


@pytest.mark.parametrize(
    ("kind", "expected", "because"),
    [
        ("coating", ("reactive", "spray", "primer"), "what nobody described needs the wipe"),
        ("shampoo", ("neutral", "alkaline"), "a neutral soap strips nothing"),
        ("foam", ("neutral", "alkaline"), "a neutral foam strips nothing"),
        ("wax", ("sealant", "wax", "glaze", "all-in-one"), "a sealant is the hardest to strip"),
        ("solvent", ("petroleum", "alcohol"), "petroleum harms more"),
        ("dressing", ("silicone", "water"), "silicone reaches every panel"),
        ("alkaline", ("strong", "mild"), "strong harms more"),
        ("wheel", ("alkaline", "acid", "neutral"), "one that harms metal"),
        ("other", ("", "sprayed paint"), "most other things are no paint"),
        ("tape", ("",), "nothing splits it"),
    ],
)
def test_a_kinds_first_family_is_the_cautious_one(kind: str, expected: tuple[str, ...], because: str) -> None:
    assert families(kind) == expected, because
    assert profile(kind).family == expected[0]


def test_a_coating_that_nobody_described_has_the_cautious_end_of_every_range() -> None:
    """Trade pages: keep dry 12 to 48 h, unwashed 7 d; common practice: next layer after 1 to 3 h."""
    found = profile("coating")
    waits = found.waits
    assert (waits.keep_dry_h, waits.cure_h, waits.wash_hold_d) == (48, 48, 7)
    assert (waits.recoat_from_min, waits.recoat_to_min) == (60, 180)
    assert (waits.refinish_wait_d, waits.film_wait_d) == (7, 2)
    assert dict(found.needs_absent) == {
        "wax": "stop",
        "sealant": "stop",
        "oils": "stop",
        "silicone": "ask",
        "haze": "tell",
    }
    assert found.topper_ok is False


@pytest.mark.parametrize(
    ("field", "source"),
    [
        ("needs_absent", "trade pages, no authority"),
        ("keep_dry_h", "trade pages, no authority"),
        ("recoat_from_min", "common practice, no source"),
        ("flash_min", ""),
        ("heat_c", ""),
    ],
)
def test_a_field_says_whose_word_it_is_and_nothing_where_nobody_said(field: str, source: str) -> None:
    assert profile("coating").source(field) == source


def test_what_the_shop_typed_says_so_and_the_rest_keeps_its_mark() -> None:
    found = profile("coating", edits=Edits(keep_dry_h=12))
    assert (found.waits.keep_dry_h, found.source("keep_dry_h")) == (12, "this shop")
    assert (found.waits.cure_h, found.source("cure_h")) == (48, "trade pages, no authority")


@pytest.mark.parametrize(
    ("typed", "expected", "because"),
    [
        (None, {"wax": "stop", "sealant": "stop", "silicone": "ask", "haze": "tell"}, "spray's default"),
        ((), {}, "an empty list is nothing at all"),
        (("wax",), {"wax": "stop"}, "a bare name stops"),
        (("wax:ask", "oils:tell"), {"wax": "ask", "oils": "tell"}, "a grade of its own"),
    ],
)
def test_a_shop_may_say_what_must_be_absent(
    typed: tuple[str, ...] | None, expected: dict[str, str], because: str
) -> None:
    edits = Edits(family="spray", needs_absent=typed)
    assert dict(profile("coating", edits=edits).needs_absent) == expected, because


@pytest.mark.parametrize(
    ("field", "typed", "value"),
    [
        ("leaves", ("wax",), frozenset({"wax"})),
        ("lifts", ("oils",), frozenset({"oils"})),
        ("touches", ("lamps",), frozenset({"lamps"})),
        ("traits", (), frozenset()),
        ("never", ("chrome",), frozenset({"chrome"})),
        ("asks", ("leather",), frozenset({"leather"})),
        ("topper_ok", True, True),
        ("heat_c", 650, 650),
        ("air_from_c", -5, -5),
        ("air_to_c", 25, 25),
        ("humidity_from", 40, 40),
        ("humidity_to", 70, 70),
    ],
)
def test_every_field_takes_the_shops_word(field: str, typed: Any, value: Any) -> None:
    found = profile("polish", edits=Edits(**{field: typed}))
    assert getattr(found, field) == value
    assert found.source(field) == "this shop"


def test_zero_is_a_word_of_the_shop_and_not_the_default() -> None:
    assert profile("coating", edits=Edits(wash_hold_d=0)).waits.wash_hold_d == 0


@pytest.mark.parametrize(
    ("groups", "expected", "because"),
    [
        ({"1"}, {"acid"}, "mineral acid"),
        ({"3"}, {"acid"}, "organic acid"),
        ({"1", "15", "ammonium"}, {"acid", "fluoride acid"}, "bifluoride"),
        ({"1", "hydrochloric"}, {"acid", "hydrochloric acid"}, "hydrochloric acid"),
        ({"10"}, {"strong alkali", "strong degreaser"}, "hydroxide"),
        ({"10", "104", "hypochlorite"}, {"strong alkali", "strong degreaser", "bleach"}, "bleach"),
        ({"10", "ammonia"}, {"strong alkali", "strong degreaser", "ammonia"}, "ammonia"),
        ({"4"}, set(), "isopropanol and ethanol harm no lamp"),
        ({"4", "methanol"}, {"methanol"}, "methanol does"),
        ({"13"}, {"ester", "solvent"}, "an acetate"),
        ({"13", "water-sensitive"}, set(), "an alkoxysilane is listed with the esters and is none to a lamp"),
        ({"4", "14"}, {"ether", "solvent"}, "a glycol ether"),
        ({"16"}, {"aromatic solvent", "petroleum", "solvent"}, "xylene"),
        ({"17"}, {"chlorinated solvent", "solvent"}, "dichloromethane"),
        ({"19"}, {"ketone", "solvent"}, "acetone"),
        ({"29"}, {"petroleum", "solvent"}, "white spirit"),
        ({"20"}, set(), "thioglycolate, neutral"),
        ({"106"}, set(), "water"),
    ],
)
def test_composition_adds_what_a_surface_feels(groups: set[str], expected: set[str], because: str) -> None:
    """Groups as the reactivity chart numbers them; tags are our own words."""
    assert traits_of(frozenset(groups)) == expected, because
    assert profile("tape", frozenset(groups)).traits == expected


def test_what_is_in_the_bottle_stays_whatever_traits_the_shop_types() -> None:
    assert profile("solvent", frozenset({"19"}), Edits(traits=())).traits == {"ketone", "solvent"}


def test_surfaces_follow_from_traits_until_the_shop_names_them() -> None:
    plain, harsh = profile("glass"), profile("glass", frozenset({"10", "ammonia"}))
    assert plain.never == frozenset()
    assert harsh.never == {"lamp", "anodised", "aluminium", "wrap_gloss", "wrap_matte"}
    assert profile("glass", frozenset({"10"}), Edits(never=())).never == frozenset()


@pytest.mark.parametrize("name", TABLES)
def test_a_table_names_its_source_its_day_and_a_mark_for_every_line(name: str) -> None:
    lines = header(name)
    for start in ("source: ", "written on: ", "mark: "):
        assert sum(line.startswith(start) for line in lines) == 1
    assert {row["mark"] for row in rows(name)} <= set(MARKS)


def test_the_tables_speak_of_residues_surfaces_areas_and_traits_that_exist() -> None:
    for row in rows("kinds"):
        found = profile(row["kind"], edits=Edits(family=row["family"]))
        assert found.leaves | found.lifts | set(found.needs_absent) <= set(residues())
        assert set(found.needs_absent.values()) <= set(GRADES)
        assert found.touches <= set(AREAS)
    assert all(rule.surfaces <= set(materials()) for rule in surface_rules())
    assert {one.area for one in materials().values()} == set(AREAS)


def test_a_trait_of_a_surface_rule_comes_from_a_kind_or_a_composition_but_heat() -> None:
    """Heat is a lamp or a gun, no product: only a product's own page can name it."""
    cells = [row["traits"] for name in ("kinds", "group_traits") for row in rows(name)]
    given = {trait for cell in cells for trait in cell.split(";")}
    assert {rule.trait for rule in surface_rules()} - given == {"heat"}
    assert set(traits()) == (given | {"heat"}) - {""}


def test_the_order_of_work_is_that_of_the_trade() -> None:
    """Trade pages and common practice: wheels, wash, iron, tar, minerals, clay, cut, polish, wipe, coat."""
    order = ["foam", "wheel", "shampoo", "iron", "tar", "acid", "clay", "compound", "polish"]
    order += ["solvent", "coating", "wax", "dressing", "tape"]
    assert sorted(reversed(order), key=turn) == order
    assert turn("coating", "primer") < turn("solvent") < turn("coating", "reactive")
