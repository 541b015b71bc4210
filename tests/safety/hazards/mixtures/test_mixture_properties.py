"""What holds for any mixture: acute toxicity, skin, eye and the EU statements.

More of an ingredient never makes a class milder, water never makes it graver, the order of ingredients never
matters. Where a rule says otherwise, a test of its own shows it.
"""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from safety.hazards.classes import REGIMES, read_hazard
from safety.hazards.mixtures.acute import acute_toxicity
from safety.hazards.mixtures.eye import eye
from safety.hazards.mixtures.skin import skin
from safety.hazards.mixtures.supplemental import supplemental
from safety.hazards.mixtures.values import FORMS, Found, Ingredient, Limit, Mixture
from tests.safety.hazards.mixtures.making import mix, part

CLASSES = (
    "Skin Corr. 1 H314", "Skin Corr. 1A H314", "Skin Corr. 1B H314", "Skin Corr. 1C H314",
    "Skin Irrit. 2 H315",
    "Skin Irrit. 3 H316", "Eye Dam. 1 H318", "Eye Irrit. 2 H319", "Eye Irrit. 2A H319", "Eye Irrit. 2B H320",
    "Acute Tox. 1 H300", "Acute Tox. 2 H310", "Acute Tox. 3 H331", "Acute Tox. 4 H302", "Acute Tox. 4 H332",
    "Acute Tox. 5 H303", "Skin Sens. 1 H317", "Resp. Sens. 1B H334", "Carc. 2 H351",
)  # fmt: skip
# How grave a class is, by outcome; all corrosive sub-categories print one label.
GRAVITY = {
    "Skin Irrit. 3": 1,
    "Skin Irrit. 2": 2,
    "Skin Corr.": 3,
    "Eye Irrit. 2B": 1,
    "Eye Irrit. 2 ": 2,
    "Eye Dam.": 3,
}
FAMILIES = (acute_toxicity, skin, eye)


@st.composite
def own_limits(draw: st.DrawFn) -> tuple[Limit, ...]:
    """Limits as Annex VI has them: irritant up to where it burns."""
    burns = draw(st.integers(1, 40))
    irritates = draw(st.integers(1, burns)) / 2
    return (
        Limit("Skin Corr. 1B H314", burns),
        *draw(st.sampled_from([(), (Limit("Skin Irrit. 2 H315", irritates, burns),)])),
        *draw(st.sampled_from([(), (Limit("Eye Irrit. 2 H319", irritates, burns),)])),
        *draw(st.sampled_from([(), (Limit("Eye Dam. 1 H318", irritates, burns),)])),
    )


@st.composite
def ingredients(draw: st.DrawFn, name: str = "x") -> Ingredient:
    classes = draw(st.one_of(st.none(), st.lists(st.sampled_from(CLASSES), max_size=4, unique=True)))
    value = st.sampled_from([0.01, 0.4, 3.0, 11.0, 40.0, 250.0, 1500.0, 3000.0, 9000.0])
    return Ingredient(
        name,
        percent=draw(st.integers(0, 250)) / 10,
        cas=draw(st.sampled_from(["", "", "1310-73-2", "7664-38-2", "28182-81-2"])),
        hazards=None if classes is None else tuple(map(read_hazard, classes)),
        supplemental=draw(st.sampled_from([(), ("EUH066",), ("EUH031",), ("EUH071",)])),
        limits=draw(st.one_of(st.just(()), own_limits())),
        ate=draw(
            st.dictionaries(st.sampled_from(["oral", "dermal", "vapour", "dust_mist"]), value, max_size=2)
        ),
        unknown=draw(st.sampled_from([frozenset(), frozenset({"oral"}), frozenset({"inhalation"})])),
        ph=draw(st.sampled_from([None, None, 1.0, 7.0, 13.0])),
        additive=draw(st.sampled_from([None, None, True, False])),
        no_acute_toxicity=draw(st.booleans()),
    )


@st.composite
def mixtures(draw: st.DrawFn) -> Mixture:
    """Up to four ingredients of at most 25 % each; the rest is water."""
    parts = tuple(draw(ingredients(name)) for name in "abcd"[: draw(st.integers(1, 4))])
    return Mixture(
        draw(st.sampled_from([*FORMS, ""])), parts, ph=draw(st.sampled_from([None, 7.0, 1.0, 12.0]))
    )


def with_more_of_one(whole: Mixture, at: int, more: float) -> Mixture:
    parts = list(whole.ingredients)
    parts[at] = replace(parts[at], percent=parts[at].percent + more)
    return replace(whole, ingredients=tuple(parts))


