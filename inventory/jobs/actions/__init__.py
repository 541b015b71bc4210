"""What the job pages write, one file a topic."""

from .closing import Said, close
from .moving import book_again, cancel, keep, move
from .steps import Wanted, remove_step, save_service_step, save_step

__all__ = [
    "Said",
    "Wanted",
    "book_again",
    "cancel",
    "close",
    "keep",
    "move",
    "remove_step",
    "save_service_step",
    "save_step",
]
