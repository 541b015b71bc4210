"""The two powered masks seal like the others: evaluated, fitted, shaven, with a cartridge that works."""

from dataclasses import replace

import pytest

from inventory.precheck.questions.cartridges import cartridge_hours
from inventory.precheck.questions.protection import equipment_on_hand
from inventory.precheck.questions.respirators import fit_for_the_mask
from inventory.precheck.questions.topics.people import Fitted
from tests.inventory.precheck.airs import BRACK, finding, said, wiping
from tests.inventory.precheck.crew import (
    CARTRIDGE,
    GOGGLES,
    LYE,
    SHIELD,
    SPRAY,
    TOMAS,
    YEAR,
    asked,
    crew,
    item,
    only,
    without,
)

MASKS = [("powered_half", "powered half mask"), ("powered_full", "powered full-face mask")]


def powered(kind: str, **facts: object):
    """Return the spray step done in a powered mask that is on hand, fitted and has its cartridge."""
    mask = item("BPWDKLNB", kind, "Ossen powered mask", product="XPWDKLNB")
    fits = (Fitted("XPWDKLNB", "Ossen powered mask", kind, YEAR, YEAR.on),)
    changed = {name: facts.pop(name) for name in ("evaluated", "fitted", "face") if name in facts}
    who = replace(TOMAS, **{"fitted": fits, **changed})  # type: ignore[arg-type]
    here = facts.pop("items", (mask, CARTRIDGE))
    return crew(step=SPRAY, respirator=kind, who=who, items=here, **facts)


@pytest.mark.parametrize(("kind", "words"), MASKS)
def test_a_powered_mask_is_worn_by_nobody_who_was_not_evaluated_fitted_and_shaven(
    kind: str, words: str
) -> None:
    one = only(fit_for_the_mask, powered(kind, evaluated=(), fitted=()))
    assert one.says == f"Tomas has no medical evaluation in date for a {words}."
    one = only(fit_for_the_mask, powered(kind, fitted=TOMAS.fitted))
    assert one.says == f"Tomas has no fit test for a {words}.", "a plain half mask is another mask"
    one = only(fit_for_the_mask, powered(kind, face="beard"))
    assert one.says == f"Tomas has hair where the {words} seals."
    assert asked(fit_for_the_mask, powered(kind)) == ()


@pytest.mark.parametrize(("kind", "words"), MASKS)
def test_a_powered_mask_stops_without_a_cartridge_and_without_the_mask_itself(kind: str, words: str) -> None:
    mask = item("BPWDKLNB", kind, "Ossen powered mask", product="XPWDKLNB")
    one = only(cartridge_hours, powered(kind, items=(mask,)))
    assert one.says == f"No cartridge that still works is on hand for the {words}."
    assert asked(cartridge_hours, powered(kind)) == ()
    [lacking] = [
        one for one in asked(equipment_on_hand, powered(kind, items=(CARTRIDGE,))) if one.grade == "stop"
    ]
    assert f"{words} is not on hand in date" in lacking.says


def test_over_the_whole_face_it_guards_the_eyes_too_and_over_half_of_it_not() -> None:
    for kind, guarded in (("powered_full", True), ("powered_half", False)):
        mask = item("BPWDKLNB", kind, "Ossen powered mask")
        facts = crew(LYE, items=(*without(GOGGLES, SHIELD), mask))
        missing = " ".join(one.says for one in asked(equipment_on_hand, facts))
        assert ("oggles" not in missing) == guarded, kind


@pytest.mark.parametrize(
    ("regime", "mask", "stopped", "because"),
    [
        ("US", "powered_full", False, "29 CFR 1910.134 Table 1 gives it 1000"),
        ("US", "powered_half", True, "it leaves the eyes bare"),
        ("UK", "powered_full", True, "BS EN 529 as read gives powered hoods alone"),
        ("EU", "powered_full", True, "the EU goes by the same table"),
        ("UK", "hood", False, "TH1 has 10"),
    ],
)
def test_where_a_regime_has_no_factor_a_powered_mask_protects_against_nothing(
    regime: str, mask: str, stopped: bool, because: str
) -> None:
    step = wiping(60, BRACK, respirator=mask)
    assert (("air.named_protection", "stop") in said(step, regime=regime)) == stopped, because


def test_a_stop_in_a_mask_without_a_factor_says_so() -> None:
    stop = finding("air.named_protection", wiping(60, BRACK, respirator="powered_full"))
    assert (
        "A powered full-face mask has no protection factor in the UK table; no factor is known here, so it "
        "counts as none."
    ) in stop.because
    ask = finding("air.respirator", wiping(234, respirator="powered_half"))
    assert ask.says == (
        "Panel wipe, Bay 2: a powered half mask is not enough: a powered half mask has no protection factor "
        "in the UK table; no factor is known here."
    )
    assert ("air.exposure", "ask") in said(wiping(234, respirator="powered_half"), regime="US")
