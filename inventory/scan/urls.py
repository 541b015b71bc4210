"""Addresses of the scan station."""

from django.urls import path

from inventory.scan import views

app_name = "scan"
urlpatterns = [
    path("", views.station, name="station"),
    path("say/", views.say, name="say"),
    path("stations/", views.stations, name="stations"),
    path("stations/enrol/", views.enrol, name="enrol"),
    path("stations/<str:code>/revoke/", views.revoke, name="revoke"),
    path("set-aside/<int:pk>/done/", views.settled, name="settled"),
]
