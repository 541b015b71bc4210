"""What the product pages write: a product with its lives, and the use-by copies that hang on them."""

from django.db import transaction

from inventory.models import Container, Pack, Product
from inventory.stock import ledger


@transaction.atomic
def keep_product(product: Product) -> int:
    """Save a product; return the number of bottles whose use by moved with its lives."""
    product.save()
    here = Container.objects.filter(product=product).exclude(state=Container.State.GONE)
    return ledger.refresh_use_by(here.select_related("product", "shop").prefetch_related("lots"))


@transaction.atomic
def keep_pack(pack: Pack) -> None:
    """Save a pack; only one size of a product is the usual one."""
    pack.save()
    if pack.usual:
        pack.product.packs.exclude(pk=pack.pk).update(usual=False)
