"""A step that takes compound or paper to paint cuts it, whatever it says. What a cut takes: trade pages."""

import pytest

from inventory.models import Step
from inventory.precheck import queries
from inventory.precheck.questions import Finding
from tests import world as w
from tests.inventory.precheck.test_paint_queries import panels, read
from tests.world import GRAM, NOON

pytestmark = pytest.mark.django_db


def about_paint(
    world: w.World, takes: str, says: str = "", um: int | None = None, **facts: object
) -> list[Finding]:
    """Return what the check says of the paint of a car whose bonnet read so much."""
    job = w.job(world)
    (bonnet,) = panels(job.vehicle, "bonnet")
    if um is not None:
        read(world, bonnet, job, um)
    step = w.step(job, "Cut", stage="correct")
    Step.objects.filter(pk=step.pk).update(cut=says, **facts)
    w.need(step, takes, 100 * GRAM)
    return [one for one in queries.check(job, NOON).check.findings if one.code.startswith("paint.")]


@pytest.mark.parametrize(
    ("takes", "sentence"),
    [
        ("compound", "Cut takes compound: it counts as one-step correction."),
        ("abrasive", "Cut takes abrasive paper: it counts as wet sanding."),
        ("polish", "Cut takes polish: it counts as finishing."),
    ],
)
def test_a_step_that_says_nothing_is_asked_for_a_reading(shop: w.World, takes: str, sentence: str) -> None:
    one, *_ = about_paint(shop, takes)

    assert (one.code, one.grade) == ("paint.no_reading", "ask")
    assert one.because.endswith(sentence)


def test_a_lower_choice_than_the_compound_is_not_believed_and_the_finding_says_so(shop: w.World) -> None:
    (one,) = about_paint(shop, "compound", says="finish", um=92)

    assert (one.code, one.says) == ("paint.thin", "Thin paint: bonnet 92 µm of whole film.")
    assert one.because.endswith("Cut says finishing, and takes compound: it counts as one-step correction.")


def test_paper_on_paint_goes_below_the_floor_that_one_step_stays_above(shop: w.World) -> None:
    assert [one.code for one in about_paint(shop, "abrasive", says="one_step", um=99)] == [
        "paint.planned_below_floor", "paint.total_cut",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("takes", "facts", "because"),
    [
        ("compound", {"says": "one_step", "um": 120}, "it was said, and there is enough"),
        ("compound", {"um": 120}, "it was not said, and there is enough"),
        ("polish", {"um": 92}, "a finishing polish is right on thin paint"),
        ("abrasive", {"touches": ["lamps"]}, "sanding a lamp takes no paint"),
        ("solvent", {}, "a wipe cuts nothing"),
    ],
)
def test_what_cuts_nothing_or_leaves_enough_says_nothing(
    shop: w.World, takes: str, facts: dict[str, object], because: str
) -> None:
    assert about_paint(shop, takes, **facts) == [], because  # type: ignore[arg-type]
