"""Our own codes: a type letter, six letters, a check letter.

The 17 letters sit on the same key in QWERTY, QWERTZ and AZERTY and spell next to nothing. 17 is prime, so
with weights that all differ and are never 0 the check letter catches every single wrong letter and every
swap of two letters, neighbours or not.
"""

import re
import secrets
from collections.abc import Callable, Sequence

LETTERS = "BCDEFGHJKLNPRSTVX"
TYPES = {
    "B": "container",
    "P": "place",
    "H": "person",
    "J": "job",
    "C": "command",
    "L": "lot",
    "X": "product",
    "S": "step",
    "T": "station",
    "V": "vehicle",
    "D": "order",
    "R": "reading",
}
LENGTH = 8
_WEIGHTS = (2, 3, 4, 6, 5, 8, 7)  # the check letter's own weight is 1
_ALIKE = re.compile(rf"[{LETTERS}]{{{LENGTH}}}")

Chooser = Callable[[Sequence[str]], str]


class CodeError(ValueError):
    """A code or a date that cannot be used; its text is a sentence that names the way out."""


def check_letter(seven: str) -> str:
    """Return the letter that makes the weighted sum of all eight divisible by 17."""
    total = sum(weight * LETTERS.index(letter) for weight, letter in zip(_WEIGHTS, seven, strict=True))
    return LETTERS[-total % len(LETTERS)]


def new_code(letter: str, choose: Chooser = secrets.choice) -> str:
    """Return a fresh code of a type; the caller keeps it unique. Raises CodeError for an unknown type."""
    if letter not in TYPES:
        raise CodeError(f"“{letter}” is no type of code. The types are {', '.join(TYPES)}.")
    seven = letter + "".join(choose(LETTERS) for _ in range(6))
    return seven + check_letter(seven)


def looks_own(text: str) -> bool:
    """Whether `text` has the shape of our codes, right or wrong: eight of our letters."""
    return bool(_ALIKE.fullmatch(squeezed(text)))


def tidy(text: str) -> str | None:
    """Return the eight capital letters if `text` is one of our codes in any case and grouping, else None."""
    code = squeezed(text)
    right = _ALIKE.fullmatch(code) and code[0] in TYPES and check_letter(code[:-1]) == code[-1]
    return code if right else None


def pair(code: str) -> str:
    """Return a code as it is printed: BKTR VNXH."""
    return f"{code[:4]} {code[4:]}"


def letter_of(code: str) -> str:
    """Return the type letter of a tidy code."""
    return code[0]


def squeezed(text: str) -> str:
    """Return `text` in capitals without spaces and hyphens."""
    return re.sub(r"[\s-]", "", text).upper()
