"""What the check's addresses answer: the check itself, and the owner's page about its rules."""

from .checks import answer, job, sign
from .grades import regrade, rules

__all__ = ["answer", "job", "regrade", "rules", "sign"]
