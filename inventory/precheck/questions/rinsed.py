"""Was what must not stay on a car rinsed off, and that rinse signed?"""

from safety.reactions.rinsing import wants_rinse

from .asking import Finding, question
from .case import Case
from .reactions import one_after_the_other
from .topics.reactions import last_on_the_car

CODE = "reaction.rinse"
SOURCE = "common practice, no source; what it must not meet: rules S1 to S3, S5 and S8 of this program"


@question("steps", "needs", "shelf", "products", "reactions")
def rinsed_off(case: Case) -> list[Finding]:
    """Ask where an acid, an iron remover or bleach went on last and no rinse is planned or signed."""
    topic = case.facts.reactions
    last = last_on_the_car(topic.steps, topic.used)
    of = topic.substances.get(last.product) if last else None
    if last is None or of is None or not wants_rinse(of):
        return []
    if any(step.rinses and not step.signed_at for step in topic.steps):
        return []
    if any(last.product in found.about for found in one_after_the_other.ask(case)):
        return []  # the same rinse is asked for there, and by a stop
    at = f"{last.at.astimezone(case.facts.zone):%A %H:%M}"
    return [
        Finding(
            CODE,
            "ask",
            f"{of.name} went onto this car on {at}, and no rinse was signed since.",
            "No step after it is planned as a rinse, and left on it dries in and meets what comes next.",
            "Rinse car and floor with water to a clear drain, then scan the car and RINSE: before the next "
            "step, and before the car leaves.",
            SOURCE,
            (last.product,),
        )
    ]
