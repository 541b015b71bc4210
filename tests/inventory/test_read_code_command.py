"""`read_code`: what a scan is, on the command line."""

import io
import json
from typing import Any

from django.core.management import call_command


def read_code(*words: str) -> Any:
    out = io.StringIO()
    call_command("read_code", *words, stdout=out)
    return out.getvalue()


def test_a_code_that_cannot_be_read_is_an_answer() -> None:
    found = json.loads(read_code("hello", "--json"))
    assert (found["readings"], found["asks"]) == ([], [])
    assert "Nothing that is read here begins at “hello”" in found["errors"][0]


def test_a_makers_symbol_is_one_json_document() -> None:
    assert json.loads(read_code("]d2010629104150021310AB^]17270300", "--json")) == {
        "readings": [
            {
                "kind": "lot", "code": None, "gtin": "06291041500213", "lot": "AB",
                "expires_on": "2027-03-31", "made_on": None, "best_before_on": None,
                "serial": None, "count": None,
                "net_weight_kg": None, "net_volume_l": None,
            }
        ],
        "asks": [],
        "errors": [],
    }  # fmt: skip


def test_a_person_reads_what_it_is_and_what_is_asked() -> None:
    assert read_code("bktrvnxh") == "container: BKTR VNXH\n"
    assert read_code("2012345000001") == (
        "product: gtin 02012345000001\n"
        "Asked: 02012345000001 is a number for one supplier's own use, and another may use it too. "
        "Whose goods are these?\n"
    )
