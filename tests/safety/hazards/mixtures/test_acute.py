"""Acute toxicity of a mixture, from both sides of every limit.

Limits and point estimates: SOR/2015-17 s. 8.1.1(3) and 8.1.7 (read), the same in 29 CFR 1910.1200 Table
A.1.1 and CLP/UN Table 3.1.2. Relevance: CLP Annex I Table 1.1 (a faithful copy), s. 8.1.2(2); US and UN from
memory.
"""

import pytest

from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.acute import acute_toxicity
from tests.safety.hazards.mixtures.making import mix, part

NOBODY_LOOKED = {"unknown": frozenset({"oral"})}
ONE_FORM = {"vapour": "liquid", "dust_mist": "spray", "gas": "gas", "oral": "liquid", "dermal": "liquid"}

# kind, value on the limit, value just above it, class on the limit, class above it
CATEGORY_LIMITS = [
    ("oral", 5, 5.01, "1 H300", "2 H300"),
    ("oral", 50, 50.1, "2 H300", "3 H301"),
    ("oral", 300, 301, "3 H301", "4 H302"),
    ("oral", 2000, 2001, "4 H302", None),
    ("dermal", 50, 50.1, "1 H310", "2 H310"),
    ("dermal", 200, 201, "2 H310", "3 H311"),
    ("dermal", 1000, 1001, "3 H311", "4 H312"),
    ("dermal", 2000, 2001, "4 H312", None),
    ("gas", 100, 101, "1 H330", "2 H330"),
    ("gas", 500, 501, "2 H330", "3 H331"),
    ("gas", 2500, 2501, "3 H331", "4 H332"),
    ("gas", 20000, 20001, "4 H332", None),
    ("vapour", 0.5, 0.51, "1 H330", "2 H330"),
    ("vapour", 2, 2.01, "2 H330", "3 H331"),
    ("vapour", 10, 10.1, "3 H331", "4 H332"),
    ("vapour", 20, 20.1, "4 H332", None),
    ("dust_mist", 0.05, 0.051, "1 H330", "2 H330"),
    ("dust_mist", 0.5, 0.51, "2 H330", "3 H331"),
    ("dust_mist", 1, 1.01, "3 H331", "4 H332"),
    ("dust_mist", 5, 5.01, "4 H332", None),
]
# kind, category, H-code, the value that the category alone stands for
POINT_ESTIMATES = [
    ("oral", 1, "H300", 0.5), ("oral", 2, "H300", 5), ("oral", 3, "H301", 100), ("oral", 4, "H302", 500),
    ("dermal", 1, "H310", 5), ("dermal", 2, "H310", 50), ("dermal", 3, "H311", 300),
    ("dermal", 4, "H312", 1100),
    ("gas", 1, "H330", 10), ("gas", 2, "H330", 100), ("gas", 3, "H331", 700), ("gas", 4, "H332", 4500),
    ("vapour", 1, "H330", 0.05), ("vapour", 2, "H330", 0.5), ("vapour", 3, "H331", 3),
    ("vapour", 4, "H332", 11),
    ("dust_mist", 1, "H330", 0.005), ("dust_mist", 2, "H330", 0.05), ("dust_mist", 3, "H331", 0.5),
    ("dust_mist", 4, "H332", 1.5),
]  # fmt: skip


def written(category: str | None) -> tuple[str, ...]:
    return () if category is None else (f"Acute Tox. {category}",)


@pytest.mark.parametrize("regime", ["EU", "US", "CA"])
@pytest.mark.parametrize(("kind", "on", "above", "on_it", "above_it"), CATEGORY_LIMITS)
def test_a_value_on_a_limit_has_the_graver_category(
    regime: str, kind: str, on: float, above: float, on_it: str, above_it: str | None
) -> None:
    at = acute_toxicity(mix(part("x", 100, ate={kind: on}), form=ONE_FORM[kind]), regime)
    beyond = acute_toxicity(mix(part("x", 100, ate={kind: above}), form=ONE_FORM[kind]), regime)
    assert (at.hazards, beyond.hazards) == (written(on_it), written(above_it))


