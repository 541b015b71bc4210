"""How fast passwords and PINs may be tried: every wrong one makes the next wait longer, nobody is locked out.

Counted per account and per place that tries it: whoever guesses elsewhere does not keep the owner out.
"""

from datetime import datetime, timedelta
from ipaddress import IPv6Address, ip_network
from math import ceil

from django.db import transaction
from django.http import HttpRequest

from inventory.models import Attempt
from safety.access import client_address

LONGEST_WAIT = 60
FREE_TRIES = 3
FORGOTTEN_AFTER = timedelta(days=1)


def wait_seconds(failures: int) -> int:
    """Return how long the next try waits after so many wrong ones: 0, 0, 0, 1, 2, 4 … 60 seconds."""
    return min(LONGEST_WAIT, 2 ** min(failures - FREE_TRIES, 10)) if failures >= FREE_TRIES else 0


def says(seconds: int) -> str:
    """Return the sentence for who has to wait; a right secret gets the same one: a guesser learns nothing."""
    return f"Too many wrong tries. Wait {seconds} {'second' if seconds == 1 else 'seconds'}, then try again."


def address_of(request: HttpRequest) -> str:
    """Return where a request comes from, empty where a proxy that nobody listed hides it.

    One subscriber holds 2⁶⁴ addresses of IPv6, so that those count as one.
    """
    address = client_address(request)
    if isinstance(address, IPv6Address):
        return str(ip_network((address, 64), strict=False))
    return str(address or "")


def claim(account: str, tried_from: str, now: datetime) -> int:
    """Return 0 and count a try, or return the seconds to wait; call `forget` when the secret was right.

    Counted before the secret is looked at: a hundred tries at once are not a hundred free ones.
    """
    with transaction.atomic():
        row, new = Attempt.objects.select_for_update().get_or_create(
            account=account, tried_from=tried_from, defaults={"last_at": now}
        )
        if now - row.last_at > FORGOTTEN_AFTER:
            row.failures = 0
        wait = wait_seconds(row.failures)
        left = ceil((row.last_at + timedelta(seconds=wait) - now).total_seconds())
        if left > 0:
            # A clock that was set back makes nobody wait longer than the rule.
            return min(left, wait)
        row.failures, row.last_at = row.failures + 1, now
        row.save(update_fields=["failures", "last_at"])
    if new:
        Attempt.objects.filter(last_at__lt=now - FORGOTTEN_AFTER).delete()
    return 0


def forget(account: str, tried_from: str) -> None:
    """Begin anew: the secret was right."""
    Attempt.objects.filter(account=account, tried_from=tried_from).delete()
