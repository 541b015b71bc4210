"""The small container's label: what each regime spares it, and what it keeps."""

from dataclasses import replace

import pytest

from safety.hazards.facts import SheetFacts
from safety.label_content import NotSmall, label_for
from tests.safety.cast import ACID, COATING, WIPE
from tests.safety.label_content.test_forms import WIPED


@pytest.mark.parametrize(
    ("regime", "capacity", "says"),
    [
        ("US", 101, "It holds 101 ml; the small form ends at 100 ml in US. Take the full one."),
        ("CA", 101, "the small form ends at 100 ml in CA"),
        ("EU", 126, "the small form ends at 125 ml in EU"),
        ("EU", None, "How much it holds is not known: the small form needs a size in ml."),
    ],
)
def test_a_bottle_that_is_not_small_gets_no_small_label(
    regime: str, capacity: float | None, says: str
) -> None:
    with pytest.raises(NotSmall) as refused:
        label_for(replace(WIPED, regime=regime, capacity_ml=capacity), "small")
    assert says in str(refused.value)
    with pytest.raises(NotSmall):
        label_for(replace(WIPED, facts=None, regime=regime, capacity_ml=capacity), "small")


SMALL = [
    # regime, ml, facts, statements left, because
    ("EU", 125, WIPE, (), "H225, H319 and H336 are all spared up to 125 ml"),
    (
        "EU",
        30,
        COATING,
        (
            "May cause an allergic skin reaction.",
            "May cause allergy or asthma symptoms or breathing difficulties if inhaled.",
            "Contains isocyanates. May produce an allergic reaction.",
        ),
        "sensitisers are never spared, Flam. Liq. 3 is",
    ),
    (
        "EU",
        30,
        ACID,
        (
            "May be corrosive to metals.",
            "Toxic in contact with skin.",
            "Causes severe skin burns and eye damage.",
        ),
        "none of them is spared",
    ),
    ("CA", 100, ACID, (), "no H and P up to 100 ml"),
    ("US", 100, ACID, (), "identifier, pictograms, word, maker, telephone"),
]


@pytest.mark.parametrize(("regime", "ml", "facts", "statements", "because"), SMALL)
def test_a_small_container_keeps_what_the_regime_spares_it_not(
    regime: str, ml: float, facts: SheetFacts, statements: tuple[str, ...], because: str
) -> None:
    full = label_for(replace(WIPED, facts=facts, regime=regime), "secondary")
    label = label_for(replace(WIPED, facts=facts, regime=regime, capacity_ml=ml), "small")
    assert label.statements == statements, because
    assert (label.pictograms, label.signal_word) == (full.pictograms, full.signal_word)


def test_the_us_small_form_names_maker_and_telephone_and_the_outer_package() -> None:
    vial = replace(WIPED, regime="US", capacity_ml=30)
    label = label_for(vial, "small")
    assert label.supplier == "Orlo Surface Care · 0800 555 0142"
    assert label.advice == "Full label on the outer package."
    assert (
        label_for(replace(vial, telephone=""), "small").supplier == "Orlo Surface Care · tel. not known here"
    )
    assert (
        label_for(replace(vial, maker="", telephone=""), "small").supplier == "Maker and tel. not known here"
    )


def test_up_to_3_ml_the_us_label_is_the_identifier() -> None:
    for ml, pictograms in ((3, ()), (3.1, ("GHS02", "GHS07"))):
        label = label_for(replace(WIPED, regime="US", capacity_ml=ml), "small")
        assert (label.name, label.code, label.pictograms) == ("Hollin panel wipe", "BKTRVNXH", pictograms)
