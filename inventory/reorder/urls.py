"""Addresses of the orders."""

from django.urls import path

from inventory.reorder import views

app_name = "reorder"
urlpatterns = [
    path("", views.orders, name="orders"),
    path("report/", views.report, name="report"),
    path("report/file.<str:extension>", views.download, name="download"),
    path("place/<int:supplier>/", views.place, name="place"),
    path("<str:code>/", views.order, name="order"),
    path("<str:code>/place/", views.place_draft, name="place_draft"),
    path("<str:code>/due/", views.postpone, name="postpone"),
    path("<str:code>/close/", views.close_rest, name="close_rest"),
    path("<str:code>/cancel/", views.cancel, name="cancel"),
]
