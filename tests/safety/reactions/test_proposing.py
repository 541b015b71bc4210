"""Which groups are proposed, by CAS number, by name, by label and by kind; what is not counted is named.

Source of the expected groups: the trade's own list of groups, typed from it line by line, unsourced.
"""

from collections.abc import Iterable

import pytest

from safety.hazards.tables import rows
from safety.reactions.groups import groups
from safety.reactions.proposing import propose, row_of


@pytest.mark.parametrize(
    ("name", "cas", "expected"),
    [
        ("hydrogen chloride", "7647-01-0", "1 hydrochloric"),
        ("phosphoric acid", "", "1"),
        ("sulfamic acid", "5329-14-6", "1"),
        ("Hydrofluoric acid 40 %", "", "1 15"),
        ("sulfuric acid", "", "1 2"),
        ("nitric acid", "7697-37-2", "1 2 nitric"),
        ("benzalkonium chloride", "", "quat"),
        ("Quaternary ammonium compounds, benzyl-C12-16", "", "quat"),
        ("didecyldimethylammonium chloride", "", "quat"),
        ("acetic acid", "64-19-7", "3"),
        ("Citric acid", "", "3"),
        ("oxalic acid", "144-62-7", "3"),
        ("lactic acid", "", "3"),
        ("glycolic acid", "", "3"),
        ("formic acid", "64-18-6", "3"),
        ("Ammonium bifluoride", "", "1 15 ammonium"),
        ("ammonium hydrogendifluoride", "1341-49-7", "1 15 ammonium"),
        ("ammonium fluoride", "", "15 ammonium"),
        ("thioglycolic acid", "68-11-1", "3 20"),
        ("sodium thioglycolate", "", "20"),
        ("ammonium thioglycolate", "", "20 ammonium"),
        ("ammonium chloride", "", "ammonium"),
        ("sodium hydroxide", "", "10"),
        ("disodium metasilicate", "6834-92-0", "10"),
        ("ammonia, aqueous", "1336-21-6", "10 ammonia"),
        ("ethanolamine", "141-43-5", "7"),
        ("isopropanol", "67-63-0", "4"),
        ("2-butoxyethanol", "", "4 14"),
        ("butyl acetate", "", "13"),
        ("acetone", "", "19"),
        ("butanone", "78-93-3", "19"),
        ("xylene, mixture of isomers", "", "16"),
        ("white spirit", "", "16 29"),
        ("Hydrocarbons, C9, aromatics", "", "16 29"),
        ("naphtha (petroleum), hydrotreated light", "64742-49-0", "29"),
        ("d-limonene", "", "28 29"),
        ("dichloromethane", "75-09-2", "17"),
        ("tetrachloroethylene", "", "17"),
        ("N-methylpyrrolidone", "872-50-4", "6"),
        ("hexamethylene diisocyanate homopolymer", "", "18"),
        ("sodium hypochlorite", "7681-52-9", "10 104 hypochlorite"),
        ("hydrogen peroxide", "", "104 peroxide"),
        ("sodium percarbonate", "", "104 carbonate peroxide"),
        ("ozone", "10028-15-6", "104"),
        ("sodium hydrogencarbonate", "144-55-8", "carbonate"),
        ("peracetic acid", "79-21-0", "3 30 104"),
        ("dibenzoyl peroxide", "94-36-0", "30"),
        ("methyl ethyl ketone peroxide", "", "30"),
        ("bisphenol A epoxy resin", "", "34"),
        ("methyl methacrylate", "", "13 103"),
        ("sodium sulfite", "", "105 sulfite"),
        ("sodium dithionite", "7775-14-6", "105 sulfite"),
        ("zinc powder", "7440-66-6", "22"),
        ("perhydropolysilazane", "", "107"),
        ("trimethylchlorosilane", "", "107"),
        ("methyltrimethoxysilane", "", "13 water-sensitive"),
    ],
)
def test_an_ingredient_is_proposed_by_cas_number_or_by_name(name: str, cas: str, expected: str) -> None:
    found = propose("other", [{"name": name, "cas": cas, "percent": 20}])
    assert found.groups == set(expected.split())


@pytest.mark.parametrize(
    ("name", "because"),
    [
        ("lauramine oxide", "an amine oxide is no amine"),
        ("polycarbonate resin", "a plastic"),
        ("alcohols, C9-11, ethoxylated", "a surfactant"),
        ("acrylates copolymer", "a polymer"),
        ("aluminium hydroxide", "no caustic"),
        ("sodium lauryl ether sulfate", "a surfactant"),
        ("sodium acetate", "a salt"),
    ],
)
def test_a_longer_word_takes_the_place_of_the_one_inside_it(name: str, because: str) -> None:
    found = propose("other", [{"name": name, "percent": 20}])
    assert found.groups == set(), because


