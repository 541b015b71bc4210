"""Every way of refusing a mixture's document: by the place, with what was expected."""

import pytest

from safety.hazards.mixtures.fields import MixtureError
from safety.hazards.mixtures.reading import read_mixture
from tests.safety.hazards.mixtures.making import Document, alcohol, document, limits


def without(key: str) -> Document:
    return {name: value for name, value in alcohol().items() if name != key}


HERE = "Ingredient 1 (propan-2-ol)"
KEYS = (
    "name, cas, percent, hazards, limits, ate, unknown, m_acute, m_chronic, ph, additive, no_acute_toxicity"
)
REFUSED = [
    # document, the whole sentence
    ([], "The mixture: an object was expected, not []."),
    ("x", "The mixture: an object was expected, not “x”."),
    ({}, "The mixture: “ingredients” is missing; a list was expected."),
    ({"ingredients": None}, "The mixture: “ingredients” is missing; a list was expected."),
    ({"ingredients": {}}, "The mixture, ingredients: a list was expected, not {}."),
    ({"ingredients": [3]}, "Ingredient 1: an object was expected, not 3."),
    (
        document(form="paste"),
        "The mixture, form: one of liquid, spray, solid, aerosol, gas was expected, not “paste”.",
    ),
    (
        document(form=["liquid"]),
        "The mixture, form: one of liquid, spray, solid, aerosol, gas was expected, not ['liquid'].",
    ),
    (
        document(PH=7),
        "The mixture: there is no key “PH”; expected are form, ph, flash_point_c, boiling_point_c, "
        "viscosity_mm2_s_40c, ingredients.",
    ),
    (document(ph=17), "The mixture, ph: a number from -2 to 16 was expected, not 17."),
    (document(ph="7"), "The mixture, ph: a number from -2 to 16 was expected, not “7”."),
    (document(ph=True), "The mixture, ph: a number from -2 to 16 was expected, not true."),
    (
        document(flash_point_c=-300),
        "The mixture, flash_point_c: a number from -273 to 1000 °C was expected, not -300.",
    ),
    (
        document(boiling_point_c=float("nan")),
        "The mixture, boiling_point_c: a number from -273 to 5000 °C was expected, not nan.",
    ),
    (
        document(viscosity_mm2_s_40c=0),
        "The mixture, viscosity_mm2_s_40c: a number above 0 was expected, not 0.",
    ),
    (
        document(viscosity_mm2_s_40c=float("inf")),
        "The mixture, viscosity_mm2_s_40c: a number above 0 was expected, not inf.",
    ),
    (
        document(alcohol(), alcohol(percent=31, cas=None)),
        "The mixture: the lower ends of its percentages sum to 101, above 100.",
    ),
    (
        document(alcohol(percent=[60, 70]), alcohol(percent=[41, 50])),
        "The mixture: the lower ends of its percentages sum to 101, above 100.",
    ),
    (document(without("name")), "Ingredient 1, name: a text was expected, not null."),
    (document(alcohol(name=" ")), "Ingredient 1, name: a text was expected, not “ ”."),
    (document(alcohol(vol=3)), f"Ingredient 1: there is no key “vol”; expected are {KEYS}."),
    (document(without("percent")), f"{HERE}, percent: a number from 0 to 100 was expected, not null."),
    (document(alcohol(percent=101)), f"{HERE}, percent: a number from 0 to 100 was expected, not 101."),
    (document(alcohol(percent=-1)), f"{HERE}, percent: a number from 0 to 100 was expected, not -1."),
    (document(alcohol(percent=True)), f"{HERE}, percent: a number from 0 to 100 was expected, not true."),
    (document(alcohol(percent="70 %")), f"{HERE}, percent: a number from 0 to 100 was expected, not “70 %”."),
    (
        document(alcohol(percent=float("nan"))),
        f"{HERE}, percent: a number from 0 to 100 was expected, not nan.",
    ),
    (document(alcohol(percent=[5])), f"{HERE}, percent: a range like [5, 15] was expected, not [5]."),
    (document(alcohol(percent=[15, 5])), f"{HERE}, percent: the range 15 to 5 runs backwards."),
    (document(alcohol(percent=[5, 150])), f"{HERE}, percent: a number from 0 to 100 was expected, not 150."),
    (
        document(alcohol(cas="67-63-1")),
        f"{HERE}, cas: the check digit of 67-63-1 would be 0; look for a wrong digit.",
    ),
    (
        document(alcohol(cas="propanol")),
        f"{HERE}, cas: a CAS number like 67-63-0 was expected, or null where there is none, not “propanol”.",
    ),
    (
        document(alcohol(cas="")),
        f"{HERE}, cas: a CAS number like 67-63-0 was expected, or null where there is none, not “”.",
    ),
    (
        document(alcohol(cas=67630)),
        f"{HERE}, cas: a CAS number like 67-63-0 was expected, or null where there is none, not 67630.",
    ),
    (
        document(alcohol(hazards="Flam. Liq. 2 H225")),
        f"{HERE}, hazards: a list was expected, not “Flam. Liq. 2 H225”.",
    ),
    (document(alcohol(hazards=[225])), f"{HERE}, hazards: a text was expected, not 225."),
    (
        document(alcohol(hazards=["Flam. Liquid 2 H225"])),
        f"{HERE}, hazards: “Flam. Liquid 2 H225”: no class “flam. liquid 2” is in the table.",
    ),
    (
        document(alcohol(hazards=["Flam. Liq. 2 H226"])),
        f"{HERE}, hazards: “Flam. Liq. 2 H226”: Flam. Liq. 2 carries H225, not H226.",
    ),
    (
        document(alcohol(hazards=["EUH999"])),
        f"{HERE}, hazards: “EUH999” is no supplemental statement of the table.",
    ),
    (
        document(alcohol(hazards=["EUH380"])),
        f"{HERE}, hazards: “EUH380” is no supplemental statement of the table.",
    ),
    (document(alcohol(ate=[300])), f"{HERE}, ate: an object was expected, not [300]."),
    (document(alcohol(ate={"oral": -5})), f"{HERE}, ate, oral: a number above 0 was expected, not -5."),
    (document(alcohol(ate={"oral": False})), f"{HERE}, ate, oral: a number above 0 was expected, not false."),
    (
        document(alcohol(ate={"mist": 5})),
        f"{HERE}, ate: there is no key “mist”; expected are oral, dermal, vapour, dust_mist, gas.",
    ),
    (
        document(alcohol(unknown=["nose"])),
        f"{HERE}, unknown: one of oral, dermal, inhalation was expected, not “nose”.",
    ),
    (document(alcohol(unknown="oral")), f"{HERE}, unknown: a list was expected, not “oral”."),
    (
        document(alcohol(unknown=["inhalation"], ate={"vapour": 5})),
        f"{HERE}, unknown: inhalation is named unknown, yet “ate” gives a value for it.",
    ),
    (document(alcohol(m_acute=0)), f"{HERE}, m_acute: a number from 1 to 1e+09 was expected, not 0."),
    (document(alcohol(m_chronic=-10)), f"{HERE}, m_chronic: a number from 1 to 1e+09 was expected, not -10."),
    (document(alcohol(ph=-3)), f"{HERE}, ph: a number from -2 to 16 was expected, not -3."),
    (document(alcohol(additive="no")), f"{HERE}, additive: true or false was expected, not “no”."),
    (
        document(alcohol(no_acute_toxicity=1)),
        f"{HERE}, no_acute_toxicity: true or false was expected, not 1.",
    ),
    (document(alcohol(limits={})), f"{HERE}, limit: a list was expected, not {{}}."),
    (document(alcohol(limits=[5])), f"{HERE}, limit 1: an object was expected, not 5."),
    (
        document(alcohol(limits=[{"above": 5}])),
        f"{HERE}, limit 1: there is no key “above”; expected are from, to, hazard.",
    ),
    (
        document(alcohol(limits=[{"hazard": "Skin Corr. 1A H314"}])),
        f"{HERE}, limit 1: “from” is missing; a percentage was expected.",
    ),
    (document(limits((5, None, None))), f"{HERE}, limit 1, hazard: a text was expected, not null."),
    (
        document(limits((5, None, "Skin Burn 1 H314"))),
        f"{HERE}, limit 1, hazard: “Skin Burn 1 H314”: no class “skin burn 1” is in the table.",
    ),
    (
        document(limits((-5, None, "Skin Corr. 1A H314"))),
        f"{HERE}, limit 1, from: a number from 0 to 100 was expected, not -5.",
    ),
    (
        document(limits((5, 101, "Skin Corr. 1A H314"))),
        f"{HERE}, limit 1, to: a number from 0 to 100 was expected, not 101.",
    ),
    (document(limits((5, 5, "Skin Corr. 1A H314"))), f"{HERE}, limit 1: from 5 is not below to 5."),
    (document(limits((5, 2, "Skin Corr. 1A H314"))), f"{HERE}, limit 1: from 5 is not below to 2."),
    (
        document(limits((4, None, "Skin Corr. 1A H314"), (2, 5, "Skin Corr. 1B H314"))),
        f"{HERE}, limits: “Skin Corr. 1B H314” from 2 to 5 % and “Skin Corr. 1A H314” from 4 % "
        "contradict each "
        "other: they overlap.",
    ),
    (
        document(limits((0.5, None, "Skin Irrit. 2 H315"), (5, None, "Skin Corr. 1B H314"))),
        f"{HERE}, limits: “Skin Irrit. 2 H315” from 0.5 % and “Skin Corr. 1B H314” from 5 % contradict each "
        "other: they overlap.",
    ),
    (
        document(limits((2, 5, "Skin Corr. 1A H314"), (5, None, "Skin Irrit. 2 H315"))),
        f"{HERE}, limits: “Skin Irrit. 2 H315” from 5 % is milder than “Skin Corr. 1A H314” from 2 to 5 %; "
        "more cannot be milder.",
    ),
]


@pytest.mark.parametrize(("given", "sentence"), REFUSED)
def test_a_bad_document_is_refused_by_its_place(given: object, sentence: str) -> None:
    with pytest.raises(MixtureError) as refused:
        read_mixture(given)
    assert str(refused.value) == sentence


def test_a_number_too_large_for_any_float_is_refused_like_the_others() -> None:
    with pytest.raises(MixtureError, match=r"percent: a number from 0 to 100 was expected, not 10000"):
        read_mixture(document(alcohol(percent=10**400)))
