"""In one cabinet, shelf or tray; in one bay: the reaction rules first, the transport table second."""

import pytest

from safety.reactions.bay import all_in_one_bay, in_one_bay
from safety.reactions.shelf import in_one_place
from safety.reactions.values import Substance
from tests.safety.reactions.products import (
    ALKALINE,
    BIFLUORIDE,
    BLEACH,
    CITRIC,
    COATING,
    HARDENER,
    IRON,
    OTHER_COATING,
    PEROXIDE,
    RIM_ACID,
    SHAMPOO,
    TAR,
    TOWELS,
    WATER,
    WIPE,
    of,
)


@pytest.mark.parametrize(
    ("a", "b", "sentence"),
    [
        (
            BLEACH,
            CITRIC,
            (
                "Brightwell mould bleach and Sourdew water spot remover never stand in one cabinet, on "
                "one shelf or tray: bleach beside acid. Hypochlorite with acid gives off chlorine, also "
                "one after the other on the same floor or drain."
            ),
        ),
        (
            BIFLUORIDE,
            CITRIC,
            (
                "Kerbline rim white and Sourdew water spot remover never stand in one cabinet, on one "
                "shelf or tray: a fluoride beside acid. Fluoride with acid gives off hydrogen fluoride: "
                "burns with delayed pain."
            ),
        ),
        (
            PEROXIDE,
            WIPE,
            (
                "Clearday panel wipe and Oxalis upholstery brightener never stand in one cabinet, on one "
                "shelf or tray: an oxidiser beside something flammable. An oxidiser on rags, paper, "
                "solvent or dust can set them on fire."
            ),
        ),
        (
            COATING,
            SHAMPOO,
            (
                "Plainday shampoo and Tidewall coating never stand in one cabinet, on one shelf or tray: "
                "something that reacts with water beside something water-based. Silazane, alkoxysilane "
                "or chlorosilane with water, alcohol, acid or base gives off flammable and toxic gas and "
                "builds pressure; the bottle and a wet towel are vessels."
            ),
        ),
        (
            of("H260", "sodium"),
            WATER,
            (
                "sodium and water never stand in one cabinet, on one shelf or tray: something that "
                "reacts with water beside something water-based. One of the labels says: in contact with "
                "water releases flammable gases which may ignite by themselves (H260)."
            ),
        ),
    ],
)
def test_four_neighbours_are_stopped(a: Substance, b: Substance, sentence: str) -> None:
    found = in_one_place(a, b)
    assert found is not None
    assert (found.code, found.grade, found.says) == ("reaction.place", "stop", sentence)
    assert found.do == "Move one of them to another cabinet before anything else."


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (BLEACH, IRON, "bleach beside what is no acid: toxic gas"),
        (of("15"), of("glass"), "a fluoride beside what is no acid"),
        (PEROXIDE, TOWELS, "an oxidiser beside rags, which carry no flammable label"),
        (COATING, WIPE, "a coating beside alcohol without water"),
        (IRON, CITRIC, "toxic gas is possible"),
        (HARDENER, WIPE, "polymerisation"),
        (of("17"), of("light-metal"), "fire, by the chart; the explosion needs a vessel"),
        (of("peroxide"), of("19 H319"), "explosion; its label says that it does not burn"),
    ],
)
def test_the_nearest_neighbours_of_these_and_whatever_harms_ask(
    a: Substance, b: Substance, because: str
) -> None:
    found = in_one_place(a, b)
    assert found is not None
    assert (found.code, found.grade) == ("reaction.place", "ask"), because
    assert found.do == "Stand them apart, each in a tray of its own, so that leaks cannot meet."


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (RIM_ACID, ALKALINE, "heat alone"),
        (of("17"), of("10"), "flammable gas alone"),
        (of("carbonate"), CITRIC, "carbon dioxide only where the contents mix"),
        (BLEACH, PEROXIDE, "oxygen only where the contents mix"),
        (WIPE, TAR, "two solvents"),
        (BLEACH, BLEACH, "two bottles of one product"),
    ],
)
def test_heat_and_what_needs_a_vessel_do_not_speak_on_a_shelf(
    a: Substance, b: Substance, because: str
) -> None:
    assert in_one_place(a, b) is None, because


def test_two_coatings_side_by_side_are_a_note_and_one_beside_naphtha_asks() -> None:
    pairs = [in_one_place(COATING, OTHER_COATING), in_one_place(COATING, TAR)]
    assert [found.grade for found in pairs if found] == ["tell", "ask"]


def test_an_acid_with_a_flammable_label_beside_an_oxidiser_is_judged_by_its_label_not_its_groups() -> None:
    harmless = of("29 106 H319", "a polish with naphtha")
    flammable = of("29 106 H226", "a wax with naphtha")
    grades = [found.grade for each in (harmless, flammable) if (found := in_one_place(each, of("104")))]
    assert grades == ["ask", "stop"]


