"""The product pages: the list, one product, the owner's forms, and what it does on a car."""

from .on_the_car import confirm_groups, edit_profile, follow_kind, profile
from .products import edit, edit_pack, new, new_pack, product, products
from .sheet import sheet

__all__ = [
    "confirm_groups",
    "edit",
    "edit_pack",
    "edit_profile",
    "follow_kind",
    "new",
    "new_pack",
    "product",
    "products",
    "profile",
    "sheet",
]
