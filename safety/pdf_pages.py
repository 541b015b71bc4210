"""How many pages a PDF has, read in a process of its own.

A file can be made so that reading it never ends or fills the memory: a thread could not be stopped, a process
can. That process runs this very file; it knows neither the shop nor its database.
"""

import contextlib
import subprocess
import sys
from io import BytesIO

from pypdf import PdfReader

SECONDS = 10.0
MEMORY_BYTES = 1024**3
LOCKED = "locked"
AGAIN = "Print it to a new PDF, and attach that one."


class Unreadable(Exception):
    """A file that people could not read in the end; `says` is what to do about it."""

    def __init__(self, says: str) -> None:
        super().__init__(says)
        self.says = says


def pages_in(data: bytes, seconds: float = SECONDS) -> int:
    """Return the number of pages, each of which was read; raise Unreadable within `seconds`."""
    command = [sys.executable, "-P", __file__]
    try:
        read = subprocess.run(command, input=data, capture_output=True, timeout=seconds)
    except subprocess.TimeoutExpired as slow:
        raise Unreadable(
            f"This PDF cannot be read within {seconds:g} seconds. Is it a data sheet? {AGAIN}"
        ) from slow
    answer = read.stdout.decode().strip()
    if answer == LOCKED:
        raise Unreadable(f"This PDF is locked: not every reader opens it. {AGAIN}")
    if read.returncode or not answer.isdigit():
        raise Unreadable("This PDF is damaged: a page in it cannot be read. Download it again.")
    if answer == "0":
        raise Unreadable("This PDF has no page. Download it again, or ask the supplier for the sheet.")
    return int(answer)


def look(data: bytes) -> str:
    """Return LOCKED or the number of pages; raises whatever the reader raises at a page that is none."""
    reader = PdfReader(BytesIO(data))
    if reader.is_encrypted:
        return LOCKED
    for page in reader.pages:
        content = page.get_contents()
        if content is not None:
            content.get_data()
    return str(len(reader.pages))


def bound_memory() -> None:
    """Let the system end this process when it grows; where a system cannot, the time is the only bound."""
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (MEMORY_BYTES, MEMORY_BYTES))


if __name__ == "__main__":
    bound_memory()
    print(look(sys.stdin.buffer.read()))