def test_two_words_of_one_name_both_count() -> None:
    assert propose("other", [{"name": "ammonium sulfite", "percent": 20}]).groups == {
        "105", "ammonium", "sulfite",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("name", "percent", "expected", "because"),
    [
        ("sodium hydroxide", 0.9, set(), "it sets the pH and no more"),
        ("sodium hydroxide", 1, {"10"}, "from 1 %"),
        ("sodium hydroxide", [0.1, 1], {"10"}, "the upper end counts"),
        ("sodium hydroxide", None, {"10"}, "unknown is never counted as nothing"),
        ("ammonium bifluoride", 0.1, {"1", "15", "ammonium"}, "a fluoride counts in any amount"),
        ("hexane diisocyanate", 0.1, {"18"}, "so does an isocyanate"),
        ("sodium hypochlorite", 0.5, {"10", "104", "hypochlorite"}, "so does bleach"),
        ("isopropanol", 4.9, set(), "a solvent from 5 %"),
        ("isopropanol", 5, {"4"}, "a solvent from 5 %"),
    ],
)
def test_an_ingredient_counts_from_its_own_percentage(
    name: str, percent: object, expected: set[str], because: str
) -> None:
    assert propose("other", [{"name": name, "percent": percent}]).groups == expected, because


def test_every_ingredient_has_its_reason_and_what_is_not_counted_is_named() -> None:
    found = propose(
        "iron",
        [
            {"name": "ammonium thioglycolate", "cas": "5421-46-5", "percent": [10, 15]},
            {"name": "sodium hydroxide", "cas": "1310-73-2", "percent": 0.5},
            {"name": "violet dye", "cas": "", "percent": 0.1},
        ],
    )
    assert found.groups == {"20", "ammonium", "106"}
    assert found.because == (
        "ammonium thioglycolate: 20 + ammonium.",
        "sodium hydroxide: 0.5 %, counted from 1 %.",
        "violet dye: no row of the table knows it; say its groups yourself.",
        "Products of its kind are mostly water-based: 106.",
    )


@pytest.mark.parametrize(
    ("kind", "composition", "water_based", "watery", "because"),
    [
        ("shampoo", [], None, True, "its kind"),
        ("coating", [], None, False, "its kind"),
        ("coating", [{"name": "water", "cas": "7732-18-5", "percent": 60}], None, True, "water is listed"),
        ("coating", [{"name": "water", "cas": "7732-18-5", "percent": 9}], None, False, "a trace of water"),
        ("shampoo", [], False, False, "somebody said so"),
        ("coating", [], True, True, "somebody said so"),
    ],
)
def test_what_is_water_based_is_106(
    kind: str, composition: Iterable[dict[str, object]], water_based: bool | None, watery: bool, because: str
) -> None:
    assert ("106" in propose(kind, composition, water_based=water_based).groups) is watery, because


@pytest.mark.parametrize(
    ("kind", "expected", "reason"),
    [
        (
            "acid",
            {"1", "3", "106"},
            ("No composition: an acid cleaner is counted as mineral and organic acid."),
        ),
        (
            "iron",
            {"20", "ammonium", "106"},
            ("No composition: an iron remover is counted as ammonium thioglycolate."),
        ),
        ("coating", {"107"}, "No composition: a coating is counted as reacting with water."),
        (
            "wheel",
            {"106"},
            ("No composition: a wheel cleaner may be acid, alkaline or thioglycolate; type section 3 in."),
        ),
        ("towel", {"101"}, "A towel burns: 101."),
    ],
)
def test_a_kind_proposes_where_nobody_typed_a_composition_in(
    kind: str, expected: set[str], reason: str
) -> None:
    found = propose(kind, [])
    assert (found.groups, reason in found.because) == (expected, True)


@pytest.mark.parametrize(
    ("kind", "ingredient", "expected", "because"),
    [
        ("acid", "urea hydrochloride", {"1", "3", "106"}, "an acid whose acid no row knows is still one"),
        ("acid", "citric acid", {"3", "106"}, "its acid is known"),
        ("iron", "trade secret", {"20", "ammonium", "106"}, "an iron remover acts by something"),
        ("iron", "sodium thioglycolate", {"20", "106"}, "it is known by what"),
        ("cleaner", "trade secret", {"106"}, "a cleaner's name says nothing of its chemistry"),
    ],
)
def test_a_kind_named_after_its_chemistry_proposes_it_where_an_ingredient_is_unknown(
    kind: str, ingredient: str, expected: set[str], because: str
) -> None:
    listed = [{"name": ingredient, "percent": 20}, {"name": "violet dye", "percent": 0.1}]
    assert propose(kind, listed).groups == expected, because


def test_water_is_no_unknown_ingredient_of_an_acid() -> None:
    listed = [{"name": "water", "cas": "7732-18-5"}, {"name": "sodium hydroxide", "percent": 0.5}]
    assert propose("acid", listed).groups == {"106"}


def test_a_kind_is_silent_where_there_is_a_composition() -> None:
    assert propose("acid", [{"name": "citric acid", "percent": 5}]).groups == {"3", "106"}


@pytest.mark.parametrize(
    ("code", "expected"), [("EUH204", {"18"}), ("EUH205", {"34"}), ("EUH206", {"10", "104", "hypochlorite"})]
)
def test_a_label_proposes_what_its_statement_means(code: str, expected: set[str]) -> None:
    assert propose("other", [], [code]).groups == expected
    assert propose("other", [], ["EUH208"]).groups == set()


def test_every_group_of_the_table_is_one_of_ours_and_no_value_stands_twice() -> None:
    table = rows("reactivity_words")
    assert {each for row in table for each in row["groups"].split()} - set(groups()) == set()
    values = [(row["by"], row["value"]) for row in table]
    assert [each for each in values if values.count(each) > 1] == []
    assert row_of("violet dye", "") is None
