"""The forms of products: the product and its packs, what it does on a car, what it reacts with."""

from .groups import GroupsForm
from .products import PackForm, ProductForm, read_life
from .profile import ProfileForm
from .sheet import AttachForm

__all__ = ["AttachForm", "GroupsForm", "PackForm", "ProductForm", "ProfileForm", "read_life"]
