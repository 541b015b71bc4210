"""What steps do to a car, as the trade plays it: one act a product or kind that a step takes."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import datetime

from inventory.models import Kind, Step, StepNeed
from inventory.trade.acts import Act
from inventory.trade.profile import Profile, profile
from inventory.trade.visits import COATS

from .values import KIND_WORDS

SILICONE, RINSE = "silicone", "rinse"
ABRASIVE = "abrasive"
Profiles = Mapping[int, Profile]
# By a step's id, the panels that its cut is limited to
CutPanels = Mapping[int, frozenset[str]]


def acts_of(needs: Iterable[StepNeed], profiles: Profiles, cut_panels: CutPanels) -> list[Act]:
    """Return what needs do, in their order; a further layer of a coating carries its number.

    What cuts meets only the panels that its step cuts; a wipe of the same step meets all.
    """
    acts: list[Act] = []
    for need in needs:
        made = act_of(need, profiles)
        if made.has(ABRASIVE):
            made = replace(made, panels=cut_panels.get(need.step_id))
        layers = [one for one in acts if one.product == made.product] if COATS in made.profile.traits else []
        acts.append(replace(made, layer=len(layers) + 1))
    return acts


def act_of(need: StepNeed, profiles: Profiles) -> Act:
    """Return what one need does to the car; a kind without its product does what the kind does."""
    product = need.product
    kind = product.kind if product else need.kind
    return _act(
        need.step,
        product.code if product else kind,
        product.name if product else KIND_WORDS[kind],
        profiles[product.pk] if product else profile(kind),
    )


def _act(step: Step, code: str, name: str, does: Profile) -> Act:
    return Act(
        step=step.code, step_name=step.name, product=code, name=name, kind=does.kind, profile=does,
        starts_at=step.starts_at, ends_at=done_at(step),
        touches=None if step.touches is None else frozenset(step.touches),
        strips_coating=step.strips_coating, spot=step.spot,
    )  # fmt: skip


def done_at(step: Step) -> datetime:
    """Return when a step's work was over: as signed, else as planned."""
    return max(step.signed_at, step.starts_at) if step.signed_at else step.ends_at


def rinses(steps: Iterable[Step], needs: Iterable[StepNeed]) -> list[Act]:
    """Return the steps that rinse and take nothing: water on whatever a wash reaches."""
    taking = {need.step_id for need in needs}
    water = replace(profile(Kind.SHAMPOO), leaves=frozenset(), lifts=frozenset(), never=frozenset())
    return [
        _act(step, RINSE, "rinse water", water) for step in steps if step.rinses and step.pk not in taking
    ]


def silicone_beside(needs: Iterable[StepNeed], profiles: Profiles) -> list[tuple[StepNeed, Act]]:
    """Return what others spread in the air of a bay: their acts, reduced to the silicone that they leave."""
    found = []
    for need in needs:
        made = act_of(need, profiles)
        if SILICONE in made.profile.leaves:
            # It touches nothing of this car: what it gives to the air settles on all of it.
            spread = Profile(kind=made.kind, leaves=frozenset({SILICONE}))
            name = f"{made.name} on {need.step.job.vehicle}"
            found.append((need, replace(made, name=name, profile=spread, touches=None)))
    return found
