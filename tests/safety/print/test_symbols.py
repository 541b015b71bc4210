"""Diamonds, signs and codes on paper, looked at as pixels."""

import numpy as np
import pytest

from safety.print import pictograms, signs, symbols
from safety.print.fonts import printable
from safety.print.pen import Pen
from tests.safety.print.paper import codes, picture


def drawn(code: str) -> np.ndarray:
    pen = Pen(20, 20, code)
    pictograms.draw(pen, code, 0, 0, 20)
    return picture(pen.pdf())


@pytest.mark.parametrize("code", sorted(pictograms.NAMES))
def test_every_pictogram_has_a_red_frame_and_black_ink_inside(code: str) -> None:
    """GHS07 once came out blank: capitalised colour names were read as no colour."""
    pixels = drawn(code).astype(int)
    blue, green, red = pixels[..., 0], pixels[..., 1], pixels[..., 2]
    frame = ((red > 200) & (green < 60) & (blue < 60)).mean()
    black = ((red < 60) & (green < 60) & (blue < 60)).mean()
    assert 0.06 < frame < 0.2, "a diamond's red frame"
    assert 0.015 < black < 0.3, "its symbol"


def test_no_two_pictograms_are_the_same() -> None:
    pictures = {code: drawn(code).tobytes() for code in pictograms.NAMES}
    assert len(set(pictures.values())) == 9


def test_an_unknown_pictogram_is_refused() -> None:
    with pytest.raises(pictograms.UnknownPictogram, match="GHS10"):
        drawn("GHS10")


# Directive 92/58/EEC Annex II: blue at least 50 % of a mandatory sign, red at least 35 % of a prohibition,
# green and red at least 50 % of rescue and fire signs. A round sign fills π/4 of its box.
SHARES = [
    ("eyes", (0x00, 0x53, 0x87), 0.50 * 0.785),
    ("hands", (0x00, 0x53, 0x87), 0.50 * 0.785),
    ("breath", (0x00, 0x53, 0x87), 0.50 * 0.785),
    ("body", (0x00, 0x53, 0x87), 0.50 * 0.785),
    ("flame", (0x9B, 0x24, 0x23), 0.35 * 0.785),
    ("rescue", (0x23, 0x7F, 0x52), 0.50),
    ("extinguisher", (0x9B, 0x24, 0x23), 0.50),
]


@pytest.mark.parametrize(("sign", "colour", "least"), SHARES)
def test_signs_hold_the_share_of_colour_that_the_rules_ask(
    sign: str, colour: tuple[int, int, int], least: float
) -> None:
    pen = Pen(30, 30, sign)
    signs.draw(pen, sign, 0, 0, 30)
    pixels = picture(pen.pdf()).astype(int)
    near = np.abs(pixels[..., ::-1][..., -3:] - np.array(colour)).sum(axis=-1) < 40
    assert near.mean() >= least


def test_a_code_reads_back_at_the_smallest_size_that_we_print() -> None:
    pen = Pen(50, 25, "matrix")
    symbols.draw(pen, "BKTRVNXH", "matrix", 20, 8, 7.2)
    assert codes(pen.pdf()) == ["BKTRVNXH"]


def test_letters_that_the_face_lacks_are_written_another_way() -> None:
    assert printable("CO₂ → α-pinene ½ µm ≤ 5") == "CO2 to alpha-pinene ½ µm ≤ 5"