@pytest.mark.parametrize(
    ("kind", "value", "expected", "because"),
    [
        ("oral", 2001, ("Acute Tox. 5 H303",), "above category 4"),
        ("oral", 5000, ("Acute Tox. 5 H303",), "category 5 reaches to 5000 mg/kg"),
        ("oral", 5001, (), "beyond it nothing enters"),
        ("dermal", 5000, ("Acute Tox. 5 H313",), "the same by the skin"),
        ("vapour", 20.1, (), "category 5 has no figure by breathing"),
    ],
)
def test_the_un_alone_knows_category_5(
    kind: str, value: float, expected: tuple[str, ...], because: str
) -> None:
    whole = mix(part("x", 100, ate={kind: value}))
    assert acute_toxicity(whole, "UN").hazards == expected, because
    assert acute_toxicity(whole, "US").hazards == (), "no regime but the UN has it"


@pytest.mark.parametrize(("kind", "category", "code", "point"), POINT_ESTIMATES)
def test_a_category_alone_counts_as_its_point_estimate(
    kind: str, category: int, code: str, point: float
) -> None:
    found = acute_toxicity(mix(part("x", 100, f"Acute Tox. {category} {code}"), form=ONE_FORM[kind]), "EU")
    assert found.ate[kind] == pytest.approx(point)


@pytest.mark.parametrize(
    ("regime", "percent", "classes", "counted", "because"),
    [
        ("EU", 0.1, "Acute Tox. 3 H301", True, "category 3 counts from 0.1 %"),
        ("EU", 0.09, "Acute Tox. 3 H301", False, "just below"),
        ("EU", 0.1, "Acute Tox. 1 H300", True, "category 1 likewise"),
        ("EU", 0.09, "Acute Tox. 1 H300", False, "just below: asked, see below"),
        ("EU", 1.0, "Acute Tox. 4 H302", True, "category 4 counts from 1 %"),
        ("EU", 0.99, "Acute Tox. 4 H302", False, "just below"),
        ("US", 1.0, "Acute Tox. 3 H301", True, "everything counts from 1 %"),
        ("US", 0.99, "Acute Tox. 3 H301", False, "just below"),
        ("CA", 1.0, "Acute Tox. 3 H301", True, "s. 8.1.2(2)"),
        ("CA", 0.99, "Acute Tox. 3 H301", False, "just below"),
        ("UN", 1.0, "Acute Tox. 4 H302", True, "1 %"),
        ("UN", 0.99, "Acute Tox. 4 H302", False, "just below"),
    ],
)
def test_an_ingredient_counts_from_its_cut_off(
    regime: str, percent: float, classes: str, counted: bool, because: str
) -> None:
    assert ("oral" in acute_toxicity(mix(part("x", percent, classes)), regime).ate) is counted, because


FLUORIDE = ("Acute Tox. 2 H300", "Acute Tox. 1 H310", "Acute Tox. 2 H330")


def test_half_a_percent_of_hydrofluoric_acid_is_toxic_on_skin_in_the_eu() -> None:
    """Classes: CLP Annex VI, hydrofluoric acid 7664-39-3. 5 mg/kg at 0.5 % is 1000 mg/kg: category 3."""
    found = acute_toxicity(mix(part("hydrofluoric acid", 0.5, *FLUORIDE)), "EU")
    assert found.hazards == ("Acute Tox. 4 H302", "Acute Tox. 3 H311")
    assert found.ate["dermal"] == pytest.approx(1000)
    assert found.needs_review == ()


@pytest.mark.parametrize("regime", ["US", "CA", "UN"])
def test_elsewhere_it_is_below_the_cut_off_and_the_answer_says_what_counting_it_would_give(
    regime: str,
) -> None:
    found = acute_toxicity(mix(part("hydrofluoric acid", 0.5, *FLUORIDE)), regime)
    assert found.hazards == ()
    assert (
        "Very toxic on the skin, yet below the cut-off of 1 %: “hydrofluoric acid” (0.5 %, category 1). "
        "Counted, the mixture would have Acute Tox. 3 H311 (1000 mg/kg)."
    ) in found.needs_review


