"""The chain: every line carries the hash of the one before, over codes and integers only.

SHA-256 (FIPS 180-4) over JSON with sorted keys and no blanks, UTF-8. A format version stands in the line;
old versions verify for ever, so a new one gets a function of its own and this one is never edited.
"""

import hashlib
import json
from collections.abc import Mapping
from datetime import datetime

GENESIS = "0" * 64
FORMAT = 1


def microseconds(instant: datetime) -> int:
    """Return an aware instant as whole microseconds since 1970 in UTC, without rounding."""
    whole = int(instant.replace(microsecond=0).timestamp())
    return whole * 1_000_000 + instant.microsecond


def hash_line(previous: str, body: Mapping[str, object], *, version: int = FORMAT) -> str:
    """Return the hash of a line, 64 hexadecimal letters, chained to the one before it."""
    return _FORMATS[version](previous, body)


def _first_format(previous: str, body: Mapping[str, object]) -> str:
    text = json.dumps(
        {"previous": previous, "version": 1, **body},
        sort_keys=True,
        separators=(",", ":"),
        ensure_ascii=False,
    )
    return hashlib.sha256(text.encode()).hexdigest()


_FORMATS = {1: _first_format}
