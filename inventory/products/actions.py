"""What the product pages write: a product with its lives, and the use-by copies that hang on them."""

from collections.abc import Iterable
from datetime import date

from django.db import transaction

from inventory.models import Container, Pack, Product, Profile
from inventory.stock import ledger
from safety import actions as sheets
from safety.models import DataSheet

TEXTS = frozenset({"family", "source"})


@transaction.atomic
def keep_product(product: Product) -> int:
    """Save a product; return the number of bottles whose use by moved with its lives."""
    product.save()
    here = Container.objects.filter(product=product).exclude(state=Container.State.GONE)
    return ledger.refresh_use_by(here.select_related("product", "shop").prefetch_related("lots"))


@transaction.atomic
def attach_sheet(product: Product, sheet: DataSheet, *, confirmed_by: str, on: date) -> None:
    """Link a data sheet to a product; `confirmed_by` stands for its newest version, "" for none."""
    newest = sheet.versions.first()
    if confirmed_by and newest and not newest.confirmed:
        sheets.confirm(newest, by=confirmed_by, on=on)
    Product.objects.filter(pk=product.pk).update(sheet=sheet)


@transaction.atomic
def keep_pack(pack: Pack) -> None:
    """Save a pack; only one size of a product is the usual one."""
    pack.save()
    if pack.usual:
        pack.product.packs.exclude(pk=pack.pk).update(usual=False)


def follow_kind(product: Product, fields: Iterable[str]) -> None:
    """Drop this shop's word on some fields of a product's profile, so that its kind's holds again."""
    empty = {name: "" if name in TEXTS else None for name in fields}
    Profile.objects.filter(product=product).update(**empty)


def confirm_groups(product: Product, groups: list[str], water_based: bool | None, by: str, on: date) -> None:
    """Keep what a product reacts with, and who confirmed it when."""
    said = {
        "groups": groups,
        "water_based": water_based,
        "groups_confirmed_on": on,
        "groups_confirmed_by": by,
    }
    Profile.objects.update_or_create(product=product, defaults=said)


def withdraw_groups(product: Product) -> None:
    """Go back to what composition and kind propose."""
    Profile.objects.filter(product=product).update(
        groups=[], water_based=None, groups_confirmed_on=None, groups_confirmed_by=""
    )
