"""Does a product go over something that it needs absent?"""

from datetime import tzinfo

from .acts import Act, Found
from .edits import THIS_SHOP
from .reading import in_words
from .residues import Residue, residues
from .saying import day, moment
from .standing import Origin, Standing


def over_residue(standing: Standing, act: Act, zone: tzinfo) -> list[Found]:
    """Return what lies in the way; what one wipe or one polish mends is one cause."""
    if act.spot:
        return []
    lying = {key: standing.residues[key] for key in residues() if _in_the_way(key, standing, act)}
    return [
        _found(residues()[key], origin, act, zone)
        for key, origin in lying.items()
        if not any(lying.get(other) == origin for other in residues()[key].yields_to)
        and standing.once(residues()[key].code, origin)
    ]


def _in_the_way(key: str, standing: Standing, act: Act) -> bool:
    return key in act.profile.needs_absent and key in standing.residues


def _found(residue: Residue, origin: Origin, act: Act, zone: tzinfo) -> Found:
    typed = act.profile.source("needs_absent")
    return Found(
        code=residue.code,
        grade=act.profile.needs_absent[residue.key],
        says=f"{act.step_name}: {act.name} would go over {residue.words} {{where}}.",
        because=residue.because,
        origin=_whence(origin, zone),
        do=residue.do,
        source=typed if typed == THIS_SHOP else in_words(residue.mark),
    )


def _whence(origin: Origin, zone: tzinfo) -> str:
    if origin.step:
        assert origin.at is not None
        return f"It is there from {origin.by} ({origin.step_name}, until {moment(origin.at, zone)})."
    since = f" since {day(origin.at.astimezone(zone).date())}" if origin.at else ""
    return f"The car arrives with it{since}."
