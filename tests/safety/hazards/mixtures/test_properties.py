"""What holds for every mixture: more is never milder, water never makes it graver, order is nothing.

No rule asked for an exception: a dilution may bring a question (its viscosity is no longer known), no class.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from safety.hazards.classes import REGIMES
from safety.hazards.mixtures.dilution import diluted
from safety.hazards.mixtures.reading import read_mixture
from safety.hazards.mixtures.rules import Classified, classify
from safety.hazards.mixtures.values import Mixture
from safety.hazards.mixtures.written import outcome, read
from tests.safety.hazards.mixtures import substances as known

OTHERS: list[dict[str, Any]] = [
    {"name": "strong sensitiser", "hazards": ["Skin Sens. 1A H317", "Resp. Sens. 1B H334"]},
    {"name": "acid", "hazards": ["Skin Corr. 1B H314", "Met. Corr. 1 H290"], "ph": 1},
    {"name": "unsorted corrosive", "hazards": ["Skin Corr. 1 H314"]},
    {"name": "mild corrosive", "hazards": ["Skin Corr. 1C H314", "Eye Dam. 1 H318"], "additive": False},
    {"name": "organ poison", "hazards": ["STOT SE 1 H370", "STOT RE 1 H372", "Repr. 1B H360F"]},
    {
        "name": "milder organ poison",
        "hazards": ["STOT SE 2 H371", "STOT RE 2 H373", "Repr. 2 H361d", "Lact. H362"],
    },
    {"name": "poison", "hazards": ["Acute Tox. 2 H300", "Acute Tox. 1 H310", "Acute Tox. 2 H330"]},
    {"name": "measured", "hazards": [], "ate": {"oral": 2500, "dermal": 900, "dust_mist": 2, "vapour": 12}},
    {"name": "unknown", "hazards": ["Carc. 2 H351", "Muta. 2 H341"], "unknown": ["oral", "inhalation"]},
    {"name": "nobody looked"},
    {"name": "water poison", "hazards": ["Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"], "m_acute": 100},
    {
        "name": "slow water poison",
        "hazards": ["Aquatic Chronic 1 H410", "Ozone 1 H420", "ED HH 2 EUH381"],
        "m_chronic": 10,
    },
    {"name": "ether", "hazards": ["Flam. Liq. 1 H224", "STOT SE 3 H335+H336", "Eye Irrit. 2 H319"]},
    {"name": "propellant", "hazards": ["Flam. Gas 1A H220", "Press. Gas (Liq.) H280"]},
]
POOL = [
    *OTHERS,
    known.PROPANOL,
    known.XYLENE,
    known.SODIUM_HYDROXIDE,
    known.POTASSIUM_HYDROXIDE,
    known.PHOSPHORIC_ACID,
    known.DIISOCYANATE,
    known.HYPOCHLORITE,
    known.NAPHTHA,
    known.TETRAETHYL_SILICATE,
]
PERCENT = st.one_of(
    st.sampled_from([0.01, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2, 2.5, 3, 5, 10, 12.5]),
    st.floats(0.001, 14, allow_nan=False),
)


@st.composite
def mixtures(draw: st.DrawFn) -> Mixture:
    chosen = draw(st.lists(st.sampled_from(range(len(POOL))), min_size=1, max_size=7, unique=True))
    ingredients = [{**POOL[at], "percent": draw(PERCENT)} for at in chosen]
    document = {
        "form": draw(st.sampled_from([None, "liquid", "spray", "solid", "aerosol"])),
        "ph": draw(st.sampled_from([None, 1.5, 7, 12])),
        "flash_point_c": draw(st.sampled_from([None, 10, 40, 80, 120])),
        "viscosity_mm2_s_40c": draw(st.sampled_from([None, 5, 18, 50])),
        "ingredients": ingredients,
    }
    return read_mixture(document)


def gravity(hazard: str) -> tuple[int, str]:
    """How grave a written hazard is within its outcome: sub-categories 1, 1A, 1B, 1C share one statement."""
    one = read(hazard)
    graver_name = {"Skin Corr.": 0, "Eye Dam.": 0}.get(one.of.name, 1)
    return graver_name, one.of.category[:1]


def milder(before: Sequence[str], after: Sequence[str]) -> list[str]:
    """The hazards of `before` that `after` has in a milder class or not at all."""
    best = {}
    for text in after:
        best[outcome(read(text))] = min(best.get(outcome(read(text)), (9, "")), gravity(text))
    return [text for text in before if best.get(outcome(read(text)), (9, "9")) > gravity(text)]


def test_the_measure_itself_notices_what_is_milder() -> None:
    assert milder(["Skin Corr. 1B H314"], ["Skin Irrit. 2 H315"]) == ["Skin Corr. 1B H314"]
    assert milder(["Acute Tox. 3 H301"], ["Acute Tox. 3 H331"]) == ["Acute Tox. 3 H301"]
    assert milder(["Skin Irrit. 2 H315"], ["Skin Corr. 1C H314"]) == []


@given(mixtures(), st.data(), st.sampled_from(REGIMES))
@settings(max_examples=400)
def test_more_of_an_ingredient_never_makes_a_class_milder(
    mixture: Mixture, data: st.DataObject, regime: str
) -> None:
    at = data.draw(st.integers(0, len(mixture.ingredients) - 1))
    one = mixture.ingredients[at]
    raised = replace(one, percent=min(100.0, one.percent * data.draw(st.sampled_from([1.01, 1.5, 2, 5, 20]))))
    more = replace(mixture, ingredients=(*mixture.ingredients[:at], raised, *mixture.ingredients[at + 1 :]))
    assert milder(classify(mixture, regime).hazards, classify(more, regime).hazards) == [], one.name


@given(
    mixtures(),
    st.sampled_from([0.1, 1, 3, 10, 100]),
    st.sampled_from([None, 0.8, 1.3]),
    st.sampled_from(REGIMES),
)
@settings(max_examples=400)
def test_water_never_makes_a_class_graver(
    mixture: Mixture, water: float, density: float | None, regime: str
) -> None:
    thin = classify(diluted(mixture, 1, water, density), regime)
    assert milder(thin.hazards, classify(mixture, regime).hazards) == []


@given(mixtures(), st.randoms(use_true_random=False), st.sampled_from(REGIMES))
@settings(max_examples=200)
def test_the_order_of_ingredients_is_nothing(mixture: Mixture, draw: Any, regime: str) -> None:
    shuffled = list(mixture.ingredients)
    draw.shuffle(shuffled)
    assert classify(replace(mixture, ingredients=tuple(shuffled)), regime) == classify(mixture, regime)


@given(mixtures(), st.sampled_from(REGIMES))
@settings(max_examples=200)
def test_every_class_has_its_reason_and_nothing_is_passed_in_silence(mixture: Mixture, regime: str) -> None:
    answer: Classified = classify(mixture, regime)
    assert {one.hazard for one in answer.because} >= set(answer.hazards)
    assert all(one.rule and one.source and one.mark in ("S", "S2", "M") for one in answer.because)
    assert all(said.endswith((".", "?")) for said in answer.needs_review)
