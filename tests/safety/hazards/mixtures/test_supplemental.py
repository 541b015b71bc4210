"""EU statements beside the classes, each where it stands and where it nearly does.

Conditions: CLP Annex II, consolidation of 1 Sep 2025. Chosen here, without a limit in law: EUH066 from 10 %,
reactions without a limit of their own from 1 %. Sensitiser limit of hexamethylene diisocyanate: CLP Annex VI.
"""

import pytest

from safety.hazards.mixtures.supplemental import supplemental
from safety.hazards.mixtures.values import Ingredient, Limit, Mixture
from safety.hazards.statements import wording
from tests.safety.hazards.mixtures.making import mix, part

BURNS, IRRITATES, TOXIC = "Skin Corr. 1B H314", "Skin Irrit. 2 H315", "Acute Tox. 3 H331"
SOME = ("Flam. Liq. 2 H225",)  # classed, so that EUH210 is silent
SKIN, SKIN_A, SKIN_B, BREATH = (
    "Skin Sens. 1 H317", "Skin Sens. 1A H317", "Skin Sens. 1B H317", "Resp. Sens. 1 H334",
)  # fmt: skip


def dry(percent: float) -> Ingredient:
    return part("acetone", percent, supplemental=("EUH066",))


def said(whole: Mixture, *found: str) -> tuple[str, ...]:
    return supplemental(whole, "EU", found).supplemental


@pytest.mark.parametrize("regime", ["US", "CA", "UN"])
def test_no_other_regime_has_them(regime: str) -> None:
    assert supplemental(mix(dry(100)), regime, ()).supplemental == ()


@pytest.mark.parametrize(
    ("whole", "found", "expected", "because"),
    [
        (mix(dry(10)), SOME, ("EUH066",), "10 % is our choice"),
        (mix(dry(9.9)), SOME, (), "just below"),
        (mix(dry(5), part("butyl acetate", 5, supplemental=("EUH066",))), SOME, ("EUH066",), "they sum"),
        (mix(dry(10)), (IRRITATES,), (), "never beside a skin irritant"),
        (mix(dry(10)), (BURNS,), (), "nor beside a skin corrosive"),
        (mix(dry(10)), ("Skin Sens. 1 H317",), ("EUH066",), "a sensitiser does not silence it"),
    ],
)
def test_dry_skin(whole: Mixture, found: tuple[str, ...], expected: tuple[str, ...], because: str) -> None:
    assert said(whole, *found) == expected, because


@pytest.mark.parametrize("code", ["EUH014", "EUH029", "EUH031", "EUH032"])
def test_reactions_follow_own_limits_and_else_one_percent(code: str) -> None:
    limited = [part("x", percent, limits=(Limit(code, 5),)) for percent in (5, 4.9)]
    assert [said(mix(one), *SOME) for one in limited] == [(code,), ()]
    bare = [part("x", percent, supplemental=(code,)) for percent in (1, 0.9)]
    assert [said(mix(one), *SOME) for one in bare] == [(code,), ()]


def test_two_ingredients_of_one_reaction_sum_their_shares() -> None:
    one, other = (part(name, 3, limits=(Limit("EUH031", 5),)) for name in ("a", "b"))
    assert said(mix(one, other), *SOME) == ("EUH031",), "3/5 + 3/5 = 1.2"


def test_our_choice_is_marked_and_below_it_is_asked() -> None:
    found = supplemental(mix(part("silazane", 0.9, supplemental=("EUH014",))), "EU", SOME)
    assert found.needs_review == (
        "“silazane” (0.9 %) carries EUH014 and no limit for it: nobody says whether so little of it still "
        "needs the statement. Ask the maker.",
    )
    chosen = supplemental(mix(part("silazane", 20, supplemental=("EUH031",))), "EU", SOME).because[0]
    assert (chosen.mark, "our choice" in chosen.rule) == ("M", True)
    own = supplemental(mix(part("bleach", 20, limits=(Limit("EUH031", 5),))), "EU", SOME).because[0]
    assert own.mark == "S"


@pytest.mark.parametrize(
    ("form", "carried", "found", "stands", "because"),
    [
        ("spray", False, (BURNS,), True, "a corrosive that is sprayed"),
        ("aerosol", False, (BURNS,), True, "likewise"),
        ("", False, (BURNS,), True, "of an unknown form the worse counts"),
        ("liquid", False, (BURNS,), False, "a liquid that nobody sprays"),
        ("spray", False, (IRRITATES,), False, "not corrosive"),
        ("liquid", True, (TOXIC,), True, "toxic to breathe because it corrodes"),
        ("liquid", True, SOME, False, "neither corrosive nor toxic to breathe"),
    ],
)
def test_corrosive_to_the_airways(
    form: str, carried: bool, found: tuple[str, ...], stands: bool, because: str
) -> None:
    acid = part("acid", 5, supplemental=("EUH071",) if carried else ())
    assert (said(mix(acid, form=form), *found) == ("EUH071",)) is stands, because


@pytest.mark.parametrize(
    ("one", "stands", "because"),
    [
        (part("hexamethylene diisocyanate", 0.001), True, "in any amount, by its name"),
        (part("hardener", 30, cas="28182-81-2"), True, "an oligomer, by its CAS number"),
        (part("hardener", 30, supplemental=("EUH204",)), True, "its maker says so"),
        (part("hardener", 30), False, "nothing says so"),
        (part("hexamethylene diisocyanate", 0), False, "none of it is in"),
    ],
)
def test_isocyanates(one: Ingredient, stands: bool, because: str) -> None:
    assert ("EUH204" in said(mix(one), *SOME)) is stands, because