def test_category_1_below_a_tenth_of_a_percent_is_asked_in_the_eu_too() -> None:
    (said,) = acute_toxicity(mix(part("x", 0.09, "Acute Tox. 1 H300")), "EU").needs_review
    assert "below the cut-off of 0.1 %" in said
    assert "Acute Tox. 4 H302 (556 mg/kg)" in said


@pytest.mark.parametrize("regime", REGIMES)
def test_category_3_below_the_cut_off_is_not_asked(regime: str) -> None:
    assert acute_toxicity(mix(part("x", 0.09, "Acute Tox. 3 H301")), regime).needs_review == ()


@pytest.mark.parametrize(
    ("regime", "value", "enters", "because"),
    [
        ("EU", 2000, True, "category 4"),
        ("EU", 2001, False, "the EU counts only what is within categories 1 to 4"),
        ("US", 2001, True, "a measured LD50 up to 5000"),
        ("US", 5001, False, "not beyond"),
        ("CA", 5000, True, "s. 8.1.5(b)"),
        ("CA", 5001, False, "not beyond"),
        ("UN", 5000, True, "category 5"),
        ("UN", 5001, False, "not beyond"),
    ],
)
def test_which_measured_values_enter(regime: str, value: float, enters: bool, because: str) -> None:
    assert ("oral" in acute_toxicity(mix(part("x", 50, ate={"oral": value})), regime).ate) is enters, because


def test_a_limit_test_without_signs_of_harm_never_enters() -> None:
    harmless = mix(part("x", 50, ate={"oral": 2001}, no_acute_toxicity=True))
    assert acute_toxicity(harmless, "US").ate == {}


@pytest.mark.parametrize(
    ("unknown", "ate", "because"),
    [
        (10.0, 1000.0, "up to 10 % the whole 100 counts"),
        (10.1, 899.0, "above 10 % the unknown leaves the 100: 89.9 / 0.1"),
    ],
)
def test_unknowns_above_ten_percent_leave_the_hundred(unknown: float, ate: float, because: str) -> None:
    whole = mix(part("x", 50, ate={"oral": 500}), part("y", unknown, **NOBODY_LOOKED))
    assert acute_toxicity(whole, "EU").ate["oral"] == pytest.approx(ate), because


@pytest.mark.parametrize(
    ("parts", "said", "because"),
    [
        ((1.0,), "1 %", "the statement stands from 1 %"),
        ((0.9,), None, "not below"),
        ((0.9, 0.9), None, "each ingredient on its own"),
        ((1.5, 2.0), "3.5 %", "those from 1 % sum"),
    ],
)
@pytest.mark.parametrize("regime", REGIMES)
def test_the_statement_on_unknowns(
    regime: str, parts: tuple[float, ...], said: str | None, because: str
) -> None:
    unknown = [part(f"y{at}", percent, **NOBODY_LOOKED) for at, percent in enumerate(parts)]
    found = acute_toxicity(mix(*unknown), regime)
    text = f"{said} of the mixture consists of ingredient(s) of unknown acute oral toxicity"
    assert found.supplemental == ((text,) if said else ()), because


def test_a_route_named_unknown_is_known_where_a_class_or_value_stands() -> None:
    unknown = frozenset({"oral", "dermal", "inhalation"})
    found = acute_toxicity(
        mix(part("x", 5, "Acute Tox. 4 H302", ate={"dust_mist": 3}, unknown=unknown)), "EU"
    )
    assert found.unknown_percent == {"dermal": 5}


XYLENE = ("Acute Tox. 4 H332",)


@pytest.mark.parametrize(
    ("form", "percent", "expected", "because"),
    [
        ("liquid", 55, ("Acute Tox. 4 H332",), "as vapour: 11 mg/l at 55 % is 20 mg/l"),
        ("liquid", 54.9, (), "just below"),
        ("spray", 30, ("Acute Tox. 4 H332",), "as mist: 1.5 mg/l at 30 % is 5 mg/l"),
        ("spray", 29.9, (), "just below"),
        ("aerosol", 30, ("Acute Tox. 4 H332",), "an aerosol is breathed as mist"),
        ("aerosol", 29.9, (), "just below"),
        ("solid", 30, ("Acute Tox. 4 H332",), "a solid is breathed as dust"),
        ("", 30, ("Acute Tox. 4 H332",), "of an unknown form the worse counts"),
        ("", 29.9, (), "just below both"),
    ],
)
def test_a_class_alone_counts_in_the_form_that_is_breathed(
    form: str, percent: float, expected: tuple[str, ...], because: str
) -> None:
    assert acute_toxicity(mix(part("xylene", percent, *XYLENE), form=form), "EU").hazards == expected, because


