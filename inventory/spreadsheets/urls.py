"""Addresses of the spreadsheets."""

from django.urls import path

from inventory.spreadsheets import views

app_name = "spreadsheets"
urlpatterns = [
    path("", views.home, name="home"),
    path("out/<slug:slug>.<slug:form>", views.download, name="download"),
    path("in/<str:token>/", views.preview, name="preview"),
    path("in/<str:token>/bring/", views.bring, name="bring"),
    path("in/<str:token>/leave/", views.leave, name="leave"),
]
