"""What holds of any steps on any car: no order of panels, no clean act and no longer cure mends anything."""

from collections.abc import Iterable
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.models.product import Kind
from inventory.trade.kinds import families
from inventory.trade.play import Act, Surface, play
from inventory.trade.surfaces import materials
from tests.inventory.trade.played import HOUR_0, MONDAY, NAMES, ZONE, act

KINDS = [kind for kind in Kind.values if kind in NAMES]
CLEAN = ["tape", "pad", "towel", "interior"]

HOURS = st.integers(0, 14 * 24)
ACTS = st.builds(
    lambda kind, family, at, strips, spot: act(
        kind,
        at,
        family=families(kind)[family % len(families(kind))],
        strips_coating=strips,
        spot=spot,
        touches=frozenset({"paint", "film", "metal"}) if family % 2 else None,
    ),
    st.sampled_from(KINDS),
    st.integers(0, 3),
    HOURS,
    st.booleans(),
    st.sampled_from([False, False, False, True]),
)
SURFACES = st.builds(
    lambda key, name, days, baked, wax, coated: Surface(
        name,
        key,
        since_on=None if days is None else MONDAY - timedelta(days=days),
        baked=baked,
        arrives={"wax": None} if wax else {},
        coating="" if coated is None else "Ostwall coating",
        coated_at=None if coated is None else HOUR_0 - timedelta(hours=coated),
    ),
    st.sampled_from(list(materials())),
    st.sampled_from(["bonnet", "roof", "boot", "wing", "door", "sill"]),
    st.none() | st.integers(0, 100),
    st.sampled_from([None, True, False]),
    st.booleans(),
    st.none() | st.integers(0, 400),
)
CARS = st.lists(SURFACES, min_size=1, max_size=5)
JOBS = st.lists(ACTS, max_size=8)
WAITS = ("keep_dry_h", "cure_h", "wash_hold_d", "refinish_wait_d", "film_wait_d")


def stopped(car: Iterable[Surface], acts: Iterable[Act], *codes: str) -> set[tuple[str, str]]:
    """Steps and panels that are not simply right, in codes that begin so."""
    found = play(car, acts, ZONE)
    return {
        (one.step, name)
        for one in found
        if one.grade in ("stop", "ask") and one.code.startswith(codes)
        for name in one.surfaces
    }


def test_two_panels_that_each_refuse_a_step_are_told_in_one_order_whichever_comes_first() -> None:
    coated = Surface("bonnet", "clear_coat", coating="Ostwall coating", coated_at=HOUR_0)
    car = [Surface("roof", "matte"), coated]
    told = [one.code for one in play(car, [act("abrasive", 0)], ZONE)]
    assert told == ["residue.coating", "surface.never"]
    assert [one.code for one in play(car[::-1], [act("abrasive", 0)], ZONE)] == told


@given(car=CARS, acts=JOBS, turned=st.randoms(use_true_random=False))
@settings(max_examples=100, deadline=None)
def test_the_order_of_panels_never_matters(car: list[Surface], acts: list[Act], turned: object) -> None:
    other = list(car)
    turned.shuffle(other)  # type: ignore[attr-defined]
    assert play(other, acts, ZONE) == play(car, acts, ZONE)


@given(car=CARS, acts=JOBS, clean=st.sampled_from(CLEAN), at=HOURS, place=st.integers(0, 8))
@settings(max_examples=100, deadline=None)
def test_a_clean_unrelated_act_never_removes_a_clash_nor_adds_one(
    car: list[Surface], acts: list[Act], clean: str, at: int, place: int
) -> None:
    outside = [one for one in car if materials()[one.key].area != "interior"]
    more = [*acts[:place], act(clean, at), *acts[place:]]
    assert play(outside, more, ZONE) == play(outside, acts, ZONE)


@given(
    car=CARS,
    before=JOBS,
    later=JOBS,
    wait=st.sampled_from(WAITS),
    short=st.integers(0, 400),
    more=st.integers(0, 400),
)
@settings(max_examples=150, deadline=None)
def test_a_longer_wait_never_makes_a_too_early_step_right(
    car: list[Surface], before: list[Act], later: list[Act], wait: str, short: int, more: int
) -> None:
    def job(length: int) -> list[Act]:
        return [*before, act("coating", 20, step="The coat", **{wait: length}), *later]

    assert stopped(car, job(short), "wait.") <= stopped(car, job(short + more), "wait.")


@given(at=st.integers(1, 400), cure=st.integers(0, 400))
def test_wax_on_a_bare_coat_is_right_exactly_when_its_cure_is_over(at: int, cure: int) -> None:
    """Worked out here by subtraction: the coat ends one hour after hour 0."""
    acts = (act("coating", cure_h=cure, keep_dry_h=0), act("wax", at))
    found = stopped([Surface("bonnet", "clear_coat")], acts, "wait.cure")
    assert bool(found) == (at - 1 < cure)
