"""What goes on a bottle's label: its sheet's elements and what the shelf knows of it. Pure."""

from safety.hazards.facts import SheetFacts, label_parts
from safety.print.values import LabelContent


def label_content(
    name: str,
    code: str,
    facts: SheetFacts | None,
    regime: str,
    *,
    use_by: str = "",
    use_by_says: str = "Use by",
    because: str = "",
    more: tuple[str, ...] = (),
) -> LabelContent:
    """Return a label's content. `facts` None prints the warning that there is no sheet yet.

    use_by: the day as on the cap, "26 Nov 2026"; because: the term that won; more: lot, opened on, mix.
    """
    parts = label_parts(facts, regime)
    return LabelContent(
        name=name,
        code=code,
        use_by=use_by,
        use_by_says=use_by_says,
        because=because,
        pictograms=parts.elements.pictograms,
        signal_word=parts.elements.signal_word,
        statements=parts.statements,
        facts=more,
        notice=parts.notice,
    )
