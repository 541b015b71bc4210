"""Addresses of the products."""

from django.urls import path

from inventory.products import views

app_name = "products"
urlpatterns = [
    path("", views.products, name="list"),
    path("new/", views.new, name="new"),
    path("<str:code>/", views.product, name="product"),
    path("<str:code>/edit/", views.edit, name="edit"),
    path("<str:code>/packs/new/", views.new_pack, name="new_pack"),
    path("<str:code>/packs/<int:pack>/", views.edit_pack, name="edit_pack"),
]