@pytest.mark.parametrize(
    ("one", "expected", "because"),
    [
        (part("limonene", 0.1, SKIN), ("EUH208 limonene",), "category 1 from 0.1 %"),
        (part("limonene", 0.09, SKIN), (), "just below"),
        (part("limonene", 0.99, SKIN), ("EUH208 limonene",), "it does not class the mixture yet"),
        (part("limonene", 1.0, SKIN), (), "it classes the mixture, which names it"),
        (part("x", 0.1, SKIN_B), ("EUH208 x",), "1B from 0.1 %"),
        (part("x", 0.01, SKIN_A), ("EUH208 x",), "1A from 0.01 %"),
        (part("x", 0.009, SKIN_A), (), "just below"),
        (part("x", 0.1, SKIN_A), (), "1A classes from 0.1 %"),
        (part("x", 0.1, BREATH), ("EUH208 x",), "by breathing as well"),
        (
            part("x", 0.0002, SKIN_A, limits=(Limit(SKIN_A, 0.0015),)),
            ("EUH208 x",),
            "a tenth of its own limit",
        ),
        (part("x", 0.0001, SKIN_A, limits=(Limit(SKIN_A, 0.0015),)), (), "just below a tenth"),
        (part("x", 5), (), "no sensitiser"),
    ],
)
def test_sensitisers_that_class_nothing_are_named(
    one: Ingredient, expected: tuple[str, ...], because: str
) -> None:
    assert said(mix(one), *SOME) == expected, because


def test_sensitisers_are_named_in_one_statement_that_reads_as_a_sentence() -> None:
    (statement,) = said(mix(part("linalool", 0.2, SKIN), part("citral", 0.2, SKIN)), *SOME)
    assert statement == "EUH208 citral, linalool"
    assert wording(statement, "EU") == "Contains citral, linalool. May produce an allergic reaction."


def test_beside_euh204_isocyanates_are_not_named_again_but_others_are() -> None:
    limits = (Limit(SKIN, 0.5), Limit(BREATH, 0.5))
    hdi = part("hexamethylene diisocyanate", 0.2, SKIN, BREATH, limits=limits)
    assert said(mix(hdi), *SOME) == ("EUH204",)
    assert said(mix(hdi, part("citral", 0.2, SKIN)), *SOME) == ("EUH204", "EUH208 citral")


@pytest.mark.parametrize(
    ("one", "due", "because"),
    [
        (part("x", 0.1, SKIN), True, "a sensitiser at the amount from which it is named"),
        (part("x", 0.1, "Carc. 2 H351"), True, "Carc. 2 from 0.1 %"),
        (part("x", 0.09, "Carc. 2 H351"), False, "just below"),
        (part("x", 0.1, "Repr. 2 H361"), True, "Repr. from 0.1 %"),
        (part("x", 0.1, "Lact. H362"), True, "lactation from 0.1 %"),
        (part("x", 1, IRRITATES), True, "another health class from 1 %"),
        (part("x", 0.9, IRRITATES), False, "just below"),
        (part("x", 1, "Aquatic Chronic 3 H412"), True, "an environment class from 1 %"),
        (part("x", 40, "Met. Corr. 1 H290"), False, "a physical class is none of these"),
    ],
)
def test_a_mixture_without_class_may_still_owe_its_sheet(one: Ingredient, due: bool, because: str) -> None:
    assert ("EUH210" in said(mix(one))) is due, because
    assert "EUH210" not in said(mix(one), *SOME), "a classed mixture has its sheet anyway"


def test_a_gas_owes_its_sheet_from_a_fifth_of_a_percent() -> None:
    gases = [mix(part("x", percent, "STOT SE 3 H335"), form="gas") for percent in (0.2, 0.19)]
    assert [said(gas) for gas in gases] == [("EUH210",), ()]


@pytest.mark.parametrize(
    ("percent", "carried", "stands", "because"),
    [
        (1.1, True, True, "over 1 % active chlorine, and the maker sells it to the public"),
        (1.0, True, False, "not over 1 %"),
        (5.0, False, False, "a trade product"),
    ],
)
def test_chlorine_for_the_public(percent: float, carried: bool, stands: bool, because: str) -> None:
    bleach = part("hypochlorite", percent, supplemental=("EUH206",) if carried else ())
    assert ("EUH206" in said(mix(bleach), *SOME)) is stands, because


def test_a_statement_that_no_rule_here_carries_over_is_asked() -> None:
    found = supplemental(mix(part("ether", 5, supplemental=("EUH019",))), "EU", SOME)
    assert found.supplemental == ()
    assert found.needs_review == (
        "“ether” (5 %) carries EUH019: whether the mixture does, only its maker can say.",
    )


def test_canada_has_a_sentence_of_its_own_for_gas_from_water() -> None:
    (asked,) = supplemental(mix(part("silazane", 5, supplemental=("EUH029",))), "CA", ()).needs_review
    assert "In contact with water, releases gases which are fatal, toxic or harmful if inhaled" in asked
    assert supplemental(mix(part("water", 5)), "CA", ()).needs_review == ()
