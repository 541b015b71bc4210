"""Addresses of the products."""

from django.urls import path

from inventory.products import views

app_name = "products"
urlpatterns = [
    path("", views.products, name="list"),
    path("new/", views.new, name="new"),
    path("<str:code>/", views.product, name="product"),
    path("<str:code>/edit/", views.edit, name="edit"),
    path("<str:code>/sheet/", views.sheet, name="sheet"),
    path("<str:code>/car/", views.profile, name="profile"),
    path("<str:code>/car/edit/", views.edit_profile, name="edit_profile"),
    path("<str:code>/car/follow/", views.follow_kind, name="follow_kind"),
    path("<str:code>/car/groups/", views.confirm_groups, name="confirm_groups"),
    path("<str:code>/packs/new/", views.new_pack, name="new_pack"),
    path("<str:code>/packs/<int:pack>/", views.edit_pack, name="edit_pack"),
]
