"""The poster's product sheets: each product by name, diamonds, word, full texts, what to wear."""

from __future__ import annotations

from dataclasses import dataclass

from safety.print import pictograms
from safety.print.blocks import GUTTER, Block, Text, Type, divide, draw_stack, stack_height
from safety.print.fonts import BOLD, width_mm
from safety.print.pen import Pen
from safety.print.values import PosterProduct
from safety.print.words import say


@dataclass(frozen=True)
class ProductRow:
    """One product: name at the far size; below it diamonds and word on the left, the texts on the right."""

    name: Text
    pictograms: tuple[str, ...]
    word: tuple[Text, ...]
    texts: tuple[Text, ...]
    left: float
    box: float
    width: float

    def symbols(self) -> float:
        """Return the height of diamonds and word."""
        return (self.box if self.pictograms else 0) + stack_height(self.word)

    def height(self) -> float:
        """Return the height."""
        return self.name.height() + max(self.symbols(), stack_height(self.texts)) + 4

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it with a line below."""
        self.name.draw(pen, x, top)
        below = top + self.name.height() + 1
        for place, code in enumerate(self.pictograms):
            pictograms.draw(pen, code, x + place * self.box, below, self.box)
        draw_stack(pen, x, below + (self.box if self.pictograms else 0), self.word)
        draw_stack(pen, x + self.left, below, self.texts)
        pen.rule(x, top + self.height(), x + self.width)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return what fits and the rest under the same name; diamonds stand on both."""
        least = self.name.height() + self.symbols() + 4
        if room < least:
            return None
        first, rest = divide(self.texts, room - self.name.height() - 4)
        if not first or not rest:
            return None
        return self.with_texts(first), self.with_texts(rest)

    def with_texts(self, texts: list[Text]) -> ProductRow:
        """Return the row with other texts."""
        return ProductRow(
            self.name, self.pictograms, self.word, tuple(texts), self.left, self.box, self.width
        )


def product_row(product: PosterProduct, type_: Type, width: float, left: float, language: str) -> ProductRow:
    """Return a product's row whose texts start at `left`."""
    texts = [Text(text, type_.near, width - left) for text in [" ".join(product.statements)] if text]
    if product.notice:
        texts.insert(0, Text(product.notice, type_.near, width - left, bold=True))
    if product.wear:
        worn = say("Wear: {what}.", language, what=", ".join(product.wear))
        texts.append(Text(worn, type_.near, width - left, bold=True))
    word = (Text(product.signal_word, type_.near, left or width, True),) if product.signal_word else ()
    return ProductRow(
        name=Text(product.name, type_.far, width, bold=True),
        pictograms=product.pictograms,
        word=word,
        texts=tuple(texts),
        left=left,
        box=type_.near_symbol,
        width=width,
    )


def product_blocks(
    products: tuple[PosterProduct, ...], type_: Type, width: float, language: str
) -> list[Block]:
    """Return a block a product, all texts in one column beside the widest diamonds or word."""
    # Some classes have a word and no diamond: the column holds the wider of the two.
    diamonds = max((len(one.pictograms) for one in products), default=0) * type_.near_symbol
    words = [one.signal_word for one in products if one.signal_word]
    widest = max((width_mm(word, BOLD, type_.near) for word in words), default=0.0)
    left = max(diamonds, widest) + GUTTER if diamonds or words else 0.0
    return [product_row(one, type_, width, left, language) for one in products]
