"""Lasting harm: mutagens, carcinogens, reproductive toxicants, effects by breast milk.

Sources: safety/tables/mixture_cutoffs.csv; the joined letters of H360 after CLP Annex III. These classes
follow the ingredients first: a test of the whole mixture removes one only on conclusive data (CLP Art 6(3),
SOR/2015-17 s. 8.5.3, 8.6.3, 8.7.3), and none is asked for here.
"""

from dataclasses import replace

from safety.hazards.mixtures.cutoffs import of_single_ingredients
from safety.hazards.mixtures.limits import Of, reaches
from safety.hazards.mixtures.values import Because, Found, Mixture
from safety.hazards.mixtures.written import gravity, read

ENDPOINTS = "FD"  # fertility, development
OPTIONAL = "; in the US the label may leave its warning out below 1 %, here it stays"


def lasting(mixture: Mixture, regime: str) -> Found:
    """Return Muta., Carc., Repr. and Lact. as single ingredients give them."""
    found = of_single_ingredients(mixture, regime, Of("Muta."), Of("Carc."), Of("Repr."), Of("Lact."))
    because = tuple(one if regime != "US" else with_option(one) for one in found.because)
    if regime == "EU":
        because = with_letters(because)
    return replace(found, hazards=tuple(one.hazard for one in because), because=because)


def with_option(one: Because) -> Because:
    """Return a reason with the remark that a US label may leave out Carc. 2 below 1 %."""
    percent = one.numbers["percent"]
    optional = one.hazard.startswith("Carc. 2") and isinstance(percent, float) and not reaches(percent, 1)
    return replace(one, rule=one.rule + OPTIONAL) if optional else one


def with_letters(because: tuple[Because, ...]) -> tuple[Because, ...]:
    """Return the reasons with those for Repr. under one code: H360F and H361d together are H360Fd."""
    repr_of = [one for one in because if one.hazard.startswith("Repr.")]
    if len({one.hazard for one in repr_of}) < 2:
        return because
    gravest = min((one.hazard for one in repr_of), key=lambda text: gravity(read(text)))
    category = read(gravest).of.category
    code = joined_code(tuple(one.hazard for one in repr_of))
    written = f"Repr. {category} {code}"
    return tuple(replace(one, hazard=written) if one in repr_of else one for one in because)


def joined_code(hazards: tuple[str, ...]) -> str:
    """Return the one code of several Repr. hazards; one without letters covers both endpoints."""
    known, suspected = (letters(hazards, "H360"), letters(hazards, "H361"))
    if not known:
        return (
            "H361" if None in suspected else f"H361{''.join(x.lower() for x in ENDPOINTS if x in suspected)}"
        )
    if None in known:
        return "H360"
    sure = [x for x in ENDPOINTS if x in known]
    perhaps = [x.lower() for x in ENDPOINTS if x not in known and (x in suspected or None in suspected)]
    return f"H360{''.join(sure)}{''.join(perhaps)}"


def letters(hazards: tuple[str, ...], code: str) -> set[str | None]:
    """Return the endpoints that hazards of a code name, None where one names none."""
    found: set[str | None] = set()
    for text in hazards:
        written = text.rpartition(" ")[2]
        capital = written.removeprefix("H360") if written.startswith("H360") else ""
        small = written.removeprefix("H361") if written.startswith("H361") else ""
        if written == code:
            found.add(None)
        elif code == "H360":
            found |= {x for x in capital if x.isupper()}
        else:
            found |= {x.upper() for x in (small or capital) if x.islower()}
    return found