def in_water(whole: Mixture, share: float) -> Mixture:
    thinner = tuple(replace(one, percent=one.percent * share) for one in whole.ingredients)
    return replace(whole, ingredients=thinner)


def gravities(found: Found) -> Iterator[tuple[str, int]]:
    """Outcome and how grave it is, of every class found."""
    for text in found.hazards:
        if text.startswith("Acute Tox."):
            yield text[-3:-1], 6 - int(text.split()[2])
        else:
            yield text.split()[0], next(rank for name, rank in GRAVITY.items() if text.startswith(name))


def graver_than(found: Found, other: Found) -> list[str]:
    """The outcomes in which one finding is graver than the other."""
    known: dict[str, int] = {}
    for outcome, rank in gravities(other):  # a family may name two of one outcome: the gravest will stand
        known[outcome] = max(rank, known.get(outcome, 0))
    return [outcome for outcome, rank in gravities(found) if rank > known.get(outcome, 0)]


@given(mixtures(), st.sampled_from(REGIMES), st.data())
def test_more_of_an_ingredient_never_makes_a_class_milder(
    whole: Mixture, regime: str, data: st.DataObject
) -> None:
    room = 100 - sum(one.percent for one in whole.ingredients)
    at = data.draw(st.integers(0, len(whole.ingredients) - 1))
    more = with_more_of_one(whole, at, data.draw(st.floats(0, max(0.0, room))))
    for family in FAMILIES:
        assert graver_than(family(whole, regime), family(more, regime)) == []


@given(mixtures(), st.sampled_from(REGIMES), st.floats(0, 1))
def test_water_never_makes_a_class_graver(whole: Mixture, regime: str, share: float) -> None:
    for family in FAMILIES:
        assert graver_than(family(in_water(whole, share), regime), family(whole, regime)) == []


@given(mixtures(), st.sampled_from(REGIMES), st.randoms(use_true_random=False))
def test_the_order_of_ingredients_never_matters(whole: Mixture, regime: str, chance: object) -> None:
    shuffled = list(whole.ingredients)
    chance.shuffle(shuffled)
    other = replace(whole, ingredients=tuple(shuffled))
    found_so_far = skin(whole, regime).hazards
    families = (*FAMILIES, lambda mixture, where: supplemental(mixture, where, found_so_far))
    for family in families:
        one, two = family(whole, regime), family(other, regime)
        assert sorted(one.hazards) == sorted(two.hazards)
        assert sorted(one.supplemental) == sorted(two.supplemental)
        assert sorted(one.needs_review) == sorted(two.needs_review)
        assert (one.ate, one.unknown_percent) == (two.ate, two.unknown_percent)


@given(mixtures(), st.sampled_from(REGIMES))
def test_every_class_and_statement_says_why(whole: Mixture, regime: str) -> None:
    for family in FAMILIES:
        found = family(whole, regime)
        assert {one.hazard for one in found.because} == set(found.hazards)
        assert all(
            one.rule and one.source and one.mark in ("S", "S2", "M") and one.numbers for one in found.because
        )
    found = supplemental(whole, regime, ())
    assert {one.hazard for one in found.because} == set(found.supplemental)


@given(mixtures(), st.sampled_from(REGIMES))
def test_a_corrosive_mixture_damages_eyes(whole: Mixture, regime: str) -> None:
    if any(text.startswith("Skin Corr.") for text in skin(whole, regime).hazards):
        assert eye(whole, regime).hazards == ("Eye Dam. 1 H318",)


@pytest.mark.parametrize(
    ("concentrate", "share", "appears", "because"),
    [
        (mix(part("limonene", 2, "Skin Sens. 1 H317")), 0.25, "EUH208 limonene", "2.8: only below its class"),
        (mix(part("x", 40, "Skin Irrit. 2 H315")), 0.2, "EUH210", "2.10: only without any class"),
        (
            mix(part("x", 20, "Skin Irrit. 2 H315"), part("y", 80, supplemental=("EUH066",))),
            0.15, "EUH066", "1.2.4: never beside a skin irritant",
        ),
    ],
)  # fmt: skip
def test_a_dilution_gains_a_statement_only_where_a_rule_gives_it_in_place_of_a_class(
    concentrate: Mixture, share: float, appears: str, because: str
) -> None:
    thin = in_water(concentrate, share)
    sensitising = ("Skin Sens. 1 H317",) if "Sens" in str(concentrate.ingredients[0].hazards[0]) else ()
    before = supplemental(concentrate, "EU", (*skin(concentrate, "EU").hazards, *sensitising)).supplemental
    after = supplemental(thin, "EU", skin(thin, "EU").hazards).supplemental
    assert (appears in before, appears in after) == (False, True), because
