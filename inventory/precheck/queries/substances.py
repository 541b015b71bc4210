"""Products as reactivity sees them: their confirmed groups, else those proposed by what they hold."""

from collections.abc import Iterable

from inventory.models import Kind, Product, Profile
from safety.models import SheetVersion
from safety.reactions.groups import WATER
from safety.reactions.proposing import propose
from safety.reactions.values import Substance

NOT_LIQUID = {"solid", "gas"}


def substances(products: Iterable[Product]) -> dict[str, Substance]:
    """Return the substances of products by the product's code, in two queries."""
    rows = {row.pk: row for row in products}
    profiles = {row.product_id: row for row in Profile.objects.filter(product__in=rows)}
    sheets = sheets_of(rows.values())
    return {
        row.code: substance(row, profiles.get(row.pk), sheets.get(row.sheet_id or 0)) for row in rows.values()
    }


def sheets_of(products: Iterable[Product]) -> dict[int, SheetVersion]:
    """Return the newest confirmed version of each product's sheet by the sheet's id, in one query.

    Where nobody confirmed one yet, the newest that was typed: it may say what to keep apart.
    """
    wanted = {row.sheet_id for row in products if row.sheet_id}
    versions: dict[int, SheetVersion] = {}
    for version in SheetVersion.objects.filter(sheet__in=wanted).order_by("revision_on", "id"):
        known = versions.get(version.sheet_id)
        if version.confirmed or known is None or not known.confirmed:
            versions[version.sheet_id] = version
    return versions


def of_a_kind(kind: str) -> Substance:
    """Return what any product of a kind is, as far as its kind says; the step names no product."""
    groups = propose(kind, []).groups
    return Substance(f"any {Kind(kind).label}", groups - {WATER}, water_based=WATER in groups)


def substance(product: Product, profile: Profile | None, sheet: SheetVersion | None) -> Substance:
    """Return one product; what an owner confirmed comes before what is proposed."""
    statements = frozenset(map(str, sheet.statements)) if sheet else frozenset()
    water = profile.water_based if profile else None
    proposed = propose(product.kind, sheet.composition if sheet else [], statements, water)
    confirmed = profile is not None and profile.groups_confirmed_on is not None
    groups = frozenset(profile.groups) if profile and confirmed else proposed.groups
    return Substance(
        name=product.name,
        groups=groups - {WATER},
        statements=statements,
        water_based=WATER in groups if water is None else water,
        hazards=tuple(map(str, sheet.hazards)) if sheet else (),
        liquid=sheet is None or sheet.form not in NOT_LIQUID,
    )
