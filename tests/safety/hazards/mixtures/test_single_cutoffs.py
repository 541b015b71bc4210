"""Classes that one ingredient gives, from both sides of every cut-off.

Expected: the table “ingredient (not summed)” of CLP Annex I Tables 3.4.5 to 3.9.4, 29 CFR 1910.1200
appendix A, SOR/2015-17 Part 8. Read in a copy (reachonline.eu, laws-lois.justice.gc.ca, 2026-11-25): Tables
3.5.2, 3.7.2, s. 8.7.4 and 8.7.5; the others from memory, as the table of the program says.
"""

import pytest

from safety.hazards.mixtures.european import european
from safety.hazards.mixtures.lasting import lasting
from safety.hazards.mixtures.organs import organs
from safety.hazards.mixtures.sensitisers import sensitisers
from safety.hazards.mixtures.values import Found, Limit, Mixture
from safety.hazards.tables import header
from tests.safety.hazards.mixtures.making import mix, part

NOTHING = ""
BELOW_AND_AT = [
    # regime, form, ingredient, below, what then, at, what then, because
    ("EU", "liquid", "Skin Sens. 1 H317", 0.999, NOTHING, 1, "Skin Sens. 1 H317", "no sub-category: 1 %"),
    ("EU", "liquid", "Skin Sens. 1A H317", 0.0999, NOTHING, 0.1, "Skin Sens. 1A H317", "strong: 0.1 %"),
    ("EU", "liquid", "Skin Sens. 1B H317", 0.999, NOTHING, 1, "Skin Sens. 1B H317", "moderate: 1 %"),
    ("EU", "liquid", "Resp. Sens. 1 H334", 0.999, NOTHING, 1, "Resp. Sens. 1 H334", "solid or liquid"),
    ("EU", "gas", "Resp. Sens. 1 H334", 0.199, NOTHING, 0.2, "Resp. Sens. 1 H334", "a gas: 0.2 %"),
    ("EU", "liquid", "Resp. Sens. 1A H334", 0.0999, NOTHING, 0.1, "Resp. Sens. 1A H334", "strong"),
    ("EU", "gas", "Resp. Sens. 1A H334", 0.0999, NOTHING, 0.1, "Resp. Sens. 1A H334", "a gas alike"),
    ("EU", "spray", "Resp. Sens. 1B H334", 0.999, NOTHING, 1, "Resp. Sens. 1B H334", "a spray is no gas"),
    ("EU", "gas", "Resp. Sens. 1B H334", 0.199, NOTHING, 0.2, "Resp. Sens. 1B H334", "a gas: 0.2 %"),
    ("EU", "liquid", "Muta. 1B H340", 0.0999, NOTHING, 0.1, "Muta. 1B H340", "Table 3.5.2"),
    ("EU", "liquid", "Muta. 2 H341", 0.999, NOTHING, 1, "Muta. 2 H341", "Table 3.5.2"),
    ("EU", "liquid", "Carc. 1A H350", 0.0999, NOTHING, 0.1, "Carc. 1A H350", "Table 3.6.2"),
    ("EU", "liquid", "Carc. 2 H351", 0.999, NOTHING, 1, "Carc. 2 H351", "EU only: 1 %"),
    ("EU", "liquid", "Repr. 1B H360FD", 0.299, NOTHING, 0.3, "Repr. 1B H360FD", "Table 3.7.2"),
    ("EU", "liquid", "Repr. 2 H361d", 2.99, NOTHING, 3, "Repr. 2 H361d", "Table 3.7.2"),
    ("EU", "liquid", "Lact. H362", 0.299, NOTHING, 0.3, "Lact. H362", "Table 3.7.2"),
    ("EU", "liquid", "STOT SE 1 H370", 0.999, NOTHING, 1, "STOT SE 2 H371", "1 to 10 %: a category milder"),
    ("EU", "liquid", "STOT SE 1 H370", 9.99, "STOT SE 2 H371", 10, "STOT SE 1 H370", "from 10 % its own"),
    ("EU", "liquid", "STOT SE 2 H371", 9.99, NOTHING, 10, "STOT SE 2 H371", "category 2: 10 %"),
    ("EU", "liquid", "STOT RE 1 H372", 0.999, NOTHING, 1, "STOT RE 2 H373", "1 to 10 %: a category milder"),
    ("EU", "liquid", "STOT RE 1 H372", 9.99, "STOT RE 2 H373", 10, "STOT RE 1 H372", "from 10 % its own"),
    ("EU", "liquid", "STOT RE 2 H373", 9.99, NOTHING, 10, "STOT RE 2 H373", "category 2: 10 %"),
    ("EU", "liquid", "ED HH 1 EUH380", 0.0999, NOTHING, 0.1, "ED HH 1 EUH380", "Reg. 2023/707"),
    ("EU", "liquid", "ED HH 2 EUH381", 0.999, NOTHING, 1, "ED HH 2 EUH381", "Reg. 2023/707"),
    ("EU", "liquid", "ED ENV 1 EUH430", 0.0999, NOTHING, 0.1, "ED ENV 1 EUH430", "Reg. 2023/707"),
    ("EU", "liquid", "ED ENV 2 EUH431", 0.999, NOTHING, 1, "ED ENV 2 EUH431", "Reg. 2023/707"),
    ("EU", "liquid", "PBT EUH440", 0.0999, NOTHING, 0.1, "PBT EUH440", "Reg. 2023/707"),
    ("EU", "liquid", "vPvB EUH441", 0.0999, NOTHING, 0.1, "vPvB EUH441", "Reg. 2023/707"),
    ("EU", "liquid", "PMT EUH450", 0.0999, NOTHING, 0.1, "PMT EUH450", "Reg. 2023/707"),
    ("EU", "liquid", "vPvM EUH451", 0.0999, NOTHING, 0.1, "vPvM EUH451", "Reg. 2023/707"),
    ("EU", "liquid", "Ozone 1 H420", 0.0999, NOTHING, 0.1, "Ozone 1 H420", "0.1 % (from memory)"),
    *[
        (regime, "liquid", hazard, below, NOTHING, at, hazard, because)
        for regime in ("US", "CA", "UN")  # of the UN's two limits the lower
        for hazard, below, at, because in (
            ("Skin Sens. 1 H317", 0.0999, 0.1, "no sub-category: 0.1 %, not the EU's 1 %"),
            ("Skin Sens. 1A H317", 0.0999, 0.1, "strong: 0.1 %"),
            ("Skin Sens. 1B H317", 0.999, 1, "moderate: 1 %"),
            ("Resp. Sens. 1 H334", 0.0999, 0.1, "0.1 %"),
            ("Resp. Sens. 1A H334", 0.0999, 0.1, "0.1 %"),
            ("Resp. Sens. 1B H334", 0.999, 1, "1 %"),
            ("Muta. 1A H340", 0.0999, 0.1, "0.1 %"),
            ("Muta. 2 H341", 0.999, 1, "1 %"),
            ("Carc. 1B H350", 0.0999, 0.1, "0.1 %"),
            ("Carc. 2 H351", 0.0999, 0.1, "0.1 %: the class stands, though a US label may leave it out"),
            ("Repr. 1A H360", 0.0999, 0.1, "0.1 %"),
            ("Repr. 2 H361", 0.0999, 0.1, "0.1 % (SOR/2015-17 s. 8.7.4)"),
            ("Lact. H362", 0.0999, 0.1, "0.1 % (SOR/2015-17 s. 8.7.5)"),
            ("STOT SE 1 H370", 0.999, 1, "1 %, no milder band"),
            ("STOT SE 2 H371", 0.999, 1, "1 %"),
            ("STOT RE 1 H372", 0.999, 1, "1 %, no milder band"),
            ("STOT RE 2 H373", 0.999, 1, "1 %"),
        )
    ],
    *[
        (regime, "gas", "Resp. Sens. 1B H334", 0.199, NOTHING, 0.2, "Resp. Sens. 1B H334", "a gas: 0.2 %")
        for regime in ("US", "CA", "UN")
    ],
]  # fmt: skip


