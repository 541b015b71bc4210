"""What the check says of words on a car that name no surface, and of what nobody listed."""

from dataclasses import replace

from inventory.trade.acts import Surface
from inventory.trade.edits import Edits
from tests.inventory.precheck.cases import COAT, FRIDAY, TIDEWALL, WIPE, found, said
from tests.inventory.precheck.surfaces import act, of

WIPED = act(WIPE, "hollin", "solvent")
COATED = act(COAT, TIDEWALL.code, "coating", name="Tidewall coating")


def test_words_that_name_no_surface_are_asked_about_once_with_two_ways_out() -> None:
    steps = of(WIPED, COATED)
    topic = replace(steps.surfaces, unread=("satin foil",), car="VCARKLNB")

    (one,) = found(replace(steps, surfaces=topic))

    assert (one.code, one.grade) == ("surface.words", "ask")
    assert one.says == "Nobody ticked what “satin foil” is."
    assert (
        one.because == "These words stand on the car and name no surface, so no product is held against them."
    )
    assert one.do == "Tick it on the car, or list the panels; then take the words out."
    assert one.about == ("VCARKLNB", WIPE.code)


def test_words_are_nothing_to_ask_about_where_nothing_touches_the_car_any_more() -> None:
    over = [replace(step, signed_at=FRIDAY) for step in (WIPE, COAT)]
    steps = of(WIPED, COATED, steps=tuple(over))

    assert said(replace(steps, surfaces=replace(steps.surfaces, unread=("satin foil",)))) == []


def test_what_a_listed_and_an_unlisted_surface_refuse_at_one_step_is_one_finding() -> None:
    ketone = replace(WIPED.profile, never=frozenset({"lamp", "wrap_gloss"}))
    wipe = replace(WIPED, profile=replace(ketone, traits=ketone.traits | {"ketone"}))

    (one,) = found(of(wipe, surfaces=(Surface("bonnet", "wrap_gloss"),)))

    assert (one.code, one.grade) == ("surface.never", "stop")
    assert "bonnet" in f"{one.says} {one.because}"
    assert "lamps" in f"{one.says} {one.because}"


def test_a_signed_step_is_not_asked_what_its_wheels_were_made_of() -> None:
    acid = act(WIPE, "brack", "wheel", edits=Edits(family="acid"))
    asked = "surface.unlisted"

    assert asked in {one.code for one in found(of(acid))}
    assert asked not in {one.code for one in found(of(acid, steps=(replace(WIPE, signed_at=FRIDAY), COAT)))}
