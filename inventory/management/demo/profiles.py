"""What the demo's products do to a surface, where that differs from their kinds, and what they react with."""

from datetime import date, timedelta

from inventory.management.demo.nouns import Cast
from inventory.management.demo.tables import Row, listed, table
from inventory.models import Profile

NUMBERS = (
    "recoat_from_min", "recoat_to_min", "keep_dry_h", "wash_hold_d", "cure_h", "heat_c",
    "air_from_c", "air_to_c", "humidity_from", "humidity_to",
)  # fmt: skip
SAID = {"yes": True, "no": False, "": None}


def describe_products(cast: Cast, on: date) -> None:
    """Give products their profiles; the owner confirmed the groups three months before `on`."""
    Profile.objects.bulk_create(_profile(cast, row, on - timedelta(days=90)) for row in table("profiles"))


def _profile(cast: Cast, row: Row, confirmed_on: date) -> Profile:
    groups = listed(row["groups"])
    return Profile(
        product=cast.products[row["product"]],
        family=row["family"],
        touches=listed(row["touches"]) or None,
        topper_ok=SAID[row["topper_ok"]],
        source=row["source"],
        groups=groups,
        water_based=SAID[row["water_based"]],
        groups_confirmed_on=confirmed_on if groups else None,
        groups_confirmed_by="Ines" if groups else "",
        **{name: int(row[name]) if row[name] else None for name in NUMBERS},
    )