def test_bleach_and_acid_both_in_use_in_a_bay_stop() -> None:
    found = in_one_bay(BLEACH, CITRIC, both_in_use=True)
    assert found is not None
    assert (found.code, found.grade) == ("reaction.bay", "stop")
    assert found.says == (
        "Brightwell mould bleach and Sourdew water spot remover are both in use in one bay: "
        "bleach and acid never "
        "are. Hypochlorite with acid gives off chlorine, also one after the other on the same floor or drain."
    )
    assert found.do == ("Finish one, rinse car and floor to a clear drain, air the bay, then take the other.")


@pytest.mark.parametrize(
    ("a", "b", "in_use", "because"),
    [
        (BLEACH, CITRIC, False, "closed bottles"),
        (IRON, CITRIC, False, "closed bottles of what a rinse must part"),
        (BLEACH, of("quat 106"), False, "the same of bleach and quaternary ammonium"),
        (BLEACH, WIPE, True, "what may burn, and needs no rinse between"),
        (COATING, SHAMPOO, False, "closed bottles"),
    ],
)
def test_bottles_that_merely_share_a_bay_are_told(
    a: Substance, b: Substance, in_use: bool, because: str
) -> None:
    found = in_one_bay(a, b, in_use)
    assert found is not None
    assert (found.code, found.grade) == ("reaction.bay_closed", "tell"), because


def test_an_acid_and_an_iron_remover_both_in_use_in_a_bay_ask_for_one_after_the_other() -> None:
    found = in_one_bay(IRON, CITRIC, both_in_use=True)
    assert found is not None
    assert (found.code, found.grade) == ("reaction.bay", "ask")
    assert found.says == (
        "Rustfall iron remover and Sourdew water spot remover are both in use in one bay, and a rinse must "
        "part them. Thioglycolate or mercaptan with acid stinks, and toxic sulfur gas is possible; the "
        "evidence is mixed."
    )
    assert found.do == "Finish one, rinse car and floor to a clear drain, air the bay, then take the other."


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (BLEACH, IRON, "bleach beside what is no acid"),
        (BLEACH, of("ammonia 106"), "chloramines"),
        (PEROXIDE, IRON, "peroxide and thioglycolate"),
        (RIM_ACID, of("sulfite 106"), "sulfur dioxide"),
        (RIM_ACID, of("EUH032 106"), "its label says so"),
        (of("15"), IRON, "a fluoride is mostly acid, though no rule of the two says so"),
    ],
)
def test_whatever_a_rinse_must_part_on_a_car_asks_where_both_are_in_use_in_a_bay(
    a: Substance, b: Substance, because: str
) -> None:
    found = in_one_bay(a, b, both_in_use=True)
    assert found is not None, because
    assert (found.code, found.grade) == ("reaction.bay", "ask"), because


@pytest.mark.parametrize(
    ("a", "b", "because"),
    [
        (ALKALINE, IRON, "an alkaline wash beside an iron remover that holds an ammonium salt"),
        (SHAMPOO, BLEACH, "a wash beside bleach"),
        (PEROXIDE, of("7 106"), "peroxide makes no chloramines"),
    ],
)
def test_ordinary_work_side_by_side_in_a_bay_never_asks(a: Substance, b: Substance, because: str) -> None:
    found = in_one_bay(a, b, both_in_use=True)
    assert found is None or found.grade == "tell", because


def test_heat_alone_is_not_told_in_a_bay() -> None:
    assert in_one_bay(RIM_ACID, ALKALINE, both_in_use=True) is None


def test_a_full_bay_says_its_stop_and_one_note_for_all_the_rest() -> None:
    found = all_in_one_bay(closed=[COATING, SHAMPOO, WIPE], in_use=[BLEACH, CITRIC])
    assert [(each.code, each.grade) for each in found] == [
        ("reaction.bay", "stop"),
        ("reaction.bay_closed", "tell"),
    ]
    assert found[1].says.startswith("Brightwell mould bleach and Tidewall coating share a bay. ")
    assert found[1].because.endswith(
        "Also apart: Brightwell mould bleach and Clearday panel wipe; Sourdew water spot remover and "
        "Tidewall coating; Plainday shampoo and Tidewall coating; and 2 more pairs."
    )
    assert found[1].about == (
        "Brightwell mould bleach",
        "Clearday panel wipe",
        "Plainday shampoo",
        "Sourdew water spot remover",
        "Tidewall coating",
    )


def test_a_full_bay_says_its_stop_before_what_asks() -> None:
    found = all_in_one_bay(closed=[], in_use=[IRON, CITRIC, BLEACH])
    assert [(each.code, each.grade) for each in found] == [
        ("reaction.bay", "stop"),
        ("reaction.bay", "ask"),
        ("reaction.bay", "ask"),
    ]


def test_a_bay_of_what_does_not_meet_says_nothing() -> None:
    assert all_in_one_bay(closed=[SHAMPOO, WIPE], in_use=[ALKALINE]) == ()
