"""What is harmed on a car of which nobody listed the glass, the lamps, the wheels or the seats.

The surfaces and what they do not bear are those of public trade pages and of common practice, no authority.
"""

import pytest

from inventory.trade.play import Act, Surface
from inventory.trade.unlisted import unlisted
from tests.inventory.trade.played import act, panel

CAR = (Surface("paint", "clear_coat"),)
KETONE, ESTER = "19", "13"
HF = ("1", "15")


def touching(kind: str, *groups: str, on: str = "", **more: object) -> Act:
    """Return a product of a kind at a step that ticks these areas."""
    return act(kind, 0, *groups, touches=frozenset(on.split()), **more)


@pytest.mark.parametrize(
    ("one", "grade", "says"),
    [
        (
            act("solvent", 0, KETONE),
            "stop",
            "Wipe: Parn wipe (ketone) would harm polycarbonate lamp on the lamps.",
        ),
        (
            touching("other", KETONE, on="lamps"),
            "stop",
            "Spray: Nebrel paint (ketone) would harm polycarbonate lamp on the lamps.",
        ),
        (
            touching("acid", *HF, on="glass"),
            "stop",
            "Minerals: Saurel acid (fluoride acid) would harm the glass.",
        ),
        (
            touching("acid", *HF, on="metal"),
            "stop",
            "Minerals: Saurel acid (acid, fluoride acid) would harm anodised aluminium, bare or polished "
            "aluminium, chrome and stainless steel on the metal.",
        ),
        (
            act("cleaner", 0, "hypochlorite"),
            "stop",
            "Clean: Allrel cleaner (bleach) would harm leather in the interior.",
        ),
        (
            touching("cleaner", "hypochlorite", on="top"),
            "stop",
            "Clean: Allrel cleaner (bleach) would harm soft-top fabric on the soft top.",
        ),
        (
            touching("compound", on="film"),
            "stop",
            "Cut: Grindel compound (abrasive, compound) would harm gloss vinyl wrap, matte vinyl wrap and "
            "paint protection film on the film.",
        ),
        (
            act("wheel", family="acid"),
            "ask",
            "Wheels: is anything of the wheels anodised aluminium or bare or polished aluminium? Radine "
            "cleaner (acid) would harm it.",
        ),
        (
            touching("iron", on="brakes"),
            "ask",
            "Iron: Ferrun remover (iron remover) would touch carbon-ceramic brakes.",
        ),
        (
            touching("polish", on="plastic"),
            "ask",
            "Refine: Lunet polish (abrasive) would touch bare plastic.",
        ),
        (
            act("other", 0, "hypochlorite"),
            "ask",
            "Spray: nobody said what Nebrel paint (bleach) touches. It would harm leather.",
        ),
        (
            act("alkaline"),
            "tell",
            "Degrease: Basrel cleaner (strong alkali) is not for polycarbonate lamp, anodised aluminium and "
            "bare or polished aluminium.",
        ),
    ],
    ids=lambda value: value if value in ("stop", "ask", "tell") else None,
)
def test_what_an_area_surely_has_stops_and_what_it_may_have_asks(one: Act, grade: str, says: str) -> None:
    assert [(each.grade, each.says) for each in unlisted(CAR, [one])] == [(grade, says)]


@pytest.mark.parametrize(
    ("one", "surfaces", "because"),
    [
        (touching("solvent", KETONE, on="paint"), CAR, "the step says that it keeps off the lamps"),
        (act("solvent", family="alcohol"), CAR, "alcohol is what lamps are wiped with"),
        (act("solvent", 0, KETONE), (*CAR, panel("lamp", "left lamp")), "listed: it is judged there"),
        (act("wheel", family="neutral"), CAR, "a neutral cleaner harms no wheel"),
        (act("wheel", family="acid"), (*CAR, panel("powder_coat", "wheels")), "somebody said what they are"),
        (touching("acid", "1", on="glass"), CAR, "glass bears an acid without fluoride"),
        (act("cleaner"), CAR, "no bleach in it"),
        (act("tar"), CAR, "a soft top is not on every car, and nobody ticked one"),
        (act("compound"), CAR, "film is not on every car, and nobody ticked it"),
        (act("polish"), CAR, "bare plastic is masked as a habit; only a tick asks"),
        (act("iron"), CAR, "carbon-ceramic brakes are rare; only a tick asks"),
        (act("alkaline", family="mild"), CAR, "a mild wash harms nothing"),
        (act("shampoo"), CAR, "and neither does soap"),
        (act("other"), CAR, "nobody said what it touches, and nothing refuses it"),
        (act("spill", 0, "hypochlorite"), CAR, "what is for spills is not for the car"),
    ],
)
def test_what_is_listed_kept_off_or_borne_says_nothing(
    one: Act, surfaces: tuple[Surface, ...], because: str
) -> None:
    assert unlisted(surfaces, [one]) == (), because


def test_a_stop_says_that_nobody_listed_it_and_how_to_say_otherwise() -> None:
    (one,) = unlisted(CAR, [act("solvent", 0, KETONE)])

    assert (one.code, one.source) == ("surface.never", "trade pages, no authority")
    assert one.because == (
        "Ketones craze polycarbonate. Nobody listed the lamps of this car, so what cars have there counts."
    )
    assert one.do == (
        "Wipe lamps with isopropanol or ethanol. If it is something else there, list it among the panels."
    )


def test_a_question_names_three_ways_out_and_is_asked_once_a_product() -> None:
    twice = [act("wheel", at, family="acid") for at in (0, 3)]

    (one,) = unlisted(CAR, twice)

    assert (one.code, one.step) == ("surface.unlisted", "Wheels 0")
    assert one.because == (
        "Acid takes the anodised layer off and leaves white stains. Acid etches bare aluminium. Nobody said "
        "what the wheels of this car are made of."
    )
    assert one.do == (
        "Tick what it is on the car, list the wheels among the panels, or say what you saw. If it is so: use "
        "a neutral cleaner on it."
    )


def test_a_stop_that_rests_on_a_sort_that_nobody_named_is_a_question() -> None:
    guessed = touching("alkaline", on="lamps")
    said = touching("alkaline", on="lamps", family="strong")
    known = touching("alkaline", "10", on="lamps")

    assert [one.grade for act_ in (guessed, said, known) for one in unlisted(CAR, [act_])] == [
        "ask", "stop", "stop",
    ]  # fmt: skip
    (asked,) = unlisted(CAR, [guessed])
    assert asked.do.endswith(
        "Or say on the product's page of which sort it is: that was never said, and the cautious one counts."
    )


def test_what_cuts_a_few_panels_only_meets_nothing_else() -> None:
    assert unlisted(CAR, [touching("compound", on="film", panels=frozenset({"panel1"}))]) == ()
