"""The questions of the check, one file a question. Their order never matters: findings are sorted after."""

from .air import what_a_product_is_made_of, what_is_breathed
from .asking import Finding, Question
from .cartridges import cartridge_hours
from .case import Case, Plan, Supply, plan
from .dates import lasts_through_its_step, past_an_estimate
from .enough import enough_for_each_step
from .facts import Answer, Facts, JobFacts, LabelFacts, ProductFacts, SheetFacts, StepFacts
from .gloves import glove_minutes
from .heat import stands_the_heat
from .held import held_or_recalled
from .hot import not_on_a_hot_panel, wheels_cool_to_the_touch
from .labels import open_and_unlabelled
from .local_exhaust import exhaust_that_steps_count_on
from .lots import one_coating_one_lot
from .paint import enough_paint_left, what_pads_bring
from .people import first_day_signed, trained_for_it
from .planned import anything_planned
from .protection import equipment_on_hand
from .rags import rags_in_their_can
from .reactions import in_the_bay, one_after_the_other
from .rescue import eyewash_in_reach, gel_in_reach, rescue_in_date
from .respirators import fit_for_the_mask
from .rinsed import rinsed_off
from .sheets import data_sheet_here
from .surfaces import arrives_unknown, in_the_way, words_nobody_ticked
from .tools import (
    air_below_its_pressure,
    no_heat_on_chlorinated_solvent,
    no_jet_on_an_acid,
    supplied_air_for_dichloromethane,
)
from .tools_air import dry_ice_in_its_place, no_engine_in_the_bay, nobody_in_ozone
from .weather import panel_and_air_for_the_coat

QUESTIONS: tuple[Question, ...] = (
    anything_planned,
    held_or_recalled,
    lasts_through_its_step,
    past_an_estimate,
    one_coating_one_lot,
    enough_for_each_step,
    data_sheet_here,
    open_and_unlabelled,
    in_the_way,
    words_nobody_ticked,
    arrives_unknown,
    stands_the_heat,
    not_on_a_hot_panel,
    wheels_cool_to_the_touch,
    enough_paint_left,
    what_pads_bring,
    one_after_the_other,
    in_the_bay,
    rinsed_off,
    first_day_signed,
    trained_for_it,
    fit_for_the_mask,
    equipment_on_hand,
    cartridge_hours,
    glove_minutes,
    eyewash_in_reach,
    gel_in_reach,
    rescue_in_date,
    panel_and_air_for_the_coat,
    what_is_breathed,
    what_a_product_is_made_of,
    exhaust_that_steps_count_on,
    no_jet_on_an_acid,
    air_below_its_pressure,
    no_heat_on_chlorinated_solvent,
    supplied_air_for_dichloromethane,
    nobody_in_ozone,
    dry_ice_in_its_place,
    no_engine_in_the_bay,
    rags_in_their_can,
)

__all__ = [
    "QUESTIONS",
    "Answer",
    "Case",
    "Facts",
    "Finding",
    "JobFacts",
    "LabelFacts",
    "Plan",
    "ProductFacts",
    "Question",
    "SheetFacts",
    "StepFacts",
    "Supply",
    "plan",
]
