"""The pairs that a shop really has, each with what is known to happen.

Source: the trade's table of pairs with the chart's cells, CDC MMWR, NIOSH Pocket Guide and 40 CFR 264
appendix V behind them, typed from it row by row.
"""

import pytest

from safety.reactions.meeting import meet
from safety.reactions.proposing import propose
from safety.reactions.values import Substance
from tests.safety.reactions.products import of


def proposed(name: str, *ingredients: str) -> Substance:
    """A product whose groups are those proposed for its ingredients."""
    found = propose("other", [{"name": each, "percent": 20} for each in ingredients])
    return Substance(name, found.groups)


HYPOCHLORITE = proposed("bleach", "sodium hypochlorite")
AMMONIUM_THIOGLYCOLATE = proposed("iron remover", "ammonium thioglycolate")
THIOGLYCOLATE = proposed("iron remover", "sodium thioglycolate")
HARDENER = proposed("hardener", "hexamethylene diisocyanate oligomers")
SILAZANE = proposed("coating", "polysilazane")


@pytest.mark.parametrize(
    ("a", "b", "least", "because"),
    [
        (HYPOCHLORITE, proposed("acid", "phosphoric acid"), {"GT", "H"}, "chlorine; cell 1-104"),
        (HYPOCHLORITE, proposed("acid", "citric acid"), {"GT", "H"}, "chlorine; cell 3-104"),
        (HYPOCHLORITE, proposed("salt", "ammonium bifluoride"), {"GT"}, "an acid salt as well"),
        (HYPOCHLORITE, proposed("ammonia", "ammonia"), {"GT", "H"}, "chloramines"),
        (HYPOCHLORITE, proposed("amine", "triethanolamine"), {"GT", "H", "F"}, "cell 7-104"),
        (THIOGLYCOLATE, proposed("acid", "sulfamic acid"), {"GT", "GF"}, "cell 1-20"),
        (THIOGLYCOLATE, proposed("peroxide", "hydrogen peroxide"), {"GT", "F", "H"}, "cell 20-104"),
        (AMMONIUM_THIOGLYCOLATE, proposed("alkali", "sodium hydroxide"), {"GT", "H"}, "ammonia"),
        (proposed("fluoride", "hydrofluoric acid"), proposed("acid", "oxalic acid"), {"GT"}, "cell 3-15"),
        (proposed("fluoride", "ammonium bifluoride"), of("glass"), {"GT"}, "glass is etched"),
        (proposed("alkali", "potassium hydroxide"), of("light-metal"), {"H", "GF"}, "10-23 is blank"),
        (proposed("alkali", "potassium hydroxide"), of("22"), {"H", "GF"}, "cell 10-22"),
        (HARDENER, of("106"), {"H", "G"}, "cell 18-106"),
        (HARDENER, proposed("alcohol", "isopropanol"), {"H", "P"}, "cell 4-18"),
        (HARDENER, proposed("amine", "triethanolamine"), {"H", "P"}, "cell 7-18"),
        (HARDENER, proposed("alkali", "sodium hydroxide"), {"H", "G", "P"}, "cell 10-18"),
        (SILAZANE, of("106"), {"GT", "GF", "G"}, "ammonia, hydrogen, pressure"),
        (SILAZANE, proposed("alcohol", "ethanol"), {"GT", "GF", "G"}, "the same"),
        (of("104"), proposed("solvent", "isopropanol"), {"H", "F"}, "cell 4-104"),
        (of("104"), proposed("solvent", "xylene"), {"H", "F"}, "cell 16-104"),
        (of("104"), proposed("solvent", "acetone"), {"H", "F"}, "cell 19-104"),
        (of("104"), proposed("solvent", "white spirit"), {"H", "F"}, "cell 29-104"),
        (proposed("acid", "phosphoric acid"), proposed("alkali", "sodium hydroxide"), {"H"}, "cell 1-10"),
        (proposed("acid", "citric acid"), proposed("alkali", "sodium hydroxide"), {"H"}, "cell 3-10"),
    ],
)
def test_a_pair_of_the_shop_gives_at_least_what_is_known(
    a: Substance, b: Substance, least: set[str], because: str
) -> None:
    assert {code for pair in meet(a, b) for code in pair.codes} >= least, because


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (THIOGLYCOLATE, of("106"), "an iron remover and water"),
        (proposed("solvent", "isopropanol"), proposed("solvent", "white spirit"), "two solvents"),
        (proposed("solvent", "isopropanol"), proposed("alkali", "sodium hydroxide"), "alcohol and alkali"),
        (THIOGLYCOLATE, proposed("solvent", "white spirit"), "iron remover and tar remover"),
    ],
)
def test_the_nearest_pairs_of_daily_work_find_nothing(a: Substance, b: Substance, because: str) -> None:
    assert meet(a, b) == (), because
