"""Addresses of the settings."""

from django.urls import path

from inventory.settings import views

app_name = "settings"
urlpatterns = [
    path("", views.home, name="home"),
    path("open/", views.open_, name="open"),
    path("shop/", views.shop, name="shop"),
    path("places/new/", views.new_place, name="new_place"),
    path("places/<str:code>/", views.place, name="place"),
    path("suppliers/new/", views.new_supplier, name="new_supplier"),
    path("suppliers/<int:pk>/", views.supplier, name="supplier"),
]
