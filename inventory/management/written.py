"""Writing a command's file whole or not at all."""

import os
from pathlib import Path
from tempfile import NamedTemporaryFile

from inventory.management.scripted import BadInput


def write_whole(file: Path, data: bytes, argument: str = "--out") -> None:
    """Write a file beside its place and move it there: nobody finds half of it. Raises BadInput."""
    beside = None
    try:
        with NamedTemporaryFile(dir=file.parent, prefix=f".{file.name}.", delete=False) as half:
            beside = Path(half.name)
            half.write(data)
            half.flush()
            os.fsync(half.fileno())
        # A temporary file is its writer's alone; the one that stays is as readable as any other.
        beside.chmod(0o666 & ~_mask())
        os.replace(beside, file)
    except OSError as error:
        if beside is not None:
            beside.unlink(missing_ok=True)
        raise BadInput(
            f"{argument} {file}: a file that can be written was expected ({error.strerror})."
        ) from error


def _mask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
