"""`amount`: how an amount is read, on the command line."""

import io
import json
from typing import Any

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError


def amount(*words: str) -> Any:
    out = io.StringIO()
    call_command("amount", *words, "--json", stdout=out)
    return json.loads(out.getvalue())


@pytest.mark.parametrize(
    ("words", "document"),
    [
        (["0.5 l"], {"base": 500_000, "unit": "µl", "says": "0.5 l"}),
        (["500 ml"], {"base": 500_000, "unit": "µl", "says": "0.5 l"}),
        (["16 fl oz", "--system", "us"], {"base": 473_176, "unit": "µl", "says": "16 fl oz (US) = 473.2 ml"}),
        (["3 oz", "--dimension", "mass"], {"base": 85_049, "unit": "mg", "says": "3 oz = 85.05 g"}),
        (["1,000 ml", "--decimal", "comma"], {"base": 1_000, "unit": "µl", "says": "1 ml"}),
        (["12 pcs"], {"base": 12, "unit": "pieces", "says": "12 pieces"}),
        (["120 um"], {"base": 120, "unit": "µm", "says": "120 µm"}),
    ],
)
def test_an_amount_is_one_json_document(words: list[str], document: dict[str, object]) -> None:
    assert amount(*words) == document


def test_ounces_without_a_dimension_are_refused_with_both_readings() -> None:
    out = io.StringIO()
    with pytest.raises(CommandError) as refusal:
        call_command("amount", "3 oz", "--json", stdout=out)
    assert refusal.value.returncode == 2
    error = json.loads(out.getvalue())["error"]
    assert "85.05 g by weight" in error
    assert "88.72 ml (US)" in error


def test_a_person_reads_a_sentence() -> None:
    out = io.StringIO()
    call_command("amount", "1 gal", "--system", "imperial", stdout=out)
    assert out.getvalue() == "1 gal (imperial) = 4.55 l (4546090 µl)\n"
