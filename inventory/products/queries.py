"""Products with what is on the shelf of them, in a constant number of queries."""

from django.db.models import Count, Prefetch, Q, QuerySet, Sum

from inventory.models import Container, Pack, Product, Shop

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