def test_vapour_and_mist_never_meet_in_one_sum_and_their_meeting_is_asked() -> None:
    """30 % of 11 mg/l as vapour is 36.7, 25 % of 1.5 mg/l as mist is 6: apart no class, together one."""
    found = acute_toxicity(mix(part("a", 30, *XYLENE), part("b", 25, ate={"dust_mist": 1.5})), "EU")
    assert found.hazards == ()
    assert found.ate == {"vapour": pytest.approx(36.667, abs=0.001), "dust_mist": pytest.approx(6.0)}
    (said,) = found.needs_review
    assert "together as vapour, by category they give Acute Tox. 4 H332" in said


def test_a_stated_mist_value_counts_in_a_liquid_by_itself() -> None:
    found = acute_toxicity(mix(part("b", 50, ate={"dust_mist": 1.5})), "EU")
    assert (found.hazards, list(found.ate)) == (("Acute Tox. 4 H332",), ["dust_mist"])


@pytest.mark.parametrize(
    ("classes", "value", "ate", "because"),
    [
        ("Acute Tox. 4 H302", 3000, 500, "a class may be a minimum: a milder value does not undercut it"),
        ("Acute Tox. 4 H302", 250, 250, "a graver value wins over a minimum class"),
        ("Acute Tox. 4 H302", 1200, 1200, "a value within the class counts as it is"),
    ],
)
@pytest.mark.parametrize("regime", REGIMES)
def test_the_graver_of_class_and_value_counts(
    regime: str, classes: str, value: float, ate: float, because: str
) -> None:
    assert acute_toxicity(mix(part("x", 100, classes, ate={"oral": value})), regime).ate["oral"] == ate, (
        because
    )


def test_category_5_by_breathing_is_asked_in_the_un() -> None:
    (said,) = acute_toxicity(mix(part("x", 100, "Acute Tox. 5 H333")), "UN").needs_review
    assert said == "“x”: category 5 by breathing carries no figure, so H333 cannot be summed; ask the maker."


def test_upper_ends_above_a_hundred_do_not_make_a_mixture_of_nothing() -> None:
    found = acute_toxicity(mix(part("x", 60, ate={"oral": 400}), part("y", 100, **NOBODY_LOOKED)), "EU")
    assert found.ate["oral"] == pytest.approx(400)


def test_the_answer_shows_its_numbers() -> None:
    (reason,) = acute_toxicity(mix(part("x", 50, "Acute Tox. 4 H302"), part("w", 50)), "CA").because
    assert (reason.hazard, reason.source, reason.mark) == (
        "Acute Tox. 4 H302", "SOR/2015-17 s. 8.1.2 to 8.1.7", "S",
    )  # fmt: skip
    assert reason.numbers["counted"] == [{"name": "x", "percent": 50, "ate": 500.0, "from": "category"}]
    assert (reason.numbers["ate"], reason.numbers["limit"]) == (1000.0, 2000.0)


@pytest.mark.parametrize(
    ("carries", "because"),
    [
        ("Acute Tox. 2 H300", "its point estimate of 5 mg/kg is the limit of category 1"),
        ("Acute Tox. 2 H310", "50 mg/kg is"),
        ("Acute Tox. 2 H330", "0.5 mg/l is"),
        ("Acute Tox. 4 H302", "500 mg/kg lies within category 4"),
    ],
)
def test_a_mixture_is_never_graver_than_what_is_in_it(carries: str, because: str) -> None:
    assert carries in acute_toxicity(mix(part("x", 100, carries)), "EU").hazards, because
