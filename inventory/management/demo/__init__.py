"""The demo's shop: its nouns from tables, its half year through the real ledger, its booked cars."""

from datetime import datetime

from django.db import transaction

from inventory.management.demo.bays import measure
from inventory.management.demo.bookings import book_the_week
from inventory.management.demo.history import Progress, tell
from inventory.management.demo.measured import measure_the_air
from inventory.management.demo.nouns import Cast, load
from inventory.management.demo.panels import describe_work, read_panels
from inventory.management.demo.passed import pass_some
from inventory.management.demo.people import guard
from inventory.management.demo.profiles import describe_products
from inventory.management.demo.today import arrange


@transaction.atomic
def make(now: datetime, progress: Progress) -> Cast:
    """Make the whole demo shop as it stands at `now`, or nothing; `progress(done, of)` follows the days."""
    on = now.astimezone().date()
    cast = load(on)
    # By the shop's own clock, so that days ago end on the same hour in summer and in winter time.
    now = now.astimezone(cast.shop.zone)
    describe_products(cast, on)
    describe_work(cast)
    measure(cast, now)
    measure_the_air(cast, now)
    story = tell(cast, now, progress)
    arrange(story, now)
    book_the_week(cast, now)
    read_panels(cast, now)
    guard(cast, now)
    pass_some(cast)
    return cast
