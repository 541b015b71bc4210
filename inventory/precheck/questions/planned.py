"""Is anything planned at all?"""

from .asking import Finding, question
from .case import Case

SOURCE = "house rule: what is not planned is judged for nobody"


@question("steps")
def anything_planned(case: Case) -> list[Finding]:
    """Ask for a step where a job has none: nothing was judged, so nothing is ready."""
    if case.facts.steps:
        return []
    return [
        Finding(
            "plan.no_steps",
            "ask",
            "No step is planned.",
            "The check holds steps against the shelf, the car, the bay and the people; here there is none.",
            "Add a step: what is done, where, when, by whom, and what it takes. That ends this question.",
            SOURCE,
            (case.facts.job.code,),
        )
    ]
