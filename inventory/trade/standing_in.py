"""May one product stand in for another on a car? Only where both are known, and nothing new comes with it."""

from .profile import Profile

# How much a product cuts is not kept with it: of two abrasives nobody knows which takes more.
CUTS = "abrasive"


def stands_in(other: Profile | None, wanted: Profile | None) -> bool:
    """Say whether a product serves where another was planned: the same work on at least the same areas.

    One whose areas nobody knows (a pad, a towel) stands in for nothing.
    """
    if other is None or wanted is None or not wanted.touches:
        return False
    alike = (other.kind, other.family) == (wanted.kind, wanted.family) and CUTS not in wanted.traits
    return (
        alike
        and wanted.touches <= other.touches
        and other.traits <= wanted.traits
        and other.never <= wanted.never
    )
