"""What a scan means next: (state, line, facts) → (state, answer, acts). Pure; page and command share it."""

from .answers import Answer, Heard, Key
from .facts import Facts
from .hear import hear
from .lines import Said, read_line
from .state import Done, State

__all__ = ["Answer", "Done", "Facts", "Heard", "Key", "Said", "State", "hear", "read_line"]
