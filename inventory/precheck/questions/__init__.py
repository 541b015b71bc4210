"""The questions of the check, one file a question. Their order never matters: findings are sorted after."""

from .asking import Finding, Question
from .case import Case, Plan, Supply, plan
from .dates import lasts_through_its_step, past_an_estimate
from .enough import enough_for_each_step
from .facts import Answer, Facts, JobFacts, LabelFacts, ProductFacts, SheetFacts, StepFacts
from .held import held_or_recalled
from .labels import open_and_unlabelled
from .lots import one_coating_one_lot
from .sheets import data_sheet_here

QUESTIONS: tuple[Question, ...] = (
    held_or_recalled,
    lasts_through_its_step,
    past_an_estimate,
    one_coating_one_lot,
    enough_for_each_step,
    data_sheet_here,
    open_and_unlabelled,
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
