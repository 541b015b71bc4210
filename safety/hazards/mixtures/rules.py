"""Classifying a mixture: every family is asked in order, the gravest of each outcome stands, then the label.

What the data cannot carry comes back as a reason to review, never as “not classified”.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from safety.hazards.classes import REGIMES
from safety.hazards.elements import UnknownRegime, elements
from safety.hazards.mixtures.acute import acute_toxicity
from safety.hazards.mixtures.aerosols import by_route, liquid_of
from safety.hazards.mixtures.aquatic import aquatic
from safety.hazards.mixtures.aspiration import aspiration
from safety.hazards.mixtures.cutoffs import known_to_act
from safety.hazards.mixtures.dilution import Dilution
from safety.hazards.mixtures.european import european
from safety.hazards.mixtures.eye import eye
from safety.hazards.mixtures.flammable import flammable
from safety.hazards.mixtures.joining import joined
from safety.hazards.mixtures.lasting import lasting
from safety.hazards.mixtures.organs import organs
from safety.hazards.mixtures.physical import physical, unread_limits
from safety.hazards.mixtures.sensitisers import sensitisers
from safety.hazards.mixtures.skin import skin
from safety.hazards.mixtures.supplemental import supplemental
from safety.hazards.mixtures.values import Because, Found, Ingredient, Mixture

Family = Callable[[Mixture, str], Found]
PHYSICAL: tuple[Family, ...] = (flammable, physical)
HEALTH: tuple[Family, ...] = (skin, eye, sensitisers, lasting, organs, aspiration)
REST: tuple[Family, ...] = (aquatic, european, unread_limits)


@dataclass(frozen=True)
class Classified:
    """A mixture's classes with their label. `hazards` uncombined, `statements` as the label joins them."""

    hazards: tuple[str, ...]
    pictograms: tuple[str, ...]
    signal_word: str | None
    statements: tuple[str, ...]
    supplemental: tuple[str, ...]
    ate: dict[str, float]
    unknown_percent: dict[str, float]
    needs_review: tuple[str, ...]
    because: tuple[Because, ...]

    def as_json(self) -> dict[str, Any]:
        """Return the document that `classify --json` prints."""
        reasons = [
            {
                "class": one.hazard,
                "rule": one.rule,
                "source": one.source,
                "mark": one.mark,
                "numbers": one.numbers,
            }
            for one in self.because
        ]
        return {**{name: getattr(self, name) for name in self.__dataclass_fields__}, "because": reasons}


def classify(mixture: Mixture, regime: str) -> Classified:
    """Return the classes, label elements and open questions of a mixture. Raises UnknownRegime.

    The order of its ingredients does not matter.
    """
    if regime not in REGIMES:
        raise UnknownRegime(f"“{regime}” is not one of {', '.join(REGIMES)}.")
    whole = replace(mixture, ingredients=tuple(sorted(mixture.ingredients, key=by_name)))
    classes = joined(asked(whole, regime), regime)
    known = known_to_act(liquid_of(whole), regime, classes.hazards)
    found = joined((classes, supplemental(whole, regime, classes.hazards), known, unlooked(whole)), regime)
    label = elements(found.hazards, regime)
    return Classified(
        hazards=found.hazards,
        pictograms=label.pictograms,
        signal_word=label.signal_word,
        statements=label.statements,
        supplemental=found.supplemental,
        ate=found.ate,
        unknown_percent=found.unknown_percent,
        needs_review=found.needs_review,
        because=found.because,
    )


def by_name(one: Ingredient) -> tuple[str, str, float, float]:
    """Return an ingredient's place, so that no answer hangs on the order it was typed in."""
    return (one.name, one.cas, one.percent, one.least)


def asked(whole: Mixture, regime: str) -> list[Found]:
    """Return what every family finds; of an aerosol the health families see the liquid alone."""
    liquid = liquid_of(whole)
    acute = acute_toxicity(whole, regime)
    if liquid is not whole:
        acute = by_route(acute_toxicity(liquid, regime), acute)
    return [
        *(family(whole, regime) for family in PHYSICAL),
        acute,
        *(family(liquid, regime) for family in HEALTH),
        *(family(whole, regime) for family in REST),
    ]


def unlooked(mixture: Mixture) -> Found:
    """Return what was never looked at, and what a dilution takes over unmeasured."""
    said = list(mixture.assumptions) if isinstance(mixture, Dilution) else []
    if not mixture.form:
        said.append("Its form is not given: it counted as a liquid, and as breathed in every form.")
    if not mixture.ingredients:
        said.append("No ingredient is named: nothing but what was measured on the whole could be judged.")
    unknown = [one for one in mixture.ingredients if one.hazards is None and one.percent]
    if unknown:
        names = ", ".join(f"{one.name} ({one.percent:g} %)" for one in unknown)
        total = math.fsum(one.percent for one in unknown)
        said.append(
            f"The classes of {names} are not known: {total:g} % counted only by what is measured on it."
        )
    return Found(needs_review=tuple(said))
