"""A bottle's label in each of its forms. A form is a function in BUILDERS and a line in FORMS. Pure."""

from collections.abc import Callable
from dataclasses import replace

from safety.hazards.facts import SheetFacts
from safety.hazards.plain import meant, single
from safety.label_content.bottle import Bottle, Texts, sentences, texts_of
from safety.label_content.lines import days_of, mix_of, reachable, signal, sizes_of, supplier, wear
from safety.label_content.rulings import small
from safety.print.values import LabelContent
from safety.print.words import language_called, say

# name → (what it is for, the regimes that have it)
FORMS: dict[str, tuple[str, tuple[str, ...]]] = {
    "maker": (
        "maker’s bottle: our code, lot, dates; its hazards stand on its own label",
        ("EU", "US", "CA", "UN"),
    ),
    "secondary": ("filled bottle: the full elements", ("EU", "US", "CA", "UN")),
    "us_workplace": ("filled bottle, US workplace: name and general hazards in words and pictures", ("US",)),
    "ca_workplace": (
        "filled bottle, Canadian workplace: name as on the sheet, precautions, the sheet",
        ("CA",),
    ),
    "small": ("small container: what the rules let a small label carry", ("EU", "US", "CA")),
    "tag": ("tie-on tag for a vial: the full elements, with a hole", ("EU", "US", "CA", "UN")),
    "lasting": (
        "refillable bottle, lasting: full elements, and boxes for the date of each fill",
        ("EU", "US", "CA", "UN"),
    ),
}


class UnknownForm(ValueError):
    """A form of label that there is not, or not under these rules."""


def forms_of(regime: str) -> dict[str, str]:
    """Return the forms that a regime has, with what each is for."""
    return {name: says for name, (says, regimes) in FORMS.items() if regime in regimes}


def label_for(bottle: Bottle, form: str) -> LabelContent:
    """Return a bottle's label in a form. Raises UnknownForm, UnknownLanguage, NotSmall."""
    language_called(bottle.language)
    if form not in forms_of(bottle.regime):
        known = f"is for {' and '.join(FORMS[form][1])} only" if form in FORMS else "is not there"
        raise UnknownForm(
            f"The form “{form}” {known}; under the rules of {bottle.regime} there are "
            f"{', '.join(forms_of(bottle.regime))}."
        )
    return BUILDERS[form](bottle, texts_of(bottle))


def _full(bottle: Bottle, texts: Texts) -> LabelContent:
    language = bottle.language
    water = bottle.parts[1]
    return LabelContent(
        name=f"{bottle.name}, {bottle.parts[0]}:{water}" if water else bottle.name,
        code=bottle.code,
        use_by=bottle.use_by,
        use_by_says=bottle.use_by_says or say("Use by", language),
        because=bottle.because,
        pictograms=texts.elements.pictograms,
        signal_word=signal(texts.elements.signal_word, language),
        statements=texts.statements,
        precautions=texts.precautions,
        facts=(*mix_of(bottle), *days_of(bottle), *bottle.more),
        notice=texts.notice,
        supplier=supplier(bottle),
        form="secondary",
        regime=bottle.regime,
        language=language,
        **sizes_of(bottle),  # type: ignore[arg-type]
    )


def _maker(bottle: Bottle, texts: Texts) -> LabelContent:
    """Our code, lot, days and why; of hazards only the warning that a sheet is missing: the maker's stand."""
    # "Not classified" is the maker's to say on the maker's bottle.
    settled = bottle.facts is not None and (bottle.facts.hazards or bottle.facts.not_classified)
    return LabelContent(
        name=bottle.name,
        code=bottle.code,
        use_by=bottle.use_by,
        use_by_says=bottle.use_by_says or say("Use by", bottle.language),
        because=bottle.because,
        facts=(*days_of(bottle), *bottle.more),
        notice="" if settled else texts.notice,
        advice=say("Stick it clear of the maker’s hazards, lot and date.", bottle.language)
        if bottle.has_hazards
        else "",
        form="maker",
        regime=bottle.regime,
        language=bottle.language,
    )


def _us_workplace(bottle: Bottle, texts: Texts) -> LabelContent:
    """(f)(6)(ii): the identifier, and words and pictures for the general hazards; the sheet has the rest."""
    full = _full(bottle, texts)
    codes = texts.elements.statements
    groups = meant(texts.elements.pictograms, codes)
    covered = {code for _, _, hits in groups for code in hits}
    # What no plain heading covers keeps its statement.
    if not groups or set(single(codes)) - covered:
        return replace(
            full, form="us_workplace", precautions=(), advice=say("See the data sheet.", bottle.language)
        )
    words = tuple(f"{say(heading, bottle.language)}." for heading, _, _ in groups)
    return replace(
        full,
        form="us_workplace",
        statements=words,
        precautions=(),
        advice=say("See the data sheet.", bottle.language),
    )


def _ca_workplace(bottle: Bottle, texts: Texts) -> LabelContent:
    """The name as on the sheet, how to handle it safely, and where the sheet is; pictograms as an extra."""
    full = _full(bottle, texts)
    name = bottle.sheet_name or bottle.name
    water = bottle.parts[1]
    return replace(
        full,
        form="ca_workplace",
        name=f"{name}, {bottle.parts[0]}:{water}" if water else name,
        statements=() if texts.precautions else full.statements,
        precautions=(*texts.precautions, *wear(bottle)),
        advice=say("See the data sheet.", bottle.language),
    )


def _small(bottle: Bottle, texts: Texts) -> LabelContent:
    """What the regime lets a small container's label carry; its pictograms and word always stay."""
    full = _full(bottle, texts)
    facts = bottle.facts
    if facts is None or not facts.hazards:
        # Without classes nothing may be left out; a container beyond the limit is refused all the same.
        small(SheetFacts(), bottle.regime, bottle.capacity_ml)
        return replace(full, form="small", first="small", first_why="")
    reduced = small(facts, bottle.regime, bottle.capacity_ml)
    if reduced.identifier_only:
        return LabelContent(
            name=full.name,
            code=full.code,
            form="small",
            first="small",
            regime=bottle.regime,
            language=bottle.language,
        )
    return replace(
        full,
        form="small",
        statements=sentences(reduced.statements, bottle.regime, bottle.language),
        precautions=full.precautions if reduced.precautions else (),
        supplier=reachable(bottle) if reduced.outer_package else full.supplier,
        advice=say("Full label on the outer package.", bottle.language) if reduced.outer_package else "",
        first="small",
        first_why="",
    )


def _tag(bottle: Bottle, texts: Texts) -> LabelContent:
    return replace(
        _full(bottle, texts),
        form="tag",
        hole=True,
        advice=say("Tie it to the neck. Never cover the maker’s label.", bottle.language),
        first="medium",
        first_why="",
    )


def _lasting(bottle: Bottle, texts: Texts) -> LabelContent:
    """What stays the same from fill to fill; each fill's day is written in its box by hand."""
    full = _full(
        replace(bottle, lots=(), opened_on="", mixed_on="", mixed_by="", use_by="", because=""), texts
    )
    holds = (say("holds {size}", bottle.language, size=bottle.size),) if bottle.size else ()
    return replace(
        full, form="lasting", facts=(*holds, *full.facts), fill_says=say("Filled on", bottle.language)
    )


BUILDERS: dict[str, Callable[[Bottle, Texts], LabelContent]] = {
    "maker": _maker,
    "secondary": _full,
    "us_workplace": _us_workplace,
    "ca_workplace": _ca_workplace,
    "small": _small,
    "tag": _tag,
    "lasting": _lasting,
}
