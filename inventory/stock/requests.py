"""A request is answered once: its key, the hash of its body and its answer stand in the same transaction."""

import hashlib
import json
from collections.abc import Callable
from datetime import datetime
from typing import cast

from django.db import transaction

from inventory.models import Head, Request, Shop

Answer = dict[str, object]


class KeyReused(Exception):
    """The key was used for something else: HTTP 422, exit status 2."""

    def __init__(self, key: str) -> None:
        self.says = f"The key {key} was used for another line already. Send this one under a new key."
        super().__init__(self.says)


def body_hash(body: object) -> str:
    """Return the SHA-256 of a request's body as canonical JSON."""
    return hashlib.sha256(json.dumps(body, sort_keys=True, separators=(",", ":")).encode()).hexdigest()


@transaction.atomic
def answer_once(shop: Shop, key: str, body: object, at: datetime, do: Callable[[Request], Answer]) -> Answer:
    """Return the answer stored under a key, else do it and store its answer, whatever its grade.

    `do` writes with `request=` and returns a JSON document; what it refuses must roll back within it. Raises
    KeyReused where the key came with another body. The chain's head is locked first, so that two requests of
    one key wait for each other.
    """
    Head.objects.select_for_update().get(shop=shop)
    hashed = body_hash(body)
    if (known := Request.objects.filter(shop=shop, key=key).first()) is not None:
        if known.body_hash != hashed:
            raise KeyReused(key)
        return cast(Answer, known.answer)
    request = Request.objects.create(shop=shop, key=key, body_hash=hashed, made_at=at)
    request.answer = do(request)
    request.save(update_fields=["answer"])
    return cast(Answer, request.answer)
