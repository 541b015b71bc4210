"""Sign: a stage is done; what was not scanned is posted as planned, except what must be scanned."""

from inventory.stock.rules.lines import Refused
from inventory.stock.rules.signing import Signed, plan_stage

from .. import words
from ..answers import Heard, Key
from ..facts import JobFacts
from ..turn import Turn

# As people say it of work that is done.
DONE = {
    "wash": "the wash",
    "decontaminate": "the decontamination",
    "correct": "the correction",
    "coat": "the coating",
    "cure": "the cure",
}


def begin(turn: Turn) -> Heard:
    """SIGN: the first unsigned stage of the car in hand."""
    if turn.job is None:
        return turn.stop("Sign for which car?", "Scan the job's code first.")
    plan = turn.facts.stage
    if plan is None:
        return _nothing_left(turn, turn.job)
    try:
        signed = plan_stage(plan, turn.job.code, turn.facts.at, turn.facts.zone)
    except Refused as refused:
        page = Key("See its check", page="check", about=turn.job.code)
        return turn.stop(refused.says, "Nothing was signed.", page)
    effect = {"does": "sign", "job": turn.job.code, "steps": list(plan.steps), "needs": list(signed.settled)}
    posted = len({act.source for act in signed.acts})
    stage = DONE.get(plan.stage, plan.stage)
    says = f"Signed {stage} on {turn.job.name}."
    if posted:
        bottles = words.counted(posted, "bottle")
        says = f"Signed {stage} on {turn.job.name}: {bottles} booked as planned."
    return turn.recorded(
        says,
        _left(turn.job, signed),
        Key("Undo", "UNDO"),
        acts=signed.acts,
        effects=(effect,),
        what=f"the signature under {stage} on {turn.job.name}",
    )


def _nothing_left(turn: Turn, job: JobFacts) -> Heard:
    if job.rinse:
        return turn.tell(
            f"{job.rinse.name} on {job.name} is not signed.", "RINSE signs it, once the drain runs clear."
        )
    return turn.tell(
        f"Every stage of {job.name} is signed.",
        "Close the job on its page.",
        Key("The job's page", page="job", about=job.code),
    )


def _left(job: JobFacts, signed: Signed) -> str:
    """Return what a signature leaves to be scanned, opened or rinsed."""
    left = [
        f"Not scanned: {', '.join(signed.unscanned)}." if signed.unscanned else "",
        f"Not open in the bay: {', '.join(signed.missing)}." if signed.missing else "",
        f"{job.rinse.name} is signed by RINSE, once the drain runs clear." if job.rinse else "",
    ]
    return " ".join(part for part in left if part)
