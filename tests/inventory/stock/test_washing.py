"""Washing of pads and towels: who may keep it, what it ends in the check, and how it is taken back."""

import re
from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from inventory.models import Container, Job, Kind, Panel, Washed
from inventory.precheck import queries
from inventory.precheck.queries.loading import Loading
from inventory.precheck.queries.small_goods import small_goods
from inventory.stock import washing
from inventory.stock.rules.acts import Act
from inventory.stock.rules.lines import Refused
from tests import world as w
from tests.world import GRAM, NOON

pytestmark = pytest.mark.django_db
USED, BEFORE, AFTER = (NOON - timedelta(hours=hours) for hours in (10, 11, 9))
COARSER = "Dunnock pad carried compound, coarser than this step, and was not washed."


def small(world: w.World, kind: str = Kind.PAD, name: str = "Dunnock pad", **facts: object) -> Container:
    made = w.product(world, name, kind, dimension="pieces", noun=kind, needs_sheet=False, **facts)
    return w.bottle(world, made, 1, opened_at=NOON - timedelta(days=20), place=world.bay_1)


def used(world: w.World, good: Container, kind: str, surface: str = "clear_coat", at=USED) -> None:
    """Another car met it, under a step that took something of a kind."""
    job = w.job(world, at, vehicle=w.car(world, f"Car of {kind} {at}"))
    Panel.objects.create(vehicle=job.vehicle, position=1, name="bonnet", surface=surface)
    step = w.step(job, "Before")
    w.need(step, kind, GRAM)
    w.record(world, Act("use", at, source=good.code, amount=0, job=job.code, step=step.code))


def said(world: w.World, good: Container, kind: str = "polish") -> list[str]:
    """What the check of a car says of it, before a step that takes something of a kind."""
    job = w.job(world)
    step = w.step(job, "Next")
    w.need(step, kind, GRAM)
    w.need(step, good.product, 1)
    fresh = Job.objects.select_related("shop", "vehicle").get(pk=job.pk)
    found = queries.check(fresh, NOON).check.findings
    job.delete()
    return [one.says for one in found if one.code.startswith(("pad.", "towel."))]


def test_a_bottle_s_washing_is_not_kept(world: w.World) -> None:
    kept = w.bottle(world, w.soap(world), w.LITRE)
    with pytest.raises(Refused) as refused:
        washing.wash(kept, by=world.tomas, at=NOON)
    code = f"{kept.code[:4]} {kept.code[4:]}"
    assert refused.value.says == f"Fenmoor soap {code} is no pad and no towel, so its washing is not kept."
    assert not Washed.objects.exists()


def test_a_pad_fresh_from_its_box_is_not_washed(world: w.World) -> None:
    box = small(world)
    with pytest.raises(Refused) as refused:
        washing.wash(box, by=world.tomas, at=NOON)
    assert refused.value.says.endswith(
        "comes fresh out of its box, so its washing is not kept. "
        "Where it is used again, an owner types on its page how many uses it lasts."
    )


def test_a_pad_that_left_the_shop_is_not_washed(world: w.World) -> None:
    pad = small(world, wear_uses=30)
    w.record(world, Act("discard", NOON - timedelta(hours=1), target=pad.code, facts={"reason": "torn"}))
    with pytest.raises(Refused, match=re.escape("was booked out of the shop. Take that entry back first.")):
        washing.wash(pad, by=world.tomas, at=NOON)


def test_a_second_tap_washes_nothing_and_a_use_between_lets_it_be_washed_again(world: w.World) -> None:
    pad = small(world, wear_uses=30)
    used(world, pad, "compound")
    washing.wash(pad, by=world.tomas, at=AFTER)
    with pytest.raises(Refused, match="was washed already, and not used since"):
        washing.wash(pad, by=world.tomas, at=AFTER + timedelta(seconds=1))
    assert Washed.objects.count() == 1

    used(world, pad, "polish", at=AFTER + timedelta(hours=1))
    washing.wash(pad, by=world.tomas, at=AFTER + timedelta(hours=2))

    assert Washed.objects.count() == 2


@pytest.mark.parametrize(
    ("washed_at", "expected", "because"),
    [
        (None, [COARSER], "nobody washed it"),
        (BEFORE, [COARSER], "washed before its last use: that changes nothing"),
        (USED, [COARSER], "in the same instant nobody knows which came first"),
        (AFTER, [], "washed after its last use"),
    ],
)
def test_a_wash_ends_the_question_about_a_coarser_pad(
    world: w.World, washed_at, expected: list[str], because: str
) -> None:
    pad = small(world, wear_uses=30)
    used(world, pad, "compound")
    if washed_at:
        washing.wash(pad, by=world.tomas, at=washed_at)
    assert said(world, pad) == expected, because


def test_a_use_after_the_wash_asks_again_and_one_taken_back_does_not(world: w.World) -> None:
    pad = small(world, wear_uses=30)
    used(world, pad, "compound")
    washing.wash(pad, by=world.tomas, at=AFTER)
    used(world, pad, "compound", at=AFTER + timedelta(hours=1))
    assert said(world, pad) == [COARSER]

    seq = pad.given.order_by("-seq").values_list("seq", flat=True)[0]
    w.record(world, Act("reverse", NOON, reverses=seq))

    assert said(world, pad) == []


@pytest.mark.parametrize(
    ("kind", "surface", "met", "says"),
    [
        (Kind.PAD, "single_stage", "polish", "Dunnock pad was used on single-stage paint before."),
        (Kind.TOWEL, "clear_coat", "coating", "Dunnock pad levelled a coating, and is to touch paint again."),
    ],
)
def test_what_stays_in_it_is_said_washed_or_not(
    world: w.World, kind: str, surface: str, met: str, says: str
) -> None:
    good = small(world, kind, wear_uses=30)
    used(world, good, met, surface)
    assert said(world, good) == [says]
    washing.wash(good, by=world.tomas, at=AFTER)
    assert said(world, good) == [says]


def test_washes_cost_the_check_no_query(world: w.World) -> None:
    pad = small(world, wear_uses=30)
    used(world, pad, "compound")
    job = w.job(world)
    w.need(w.step(job, "Next"), pad.product, 1)

    def asked() -> int:
        loading = Loading(world.shop, [job])
        assert loading.containers
        with CaptureQueriesContext(connection) as queries_of:
            small_goods(loading)
        return len(queries_of)

    before = asked()
    for hours in (1, 2, 3):
        washing.wash(pad, by=world.tomas, at=AFTER + timedelta(hours=hours))
        used(world, pad, "polish", at=AFTER + timedelta(hours=hours, minutes=30))
    # the uses with whether it was washed since; the cars' surfaces
    assert [before, asked()] == [2, 2]


def test_only_who_washed_it_takes_it_back_on_the_same_day(world: w.World) -> None:
    pad = small(world, wear_uses=30)
    washing.wash(pad, by=world.tomas, at=NOON)
    only = "Only Tomas takes this washing back, on the same day. It counts until the next use."
    for by, at in ((world.ines, NOON), (world.tomas, NOON + timedelta(days=1))):
        with pytest.raises(Refused) as refused:
            washing.take_back(pad, by=by, at=at)
        assert refused.value.says == only
    washing.take_back(pad, by=world.tomas, at=NOON + timedelta(hours=2))
    assert not Washed.objects.exists()
    with pytest.raises(Refused, match=re.escape("No washing of it is recorded. Nothing was changed.")):
        washing.take_back(pad, by=world.tomas, at=NOON)
