"""Every address of the site, one room a feature."""

from django.contrib import admin
from django.urls import URLPattern, URLResolver, include, path

urlpatterns: list[URLPattern | URLResolver] = [
    path("", include("inventory.today.urls")),
    path("admin/", admin.site.urls),
    path("posters/", include("inventory.posters.urls")),
    path("sheets/", include("safety.urls")),
    path("scan/", include("inventory.scan.urls")),
    path("shelf/", include("inventory.shelf.urls")),
    path("bays/", include("inventory.bays.urls")),
    path("products/", include("inventory.products.urls")),
    path("people/", include("inventory.people.urls")),
    path("settings/", include("inventory.settings.urls")),
    path("check/", include("inventory.precheck.urls")),
    path("jobs/", include("inventory.jobs.urls")),
    path("orders/", include("inventory.reorder.urls")),
    path("spreadsheets/", include("inventory.spreadsheets.urls")),
]
