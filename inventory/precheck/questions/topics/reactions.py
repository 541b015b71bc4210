"""What may meet what on a job's car and in its bays."""

from dataclasses import dataclass


@dataclass(frozen=True)
class ReactionFacts:
    """What may meet what on a job's car and in its bays."""
