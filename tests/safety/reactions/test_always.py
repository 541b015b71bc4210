"""What holds for any two substances, whatever they are."""

from hypothesis import given
from hypothesis import strategies as st

from safety.reactions.bay import in_one_bay
from safety.reactions.car import on_one_car
from safety.reactions.groups import groups
from safety.reactions.meeting import meet
from safety.reactions.shelf import in_one_place
from safety.reactions.values import REFUSED, Pair, Substance
from safety.reactions.vessel import in_one_vessel

STATEMENTS = ("EUH014 EUH029 EUH031 EUH032 H225 H226 H242 H260 H261 H271 H272 H314 H319").split()  # noqa: SIM905
HAZARDS = ["Flam. Liq. 2 H225", "Skin Corr. 1B H314", "Ox. Liq. 2 H272", "Acute Tox. 1 H330", "nonsense"]
GROUPS = st.frozensets(st.sampled_from(sorted(groups())), max_size=5)


def substances(name: str) -> st.SearchStrategy[Substance]:
    """Substances of one name, so that two of different names are never one product."""
    return st.builds(
        Substance,
        name=st.just(name),
        groups=GROUPS,
        statements=st.frozensets(st.sampled_from(STATEMENTS), max_size=3),
        water_based=st.booleans(),
        hazards=st.lists(st.sampled_from(HAZARDS), max_size=2).map(tuple),
        liquid=st.booleans(),
    )


def found(a: Substance, b: Substance) -> set[tuple[str, tuple[str, ...], str]]:
    """What a meeting says, without the order of the two; column 107 names what it met, so without that."""
    return {_without_names(pair) for pair in meet(a, b)}


def _without_names(pair: Pair) -> tuple[str, tuple[str, ...], str]:
    return pair.rule, pair.codes, "" if pair.rule == "107" else pair.says


@given(substances("a"), substances("b"))
def test_the_order_of_two_never_matters(a: Substance, b: Substance) -> None:
    assert found(a, b) == found(b, a)
    for judge in (in_one_vessel, in_one_place, in_one_bay, on_one_car):
        assert judge(a, b) == judge(b, a)


@given(substances("a"), substances("b"), GROUPS)
def test_another_group_never_takes_a_pair_away(a: Substance, b: Substance, more: frozenset[str]) -> None:
    richer = Substance(a.name, a.groups | more, a.statements, a.water_based, a.hazards, a.liquid)
    assert found(a, b) <= found(richer, b)


@given(substances("a"), substances("b"))
def test_a_vessel_is_refused_exactly_where_a_pair_harms(a: Substance, b: Substance) -> None:
    harms = any(REFUSED & set(pair.codes) for pair in meet(a, b))
    answer = in_one_vessel(a, b)
    assert (answer is not None and answer.grade == "stop") is harms
    assert in_one_vessel(a, b, kit_parts=True) is None


@given(substances("a"))
def test_a_product_never_meets_itself(a: Substance) -> None:
    assert [judge(a, a) for judge in (in_one_vessel, in_one_place, in_one_bay, on_one_car)] == [None] * 4


@given(substances("a"), substances("b"))
def test_a_signed_rinse_ends_every_stop_on_a_car(a: Substance, b: Substance) -> None:
    answer = on_one_car(a, b, rinsed=True)
    assert answer is None or answer.grade == "tell"


def test_a_label_alone_that_says_flammable_is_kept_from_an_oxidiser() -> None:
    wipe = Substance("Wipe", hazards=("Flam. Liq. 2 H225",))
    found = in_one_place(Substance("Bleach", frozenset({"104"})), wipe)

    assert found is not None
    assert found.grade == "stop"
    assert found.says == (
        "Bleach and Wipe never stand in one cabinet, on one shelf or tray: an oxidiser beside something "
        "flammable. An oxidiser beside something flammable may burn or give off harmful gas if both leak."
    )
