"""The uploaded file between its preview and its confirmation: a random name, one person's, for an hour."""

import hashlib
import json
import re
import secrets
from dataclasses import asdict, dataclass
from datetime import datetime, timedelta
from pathlib import Path

from django.conf import settings

from inventory.models import Person
from inventory.spreadsheets.rules.table import Unreadable

EXPIRES = timedelta(hours=1)
TOKEN = re.compile(r"[A-Za-z0-9_-]{32}")
GONE = "This file is not kept any more: files are kept for an hour. Upload it again."


@dataclass(frozen=True)
class Kept:
    """A file that waits: what it was called is shown, never used as a path."""

    token: str
    slug: str
    name: str
    sha256: str
    kept_at: str
    data: bytes = b""


def keep(person: Person, slug: str, name: str, data: bytes, at: datetime) -> Kept:
    """Keep a file for a person and forget what expired; return it with its token."""
    folder = _folder(person)
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    _forget(folder, at)
    file = Kept(
        secrets.token_urlsafe(24), slug, name[:120], hashlib.sha256(data).hexdigest(), at.isoformat(), data
    )
    for path, content in ((_data(folder, file.token), data), (_facts(folder, file.token), _told(file))):
        path.touch(mode=0o600)
        path.write_bytes(content)
    return file


def kept(person: Person, token: str, at: datetime) -> Kept:
    """Return a file that this person uploaded; raises Unreadable where it is gone, or was touched."""
    folder = _folder(person)
    if not TOKEN.fullmatch(token) or not _facts(folder, token).exists():
        raise Unreadable(GONE)
    facts = json.loads(_facts(folder, token).read_bytes())
    data = _data(folder, token).read_bytes()
    if datetime.fromisoformat(facts["kept_at"]) + EXPIRES < at:
        drop(person, token)
        raise Unreadable(GONE)
    if hashlib.sha256(data).hexdigest() != facts["sha256"]:
        raise Unreadable("The kept file is not what was uploaded. Upload it again.")
    return Kept(**facts, data=data)


def drop(person: Person, token: str) -> None:
    """Forget a file."""
    if TOKEN.fullmatch(token):
        for path in (_data(_folder(person), token), _facts(_folder(person), token)):
            path.unlink(missing_ok=True)


def _told(file: Kept) -> bytes:
    facts = asdict(file)
    del facts["data"]
    return json.dumps(facts).encode()


def _forget(folder: Path, at: datetime) -> None:
    for path in folder.glob("*.json"):
        if datetime.fromisoformat(json.loads(path.read_bytes())["kept_at"]) + EXPIRES < at:
            path.with_suffix(".data").unlink(missing_ok=True)
            path.unlink(missing_ok=True)


def _folder(person: Person) -> Path:
    return Path(settings.MEDIA_ROOT) / "imports" / person.code


def _data(folder: Path, token: str) -> Path:
    return folder / f"{token}.data"


def _facts(folder: Path, token: str) -> Path:
    return folder / f"{token}.json"
