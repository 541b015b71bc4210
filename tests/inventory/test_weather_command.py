"""`weather --product`: a product's own window judges; without one the trade's, and the answer says so."""

import json
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from inventory.models import Profile
from tests import world as w

pytestmark = pytest.mark.django_db


def weather(*words: str) -> str:
    """Return what the command prints of 26 °C and 50 %."""
    out = StringIO()
    call_command("weather", "--air", "26", "--humidity", "50", "--panel", "25", *words, stdout=out)
    return out.getvalue()


@pytest.mark.parametrize("text", ["nonsense", "XXXXXXXX"])
def test_what_is_no_product_is_refused(shop: w.World, text: str) -> None:
    with pytest.raises(CommandError) as refused:
        weather("--product", text)
    assert refused.value.returncode == 2
    assert str(refused.value) == (
        f"--product: “{text}” is no product's code. Its code stands on the product's page."
    )


def test_a_product_s_own_window_asks_where_the_trade_s_is_content(shop: w.World) -> None:
    coating = w.tidewall(shop)
    Profile.objects.create(product=coating, air_from_c=18, air_to_c=24, source="Tidewall's sheet, revision 3")
    spoken = weather("--product", coating.code.lower()).splitlines()
    assert [line for line in spoken if line.startswith("ASK")] == [
        "ASK: The air is at 26 °C. Wait until the air has cooled to at most 24 °C.",
        "ASK: The panel is at 25 °C. Wait until the panel has cooled to at most 24 °C.",
    ]
    assert spoken[-1] == "Window: Tidewall's sheet, revision 3"
    assert [one["grade"] for one in json.loads(weather("--product", coating.code, "--json"))["findings"]] == [
        "ask", "ask"
    ]  # fmt: skip


def test_a_product_without_a_window_has_the_trade_s_and_the_answer_says_so(shop: w.World) -> None:
    coating = w.tidewall(shop)
    spoken = weather("--product", coating.code).splitlines()
    code = f"{coating.code[:4]} {coating.code[4:]}"
    assert spoken == [
        "Dew point 14.8 °C",
        "Panel 10.2 K above the dew point",
        f"Window: the trade's own; Tidewall coating ({code}) has none",
    ]
    assert weather().splitlines() == spoken[:2]
