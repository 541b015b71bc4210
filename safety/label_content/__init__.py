"""What goes on a bottle's label: its sheet's elements and what the shelf knows of it, form by form. Pure.

A form is a function in `forms.BUILDERS` and a line in `forms.FORMS`; a language is a column of
`tables/words.csv`.
"""

from safety.hazards.facts import SheetFacts
from safety.label_content.bottle import Bottle
from safety.label_content.forms import FORMS, UnknownForm, forms_of, label_for
from safety.label_content.rulings import (
    ImmediateUse,
    LabelStock,
    NotSmall,
    Ruling,
    Small,
    immediate_use,
    label_stock,
    small,
)
from safety.print.values import LabelContent

__all__ = [
    "FORMS",
    "Bottle",
    "ImmediateUse",
    "LabelStock",
    "NotSmall",
    "Ruling",
    "Small",
    "UnknownForm",
    "forms_of",
    "immediate_use",
    "label_content",
    "label_for",
    "label_stock",
    "small",
]


def label_content(
    name: str,
    code: str,
    facts: SheetFacts | None,
    regime: str,
    *,
    use_by: str = "",
    use_by_says: str = "",
    because: str = "",
    more: tuple[str, ...] = (),
) -> LabelContent:
    """Return a filled bottle's full label. `facts` None prints the warning that there is no sheet yet.

    use_by: the day as on the cap, "26 Nov 2026"; because: the term that won; more: lot, opened on, mix.
    """
    bottle = Bottle(
        name, code, facts, regime, use_by=use_by, use_by_says=use_by_says, because=because, more=more
    )
    return label_for(bottle, "secondary")
