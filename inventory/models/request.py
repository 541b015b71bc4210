"""Requests: what was asked once under a key, and the answer it got."""

from django.db import models

from .shop import Shop


class Request(models.Model):
    """A key is answered once; the same key and body get the stored answer, another body is an error."""

    shop = models.ForeignKey(Shop, models.PROTECT, related_name="requests")
    key = models.CharField(max_length=64)
    body_hash = models.CharField(max_length=64)
    answer = models.JSONField(default=dict)
    made_at = models.DateTimeField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["shop", "key"], name="request_key_once_a_shop")]

    def __str__(self) -> str:
        return self.key
