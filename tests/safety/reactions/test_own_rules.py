"""Every rule of our own: a pair that fires it with its sentence whole, and the nearest pair that does not.

Pairs and effects are typed from the trade's list of what the chart is silent about; sentences are ours.
"""

import csv
from pathlib import Path

import pytest

from safety.reactions.meeting import meet
from safety.reactions.own_rules import own_rules
from safety.reactions.values import Substance
from tests.safety.reactions.products import of

SPEC = Path(__file__).with_name("own_rules.csv")
COLUMNS = "rule a b codes sentence near_a near_b because".split()  # noqa: SIM905


def spec() -> list[tuple[str, ...]]:
    """The specification, row by row."""
    lines = [line for line in SPEC.read_text("utf-8").splitlines() if not line.startswith("#")]
    return [tuple(row[column] for column in COLUMNS) for row in csv.DictReader(lines)]


def told(a: str, b: str) -> list[tuple[str, str, str]]:
    """Rule, codes and sentence of all that fires."""
    return [(pair.rule, " ".join(pair.codes), pair.says) for pair in meet(of(a), of(b))]


@pytest.mark.parametrize(COLUMNS, spec())
def test_a_rule_fires_with_its_sentence_and_its_nearest_pair_does_not(
    rule: str, a: str, b: str, codes: str, sentence: str, near_a: str, near_b: str, because: str
) -> None:
    assert (rule, codes, sentence) in told(a, b)
    assert sentence not in [says for _, _, says in told(near_a, near_b)], because


def test_every_row_of_the_table_has_its_pair_here() -> None:
    asked = {(rule, sentence) for rule, _, _, _, sentence, *_ in spec()}
    assert {(rule.id, rule.says) for rule in own_rules()} - asked == set()
    assert {rule.id for rule in own_rules()} >= {f"S{number}" for number in range(1, 20)}


@pytest.mark.parametrize(
    ("rule", "a", "b", "source", "mark"),
    [
        ("S1", "hypochlorite", "1", "house rule S1: CDC MMWR case reports", "S"),
        ("S6", "20", "10", "house rule S6: NIOSH Pocket Guide lists bases", "S"),
        ("S9", "15", "1", "house rule S9: the chart's cell 1-15; CDC MMWR 64(32), 2015", "S2"),
        ("S10", "10", "light-metal", "house rule S10: 40 CFR 264 appendix V; the chart's cell 10-22", "S"),
        ("S13", "peroxide", "19", "house rule S13: chemistry", "M"),
    ],
)  # fmt: skip
def test_each_rule_travels_with_its_basis_and_its_mark(
    rule: str, a: str, b: str, source: str, mark: str
) -> None:
    assert (source, mark) in [(pair.source, pair.mark) for pair in meet(of(a), of(b)) if pair.rule == rule]


def test_own_rules_speak_before_labels_and_labels_before_the_chart() -> None:
    found = [pair.rule for pair in meet(of("hypochlorite EUH031"), of("1"))]
    assert found == ["S1", "EUH031", "1-10", "1-104"]


def test_a_statement_counts_where_only_the_class_that_carries_it_was_typed() -> None:
    by_class = Substance("by class", hazards=("Ox. Liq. 2 H272", "no class at all"))
    assert [pair.rule for pair in meet(by_class, of("29"))] == ["H271"]
    assert meet(Substance("irritant", hazards=("Skin Irrit. 2 H315",)), of("29")) == ()


def test_what_a_product_holds_never_fires_against_itself() -> None:
    kept = of("3 30 104", "a peracetic cleaner")
    assert meet(kept, kept) == ()
    assert [pair.rule for pair in meet(of("3"), of("30 104"))] == ["S14", "3-104"]


@pytest.mark.parametrize(
    ("a", "b", "cites", "because"),
    [
        ("20", "10", "house rule S6 (thioglycolate and alkali)", "a rule of our own, and what it is about"),
        ("EUH031", "1", "label statement EUH031 (toxic gas with acids)", "what a label says"),
        (
            "13",
            "107",
            "chart, group 107 (reacts with water, so it goes with nothing)",
            "a column of the chart",
        ),
        ("10", "17", "chart, cell 10-17 (caustics with halogenated organics)", "a cell of the chart"),
    ],
)
def test_a_reason_names_its_rule_by_what_it_is_about(a: str, b: str, cites: str, because: str) -> None:
    assert cites in [pair.cites for pair in meet(of(a), of(b))], because


def test_no_rule_is_named_by_its_number_alone() -> None:
    assert [rule.id for rule in own_rules() if not rule.about] == []
