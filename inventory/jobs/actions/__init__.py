"""What the job pages write, one file a topic."""

from .booking import book
from .closing import Said, close
from .moving import book_again, cancel, keep, move
from .steps import Wanted, add_service_step, add_step, remove_step, save_service_step, save_step

__all__ = [
    "Said",
    "Wanted",
    "add_service_step",
    "add_step",
    "book",
    "book_again",
    "cancel",
    "close",
    "keep",
    "move",
    "remove_step",
    "save_service_step",
    "save_step",
]
