"""What a telephone dials of a number as the owner wrote it."""

import pytest

from inventory.templatetags.look import dialled


@pytest.mark.parametrize(
    ("written", "dials", "because"),
    [
        ("0800 555 0147 (invented)", "08005550147", "a note behind the number is not dialled"),
        ("ask the owner", "", "words are no number"),
        ("112", "112", "a short number is itself"),
        ("+44 20 7946-0999", "+442079460999", "spaces and dashes are for the eye"),
        ("+44 (0)20 7946 0999", "+442079460999", "a zero in brackets is not dialled from abroad"),
        ("(020) 7946 0999", "02079460999", "without a country the zero is dialled"),
    ],
)
def test_a_link_dials_the_number_alone(written: str, dials: str, because: str) -> None:
    assert dialled(written) == dials, because
