"""Who can attach the data sheet that a station asks for: whoever scans mostly cannot."""

from collections.abc import Sequence, Set
from dataclasses import replace

from inventory.models import Person, Shop
from inventory.precheck.questions import Finding
from inventory.precheck.questions.sheets import CONFIRM

NO_SHEET = "no_sheet"


def with_who_attaches(shop: Shop, findings: Sequence[Finding], about: Set[str] | None) -> tuple[Finding, ...]:
    """Return what is found with the owners' names at each open want of a sheet; asked for only there.

    `about`: the codes that the line is about, None for the whole car.
    """
    wants = [one for one in findings if one.code == NO_SHEET and one.grade != "tell"]
    if not any(about is None or about & set(one.about) for one in wants):
        return tuple(findings)
    owners = Person.objects.filter(shop=shop, role=Person.Role.OWNER, is_active=True).order_by("name")
    names = " or ".join(owners.values_list("name", flat=True))
    return tuple(_named(one, names) if one in wants else one for one in findings)


def _named(finding: Finding, names: str) -> Finding:
    does = "confirms" if finding.do.startswith(CONFIRM) else "attaches"
    return replace(finding, do=f"{finding.do} {names} {does} it on the product's page.") if names else finding