def found(mixture: Mixture, regime: str) -> Found:
    return next(
        (
            answer
            for family in (sensitisers, lasting, organs, european)
            if (answer := family(mixture, regime)).hazards or answer.needs_review
        ),
        Found(),
    )


@pytest.mark.parametrize(
    ("regime", "form", "hazard", "below", "then", "at", "there", "because"), BELOW_AND_AT
)
def test_a_cut_off_is_met_from_its_percentage_on(
    regime: str, form: str, hazard: str, below: float, then: str, at: float, there: str, because: str
) -> None:
    assert " ".join(found(mix(part("x", below, hazard), form=form), regime).hazards) == then, because
    answer = found(mix(part("x", at, hazard), form=form), regime)
    assert " ".join(answer.hazards) == there, because
    assert answer.because[0].numbers["percent"] == at
    assert answer.because[0].source
    assert answer.because[0].mark in ("S", "S2", "M")


@pytest.mark.parametrize("hazard", ["Skin Sens. 1 H317", "Carc. 2 H351", "STOT RE 2 H373"])
@pytest.mark.parametrize("regime", ["EU", "US", "CA", "UN"])
def test_ten_ingredients_below_a_cut_off_are_not_summed(hazard: str, regime: str) -> None:
    ten = [part(f"x{at}", 0.09, hazard) for at in range(10)]
    assert found(mix(*ten), regime).hazards == ()


