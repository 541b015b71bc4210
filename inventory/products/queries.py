"""Products with what is on the shelf of them, in a constant number of queries."""

from dataclasses import dataclass

from django.db.models import Count, Prefetch, Q, QuerySet, Sum

from inventory.models import Container, Kind, Pack, Person, Product, Profile, Shop
from inventory.precheck.queries.burning import packs_too_large
from inventory.precheck.queries.profiles import edits_of
from inventory.precheck.queries.substances import sheets_of
from inventory.trade.profile import Profile as Trade
from inventory.trade.profile import profile as resolve
from safety.findings import Finding
from safety.models import SheetVersion
from safety.queries import current
from safety.reactions.proposing import Proposal, propose
from safety.voc.product import voc_told

USABLE = Q(containers__state__in=[Container.State.SEALED, Container.State.OPEN], containers__held="")


def products(shop: Shop, text: str = "", kind: str = "", only: str = "") -> "QuerySet[Product]":
    """Return a shop's products by name with `on_shelf` (base units) and `bottles`."""
    rows = Product.objects.filter(shop=shop, archived=only == "archived").select_related("supplier", "sheet")
    if text.strip():
        rows = rows.filter(Q(name__icontains=text.strip()) | Q(maker__icontains=text.strip()))
    if kind:
        rows = rows.filter(kind=kind)
    if only == "no_sheet":
        rows = rows.filter(sheet__isnull=True, needs_sheet=True)
    neat = USABLE & Q(containers__parts_water=0)
    return rows.annotate(
        on_shelf=Sum("containers__content", filter=neat), bottles=Count("containers", filter=USABLE)
    ).order_by("name")


def product(shop: Shop, code: str) -> Product | None:
    """Return one product with its packs and its bottles that are not gone."""
    here = (
        Container.objects.exclude(state=Container.State.GONE)
        .select_related("place")
        .order_by("use_by_at", "code")
    )
    packs = Pack.objects.order_by("-usual", "amount").prefetch_related("parts__product")
    rows = Product.objects.filter(shop=shop, code=code).select_related("supplier", "sheet", "shop")
    return rows.prefetch_related(Prefetch("packs", packs), Prefetch("containers", here), "lots").first()


def version_of(product: Product) -> SheetVersion | None:
    """Return the version of a product's sheet that counts; None without one that is confirmed."""
    return current(product.sheet) if product.sheet else None


def owners(shop: Shop) -> str:
    """Return the names of whom to ask for what only an owner does."""
    rows = Person.objects.filter(shop=shop, role=Person.Role.OWNER, is_active=True).order_by("name")
    return ", ".join(person.name for person in rows)


def too_large(product: Product) -> tuple[Finding, ...]:
    """Return what is told of a product's packs whose container is too large for what burns in it."""
    return packs_too_large(product.shop, product, product.packs.all())


def gives_off(product: Product) -> tuple[Finding, ...]:
    """Return what is told of the volatile organic compounds in a product, where a law limits them."""
    sheet = sheets_of([product]).get(product.sheet_id or 0)
    if sheet is None:
        return ()
    weighs = product.density_mg_per_l / 1000 if product.density_mg_per_l else None
    cleans = product.kind == Kind.SOLVENT
    return voc_told(product.name, sheet.composition, weighs, product.shop.air_regime, cleans)


@dataclass(frozen=True)
class OnTheCar:
    """What a product does on a car: the shop's row (None: nothing typed), all resolved, and its groups."""

    row: Profile | None
    profile: Trade
    proposal: Proposal
    groups: frozenset[str]

    @property
    def confirmed(self) -> bool:
        """Whether an owner confirmed its groups."""
        return self.row is not None and self.row.groups_confirmed_on is not None


def on_the_car(product: Product) -> OnTheCar:
    """Return a product's profile with what is proposed for its groups, in two queries."""
    row = Profile.objects.filter(product=product).first()
    sheet = sheets_of([product]).get(product.sheet_id or 0)
    proposal = propose(
        product.kind,
        sheet.composition if sheet else [],
        map(str, sheet.statements) if sheet else (),
        row.water_based if row else None,
    )
    confirmed = row is not None and row.groups_confirmed_on is not None
    groups = frozenset(row.groups) if row and confirmed else proposal.groups
    return OnTheCar(row, resolve(product.kind, groups, edits_of(row)), proposal, groups)
