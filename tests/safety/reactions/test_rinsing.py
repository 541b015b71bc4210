"""What is rinsed off a car before anything else: common practice, no source."""

import pytest

from safety.reactions.rinsing import wants_rinse
from safety.reactions.values import Substance


@pytest.mark.parametrize(
    ("groups", "wants", "because"),
    [
        ({"1"}, True, "a mineral acid"),
        ({"3", "106"}, True, "an organic acid in water"),
        ({"15"}, True, "a fluoride"),
        ({"20", "106"}, True, "an iron remover's thioglycolate"),
        ({"hypochlorite", "106"}, True, "bleach"),
        ({"106"}, False, "soap and water"),
        ({"4"}, False, "an alcohol wipe flashes off"),
        (set(), False, "nothing is known of it"),
    ],
)
def test_acids_fluorides_iron_removers_and_bleach_want_a_rinse(
    groups: set[str], wants: bool, because: str
) -> None:
    assert wants_rinse(Substance("it", frozenset(groups))) is wants, because
