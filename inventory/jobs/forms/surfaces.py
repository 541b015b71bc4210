"""What is special about a whole car: the trade's surfaces as boxes, in small groups."""

from collections.abc import Iterator, Sequence

from django import forms
from django.forms.boundfield import BoundField, BoundWidget

from inventory.trade.surfaces import named, on_a_whole_car

AS_WRITTEN = "As it was written before"
HELP = (
    "It counts for the whole car, beside its clear coat. A fresh refinish and a film need their day: list "
    "those panels under Paint and panels."
)


class SurfacesField(forms.MultipleChoiceField):
    """The surfaces of a whole car; words that were written of it before stay as boxes of their own."""

    widget = forms.CheckboxSelectMultiple

    def __init__(self, label: str = "What is special about it") -> None:
        super().__init__(label=label, required=False, help_text=HELP)
        self.words: tuple[str, ...] = ()
        self.offer(())

    def offer(self, said: Sequence[str]) -> None:
        """Offer the trade's surfaces, and what is written that is none of them."""
        offered = {one.key for _, group in on_a_whole_car() for one in group}
        self.words = tuple(str(text) for text in said if text not in offered)
        boxes = [(one.key, one.name) for _, group in on_a_whole_car() for one in group]
        self.choices = [*boxes, *((text, _as_written(text)) for text in self.words)]


def _as_written(text: str) -> str:
    return f"“{text}”" if named(text) else f"“{text}”: names no surface"


def grouped(field: BoundField) -> Iterator[tuple[str, list[BoundWidget]]]:
    """Return the boxes of a field in their groups."""
    boxes = iter(field.subwidgets)
    for name, group in on_a_whole_car():
        yield name, [next(boxes) for _ in group]
    if written := list(boxes):
        yield AS_WRITTEN, written
