"""Taking one's turn: two people may have one page open, and only one of them is first."""

from inventory.models import Head, Job
from inventory.stock.rules.lines import Refused


def hold(job: Job, state: str = Job.State.OPEN) -> None:
    """Wait for other writers, then refuse what was decided meanwhile: two people may have one page open."""
    Head.objects.select_for_update().get(shop=job.shop_id)
    now = Job.objects.get(pk=job.pk)
    if now.state != state:
        raise Refused(f"{job.vehicle} is {now.get_state_display()} already. Nothing was changed.")
