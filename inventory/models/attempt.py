"""Tries to sign in that were not followed by a right one: counted in the database, so by every process."""

from django.db import models


class Attempt(models.Model):
    """What was tried on one account from one place since the last success; forgotten after a day."""

    account = models.CharField(max_length=60)
    tried_from = models.CharField(max_length=45, help_text="a network address, or the code of who signed in")
    failures = models.PositiveIntegerField(default=0)
    last_at = models.DateTimeField()

    class Meta:
        constraints = [models.UniqueConstraint("account", "tried_from", name="attempts_once_an_account")]

    def __str__(self) -> str:
        return f"{self.account}: {self.failures}"
