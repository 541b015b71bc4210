"""`reactions` at a prompt: every pair once, nothing found is never safe, a strange group is refused."""

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest
from django.core.management import call_command
from django.core.management.base import CommandError

from inventory.models import Profile
from tests import world as w

ROOT = Path(__file__).parents[2]


def reactions(*words: str) -> str:
    out = io.StringIO()
    call_command("reactions", *words, stdout=out)
    return out.getvalue()


def pairs(*words: str) -> list[dict[str, object]]:
    document = json.loads(reactions(*words, "--json"))
    assert list(document) == ["pairs"]
    found: list[dict[str, object]] = document["pairs"]
    return found


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["1", "bogus"], "“bogus”: a number from 1 to 34 or 101 to 107, or one of hypochlorite, "),
        (["35", "1"], "“35”: a number from 1 to 34 or 101 to 107, or one of hypochlorite, "),
        (["1"], "At least two different groups were expected, like “reactions 1 104”."),
        (["1", "--products", "XBRKKLNB"], "Either groups, like “reactions 1 104”, or --products with codes"),
        (["1", "1"], "At least two different groups were expected, like “reactions 1 104”."),
        ([], "Either groups, like “reactions 1 104”, or --products with codes was expected."),
    ],
)
def test_what_is_no_pair_of_groups_is_refused(words: list[str], sentence: str) -> None:
    with pytest.raises(CommandError) as ended:
        reactions(*words)
    assert (str(ended.value).startswith(sentence), ended.value.returncode) == (True, 2)


def test_a_strange_group_is_one_json_document_and_status_2() -> None:
    ended = subprocess.run(
        [sys.executable, "manage.py", "reactions", "1", "bogus", "--json"],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    assert ended.returncode == 2
    [line] = ended.stdout.splitlines()
    [(key, sentence)] = json.loads(line).items()
    assert (key, sentence.startswith("“bogus”: ")) == ("error", True)


def test_a_cell_of_the_chart_has_its_codes_source_mark_and_sentence() -> None:
    """EPA-600/2-80-076, figure 6, cell 1-104: H, GT."""
    assert pairs("1", "104") == [
        {
            "a": "1",
            "b": "104",
            "codes": ["GT", "H"],
            "source": "EPA-600/2-80-076, figure 6, cell 1-104",
            "mark": "S2",
            "says": (
                "The chart gives toxic gas and heat for mineral acids, non-oxidising with strong oxidisers."
            ),
        }
    ]


def test_a_tag_of_our_own_speaks_before_the_chart() -> None:
    [found] = pairs("hypochlorite", "3")
    assert (found["codes"], found["mark"]) == (["GT", "H"], "S, S2")
    assert found["source"] == (
        "house rule S1: CDC MMWR case reports; EPA-600/2-80-076, figure 6, cell 3-104; "
        "EPA-600/2-80-076, figure 6, cell 3-10"
    )


def test_water_reactive_goes_with_nothing_from_memory() -> None:
    [found] = pairs("29", "107")
    assert (found["codes"], found["source"], found["mark"]) == (["GT", "GF"], "chart, column 107", "M")


def test_a_pair_of_which_nothing_is_found_is_shown_and_not_called_safe() -> None:
    [found] = pairs("10", "23")
    assert (found["codes"], found["mark"]) == ([], None)
    assert found["says"] == (
        "Nothing found in the rules and the chart for 10 with 23; that is not safe, only not known."
    )


def test_every_unordered_pair_is_answered_once_in_the_order_given() -> None:
    found = pairs("104", "1", "quat", "1")
    assert [(each["a"], each["b"]) for each in found] == [("104", "1"), ("104", "quat"), ("1", "quat")]


def test_a_person_reads_names_sentences_and_marks_in_words() -> None:
    assert reactions("104", "13", "23").splitlines()[:3] == [
        "104 strong oxidisers with 13 esters: fire and heat.",
        "  An oxidiser on rags, paper, solvent or dust can set them on fire. "
        "The chart gives fire and heat for esters with strong oxidisers.",
        "  house rule S18: chemistry (from memory: check it); EPA-600/2-80-076, figure 6, cell 13-104 "
        "(read in a copy)",
    ]
    assert reactions("10", "23").splitlines()[-1] == (
        "What is not found is not safe. The product's own label and data sheet, local codes and licensed "
        "practice come first."
    )


@pytest.mark.django_db
def test_a_product_that_is_none_is_refused_by_its_code(shop: w.World) -> None:
    with pytest.raises(CommandError) as ended:
        reactions("--products", w.hollin(shop).code, "XBBBBBBB")
    assert str(ended.value) == (
        "--products: “XBBBBBBB” is no product's code. One such as XBRK KLNB was expected."
    )


@pytest.mark.django_db
def test_two_products_are_answered_by_their_names_and_confirmed_groups(shop: w.World) -> None:
    made = []
    for name, kind, *groups in (("Brack bleach", "cleaner", "hypochlorite"), ("Brack acid", "acid", "3")):
        made.append(w.product(shop, name, kind))
        Profile.objects.create(
            product=made[-1], groups=groups, groups_confirmed_on=w.NOON.date(), groups_confirmed_by="Ines"
        )

    [pair] = pairs("--products", *(each.code for each in made))

    assert (pair["a"], pair["b"]) == ("Brack bleach", "Brack acid")
    assert "GT" in pair["codes"]
    assert "chlorine" in pair["says"]