@pytest.mark.parametrize("regime", ["US", "CA", "UN"])
@pytest.mark.parametrize("hazard", ["ED HH 1 EUH380", "PBT EUH440"])
def test_what_only_the_eu_knows_stays_there(regime: str, hazard: str) -> None:
    assert european(mix(part("x", 50, hazard)), regime) == Found()


def test_the_ozone_layer_is_no_class_in_canada() -> None:
    assert european(mix(part("x", 50, "Ozone 1 H420")), "CA").hazards == ()


@pytest.mark.parametrize(
    ("percent", "hazards", "because"),
    [
        (0.49, (), "below its own limit, though above the 0.1 % of a strong one"),
        (0.5, ("Resp. Sens. 1 H334", "Skin Sens. 1 H317"), "at its own limit, below the generic 1 %"),
    ],
)
def test_hexamethylene_diisocyanate_sensitises_from_its_own_limit(
    percent: float, hazards: tuple[str, ...], because: str
) -> None:
    """CLP Annex VI, 822-06-0 (ATP17): Resp. Sens. 1 and Skin Sens. 1 from 0.5 %."""
    own = (Limit("Resp. Sens. 1 H334", 0.5), Limit("Skin Sens. 1 H317", 0.5))
    hardener = part("HDI", percent, "Resp. Sens. 1 H334", "Skin Sens. 1 H317", limits=own)
    assert sensitisers(mix(hardener), "EU").hazards == hazards, because


@pytest.mark.parametrize(
    ("percent", "hazards", "because"),
    [
        (2.9, (), "below its own limits the generic 1 % does not speak"),
        (3, ("STOT SE 2 H371",), "from 3 %"),
        (9.9, ("STOT SE 2 H371",), "up to 10 %"),
        (10, ("STOT SE 1 H370",), "from 10 %"),
    ],
)
def test_methanol_harms_organs_by_its_own_limits(
    percent: float, hazards: tuple[str, ...], because: str
) -> None:
    """CLP Annex VI, 67-56-1: STOT SE 1 from 10 %, STOT SE 2 from 3 to 10 % (from memory)."""
    own = (Limit("STOT SE 1 H370", 10), Limit("STOT SE 2 H371", 3, 10))
    assert organs(mix(part("methanol", percent, "STOT SE 1 H370", limits=own)), "EU").hazards == hazards, (
        because
    )


def test_a_us_carcinogen_of_category_2_below_1_percent_says_that_its_label_is_optional() -> None:
    below, at = (lasting(mix(part("x", percent, "Carc. 2 H351")), "US").because[0] for percent in (0.5, 1.0))
    assert "in the US the label may leave its warning out below 1 %" in below.rule
    assert "may leave" not in at.rule
    assert "may leave" not in lasting(mix(part("x", 0.5, "Carc. 2 H351")), "CA").because[0].rule


LETTERS = [
    # hazards of two ingredients, the one of the mixture, because
    (("Repr. 1B H360F", "Repr. 1B H360D"), "Repr. 1B H360FD", "both known"),
    (("Repr. 1B H360F", "Repr. 2 H361d"), "Repr. 1B H360Fd", "one known, one suspected"),
    (("Repr. 1A H360D", "Repr. 2 H361f"), "Repr. 1A H360Df", "the other way round"),
    (("Repr. 1B H360D", "Repr. 2 H361d"), "Repr. 1B H360D", "the same endpoint: the known one stands"),
    (("Repr. 2 H361f", "Repr. 2 H361d"), "Repr. 2 H361fd", "both suspected"),
    (("Repr. 1B H360", "Repr. 1B H360D"), "Repr. 1B H360", "one that names no endpoint covers both"),
    (("Repr. 1B H360Fd", "Repr. 1B H360D"), "Repr. 1B H360FD", "a suspicion gives way to knowledge"),
    (("Repr. 1A H360F", "Repr. 1B H360F"), "Repr. 1A H360F", "the graver category"),
]  # fmt: skip


@pytest.mark.parametrize(("two", "one", "because"), LETTERS)
def test_letters_of_reproductive_toxicity_are_joined_in_the_eu(
    two: tuple[str, ...], one: str, because: str
) -> None:
    """Codes and wordings H360FD, H360Fd, H360Df, H361fd: CLP Annex III."""
    mixture = mix(*(part(f"x{at}", 5, hazard) for at, hazard in enumerate(two)))
    assert set(lasting(mixture, "EU").hazards) == {one}, because


def test_the_table_of_cut_offs_opens_with_its_source_and_marks() -> None:
    lines = header("mixture_cutoffs")
    assert any(line.startswith("source:") for line in lines)
    assert any(line.startswith("mark:") for line in lines)
