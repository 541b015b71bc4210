"""The poster's product sheets: each product by name, diamonds, word, full texts, what to wear."""

from __future__ import annotations

from dataclasses import dataclass, replace

from safety.print import pictograms
from safety.print.blocks import GUTTER, Block, Text, Type, divide, draw_stack, fits, stack_height
from safety.print.fonts import BOLD, width_mm
from safety.print.pen import Pen
from safety.print.values import PosterProduct
from safety.print.words import say


@dataclass(frozen=True)
class ProductRow:
    """One product: diamonds and word on the left; the name at the far size and the texts beside them.

    over: the name stands over the diamonds, as its words are wider than the column beside them.
    """

    name: Text
    pictograms: tuple[str, ...]
    word: tuple[Text, ...]
    texts: tuple[Text, ...]
    left: float
    box: float
    width: float
    over: bool = False

    def symbols(self) -> float:
        """Return the height of diamonds and word."""
        return (self.box if self.pictograms else 0) + stack_height(self.word)

    def height(self) -> float:
        """Return the height."""
        name, texts = self.name.height(), stack_height(self.texts)
        return 4 + (name + max(self.symbols(), texts) if self.over else max(self.symbols(), name + texts))

    def draw(self, pen: Pen, x: float, top: float) -> None:
        """Draw it with a line below."""
        name = self.name.height()
        self.name.draw(pen, x if self.over else x + self.left, top)
        below = top + 1 + (name if self.over else 0)
        for place, code in enumerate(self.pictograms):
            pictograms.draw(pen, code, x + place * self.box, below, self.box)
        draw_stack(pen, x, below + (self.box if self.pictograms else 0), self.word)
        draw_stack(pen, x + self.left, top + 1 + name, self.texts)
        pen.rule(x, top + self.height(), x + self.width)

    def split(self, room: float) -> tuple[Block, Block] | None:
        """Return what fits and the rest under the same name; diamonds stand on both."""
        name = self.name.height()
        if room < 4 + (name + self.symbols() if self.over else max(name, self.symbols())):
            return None
        first, rest = divide(self.texts, room - name - 4)
        if not first or not rest:
            return None
        return replace(self, texts=tuple(first)), replace(self, texts=tuple(rest))


def product_row(product: PosterProduct, type_: Type, width: float, left: float, language: str) -> ProductRow:
    """Return a product's row whose texts start at `left`."""
    texts = [Text(text, type_.near, width - left) for text in [" ".join(product.statements)] if text]
    if product.notice:
        texts.insert(0, Text(product.notice, type_.near, width - left, bold=True))
    if product.wear:
        worn = say("Wear: {what}.", language, what=", ".join(product.wear))
        texts.append(Text(worn, type_.near, width - left, bold=True))
    word = (Text(product.signal_word, type_.near, left or width, True),) if product.signal_word else ()
    over = not fits(product.name, type_.far, width - left, bold=True)
    return ProductRow(
        name=Text(product.name, type_.far, width if over else width - left, bold=True),
        pictograms=product.pictograms,
        word=word,
        texts=tuple(texts),
        left=left,
        box=type_.near_symbol,
        width=width,
        over=over,
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
