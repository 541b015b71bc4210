"""Every rule of the trade on steps and surfaces: a case that fires it, its nearest that does not, its words.

The rules are those of public trade pages and of common practice, no authority; marks stand in the tables.
"""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

import pytest

from inventory.trade.play import Act, Surface, play
from inventory.trade.reading import in_words
from inventory.trade.rules import rules
from tests.inventory.trade.played import MONDAY, ZONE, act, panel

CLEAR = (panel(),)
RULES = {rule.id: rule for rule in rules()}


@dataclass(frozen=True)
class Case:
    """A rule, what fires it and with which words, what comes nearest and does not; why that is the edge."""

    id: str
    fires: tuple[Act, ...]
    says: str
    silent: tuple[Act, ...]
    because: str
    on: tuple[Surface, ...] = CLEAR
    but: tuple[Surface, ...] = ()


COAT = act("coating")
POLISHED = (act("polish", 0), act("coating", 4))
MINUTE = 1 / 60

STEPS = [
    Case(
        "coat-over-oils",
        POLISHED,
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet.",
        (act("polish", 0), act("solvent", 2), act("coating", 4)),
        "a wipe after the last polish is enough",
    ),
    Case(
        "coat-over-oils",
        (act("solvent", 0), act("clay", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet.",
        (act("clay", 0), act("solvent", 2), act("coating", 4)),
        "clay: the wipe must come after it",
    ),
    Case(
        "coat-over-oils",
        (act("solvent", 0), act("shampoo", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet.",
        (act("solvent", 0), act("tape", 2), act("coating", 4)),
        "wash: tape leaves nothing",
    ),
    Case(
        "coat-over-oils",
        (act("dressing", 2, family="water"), act("coating", 4, touches=frozenset({"plastic"}))),
        "Coat: Tidewall coating would go over oils, fillers or soap film on the sill.",
        (act("dressing", 2, family="water"), act("coating", 4, touches=frozenset({"paint"}))),
        "dressing: only what it touched",
        (panel("bare_plastic", "sill"),),
        CLEAR,
    ),
    Case(
        "coat-over-oils",
        POLISHED,
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet.",
        (act("polish", 0), act("coating", 4, family="spray")),
        "spray-and-rinse silica needs no wipe",
    ),
    Case(
        "coat-over-oils",
        POLISHED,
        "Coat: Tidewall coating would go over oils, fillers or soap film on the bonnet.",
        (act("polish", 0), act("coating", 2, family="primer"), act("coating", 4)),
        "the maker's own primer polish is what its coat wants below",
    ),
    Case(
        "coat-over-wax",
        (COAT,),
        "Coat: Tidewall coating would go over wax on the bonnet.",
        (act("polish", -3), act("solvent", -2), COAT),
        "polish and wipe strip it",
        (panel(arrives={"wax": None}),),
    ),
    Case(
        "coat-over-wax",
        (act("shampoo", -3), act("solvent", -2), COAT),
        "Coat: Tidewall coating would go over wax on the bonnet.",
        (act("shampoo", -3, family="alkaline"), act("solvent", -2), COAT),
        "an alkaline soap also strips old wax, a neutral one does not",
        (panel(arrives={"wax": None}),),
    ),
    *(
        Case(
            "coat-over-sealant",
            (before, act("solvent", 2), act("coating", 4)),
            "Coat: Tidewall coating would go over sealant, glaze or topper on the bonnet.",
            (before, act("polish", 1), act("solvent", 2), act("coating", 4)),
            f"{what}: a wipe alone does not strip it",
        )
        for what, before in (
            ("sealant", act("wax", 0)),
            ("all-in-one", act("wax", 0, family="all-in-one")),
            ("spray topper", act("topper", 0)),
        )
    ),
    Case(
        "coat-over-wax",
        (act("wax", 0, family="glaze"), act("solvent", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over wax on the bonnet.",
        (act("wax", 0, family="glaze"), act("polish", 1), act("solvent", 2), act("coating", 4)),
        "glaze: a wipe takes its oils and not the rest",
    ),
    Case(
        "recoat-window",
        (COAT, act("coating", 2 - MINUTE)),
        "Coat: Tidewall coating would go on 59 min after Tidewall coating on the bonnet; "
        "the re-coat window is 60 to 180 min.",
        (COAT, act("coating", 2)),
        "the window opens at 60 min",
    ),
    Case(
        "recoat-window",
        (COAT, act("coating", 4 + MINUTE)),
        "Coat: Tidewall coating would go on 3 h 1 min after Tidewall coating on the bonnet; "
        "the re-coat window is 60 to 180 min.",
        (COAT, act("coating", 4)),
        "it shuts at 180 min",
    ),
    Case(
        "water-inside-keep-dry",
        (COAT, act("shampoo", 5)),
        "Wash: Mildrel shampoo brings water 4 h after Tidewall coating on the bonnet; "
        "it must stay dry for 48 h.",
        (COAT, act("shampoo", 49)),
        "48 h are over, and what is said then is another wait",
    ),
    Case(
        "wax-inside-cure",
        (COAT, act("wax", 5)),
        "Wax: Ambrel wax would go on 4 h after Tidewall coating on the bonnet; it cures for 48 h.",
        (COAT, act("wax", 49)),
        "48 h are over",
    ),
    Case(
        "topper-inside-cure",
        (COAT, act("topper", 1.5)),
        "Top: Brinlo topper would go on 30 min after Tidewall coating on the bonnet; it cures for 48 h.",
        (act("coating", topper_ok=True), act("topper", 1.5)),
        "this coating's maker names a topper",
    ),
    Case(
        "wash-hold",
        (COAT, act("shampoo", 1 + 72)),
        "Wash: Mildrel shampoo washes 3 d after Tidewall coating on the bonnet; "
        "it must not be washed for 7 d.",
        (COAT, act("shampoo", 1 + 7 * 24)),
        "7 d are over",
    ),
    Case(
        "spot-clean",
        (COAT, act("shampoo", 5, spot=True, step="Droppings")),
        "Droppings: spots are cleaned with water 4 h after Tidewall coating on the bonnet, "
        "which is always right if wiped dry.",
        (COAT, act("shampoo", 1 + 7 * 24, spot=True, step="Droppings")),
        "after the wait nothing needs recording",
    ),
    Case(
        "clay-after-polish",
        (act("polish", 0), act("clay", 2)),
        "Clay: Kelm clay would go over a polished finish on the bonnet.",
        (act("clay", 0), act("polish", 2)),
        "before the polish is its place",
    ),
    Case(
        "cut-unrefined",
        (act("compound", 0), act("solvent", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over a cut that nothing has refined on the bonnet.",
        (act("compound", 0), act("polish", 1), act("solvent", 2), act("coating", 4)),
        "a polish refines it",
    ),
    Case(
        "silicone-before-coat",
        (act("solvent", 0), act("dressing", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over silicone in the air of the bay on the bonnet.",
        (act("dressing", 0), act("solvent", 2), act("coating", 4)),
        "a wipe after it ends it",
    ),
    Case(
        "silicone-before-coat",
        (act("solvent", 0), act("dressing", 2), act("coating", 4)),
        "Coat: Tidewall coating would go over silicone in the air of the bay on the bonnet.",
        (act("solvent", 0), act("dressing", 2, family="water"), act("coating", 4)),
        "a dressing without silicone gives none to the air",
    ),
    Case(
        "silicone-before-paint",
        (act("dressing", 2), act("other", 4, family="sprayed paint")),
        "Spray: Nebrel paint would go over silicone in the air of the bay on the bonnet.",
        (act("dressing", 2), act("solvent", 3), act("other", 4, family="sprayed paint")),
        "where paint is sprayed it stops, until wiped",
    ),
    Case(
        "polish-over-coating",
        (act("polish", 0),),
        "Refine: Lunet polish would go over a coating on the bonnet.",
        (act("polish", 0, strips_coating=True),),
        "the job says that this step strips it",
        (panel(coating="Ostwall coating"),),
    ),
    Case(
        "dwell",
        (act("iron", 0, minutes=4, dwell_min=5),),
        "Iron: Ferrun remover must lie for 5 min on the bonnet; the step lasts 4 min.",
        (act("iron", 0, minutes=5, dwell_min=5),),
        "5 min are enough",
    ),
    Case(
        "flash",
        (act("solvent", 0, flash_min=10), act("coating", 1 + 9 * MINUTE)),
        "Coat: Tidewall coating would go on 9 min after Parn wipe on the bonnet; "
        "it must flash off for 10 min.",
        (act("solvent", 0, flash_min=10), act("coating", 1 + 10 * MINUTE)),
        "10 min are over",
    ),
    Case(
        "hot",
        (act("wheel", 0, family="neutral"),),
        "Wheels: Radine cleaner would go on a hot surface on the left front wheel.",
        (act("wheel", 0, family="neutral"),),
        "a wheel that is cold",
        (panel("powder_coat", "left front wheel", hot=True),),
        (panel("powder_coat", "left front wheel"),),
    ),
]


NEUTRAL = act("shampoo")
ALCOHOL = act("solvent", 0, "4", family="alcohol")
MATTE = {"matte": "matte or satin paint", "wrap_matte": "matte vinyl wrap"}
WRAPS = {"wrap_gloss": "gloss vinyl wrap", "wrap_matte": "matte vinyl wrap"}
METALS = {"aluminium": "bare or polished aluminium", "chrome": "chrome", "stainless": "stainless steel"}
SOLVENTS = {
    "ketone": ("19", "ketone"),
    "ester": ("13", "ester"),
    "ether": ("14", "ether"),
    "aromatic": ("16", "aromatic solvent"),
    "chlorinated": ("17", "chlorinated solvent"),
    "methanol": ("methanol", "methanol"),
    "ammonia": ("ammonia", "ammonia"),
    "amine": ("7", "amine"),
    "alkali": ("10", "strong alkali"),
}


def on_top(kind: str, *groups: str, **words: Any) -> Act:
    return act(kind, 0, *groups, touches=frozenset({"top"}), **words)


def never(rule: str, product: Act, words: str, nearest: Act, because: str) -> Case:
    """A product that harms a part, and the nearest that does not."""
    part = panel(rule.partition(":")[2], "part")
    return Case(rule, (product,), f"{words} on the part.", (nearest,), because, (part,))


NEVER = [
    *(
        never(
            f"matte-abrasive:{key}",
            act("polish"),
            f"Refine: Lunet polish (abrasive) would harm {name}",
            NEUTRAL,
            "a wash levels nothing",
        )
        for key, name in MATTE.items()
    ),
    *(
        never(
            f"matte-clay:{key}",
            act("clay"),
            f"Clay: Kelm clay (clay) would harm {name}",
            act("iron"),
            "iron comes off by a remover",
        )
        for key, name in MATTE.items()
    ),
    *(
        never(
            f"matte-wax:{key}",
            act("wax", traits=("wax",)),
            f"Wax: Ambrel wax (wax) would harm {name}",
            COAT,
            "a coating is not wax",
        )
        for key, name in MATTE.items()
    ),
    *(
        never(
            f"matte-gloss:{key}",
            act("topper"),
            f"Top: Brinlo topper (gloss agent) would harm {name}",
            act("topper", traits=("seals", "topper")),
            "a topper that its page says is made for matte",
        )
        for key, name in MATTE.items()
    ),
    *(
        never(
            f"wrap-petroleum:{key}",
            act("solvent"),
            f"Wipe: Parn wipe (petroleum) would harm {name}",
            ALCOHOL,
            "alcohol; a wipe that nobody described counts as petroleum",
        )
        for key, name in WRAPS.items()
    ),
    never(
        "wrap-compound:wrap_gloss",
        act("compound"),
        "Cut: Grindel compound (compound) would harm gloss vinyl wrap",
        act("polish"),
        "the rule names compound; matte wrap takes no polish either",
    ),
    never(
        "wrap-compound:wrap_matte",
        act("compound"),
        "Cut: Grindel compound (abrasive, compound) would harm matte vinyl wrap",
        NEUTRAL,
        "a wash cuts nothing",
    ),
    *(
        never(
            f"wrap-degreaser:{key}",
            act("alkaline"),
            f"Degrease: Basrel cleaner (strong degreaser) would harm {name}",
            act("alkaline", family="mild"),
            "a mild one",
        )
        for key, name in WRAPS.items()
    ),
    never(
        "film-compound:film",
        act("compound"),
        "Cut: Grindel compound (compound) would harm paint protection film",
        act("polish"),
        "film that has settled bears a finishing polish",
    ),
    never(
        "anodised-acid:anodised",
        act("acid"),
        "Minerals: Saurel acid (acid) would harm anodised aluminium",
        act("wheel", family="neutral"),
        "a neutral cleaner",
    ),
    never(
        "anodised-alkali:anodised",
        act("wheel"),
        "Wheels: Radine cleaner (strong alkali) would harm anodised aluminium",
        act("wheel", family="neutral"),
        "a wheel cleaner that nobody described counts as strong",
    ),
    *(
        never(
            f"polished-fluoride:{key}",
            act("wheel", 0, "15", family="neutral"),
            f"Wheels: Radine cleaner (fluoride acid) would harm {name}",
            act("wheel", family="neutral"),
            "no fluoride in it",
        )
        for key, name in METALS.items()
    ),
    never(
        "aluminium-acid:aluminium",
        act("wheel", family="acid"),
        "Wheels: Radine cleaner (acid) would harm bare or polished aluminium",
        act("wheel", family="neutral"),
        "a neutral cleaner",
    ),
    never(
        "aluminium-alkali:aluminium",
        act("wheel"),
        "Wheels: Radine cleaner (strong alkali) would harm bare or polished aluminium",
        act("wheel", family="neutral"),
        "a neutral cleaner",
    ),
    never(
        "glass-fluoride:glass",
        act("acid", 0, "1", "15"),
        "Minerals: Saurel acid (fluoride acid) would harm glass",
        act("acid", 0, "1"),
        "an acid without fluoride",
    ),
    *(
        never(
            f"lamp-{rule}:lamp",
            act("solvent", 0, group, family="alcohol"),
            f"Wipe: Parn wipe ({trait}) would harm polycarbonate lamp",
            ALCOHOL,
            "isopropanol and ethanol are safe: lamps are wiped with them",
        )
        for rule, (group, trait) in SOLVENTS.items()
    ),
    never(
        "top-bleach:top_fabric",
        on_top("cleaner", "10", "104", "hypochlorite"),
        "Clean: Allrel cleaner (bleach) would harm soft-top fabric",
        on_top("cleaner", "10"),
        "a cleaner without bleach",
    ),
    never(
        "leather-bleach:leather",
        act("interior", 0, "hypochlorite"),
        "Inside: Polstrel cleaner (bleach) would harm leather",
        act("interior"),
        "a cleaner without bleach",
    ),
    Case(
        "textile-bleach:textile",
        (act("interior", 0, "hypochlorite"),),
        "Inside: Polstrel cleaner (bleach) would touch textile on the seat.",
        (act("interior"),),
        "a cleaner without bleach",
        (panel("textile", "seat"),),
        (panel("textile", "seat"),),
    ),
    never(
        "top-solvent:top_fabric",
        on_top("solvent", family="alcohol"),
        "Wipe: Parn wipe (solvent) would harm soft-top fabric",
        ALCOHOL,
        "the same wipe on the paint alone",
    ),
    never(
        "top-acid:top_fabric",
        on_top("acid"),
        "Minerals: Saurel acid (acid) would harm soft-top fabric",
        act("acid"),
        "the same acid where it is usually used",
    ),
    never(
        "chrome-hydrochloric:chrome",
        act("acid", 0, "1", "hydrochloric"),
        "Minerals: Saurel acid (hydrochloric acid) would harm chrome",
        act("acid", 0, "1"),
        "phosphoric acid",
    ),
    Case(
        "plastic-abrasive:bare_plastic",
        (act("polish"),),
        "Refine: Lunet polish (abrasive) would touch bare plastic on the sill.",
        (act("polish", touches=frozenset({"paint"})),),
        "masked: the step says that it touches the paint alone",
        (panel("bare_plastic", "sill"),),
    ),
    Case(
        "brakes-iron:carbon_brakes",
        (act("iron"),),
        "Iron: Ferrun remover (iron remover) would touch carbon-ceramic brakes on the front brakes.",
        (act("wheel", family="neutral"),),
        "a neutral cleaner",
        (panel("carbon_brakes", "front brakes"),),
    ),
]


def aged(key: str, days: int, **words: Any) -> tuple[Surface, ...]:
    """A panel whose refinish or film is so many days old on Monday 2 March."""
    return (panel(key, "wing", since_on=MONDAY - timedelta(days=days), **words),)


BY_AGE = [
    Case(
        "film-coat:film",
        (COAT,),
        "Coat: Tidewall coating would go on paint protection film of 28 February 2026 on the wing; "
        "it must be 2 d old.",
        (COAT,),
        "48 h from the end of the day that is given",
        aged("film", 2),
        aged("film", 3),
    ),
    Case(
        "film-pressure:film",
        (act("foam"),),
        "Foam: Schaumel foam would go on paint protection film of 28 February 2026 on the wing; "
        "it must be 2 d old.",
        (act("foam"),),
        "48 h from the end of the day that is given",
        aged("film", 2),
        aged("film", 3),
    ),
    Case(
        "film-heat:film",
        (act("other", traits=("heat",), touches=frozenset({"film"})),),
        "Spray: Nebrel paint would go on paint protection film of 28 February 2026 on the wing; "
        "it must be 2 d old.",
        (act("other", traits=("heat",), touches=frozenset({"film"})),),
        "no kind brings heat by itself: a product's page says so",
        aged("film", 2),
        aged("film", 3),
    ),
    *(
        Case(
            "refinish-seals:fresh_refinish",
            (product,),
            f"{words} would go on fresh refinish of 23 February 2026 on the wing; it must be 7 d old.",
            (product,),
            "7 d from the end of 23 February are over when 2 March is; after that it asks",
            aged("fresh_refinish", 7),
            aged("fresh_refinish", 8),
        )
        for product, words in (
            (COAT, "Coat: Tidewall coating"),
            (act("wax"), "Wax: Ambrel wax"),
            (act("wax", family="wax"), "Wax: Ambrel wax"),
        )
    ),
    Case(
        "refinish-wet:fresh_refinish",
        (NEUTRAL,),
        "Wash: Mildrel shampoo would go on fresh refinish of 27 February 2026 on the wing; "
        "it must be 3 d old.",
        (NEUTRAL,),
        "wash from 3 d",
        aged("fresh_refinish", 3),
        aged("fresh_refinish", 4),
    ),
    Case(
        "refinish-baked:fresh_refinish",
        (COAT,),
        "Coat: Tidewall coating would go on fresh refinish of 31 January 2026 on the wing; "
        "it must be 30 d (baked) old.",
        (COAT,),
        "baked paint asks until 30 d",
        aged("fresh_refinish", 30, baked=True),
        aged("fresh_refinish", 31, baked=True),
    ),
    *(
        Case(
            "refinish-air:fresh_refinish",
            (COAT,),
            "Coat: Tidewall coating would go on fresh refinish of 2 December 2025 on the wing; "
            "it must be 90 d (air-dried) old.",
            (COAT,),
            "air-dried asks until 90 d, and what nobody described counts as air-dried",
            aged("fresh_refinish", 90, baked=baked),
            aged("fresh_refinish", 91, baked=baked),
        )
        for baked in (False, None)
    ),
]

MATRIX = [*STEPS, *NEVER, *BY_AGE]


def met(case: Case, on: tuple[Surface, ...], acts: tuple[Act, ...]) -> list[tuple[str, str]]:
    """Sentence and source of what is said in a rule's code and grade."""
    rule = RULES[case.id]
    found = play(on, acts, ZONE)
    return [(one.says, one.source) for one in found if (one.code, one.grade) == (rule.code, rule.grade)]


@pytest.mark.parametrize("case", MATRIX, ids=lambda case: f"{case.id}, {case.because}")
def test_a_rule_speaks_in_its_words_with_its_mark_and_its_nearest_case_is_silent(case: Case) -> None:
    assert met(case, case.on, case.fires) == [(case.says, in_words(RULES[case.id].mark))]
    assert met(case, case.but or case.on, case.silent) == []


def test_every_rule_of_the_tables_is_in_the_matrix_but_those_on_small_goods() -> None:
    elsewhere = {"pads", "towels"}
    assert {case.id for case in MATRIX} == set(RULES) - elsewhere
    assert {rule.id for rule in rules() if rule.by == "small goods"} == elsewhere


def test_a_rule_that_is_a_function_says_why_no_table_can_hold_it() -> None:
    functions = {rule.id: rule.why for rule in rules() if rule.by == "function"}
    assert set(functions) == {"recoat-window", "spot-clean", "dwell", "flash", "hot"}
    assert all(functions.values())
